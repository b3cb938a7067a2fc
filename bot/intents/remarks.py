"""Short remarks that leave out what decides, or may be several things: which one a line is, and where it can be meant.

Each is met with a question of its own (`vague`): «its pink» by which core, «used the other salt» which, «forgot» what.
"""

from typing import Final

from bot.intents.context import HOT, RAW, UNCOOKED
from bot.intents.feels import A_BIT, IT
from core import patterns as re

_ANY: Final = (*UNCOOKED, *HOT, "stored")
_CURING: Final = ("curing",)
_ON_THE_FIRE: Final = ("cooking",)
_PLACE: Final = r"(?: (?:inside|in there|within|still|(?:in|at|near|round|by) the \w+))*"
_WE: Final = r"^(?:(?:oops|i|we|ive|just|think|may have|might have|sorry|oh|ok|now|so) )*"
_ODD: Final = r"(?:bit|fun[nk]y|weird|strange|odd|different|off|interesting|strong|not right|wrong|iffy|dodgy)"
_CLEAN: Final = r"(?:spic\w+|smok\w+|bacon|ham|garlic|pepper\w*|heaven|dinner|meat|beef|pork|fish|it should|always)"
_COLOUR: Final = r"(?:gr[ea]y|brown|dark|pale|dull|blotchy|patchy)(?:ish)?"
_ONE: Final = r"(?:big|small|little|thick|thin|first|second|other)"
_A_WHILE: Final = r"(?:half (?:an )?hour|(?:\d{1,2} ?)?(?:hours?|hrs?|h|min(?:ute)?s?))"
_DEED: Final = r"(?:flipped|turned|did|do|done|doing|rinsed|wrapped|changed|swapped|switched|adjusted|altered)"
_WENT: Final = (
    r"(?:drop(?:p?ed|ping)?|f(?:ell|all(?:ing)?)|r(?:ose|is(?:e|ing))|jump(?:ed|ing)?|climb(?:ed|ing)?|dip(?:ped|ping)?"
    r"|(?:went|go(?:ing|ne)?) (?:up|down))"
)
_MAY_I: Final = r"(?:(?:can|could|may|should|shall|please|lets|just|how|do|i|we|you|still|want to|need to|have to) )*"
_REMARKS: Final = re.Rules(
    (re.compile(words), (why, phases))
    for why, phases, words in (
        ("pink", HOT,
         rf"^{IT}(?:(?:all|is|looks?) )*{A_BIT}(?:pink|red|bloody|rosy)(?:ish)?{_PLACE}$"),
        ("other_salt", RAW,
         rf"{_WE}(?:used|took|grabbed|put in|added|weighed)(?: out)?(?: the| some| a)? "
         r"(?:other|different|new|second) (?:salt|cure|packet|bag|box|jar)"
         r"(?: (?:instead|by mistake|this time|today|in))*$"),
        ("forgot_extra", RAW,
         rf"{_WE}(?:forgot|left out|missed|didnt (?:add|put in))(?: to add| to put in| about| adding)?"
         r"(?: the| any| my)? (?:sugar|pepper(?:corns)?|spices?|garlic|bay(?: leaves)?|coriander|mustard|honey|syrup"
         r"|herbs|juniper|thyme)$"),
        ("number", _ON_THE_FIRE,  # how far off it is, and no pit
         r"^(?:the )?(?:pit|smoker|grill)s?[^\d]{0,12}\b[1-5]?\d(?: ?(?:degrees|deg|°|[cf]))?,?"
         r" (?:too (?:low|high|hot|cold|cool)|under|over|below|above|off|short|low|high)$"),
        ("soaking", _CURING,
         rf"^{IT}(?:(?:im|i am|we are|now|just|put|started) )*soaking(?: (?:it|them|the meat))?"
         r"(?: (?:now|in (?:the |cold |fresh )*(?:water|fridge|sink)|(?:for )?(?:about )?(?:an?|half an"
         r"|\d{1,2}) ?(?:h|hours?"
         r"|min\w*)))*$"),
        ("swapped", (*HOT, *RAW),
         r"^(?=.*\b(?:(?:other|wrong) way (?:a?round|about)|mixed up|swap(?:ped)?|switched|reversed?|confused"
         r"|back to front)\b)(?:(?:sorry|oops|no|wait|ah|its|it|is|that|was|thats|i|we|ive|the|my|had|have|got|mixed"
         r"|up|swap(?:ped)?|switched|reversed?|confused|back|to|front|those|them|these|are|were|two|both|think"
         r"|probes?|thermometers?|numbers|readings|temps|they|other|wrong|way|a?round|about|over|core|pit|and|meat)"
         r"\b[, ]*)+$"),
        ("no_readings", HOT,
         r"^(?=.*\b(?:stop|quit|dont|do not|no more|enough)\b)"
         r"(?=.*\b(?:ask|remind|ping|call|nag|bug|text|messag|want|no more)\w*\b)"
         r"(?=.*\b(?:readings?|temps?|temperatures?|numbers|core|pit)\b)"
         r"(?:(?:please|pls|can|you|ok|stop|quit|dont|do|not|no|more|enough|keep|me|us|for|about|to|read|check|with"
         r"|all|the|any|anymore|so|many|often|time|these|now|(?:ask|remind|ping|call|nag|bug|text|messag|want)\w*"
         r"|readings?|temps?|temperatures?|numbers|core|pit)\b ?)+$"),
        ("put_in", ("drying", *HOT, "stored"),
         rf"{_WE}(?:put|got|stuck|popped|chucked) (?:it|them|that|the meat) in(?: now| already)?$"
         r"|^(?:(?:ok|right|so|now|and|done|yes|well) )*(?:its|they are|meats?|it is|meat is) in(?: now| already)?$"),
        ("turned", _CURING,  # the bag, or gone off
         r"^(?:its |it |has |all )?turned(?: now)?$"),
        ("forgot", _ANY,
         r"^(?:(?:oops|sorry|oh no|damn|ah) )*forgot$"),
        ("number", _ANY,  # of what is open
         r"^\d{1,3} or \d{1,3}(?: (?:i (?:think|reckon|guess)|maybe|ish|ok))?$"),
        ("smell", _ANY,
         rf"^{IT}(?:smells?|smelling|stinks?|whiffs?|pongs?|reeks?)(?: is)?(?: {A_BIT}(?:like |of )?"
         rf"(?:{_ODD}|burnt|bitter|bad|nasty|horrible|awful|disgusting|terrible|gross)| a bit| a little"
         rf"| {A_BIT}like (?:the )?(?!{_CLEAN}\b)[a-z]+(?: [a-z]+)?)?(?: now"
         rf"| to me)?$"
         rf"|^(?:(?:theres|it has|has|got|an?|the|bit of|slight) )*{_ODD} (?:smell|odou?r|whiff)(?: to it)?$"),
        ("look", _ANY,
         rf"^{IT}(?:looks?|looking|went|gone|going|turned|turning|is|are)? ?{A_BIT}(?:{_ODD} )?{_COLOUR}$"
         rf"|^{IT}(?:still )?(?:pink|red|raw|{_COLOUR})(?: (?:in|at|on|near) the (?:middle|centre|center"
         rf"|edges?|bone))?$"
         rf"|^{IT}(?:looks?|looking) {A_BIT}{_ODD}$"
         rf"|^(?:(?:theres|has|got|a|some|few|little|{_ODD}) )*green(?:ish)? (?:bits?|spots?|patch(?:es)?|dots?"
         r"|specks?|tinge|stuff) (?:on|in|over|round|to) (?:it|the \w+|one (?:side|end|of them))$"),
        ("late", _ANY,
         r"^(?:(?:its|it is|we are|were|im|i am|getting|running|so|a bit|a little|too|very) )+"
         r"(?:late|behind|slow)$"),
        ("odd", _ANY,
         rf"^{IT}(?:has |is |have |s )?(?:gone|went|going|got|turned|turning|come out|came out|is|looks?"
         rf"|seems?|acting|feels?) {A_BIT}(?:{_ODD}|green(?:ish)?|bad|sticky|slippery|mushy|tacky|soggy)"
         r"(?: on me| now)?$"
         r"|^(?:something|somethings|its something) (?:is )?(?:wrong|off|not right|up|funny)(?: with it"
         r"| here)?$"),
        ("ready", _ANY,
         r"^(?:(?:its|it is|meats|the meats?|everything|all|that|thats|i think its|think its|is|now) )*"
         r"(?:ready|good to go|all set|set|(?:feels|looks|seems) (?:done|ready|cooked))(?: now| to go| i think)?$"),
        ("grams", UNCOOKED,
         r"^(?:(?:i|we|just|only|used|put|put in|added|like|about|roughly|maybe|around|ok) )*"
         r"(?:an?|one|[1-9]|two|three|half an?|a half|the whole|a couple of|couple|some) (?:heaped|heaping"
         r"|level|big|small|good|full)? ?(?:(?:tea|table|soup|dessert)? ?spoon(?:ful)?s?|pinch(?:es)?"
         r"|handfuls?|scoops?|(?:bags?|pack(?:et)?s?|box|cups?|jars?|tubs?)(?=.* (?:salt|cure|pink|powder)\b))"
         r"(?:(?: of)? (?:(?:the|pink|curing|kosher|sea|table|plain) )*(?:it|cure|salt|pink|powder|stuff"
         r"|that))?(?: in| i think)?$"
         r"|^(?:(?:i|we|ive|just|ok) )*(?:put|added|threw|chucked|tipped|poured) (?:the |my |all the )?"
         r"(?:salts?|pink salt|pink|curing salt|cure|powder)(?: all)? in(?: now| already)?$"
         r"|^(?:the )?(?:salts?|pink|cure|powder)(?: is|s)? in(?: now| already)?$"
         r"|^(?:only |just )?(?:half|part|some|most|a third|a quarter|two thirds) (?:of )?(?:the |my )?"
         r"(?:cure|curing salt|pink salt|pink|salt) (?:went|is|got|has gone) in(?: so far| yet| now)?$"
         r"|^(?:(?:i|we|ive|just|ok) )*(?:put|weighed|used|added|measured)(?: in| out)? \d{1,3}(?:\.\d\d?)? ?"
         r"(?:g|gr|grams?)(?: in| out)?(?: of it)?$"),
        ("halved", UNCOOKED,
         r"^(?:(?:i|we|ive|just|had to|have|ok|so|oh) )*(?:cut|split|chopped|sliced|divided)"
         r" (?:it|them|the (?:meat|flat|brisket|piece|slab|belly|ham|joint))(?: up)?"
         r"(?: (?:in(?:to)? (?:half|two|2|3|three|4|halves|thirds|bits|pieces|chunks)|down the middle"
         r"|length(?:wise|ways)|across))+(?: (?:so|and|now|theres|there|its|are|is|it is|have|has|i|we|got|in"
         r"|the|bags?|two|three|2|3|4|smaller|bits|pieces|halves|fits?|to|it))*$"),
        ("halved", UNCOOKED,
         r"^(?:(?:i|we|ive|just|had to|have) )*halved(?: (?:it|them|the [a-z]+))?$"),
        ("meal_off", _ANY,
         r"^(?:(?:its|it is|we|weve|everything|all|the whole thing|whole thing) )+(?:is |has |have |been )*"
         r"(?:cancelled|canceled|called it off|called off)(?: it)?(?: now| sorry)?$"),
        ("meal_off", _ANY,
         r"^(?:the |my )?(?:dinner|lunch|party|meal|supper|bbq|barbecue|do|event)s? (?:is |has been "
         r"|been )?(?:off|cancelled|canceled|called off|not happening|scrapped)(?: now| sorry)?$"),
        ("watch", _ANY,
         r"^(?:please |pls |can you |just )?(?:only )?(?:text|message|ping|call|tell|alert|warn|buzz|wake"
         r"|notify|shout at|watch|let)(?: me| us)?(?: know)? (?:only )?(?:if|when) (?:the |it |my )?(?:pit"
         r"|core|meat|temps?|grill|smoker|fridge|internal|fire|goes|gets|drops|falls|hits|reaches)\b.*\d"),
        ("more", _ANY,
         r"^(?:(?:its|it is|it was|that was|thats|was|only|just|maybe|about|i|we|it|needs?|do) )*(?:a |the )?"
         r"(?:little |tiny |wee )?(?:bit|little|lot|touch)? ?(?:more|less)(?: of it)?$"),
        ("more_in", UNCOOKED,
         r"^(?:(?:a (?:bit|little|touch)|some|bit|any|little|even) )*more "
         r"(?:salt|sugar|honey|water)(?: in(?: it)?)?$"),
        ("more_in", UNCOOKED,
         r"^(?!(?:can|should|shall|do) i .*water)(?:(?:i|we|ive|just|should i|can i|shall i|do i|have) )*(?:put|add"
         r"|added|threw|throw|chucked"
         r"|tipped|poured|stirred|mixed|give it|gave it)(?: in)?"
         r" (?:(?:a|bit|little|touch|some|any|even|lot) )*more(?: (?:salt|sugar|honey|water))?"
         r"(?: (?:in|to it|into it|in it|in there))*$"),
        ("word", _ANY,
         r"^(?:(?:thats|that is|that was|its|it is|no|it was|you got it) )*(?:wrong|incorrect|not right)$"),
        ("longer", _ANY,
         r"^(?:(?:just|(?:give|leave|keep) it|go|it|needs?|a|bit|little|while|touch|some|few|for|even) )*"
         r"(?:longer|more time)(?: (?:please|pls|i think|then))*$"
         rf"|^(?:(?:just|for|about|maybe) )*(?:another|(?:1|one) more) {_A_WHILE}(?: (?:please|pls|then))*$"),
        ("salty", RAW,
         rf"^{IT}(?:brine |mix |(?:the )?whole thing )?(?:is |was |tastes? )?(?:far |way |much )?too salty$"),
        ("move", _ANY,
         rf"^{_MAY_I}(?:move|shift) (?:it|that|them|this)$"
         r"|^(?:(?:gonna|going to|will|may|might|i|we|im|ill|have to|need to|must|got to|gotta|maybe|sorry|lets) )*"
         r"(?:push|put|move|shift|set) (?:it|this|that|things|everything|the whole thing) (?:back|off|out)"
         r"(?: (?:a bit|a little|some|then|now))*$"
         rf"|^(?:{_MAY_I}|(?:(?:gonna|going to|i|we|im|ill|have to|need to|slight change"
         rf"|change of plan)[, ]+)*)(?:push|put"
         r"|move|shift|change) (?:the )?(?:meal|dinner|lunch|supper|tea)(?: ?times?)?(?: (?:back|off|out|a bit"
         r"|later|sooner))*$"
         r"|^(?:(?:slight |small |bit of a )?change(?: of plans?)?[, ]+)?(?:we|were|they|theyre|we are|the meal"
         r"|dinner|lunch)"
         r"(?: (?:are|is|be|will be|now|eating|gonna be|going to be))* (?:a bit |a little |much )?(?:later"
         r"|earlier|sooner)"
         r"(?: now| today| tonight| than planned)*$"
         r"|^(?:(?:i|we|guests|they) )*(?:need|want)s? (?:it|this|that) (?:earlier|sooner)(?: please| pls| now)*$"),
        ("change", _ANY,
         r"^(?:(?:ok|so|actually|we|im|i|were|we are) )*(?:not (?:doing|making|having)|dont want"
         r"|no longer (?:doing|making))"
         r" (?:a |the )?(?:pastrami|bacon|ham|corned beef|brisket)(?: any ?more| after all| now)+\b(?!.*\d).*$"),
        ("change", _ANY,
         rf"^{_MAY_I}(?:change|alter|adjust|edit|tweak|fix|switch|swap)"
         r"(?: (?:it|that|them|this|things?|something|stuff|the (?:plan|settings?)))?"
         r"(?: (?:a bit|still|now|later|up|please|pls|somehow|around))*$"),
        ("size", _ANY,
         rf"^{IT}(?:(?:is|was|looks?|seems?|gonna be|takes?|taking) )*{A_BIT}(?:(?:way|far|much|just) )*"
         r"(?:too|(?<=takes )so|(?<=taking )so) (?:long|short|big|small|large|wide|fat|heavy)(?: now)?$"),
        ("half", _ANY,
         r"^(?:(?:about|its|just|only|ok|a) )*(?:half|halves)(?: of it)?$"),
        ("enough", _ANY,
         r"^(?:(?:is|that|this|it|its|be|will|thats|way) )*(?:enough|too (?:much|little|many))$"),
        ("hotter", _ON_THE_FIRE,
         r"^(?:(?:i want|run|make|get|turn|crank|cook|bring) )?(?:it |the (?:pit|heat|smoker) )?"
         r"(?:hotter|cooler|warmer|(?<=it )(?:up|down))(?: a bit| a little| now)?$"),
        ("again", _ANY,
         r"^(?:the |my |do the |do )?(?:same(?: (?:again|as (?:last time|before)))?|again|usual)$"),
        ("which", _ANY,
         rf"^(?:(?:i|we|just|ok|only) )*{_DEED} (?:one|half|(?:the|that|a|my) (?:thing|stuff|half"
         rf"|{_ONE}(?: (?:one|piece|bag))?))$"
         r"|^(?:(?:i|we|ive|just|have) )*(?:changed|swapped|switched|adjusted|altered) (?:it|that"
         r"|them)(?: now)?$"
         rf"|^(?:(?:oh|no|its|it is|it was|that was|i meant) )*(?:the )?{_ONE}"
         r" (?:one|piece|bag|batch|flat|point|ham|belly|slab)$"
         rf"|^(?:only )?{_DEED} (?:only )?(?:the )?(?:one|{_ONE} one)(?: but)? not (?:the )?"
         rf"(?:{_ONE}|rest)(?: one)?$"
         r"|^(?:(?:im|i am|am|still|really) )*not sure(?: (?:about|of|on) (?:it|this|that)(?: one)?)?$"
         r"|^\d (?:of (?:them|it|those)|more|left)$"),
        ("grams", UNCOOKED,
         r"^(?:(?:i|we|only|just|have|ive) )*(?:used|put|added|weighed|gave it)(?: in)? (?:only |just "
         r"|about )?(?:half|part|some|most|a third|a quarter|two thirds|the rest) (?:of )?(?:the |my )?"
         r"(?:cure|curing salt|pink salt|pink|salt)(?: in| so far)?$"),
        ("leave", _ANY,
         r"^(?:(?:so|can|could|may|should|shall|ill|do|i|we|just|ok) )*leave (?:it|them"
         r"|that)(?: (?:alone|be|there|as|it|is|like|that|in|for now))*$"),
        ("moved", _ANY,
         r"^(?:(?:it|its|has|a|temp|just|suddenly|now|why|how come|did|does|is|what made|so|and|the) )*"
         rf"{_WENT}"
         r"(?: (?:a|bit|a bit|a little|lots?|again|fast|off|slightly|so|much|now|like that))*$"),
    )
)  # fmt: skip


def remark(bare: str, phase: str) -> str | None:
    """Which remark the whole of a plain line is, by what it leaves open; None for any other line."""
    return next((why for words, (why, phases) in _REMARKS.fitting(bare) if phase in phases and words.match(bare)), None)
