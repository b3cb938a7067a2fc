"""How hot the pit shall run, when the meat comes off, and what it is cooked on."""

from typing import Final

from bot.intents.rewriting.words import rules
from core import patterns as re

_NOW_AT: Final = r"(?:(?:now|its|it is|at|back|up|down|to|only|just|reads?) )*"
_FIRE_FAILS: Final = (
    r"(?:the |my )?(?:fire|coals?|charcoal|flames?)s? (?:(?:is|are|its|getting|going|looks?|has|a bit) )*(?:dying|dead"
    r"|weak\w*|low|down|failing|fading|struggl\w+|slack\w*|out|dwindl\w+)(?: down| off)?"
)
_REFUELLED: Final = (
    r"(?:(?:i|we|have|ive|just) )*(?:added|refuel\w*|topped|put|threw)(?: (?:it|some|more|up|on|in|the fire|charcoal"
    r"|coals?|lumps?|briquettes?|fuel|wood|logs?))*"
)

_MEAT: Final = r"(?:meat|belly|bellies|bacon|ham|loin|flat|point|brisket|turkey|chicken|bird|duck|salmon|trout|fish)s?"


def _is_on(found: re.Match[str]) -> str:
    pit = f", pit {found['n']}{found['u'] or ''}" if found["n"] else ""
    return f"{found['a'] or found['b'] or 'meat'} is on{pit}"


_A_WHILE: Final = (
    r"(?:(?:about|around|maybe|like|some) )?(?:\d{1,3}|half an|an?|a few|a couple(?: of)?) ?"
    r"(?:min(?:ute)?s?|hours?|hrs?|h)"
)
_LIT_AGAIN: Final = (
    r"(?:relit|re-lit|restarted|lit|got|had|have|is|back|going|burning|started)"
    r"(?: (?:it|the|fire|coals|grill|smoker|pit|back|up|on|lit|going|burning|again))*"
)
RULES: Final = rules(
    # said of what is to be done at once, and is not done yet
    (r"^(?:(?:im|i am|we are|were|ok|right|so|now) )*(?:gonna|going to|(?:just )?about to|getting ready to|fixing to"
     r"|off to|time to) (?:light(?: up)?|fire up|smoke)(?: (?:it|this|that|her|him|them|the (?:fire|smoker|pit|grill"
     r"|coals?|charcoal)))?(?: up)?(?: (?:now|right now|in a (?:minute|sec|bit|moment)))*(?:[,.]? (?:with|using|over"
     r"|on)? ?(?:some )?(?:apple|cherry|oak|hickory|maple|pecan|beech|alder|mesquite)(?: ?wood)?"
     r"(?: (?:chunks?|chips))?)?$",
     "when do i light the fire"),
    # so much an hour is a pace, and no pit of ten degrees
    (r"^(?P<what>(?:the |my )?(?:pit|smoker|grill|fire|cooker|kamado)s?(?: temp)?) (?:(?:is|keeps?|temp|now) )*"
     r"(?:dropping|drops|losing|loses|falling|falls|going down|sinking)(?: by| about| at)? \d{1,3}"
     r"(?: ?(?:degrees?|deg|f|c))? (?:an?|per|every|each) (?:hour|hr)\b", r"\g<what> keeps dropping"),
    # «got it going again 20 min later»: so long it was out
    (rf"^((?:(?:i|we|it|its|but|then|ok|the fire|fire) )*{_LIT_AGAIN}),? ({_A_WHILE}) later$", r"\1 after \2"),
    (rf"^({_A_WHILE}) later,? ((?:(?:i|we|it|its|but|then|ok|the fire|fire) )*{_LIT_AGAIN})$", r"\2 after \1"),
    # «fires gone low, 205»: of the fire, and no core
    (r"^(?:the )?(?:fires?|coals) (?:(?:is|are|has|have|gone|got|getting|running|dropped|fell|went|burning|a bit|quite"
     r"|too|very|really) ?)+(?:low|weak|cool|cold|hot|high|down)?,? (?:(?:its|at|to|now|reads?) )*"
     r"(?=[12]\d\d(?: ?f)?(?: now)?$)", "pit "),
    # «its dropped to 210 gonna add charcoal»: of the fire, and no core
    (r"^(?:(?:it|its|temp|temps|has|just|now|is) )*(?:dropped|dropping|fell|fallen|sagged|slipped|sunk|sank|down"
     r"|gone down"
     r"|went down|cooled)(?: (?:right|off|back|down|away))* (?:to|at) (?=[12]\d\d(?: ?f)?\b,? (?:and |so "
     r"|but )?(?:(?:im|i am|ill|i|we"
     r"|gonna|going|to|about|need|needs|time|must|have) )*(?:add|thr[oe]w|put|chuck|toss|top|feed|light|open)\w* [^?]*"
     r"(?:coals?|charcoal|fuel|lump|briqu\w+|wood|logs?|splits?|vents?)\b)", "pit "),
    # lit only now, whenever it was meant to be
    (r"^(?:the )?(?:fire|coals|charcoal|grill|smoker)s? (?:(?:has|is|only|finally|just) )+(?:caught|got going|took|lit"
     r"|burning|alight)(?: (?:just|only|now|properly))*(?:,? (?:it )?(?:was|were) (?:supposed|meant|sposed"
     r"|due)(?: to be)?"
     r"[^?;]*)?$", "lit the fire just now"),
    (r"^(wrap|foil)(?: it)? ?\?+$", r"should i \1 it?"),
    (r"^(?:(?:i|we|just|now|ive) )*(?:turned|cranked|dropped|raised|lowered|bumped|brought) (?:it|her|him|the (?:pit"
     r"|grill|smoker|fire|heat|oven)) (?:up |down |back )*to (?=[1-3]\d\d\b)", "run the pit at "),
    (r"^(?:(?:take|bring|get) )?(?:the )?pit (?:to|(?:will|shall|should) be) (?=[1-3]\d\d\b)|^pit (?:to "
     r"|at )?(?=\d{3} from (?:now|here)\b)", "run the pit at "),
    (r"^(?:(?:ok|so|im|i am|i|we|we are|ill|well) )*(?:gonna|going to|will|wanna|want to) (?:pull|take)(?: it"
     r"| her)?(?: off)? at"
     r" (?=(?:1[5-9]\d|20\d)(?: ?f)?$)", "pull it at "),
    # «running 245» is what it does; «run 245» is what it shall do
    (r"^(?:(?:its|it is|now|still|just|happily|steady) )*running (?:(?:at|about|around|steady|nicely|a|nice) )*"
     r"(?=[1-3]\d\d(?: ?[cf])?(?: (?:now|steady|still|nicely|solid))?$)", "pit "),
    (r"^(?!.*\btak\w+ (?:it|her|them) to (?:19|20)\d\b)(?:(?:ok|so|lets|gonna|going to|ill|im|i|we|are"
     r"|just) )*(?:go(?:ing)?|run(?:ning)?|crank(?:ing)?|bump(?:ing)?|rais(?:e|ing)|lower(?:ing)?|reduc(?:e|ing)"
     r"|turn(?:ing)?|tak(?:e|ing)|drop(?:ping)?|push(?:ing)?|chang(?:e|ing)|switch(?:ing)?"
     r"|do(?:ing)?(?= \d+ instead))(?: (?:the )?(?:pit|heat|temp|fire|it|smoker|grill))?(?: (?:hotter|up|down|at|to|on"
     r"|for))* (?P<n>[1-3]\d\d)(?: ?(?P<u>[cf]))?(?: (?:on|in) the (?:pit|grill|smoker|fire))?(?: (?:now|instead|then"
     r"|from (?:here|now)(?: on)?))*$", lambda m: f"run the pit at {m['n']}{m['u'] or ''}"),
    (r"\b(?:the )?(?:smoker|fire|grill|pit|cooker) (?:wont|cant|will not|doesnt) (?:start|be lit|be on|light"
     r"|come on)(?: up)? (?:till?|until|before) (?=\d)", "light it at "),
    # a number beside the fire is the pit's
    (rf"^({_FIRE_FAILS})(?:,| and)? {_NOW_AT}(?=\d{{2,3}}\b(?![:.]))", r"\1, pit "),
    (rf"^({_REFUELLED})(?:,| and) {_NOW_AT}(\d{{2,3}})(?: (?:again|now))?$", r"\1, pit \2"),
    # a core at which it shall be done
    (r"\b(?:stop|finish|quit|call it|end)(?: (?:it|cooking|the cook))? at (?=(?:1\d\d|20\d|21[0-2]"
     r"|[6-9]\d)\b(?! ?(?:min|h\b|hours|%|g\b)))", "pull it at "),
    (r"^(?:(?:some|a bit|put|threw|bit) )*more (wood|coals?|charcoal|lump|splits?|fuel|logs|chunks"
     r"|pellets) on(?: now)?$", r"added \1"),
    # «my bbq is a gas one»
    (r"\b(?:cooker|grill|smoker|bbq|barbecue|pit)s? (?:is )?an? (gas|electric|kettle|offset|ceramic|drum|steel)(?: one"
     r"| grill| smoker| bbq)?$", r"\1 cooker"),
    (r"^(?:(?:i|we) )?(?:dropped|tossed|stuck|laid) (?:an? |some |another |more )?(chunk|log|split|stick"
     r"|handful)s?(?: of \w+)? (?:on|in)(?: the \w+)?$", r"added a \1 of wood"),
    (r"added (?:an? |half an? )?(?:chimney|load|scoop|shovel|few bits|bag)(?:ful)?(?: of)? (?=(?:char)?coals?"
     r"|briquettes?|lump|wood)", "added "),
    (r"^(?:we|i|ill|well) (?:pull|take) it (?:off )?at (\d{2,3})( ?[cf])?,? (?:ok|okay|k|alright|right)$",
     r"pull it at \1\2"),
    (r"^(?:(?:im|we are|gonna|going to|lets|please|ill|we|i|just|ok) )*(?:(?:tak(?:e|ing)|cook(?:ing)?) it (?:up )?to"
     r"|(?:aim|shoot)(?:ing)? for) (?=(?:1[5-9]\d|20\d|21[0-2])\b)", "pull it at "),
    (r"^(?:(?:its|it is|now|ok|meat|put it|stuck it|have it|got it|is|moved it) )*(?:in"
     r"|into)(?: the)? oven(?: now)?(?:(?: at|,)? (?=\d{3}))?(?P<n>\d{3})?$",
     lambda m: f"moved to oven{', ' + m['n'] if m['n'] else ''}"),
    (r"^(?:use |in |do )?(?:the )?oven instead$", "finish in the oven"),
    (r"(?:^(?:(?:im|i|we|are|is|planning|plan|going|gonna|will|ill|to|be|its) )+(?:smok(?:e|ing)|cook(?:ing)?"
     r"|run(?:ning)?) (?:it |this )?|\brun(?:ning)? (?:it|this) )at (?=(?:2\d\d|3[0-4]\d)\b)", "run the pit at "),
    # «smoking now», «its smoking at 90 c», «smoking the bacon»: it is on, by its name
    (rf"^(?:(?:ok|so|now|its|it is|(?:the )?(?P<a>{_MEAT})(?: is)?|just|already|finally|started|been) )*smoking"
     rf"(?: (?:it|them|(?:the |my )?(?P<b>{_MEAT})|now|away|nicely|already))*(?:,? (?:at )?(?P<n>[6-9]\d|[1-3]\d\d)"
     r"(?P<u> ?[cf])?)?(?: now)?$", _is_on),
    # «belly on at 200»: the pit it went on, and no core
    (rf"^(?P<a>(?:(?:ok|now|just|i|we|have|ive|got|put|the|my) )*(?:it|them|both|{_MEAT}|bellies|pieces)(?: (?:is|are"
     r"|went|goes|has gone|gone|now))* )on (?:now )?(?:at|@|with (?:the )?(?:pit|smoker|grill) at) (?P<n>[89]\d"
     r"|[1-4]\d\d)(?P<u> ?[cf])?(?: degrees)?(?: now)?$", lambda m: f"{m['a']}on, pit {m['n']}{m['u'] or ''}"),
    (r"^no (?:foil|wrap|paper)(?: (?:this time|please|for me|today|on this one|for this one))*(?:,? (?:(?:just|im"
     r"|i am|and|so"
     r"|gonna|going to|ill) )*(?:leav|keep|go|let|rid|runn?|cook)\w*(?: (?:it|her|them|on|ride|run|go))* (?:naked"
     r"|bare|nude"
     r"|unwrapped|open|as it is))?$", "no wrap"),
)  # fmt: skip
