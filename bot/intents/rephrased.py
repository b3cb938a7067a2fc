"""More ways in which the same is told, each written out as the readers know it; see `plainer`."""

from typing import Final

from bot.intents.days import WEEKDAYS
from bot.intents.plainer_rules import DAY, TOLD
from core import patterns as re

_CORE: Final = r"(?:core|meat|internal|middle|pit|grill|smoker|fridge)"
_ADJECTIVE: Final = r"(?:boneless|skinless|bone[- ]in|skin[- ]on|trimmed|fresh|raw|big|small|large|whole|medium)"
_CUT: Final = (
    r"(?:(?:turkey|duck|chicken|pork|beef|brisket) )?(?:breasts?|flats?|points?|bellies|loins?|legs?|thighs?"
    r"|fillets?|hams?"
    r"|chickens?|ducks?|trouts?)"
)
_NEW_BAG: Final = (
    r"(?:(?:re-?|double ?)bagged(?: (?:it|them|the meat|all))*|(?:put|moved|swapped|transferred|got)(?: (?:it|them|all"
    r"|the meat|everything|over))* (?:in|into|to) (?:an? |the )?(?:new|fresh|clean|second|another|bigger) bag)"
)
_DEEDS: Final = {
    "flip": "flipped", "turn": "turned it", "rinse": "rinsed", "wrap": "wrapped", "soak": "soaked", "rub": "rubbed",
    "spritz": "spritzed",
}  # fmt: skip


def _day_off(found: re.Match[str]) -> str:
    """«take sunday off» is away from that day to the next."""
    day = WEEKDAYS[found[1]]
    return f"away {found[1]} until {next(name for name, n in WEEKDAYS.items() if n == (day + 1) % 7)}"


def _cold_unit(number: str) -> str:
    """The unit in which a fridge can run at that number; "" where it is neither."""
    return "c" if int(number) <= 10 else "f" if int(number) >= 30 else ""


REPHRASED: Final = tuple(
    (re.compile(pattern), written)
    for pattern, written in (
        (r"\bw/o\b", "without"),
        (r"^(?:the )?door (?:was |is |stood |has been |got )?(?:left )?(?:ajar|open),? (?:and )?(?:its |now )*"
         r"([3-6]\d(?: ?[cf])?)(?: now)?$", r"fridge door was left open, fridge \1"),
        (r"^(.*\b(?:flipped|turned)\b.*\bthis morning) and (?:again )?(?:just )?now$", r"\1, flipped it now"),
        (r"^(?:flip|turn) (?:reminder|ping|call) at (\d[\d:.]*(?: ?[ap]m)?)(?: (?:please|pls))?$", r"remind me at \1"),
        (r"\bmake it (1[0-2]|[1-9]) ([0-5][05])$", r"make it \1:\2"),
        (r"^(?:its |it is )?(?:thicker|thinner) than (?:i|we|you) (?:said|thought|told you|think),? (?:(?:its|more|like"
         r"|about|around|maybe) )*(?=\d)", "thickness "),
        (r"^(?:make|have|serve|do) it (hot|cold|warm)(?: for (?:dinner|lunch|supper|the meal))?$", r"eat it \1"),
        (r"^did (?:you|it) say \d+(?:\.\d)? or \d+(?:\.\d)?(?: ?g(?:rams)?)?[ ?]*$", "whats the dose"),
        (r"\b(\d{2,3}) (?:on|at|for) (?:the )?(?:probe|sensor|channel) ?[1-4]\b", r"core \1"),
        (r"^(?:it )?took (?:about |like )?(?:\d{1,2}|an?|half an?) ?(?:h|hrs?|hours?|min\w*) to (?:hit|reach|get to"
         r"|come to) (?=\d{2,3}(?: ?[cf])?$)", "now "),
        (r"^(?:i |we )?(?:take|taking|want|have|got) ((?:mon|tues|wednes|thurs|fri|satur|sun)day) off$", _day_off),
        (r"^(?:can we |lets |please )?move (?:both|all|all of them|everything|the lot)(?: of them)? (?:by |back )?"
         r"(?=(?:an?|\d) (?:days?|weeks?)$)", "move it by "),
        # what it reads and what is wanted, what it was, how thick at either end
        (r"\bpit (?:is |at )*(\d{3}),? (?:and |but )?(?:i |we )*(?:want|need|wanted|should be|supposed to be|target)"
         r"(?: it)?(?: (?:at|to be))? (\d{3})$", r"pit \1, run the pit at \2"),
        (r"^(?:(?:its|it is|core|meat) )*(\d{2,3}(?:\.\d)?(?: ?[cf])?) now,? (?:but )?(?:it )?was \d{2,3}(?:\.\d)?"
         r"(?: ?[cf])?$", r"\1 now"),
        (r"^(?:(?:it|its|meat|flat) )*tapers? (?:from )?(\d[\d./]*(?: ?(?:in|inch\w*|mm|cm|\"))?) (?:down )?to "
         r"(\d[\d./]*(?: ?(?:in|inch\w*|mm|cm|\"))?)$", r"thick end \1 thin end \2"),
        (r"^(?:were|we are|therell be|there will be)(?: gonna| going to)?(?: be)? (\d{1,2}) (?:instead of|not|and not)"
         r" \d{1,2}(?: now)?$", r"we are \1 now"),
        (r"^(?:i |we )?dont need (?:the |that |a )?(morning|evening) (?:ping|flip|reminder|call|one)(?: tomorrow| today"
         r"| tonight)?$", r"skip the \1 one"),
        (r"^(?:(?:im|we are|ill|i|we) )*leav(?:ing|e) (?:it|that|this) (?:until|till?) (?:the |tomorrow )?(morning"
         r"|tomorrow|tonight)$", r"ill do it \1"),
        (r"^put (?:it |the meal |dinner |lunch )?back (?:by )?(?=(?:an?|\d) (?:days?|weeks?)\b)", "move it by "),
        (r"^put (?:the|my) (\w+) back (?:by )?(?=(?:an?|\d) (?:days?|weeks?)\b)", r"\1: move it by "),
        (r"^(?:(?:i|we) )?(?:dropped|tossed|stuck|laid) (?:an? |some |another |more )?(chunk|log|split|stick|handful)s?"
         r"(?: of \w+)? (?:on|in)(?: the \w+)?$", r"added a \1 of wood"),
        (r"\b((?:going|gone|off|out|popping|running|nipping|heading|brb|ill be|be) (?:[a-z]+ ){0,4}back in [1-9]\d)$",
         r"\1 min"),
        (r"^(?:(?:i|we|was|were|bit|a|little|sorry) )*late (flipp|turn|rins|wrapp)ing(?: (?:it|them))?,? (?:at |about "
         r"|like )?(?=(?:1[0-2]|[1-9])\b)", r"\1ed it at "),
        (r"^([^,;]*\d\d),? (?:after|when|because|since|cause) (?:i|we) (?:just )?(?:opened|lifted)"
         r"(?: (?:it|up|the (?:lid|smoker|grill|cooker|pit)))*$", r"lid was open, \1"),
        (r"^(?:so )?how long for (?=(?:the |my )(?:brisket|flat|point|meat|bacon|ham|belly|turkey|chicken|duck|salmon"
         r"|trout)$)", "how much longer for "),
        (r"^(?:pulled|took) (?:it |her )?(?:off )?to wrap(?: it| her)?(?:,? (?:and )?(?:its |now )*back on(?: now)?)?$",
         "wrapped it"),
        (r"\bfoil[- ]?boat(?:ed)?\b(?! (?:or|vs|ok|good|better))(?!.*\?)", "wrapped in foil"),
        (r"^(?:please |pls )?(?:turn|switch) (?:the |my |all )?(reminders|pings|messages|texts|notifications) off\b",
         r"turn off \1"),
        (r"^(?:can we |please |lets )?put (?:it |the meal |dinner |lunch )?off (?:by |for )?(?=(?:an?|\d) (?:days?"
         r"|weeks?)\b)", "move it by "),
        (r"^((?:it |we |i |its |ok |will |still |gonna )*(?:needs?|takes?|gimme|give (?:me|it)|wait)) another (hour|hr"
         r"|minute|min)\b", r"\1 another 1 \2"),
        (r"\bw/? (?=(?:the|it|my|an?|this|that|foil|paper|some|no)\b)", "with "),
        (r"\b(why|how|what|when|where|who)d (?=(?:it|they|that|we|i|you|the \w+)\b)", r"\1 did "),
        # «did flip 10 min ago», «did wrap at 160»: told without the one who did it
        (rf"^(?:(?:ok|yes|just|already) )*did (?P<deed>{'|'.join(_DEEDS)})(?=$|[,.;]| (?:\d|(?:at|about|around|by|an?"
         r"|half|this|last|just|now|already|too|also|late|early)\b))(?!.*\?)", lambda m: _DEEDS[m["deed"]]),
        # a flip of a part of the day, a mark behind what is eaten, a small number in words
        (r"^(?:(?:and|yes|ok|the|this|i|we|already) )*(?P<did>did (?:the |this )?)?(?P<part>morning|evening) (?:flip"
         r"|turn)(?(did)| (?:(?:is|was) )?done)(?: too| also| as well| already)?$", r"flipped this \g<part>"),
        (r"^(?:a )?half (?:a )?(?:percent|%)$", "0.5 %"),
        (r"^i said (?:[a-z]+day|mon|tue|wed|thu|fri|sat|sun),? (?:but )?i meant ", "i meant "),
        (r"^(?:please )?add (\d+ ?(?:h|hrs?|hours?|days?)|an hour|a day) to (?:everything|it all|all of it"
         r"|the (?:whole )?plan)$", r"push everything back by \1"),
        (r"^((?:make|have|do) (?:the meal|dinner|lunch|supper) )(?=\d{1,2}(?::\d\d)?(?: ?[ap]m)?,? (?:instead|not)\b)",
         r"\1at "),
        (r"^(?:it|the (?:meat|flat|piece|\w+)) (?:really |only |actually |just )?weighs (\d+(?:\.\d+)?),? not "
         r"(\d+(?:\.\d+)?)$", r"its \1 not \2"),
        (r"^(\d+(?:\.\d+)?) not (\d+(?:\.\d+)?) ?(mm|cm|in|inch(?:es)?|kg|lbs?)$", r"\1 \3 not \2 \3"),
        (r"^(?:i |we )?(?:smoke|cook|grill) on (?:an? |my )?(gas|electric|kettle|offset|ceramic|steel)(?: one)?$",
         r"my cooker is \1"),
        (r"^(?:(?:no|sorry|oops|wait|the|that) )*(?:it|reading|one) was ((?:1?\d|2[0-3])\.[0-5]\d)"
         r"(?: actually| sorry| really)?$",
         r"that was at \1"),
        (r"added (?:an? |half an? )?(?:chimney|load|scoop|shovel|few bits|bag)(?:ful)?(?: of)? (?=(?:char)?coals?"
         r"|briquettes?|lump|wood)", "added "),
        (r"fridge (?:runs|is set|stays|sits) at (\d{1,2})$",
         lambda m: f"fridge runs at {m[1]} {_cold_unit(m[1])}".rstrip()),
        (r"^ice (?:is |was )?(?:topped up|changed|renewed|refreshed)(?: now| again)?$", "topped up the ice"),
        # another like it, its salt, how it is wished, what is not thawed through
        (r"^((?:lets|can we|i want to|we want to|im|gonna|ill) (?:do|make|have|start|doing|making) (?:an? |some )?"
         r"[a-z]{3,12}(?: [a-z]{4,8})?) again(?=,? ?\d)", r"\1"),
        (r" (kg|kilos?|lbs?|pounds?) this time\b", r" \1"),
        (r"^(?:less|more|lower|higher|only) salt[,;]? (?:to |at |like )?(?=\d(?:\.\d{1,2})? ?%$)", "salt "),
        (r"^(?:(?:we|i|id|well|everyone|they) )?(?:want|prefer|would like|like) (?:it|this|that) (hot"
         r"|warm)(?: now| instead| then| after all)?$",
         r"eat it \1"),
        (r"(?<![a-z])icy(?= (?:in|at|inside)\b|$)", "frozen"),
        (r"\bcure (?:no\.? ?|nr\.? ?|num ?|number )(?:2|two)\b", "cure #2"),
        (r"\bno (?:skin|rind)\b", "skin off"),
        (r"(?<=\d),(?=\d{3} ?(?:ft|feet|foot|m|met(?:er|re)s?)\b)", ""),
        (r"^(?:(?:i|ive|we|have|got|bought|just) )*(?:half|a quarter|part) (?:of )?(?:an? |the )?(?=(?:ham"
         r"|brisket|gammon|pork|belly|salmon)\b)", "a "),
        (r"^(?:is )?(?:there )?anything (?:going|on|under ?way|running|happening|cooking|curing)(?: on| now"
         r"| right now)*\?*$", "what now"),
        (r"(?<=\d) in (?=(?:it|she|he|they|the \w+|that) (?:goes|went|go)\b)", ", in "),  # and no inches
        (r"^(\d{1,2}[.:][0-5]\d),? (?:it was|it read|it said|was) (?=\d)", r"at \1 it was "),
        (r"^(\d{2,3}) (?:both(?: sides)?|everywhere|all (?:over|round)),? (?=off\b|taking|pulled|pulling)", r"\1, "),
        (r"^(?:every(?:body|one)|we|they|all|family|guests)s?(?: (?:is|are|were|was|got|have been|has been|all|now))* "
         r"(?:fed|stuffed)\b(?: and happy)?", "eaten"),
        # «a duck breast or two», «a chicken or three»: how many is open, and no number is told
        (r"\b(an?|one|1) (?!(?:\w+ )?(?:hours?|hrs?|days?|weeks?|mins?|minutes?|secs?|inch\w*|cups?|spoons?|pounds?"
         r"|lbs?|kilos?|kg|degrees?|times?|bits?)\b)((?:[a-z]+ ){1,3})or (?:2|3|two|three|so)\b(?! ?[a-z]* ?(?:of|\d))",
         r"\1 \2"),
        (r"(?<=\d),? (?:and |but |still )?(?:it |its |the core |core |temp )?"
         r"(?:(?:hardly|barely|scarcely|only just|not|wont|isnt|aint) (?:really )?"
         r"(?:mov|budg|climb|ris|chang|shift|going up)\w*(?: up)?|crawling|creeping)"
         r"(?: much| at all| any ?more| now)*$", " stuck"),
        (r"\b(?:im |i am )?(?:an? )?(?:1st|first|1)[- ]?timer?\b(?! (?:here|doing|trying|at|with|for)\b)[.,;!]* ?", ""),
        (r"^reminders? off (?=(?:after|before|from|at night)\b)", "no reminders "),
        (r"^(?:so )?whats my (?:quiet (?:time|hours)|settings|units|time ?zone|clock)\W*$", "settings"),
        (r"^(?:the )?door (?:was |is |stood |has been |got )?(?:left )?(?:ajar|open) (?=(?:all|over ?night|for|since))",
         "fridge door left open "),
        (r",? ?\bat (?:the|my|our) last (?:look|check|reading|go)\b,? ?", " "),
        (r"\blid(?:s)? (?:has |had |was |is )?(?:been )?(?:left )?(?:off|open) (?=for\b)", "lid was open "),
        (r"\?{2,} (?=\d{2,3}\b)", ", "),
        (r"^(?:we|i|ill|well) (?:pull|take) it (?:off )?at (\d{2,3})( ?[cf])?,? (?:ok|okay|k|alright|right)$",
         r"pull it at \1\2"),
        (r",? (?:but )?(?:i )?(?:dunno|dont know|not sure|no idea) (?:exactly )?when(?: though)?$", TOLD),
        (r"^(?:nothing (?:new )?to report|no news|all quiet(?: here)?|nothing new)$", "noted"),
        # the cooker before a number is its heat, and no new cooker; «fridge now» is where the meat goes
        (r"\b(?:the )?(?:kettle|offset|kamado|drum|barrel|ceramic)s?(?: (?:is|at|now|reads|says|on))* "
         r"(?=\d{2,3}\b(?! ?(?:lbs?|kg|l|in|inch|cm|mm|quarts?|gal)\b))", "pit "),
        (r"^(?:(?:ok|now|going|straight) )*(?:in|into|to) fridge(?: now)?$|^fridge now$", "in the fridge"),
        # another bag takes the liquid along: nothing went into its cure a second time
        (rf"(?P<leak>\b(?:leak|burst|split|ripp|drip|seep)\w*\b.{{0,60}}?),? (?:so |and |but |i |we |ive )*"
         rf"{_NEW_BAG}(?: now| instead)?(?=$|[,;.])", r"\g<leak>"),
        (rf"^(?:(?:i|we|ive|just|ok|have|now) )*{_NEW_BAG}(?: now)?$", "noted"),
        (r"\b(half|most|some|a third|a quarter|all)(?: of)? (?:the )?(?:brine|juice|liquid)s? (?:has |have "
         r"|all )?(?:leaked|ran|came"
         r"|spilled|spilt|dripped|poured|is gone)(?: out| away)?\b(?: when i opened it)?", r"bag leaked, \1 of it"),
        (r"^was it \d+(?:\.\d)? or \d+(?:\.\d)? ?(?:g|grams?)?(?: (?:of )?(?:cure|salt"
         r"|pink))?(?: (?:that )?you (?:said|told me))?\W*$",
         "how much cure did i put in"),
        (r"^(?:please )?send (?:me )?(?:less|fewer) (?:texts|messages|pings|reminders)$|^too many (?:texts"
         r"|messages|pings|reminders)$"
         r"|^(?:stop|quit) (?:pinging|texting|messaging|bugging|reminding) (?:me )?(?:every|so much"
         r"|so often)\b.*$", "dont ping me"),
        (r"^(?:please )?cancel (?:the |tonights |this evenings |todays )?(flip|turn)(?: tonight| today"
         r"| this (?:evening|morning))?$",
         r"skip the \1"),
        (r"^(?:ive |i |we |weve )*(?:had|kept|held|running|been running|been holding) (?:it|the pit"
         r"|the smoker) (?:steady )?at (?=[23]\d\d\b)",
         "pit "),
        (r"\bpulled out of (?:the )?ice\b", "out of the ice"),
        (r"^(?:i am|im) (?:so |very )?sorry to (?:say|report|tell you)(?: that)?,? |^i (?:must"
         r"|have to) (?:confess|admit)(?: that)?,? ", ""),
        (r"^(?:oops |whoops |i |we )*(?:poured|tipped|spilled|spilt|knocked)(?: (?:out|over|away))?(?: (?P<s>all"
         r"|most|half|some|a third))?"
         r"(?: of)? ?(?:the )?(?:brine|pickle|liquid|bag|tub|bucket)(?: (?:out|over|away))?,? (?:by (?:accident"
         r"|mistake)|accidentally|whoops|oops)$",
         lambda m: f"bag leaked, {m['s'] or 'all'} of it"),
        (r"^(?!im |i |we |its |it |quiet |away |out |off |be )([a-z]{2,12}) (?:is|s) on (?:(?:un)?til+"
         r"|to) \d[^,;]*(?:,? (?:and )?then me)?$",
         r"\1 has the fire"),
        (r"\bcats (?:n|and|&) dogs\b", "hard"),
        (r"^(?:(?:the )?bags? (?:is |are |looks? )?(?:ok|okay|fine|good|tight"
         r"|dry),? )?(?:and )?no leaks?(?: so far| yet)?$", "noted"),
        (r"^(?:(?:it|was|only|just|about|like|maybe) )*((?:\d{1,3}|an?|half an?|a couple of) ?(?:m?mins?|minutes?"
         r"|h|hrs?|hours?)) on the"
         r" (?:bench|counter|table|side|worktop|sink|drainer)\b[^\d?]*$", r"left out on the counter for \1"),
        (r"\b(?:grill|smoker|fire|pit) (?:stopped|cut out|died|was off|was out) for ((?:\d{1,3}|an?"
         r"|half an?) ?(?:m?mins?|minutes?|h|hrs?|hours?)),?"
         r" (?:but |and )?(?:its )?(?=back\b)", r"fire went out for \1, its "),
        (r"\bput (?:it|her|them|the \w+) in(?:to)? (?:the |some |butcher )?(foil|paper)\b(?: (?:w|with) (?:a "
         r"|some )?\w+)?", r"wrapped it in \1"),
        (r"\bambient:? ?(?:is |at )?(?=[12]\d\d\b)", "pit "),
        (r"^[^,;]*\bat (\d{1,2}(?::\d\d)?(?: ?[ap]m)?),? (?:and |so )?([^,;]*\b(?:takes? over|minds|watches"
         r"|has the)\b[^,;]*?) then$",
         r"\2 at \1"),
        (r"\b((?:flip|turn)\w*[^,;.]*?),? (?:and )?also (?:the )?(?=(?:last night|this morning"
         r"|yesterday)s?\b)(\w+ ?\w*)$",
         r"\1, and \2 too"),
        # how a deed is told
        (r"(?:\ball done,? )?\b(?:and )?thats a wrap\b", "finished"),
        (r"\b(?:doing|did) the (?:flip|turn) (?:right |just )?now\b", "flipped it now"),
        (r"\b(?:bags?|meat|it|its)(?: is| are|s)? (?:now )?on (?:its|the|their) other side(?: now)?\b", "flipped it"),
        (r"\b(?:put|got|wrapped|have) (?:the |some |butcher )?(foil|paper) (?:a?round|over|on) (?:it|the meat"
         r"|her)\b", r"wrapped it in \1"),
        (r",? ?\b(?:and |but )?(?:i |we )?(?:didnt|havent|not|never) (?:look(?:ed)?|check(?:ed)?|measured?|read|seen?)"
         r"(?: it| again| since| after(?: that)?| then)*$", ""),
        (r"^(?:please )?(?:forget|delete|erase) (?:everything|all)(?: that)? (?:i|we) (?:ever )?(?:told|said|gave"
         r"|wrote)(?: to)?(?: you)?$",
         "forget me"),
        (r"^(?:so )?what (?:do )?(?:you|u) need(?: to know)? from me(?: to (?:start|begin|plan))?\W*$", "help"),
        (r"^(?:please )?(?:change|make|switch|turn) (?:it|this|that) (?:to|into) (?:a )?(hot|cold) (?:meal|dinner"
         r"|lunch|one)\b", r"eat it \1"),
        (rf"^(?:(?:we|i|im|we are) )*(?:fly|flying|leave|leaving|travel|travelling|go|going)(?: off| out"
         rf"| away)? (?:on )?({DAY}),?"
         rf" (?:and )?(?:back|return|home)(?: again)?(?: on)?(?: the)? ({DAY})(?: after)?$", r"away from \1 until \2"),
        # where somebody is
        (r"\b(im|i am|we are|were) (?:(?:over|currently|now|living|based|staying)(?: here)? )+(?=in (?!the |an? "
         r"|my )[a-z]{4})",
         r"\1 "),
        # measured, and what it is
        (r"^(?:(?:i|we|just|ive) )*(?:re)?measured(?: it)?(?: again)?,? (?:and )?(?=(?:its|it is|now) [^,;]*\d)", ""),
        (r"(?<=\d)( ?(?:in|inch\w*|cm|mm|\"))? at the (?:fat|thick(?:est)?) (?:end|side|part|spot)\b", r"\1 thick"),
        # a start that is asked for politely, and how its pieces are
        (r"^(?:can|could|may) (?:i|we) (?:make|do) (?=(?!.*\b(?:how|when|what)\b).*\b(?:got|have|from|out of|with)\b.*"
         r"\d ?(?:lbs?|pounds?|kgs?|kilos?)\b)", "make "),
        (rf"\b([2-9]|1\d) ((?:{_ADJECTIVE} )+)(?={_CUT}\b)", r"\2\1 "),
        # what it jumped to is read, and doubted as such
        (rf"^(?:the )?(?P<of>{_CORE})?(?:it|temp)?s? ?(?:just |suddenly |has |now )*(?:jumped|shot|leapt|spiked"
         rf"|rocketed)"
         r"(?: right| straight)?(?: up)? to (?P<n>\d{2,3})(?: ?(?P<u>[cf])\b)?[?! ]*$",
         lambda m: f"{m['of'] or ''} {m['n']}{m['u'] or ''}".strip()),
        (r"^(?:(?:lets|please|ill|we|i|just|ok) )*(?:aim(?:ing)?|shoot(?:ing)?) for (?=(?:1[5-9]\d|20\d"
         r"|21[0-2])\b)", "pull it at "),
        (r"^(?:at )?(?:what time|when) (?:do|would) you (?:expect|think|reckon|guess|see) (?:the meat|it|this"
         r"|that|the \w+)"
         r"(?: to be| will be| is| being| gets)? (done|ready|finished)\b", r"when is it \1"),
        (r"\bate (?:it )?(?=(?:it )?was\b)", "ate it, "),
        (r"\b(?:it )?was (?:so |absolutely |pure |straight )?fire\b(?! ?(?:out|gone|dead|off))", "it was delicious"),
        (r"\b(?:blowing )?a (?:howling |real |proper )?gale(?: blowing)?(?: (?:here|outside|now))*\b", "strong wind"),
        (r"\bstorming(?: (?:here|outside))*\b", "strong wind"),
    )
)  # fmt: skip
