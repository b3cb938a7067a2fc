"""What a piece weighs and measures, what it is, and the salt that goes with it."""

from typing import Final

from bot.intents.rewriting.share import TRIM_RULES
from bot.intents.rewriting.words import rules
from core import patterns as re

_ADJECTIVE: Final = (
    r"(?:boneless|skinless|bone[- ]in|skin[- ]on|trimmed|fresh|raw|big|small|large|whole|medium|nice|little|frozen)"
)
_CUT: Final = (
    r"(?:(?:turkey|duck|chicken|pork|beef|brisket) )?(?:breasts?|flats?|points?|bellies|loins?|legs?|thighs?"
    r"|fillets?|hams?|chickens?|ducks?|turkeys?|birds|geese|trouts?)"
)

_PARTS: Final = (  # of salt to water, by weight; «1:10» is an hour as likely
    r"(?:(?:1|one) part (?:of )?salt (?:to|in|and|on) (?P<{0}>[3-9]|1\d|20)(?: parts?)?(?: of)?(?: water)?"
    r"|1 ?: ?(?P<{1}>[3-9])(?![\d:.])|1 (?:to|in) (?P<{2}>[3-9]|1\d|20))"
)


def _as_a_share(found: re.Match[str]) -> str:
    """«1:7 brine» is one part of salt in eight of brine."""
    water = next(int(n) for n in found.groups() if n)
    return f"{100 / (1 + water):.3g} % brine"


_A_WEIGHT: Final = (
    r"\d{1,2}(?:\.\d{1,3})? ?(?:kg|kilos?|lbs?|pounds?)(?: \d{1,2}(?:\.\d)? ?(?:oz|ounces?))?|\d{3,4} ?(?:g|grams?)"
)

RULES: Final = rules(
    (r"^(?:(?:sorry|ok|i|just|have|ive) )*(?:measured|checked) (?:it )?again,? (?:and )?(?=(?:its|it is) )", ""),
    (r"\b([1-6]) (?:n|and|&) (?:a |1 )?(quarter|half)(?= (?:at|in|on|thick|inch|of)\b| sorry|$)",
     lambda m: f"{m[1]} {'1/4' if m[2] == 'quarter' else '1/2'}"),
    (r"(?<=at the (?:fat|big) end) sorry$|(?<=at the thick end) sorry$", ""),
    (rf"\b{_PARTS.format('a', 'b', 'c')} (?:salt |wet |strong )?(?:brine|pickle)\b"
     r"|\b(?:salt |wet |strong )?(?:brine|pickle)(?:(?: (?:of|with|mix|ratio|strength))* 1 ?: ?(?P<d>[3-9])(?![\d:.])"
     r"|(?: (?:of|with|mix|ratio|strength))+ (?:1|one)(?: part)?(?: (?:of )?salt)? (?:to|in) (?P<e>[3-9]|1\d|20)"
     r"(?: parts?)?(?: of)?(?: water)?)\b(?! ?(?:days?|d|h|hrs?|hours?|weeks?|min|lbs?|kg|in|inch|mm|cm|[ap]m|%|[cf])"
     r"\b)",
     _as_a_share),
    (r"^(?:its )?(ham|bacon|pastrami|corned beef|turkey|chicken|duck|salmon|trout|gammon|brisket) time\b[.,:;]? ?"
     r"(?=.*\d)", r"\1, "),
    (r"^(?:(?:i|we|just|ive|ok|so|finally) )*(?:got|took|dug|put|fetched|grabbed|held|used)(?: (?:the|a|my))? "
     r"(?:rulers?|tape(?: measure)?|cal+ipers?)(?: (?:out|on|to|up|it|against))*,? (?:and )?(?=[a-z].*\d|its|\d)", ""),
    # what is left of it, by the scale
    (rf"^(?:(?:its|it is|so|ok|now|only|just|was|actually|really) )*({_A_WEIGHT})(?: (?:really|actually|now"
     rf"|in the end|left))*,?"
     r" (?:after|once|when|since|now) (?:that )?(?:i|we|ive|weve) (?:have |had |just )?(?:cut|trimmed|took|sliced"
     r"|chopped|lopped"
     r"|cleaned|boned|skinned)\b[^,;\d?]*$", r"it weighs \1"),
    (rf"^(?:(?:its|it is|so|ok|now|only|just|was|actually|really|exactly|says) )*({_A_WEIGHT}),? (?:(?:really"
     rf"|actually|exactly) )?"
     r"(?:on|by|according to|says) (?:the |my |our )?(?:kitchen |bathroom )?scales?$", r"it weighs \1"),
    (rf"^(?:(?:its|it is|it|so|ok|actually|really) )*(?:weighs?|weighed) ({_A_WEIGHT}) (?:on|by|according to) (?:the "
     rf"|my |our )?"
     r"(?:\w+ )?scales?,? (?:and )?(?:not|instead of) [\d.]+(?: ?(?:lbs?|kg|g))?$", r"it weighs \1"),
    (rf"^({_A_WEIGHT}) (?:it|that) (?:was|is)(?: btw| by the way| really| actually)*$", r"it weighs \1"),
    (r"^is (?=\d[\d./ ]*(?:in|inch\w*|mm|cm|\")? ?thick,? (?:and )?not \d)", "its "),
    (r"^(?:its )?time for (?:an? |the |some |another )?(?=[^,;]*\d ?(?:lb|kg|pound|kilo))", ""),
    (r"^(?:i |we )?(?:said|told you|wrote|typed|put) \d{1,3}(?:\.\d{1,2})?(?: ?(?:mm|cm|in|inch\w*))?,? (?:but"
     r"|and) (?=(?:its|it is|it was|really|actually) [^,;]*\d ?(?:mm|cm|in\b|inch|\"))", ""),
    (r"\b(thickness|weight) (?:was|is) wrong,? (?:(?:its|it is|should be|really|rather) )+", r"\1 is "),
    (r"\b(\d{1,2}) and a (?:little |tiny )?bit (?=(?:in|inch\w*|cm|mm|lbs?|pounds?|kgs?|kilos?)\b)", r"just over \1 "),
    (r"^(?:(?:oh|no|ok|um|oops|sorry)[, ]+)*(?:wait|hang on|hold on)[, ]+(?=[^?]*\bweigh(?:s|ed)?\b[^?]*\d)", ""),
    # «grey 10 of 70»: of a slice so thick, in the unit that one of them has, or that so much must have
    (r"\b(gr[ea]y|grau) (\d+(?:\.\d+)?) ?(?:of|in|out of|von) (\d+(?:\.\d+)?) ?(mm|cm|in|inch(?:es)?)\b",
     r"\1 \2 \4 of \3 \4"),
    (r"\b(gr[ea]y|grau) (\d{1,2}) ?(?:of|out of|von) ([2-9]\d|1\d\d)(?! ?\w)", r"\1 \2 mm of \3 mm"),
    *TRIM_RULES,
    # so much of nobody says what, on meat: of curing salt it would be worst
    (r"^((?:oops|oh no|damn|uh oh|accidentally|by mistake|i|we|just|think|have|ive|,)[ ,]*)+(put|added|used"
     r"|dosed) (\d{1,3}(?:\.\d)? ?(?:g|grams?|tsp|tbsp|teaspoons?|tablespoons?)) (?:on|in|to|for"
     r"|into) (\d{1,2}(?:\.\d{1,2})? ?(?:kgs?|kilos?|lbs?|pounds?))$", r"i \2 \3 of curing salt on \4"),
    (r"(?<!\d )\b((?:duck |turkey |trout |salmon )?(?:breasts|fillets|bellies|sides|loins)) ([2-9])(?=,? (?:about "
     r"|roughly |in all )?\d{1,2}(?:\.\d+)? ?(?:kg|kilo|g|lb|pound|oz))", r"\2 \1"),
    (r"^(?:it |now |meat )*weighs (\d{1,2}\.\d{1,2}) (?:trimmed|after trimming|trim)$", r"trimmed \1"),
    (r"^(?:(?:the )?scales? (?:was|were) (?:off|wrong|broken)[,.;]? )?(?:the )?(?:real|true|actual|right"
     r"|correct) weight(?: is| was)? (?=\d)", "weight is "),
    # a cured piece that is frozen, and the question that its plan answers
    (r"^(?=.*\b(?:pastrami|corned beef|bacon|ham)\b)(?=.*\d ?(?:kg|kilo|lb|pound))(.*?),? (?:so )?(?:when|what day"
     r"|how early) (?:does it |do i |should i |must it |to |it )*(?:come |take (?:it )?"
     r"|get (?:it )?)?out of the freezer[ ?]*$", r"\1"),
    (r"^((?:pink|curing)(?: salt)?|cure) (\d{1,3}(?:\.\d)?) ?(g|grams?)$", r"\2 \3 \1"),
    (r"\bweighs? ([3-9]\d\d|[1-9]\d{3})$", r"weighs \1 g"),
    (r"^weigh (?=\d{1,2}\.\d)", "weighs "),
    (r"(?<=\d)( ?(?:kgs?|kilos?|g|grams?|lbs?|pounds?|oz)) (?:a ?piece|per (?:piece|bird|fish))\b", r"\1 each"),
    (r"^(?:the )?(?:butcher|shop|store|market)s? (?:gave me|sold me|says|said|weighed)(?: it)?(?: as"
     r"| at)? (?=[\d.]+ ?(?:lb|kg|pounds?|kilos?)\b)", "it weighs "),
    # no cure went in
    (r"\b(?:table|kosher|sea|rock|plain|regular|normal|cooking)(?: salt)? (?:instead of|in place of"
     r"|rather than) (?:the )?(?:curing salt|cure|pink(?: salt)?)\b", "table salt as cure"),
    (r"^(?:(?:it|its|meat|flat) )*tapers? (?:from )?(\d[\d./]*(?: ?(?:in|inch\w*|mm|cm"
     r"|\"))?) (?:down )?to (\d[\d./]*(?: ?(?:in|inch\w*|mm|cm|\"))?)$", r"thick end \1 thin end \2"),
    (r"^(?:it|the (?:meat|flat|piece|\w+)) (?:really |only |actually "
     r"|just )?weighs (\d+(?:\.\d+)?),? not (\d+(?:\.\d+)?)$", r"its \1 not \2"),
    (r"^(\d+(?:\.\d+)?) not (\d+(?:\.\d+)?) ?(mm|cm|in|inch(?:es)?|kg|lbs?)$", r"\1 \3 not \2 \3"),
    # another like it, its salt, how it is wished, what is not thawed through
    (r"^((?:lets|can we|i want to|we want to|im|gonna|ill) (?:do|make|have|start|doing|making) (?:an? "
     r"|some )?[a-z]{3,12}(?: [a-z]{4,8})?) again(?=,? ?\d)", r"\1"),
    (r" (kg|kilos?|lbs?|pounds?) this time\b", r" \1"),
    (r"\bno (?:skin|rind)\b", "skin off"),
    (r"^(?:(?:i|ive|we|have|got|bought|just) )*(?:half|a quarter|part) (?:of )?(?:an? |the )?(?=(?:ham|brisket|gammon"
     r"|pork|belly|salmon)\b)", "a "),
    # «a duck breast or two», «a chicken or three»: how many is open, and no number is told
    (r"\b(an?|one|1) (?!(?:\w+ )?(?:hours?|hrs?|days?|weeks?|mins?|minutes?|secs?|inch\w*|cups?|spoons?|pounds?|lbs?"
     r"|kilos?|kg|degrees?|times?|bits?)\b)((?:[a-z]+ ){1,3})or (?:2|3|two|three|so)\b(?! ?[a-z]* ?(?:of|\d))",
     r"\1 \2"),
    # measured, and what it is
    (r"^(?:(?:i|we|just|ive|right|ok) )*(?:(?:re)?measured(?: (?:it|again|properly|proper|the \w+|with (?:a|the) \w+))*"
     r"|(?:put|held|ran|got|used|took|laid) (?:an?|the|my) (?:(?:proper|real|actual|better|steel) )?(?:ruler"
     r"|tape(?: measure)?"
     r"|call?ipers?)(?: out)?(?: (?:on|to|over|against|across)(?: (?:it|the \w+|that))?)?),? "
     r"(?:(?:and|so|but|its|it is|now|more like|actually|really|nearer|closer to|about|says|got) )*"
     r"(?P<n>\d[\d./]*(?: \d/\d)?(?: ?(?:in|inch\w*|cm|mm|\"))?)(?: thick| deep)?(?: at the (?:\w+ )?\w+)?$",
     r"thickness is \g<n>"),
    (r"^(?:(?:i|we|just|ive|right|ok) )*(?:(?:re)?measured(?: (?:it|again|properly|proper))*"
     r"|(?:put|held|ran|got|used|took|laid) (?:an?|the|my) (?:\w+ )?(?:ruler|tape(?: measure)?|call?ipers?)(?: out)?"
     r"(?: (?:on|to|over|against|across)(?: (?:it|the \w+|that))?)?),? (?:and |so )?(?=(?:the |its |it is "
     r"|now )[^,;]*\d)", ""),
    (r"\b(?:the )?(?:fat|thick)(?:est)? (?:end|part|side|bit|spot) (?:is|was|measures|comes to) (?=\d[\d./ ]*(?:in\b"
     r"|inch"
     r"|cm|mm|\"))", "thickness is "),
    (r"(?<=\d)( ?(?:in|inch\w*|cm|mm|\"))?(?: thick at (?:one|the \w+)|(?: thick)? at the (?:fat|thick(?:est)?))"
     r" (?:end|side|part|spot)\b",
     r"\1 thick"),
    # a start that is asked for politely, and how its pieces are
    (r"^(?:can|could|may) (?:i|we) (?:make|do) (?=(?!.*\b(?:how|when|what)\b).*\b(?:got|have|from|out of"
     r"|with)\b.*\d ?(?:lbs?|pounds?|kgs?|kilos?)\b)", "make "),
    (rf"\b([2-9]|1\d) ((?:{_ADJECTIVE} )+)(?={_CUT}\b)", r"\2\1 "),
    # a size that is changed, or guessed anew
    (r"^(?:(?:please|can you|lets) )*(?:change|set|correct|make|update) (?:the |my )?(thickness|weight)(?: is| to"
     r"| at)* (?=\d)", r"\1 is "),
    (r"^(?:(?:its|it is|is|bit|a bit|slightly) )*(?:thicker|thinner) than (?:(?:i|we|you) (?:said|thought|told you"
     r"|think)|\d[\d.]*(?: ?(?:in|inch\w*|mm|cm))?),? (?:(?:maybe|more|like|about|probably|its|nearer|around) )*"
     r"(?=\d)(?P<n>[\d./ ]*\d)(?P<u> ?(?:in|inch\w*|mm|cm|\"))?(?: thick| (?:at|on|in) the (?:fat|thick\w*) (?:end"
     r"|part|bit"
     r"|side))?",
     lambda m: f"thickness is {m['n']}{m['u'] or ''}"),
    # a start, and what it is not
    (r"^([a-z]{3,12}(?: [a-z]{3,8}){0,2}),? (?:asap|as soon as possible|as fast as possible)$", r"start \1"),
    (r"^wrong (?:cut|piece|meat),? (?=its |it is )", "no, "),
    (r"^(?:i |we )?(?:cant|couldnt|cannot) (?:get|find|buy)(?: any| the)? (?=(?:pink|curing) salt)", "dont have any "),
    (r"^(?:(?:the |my )?(?:meat|piece) )(?:is|measures) (?=\d[\d./ ]*(?:in|inch\w*"
     r"|mm|cm|\")? ?thick\b)", "its "),
    (r"^(?:it )?(?:varies|ranges|runs|goes) (?:from |between )?(?=\d[\d./ ]* (?:to|and) \d)", "it tapers "),
    (r"^.*\b(?:ruler|tape(?: measure)?|calipers?) (?:says|shows|reads|gives)(?: its?)? (?:more like |about )?"
     r"(?=\d[\d./ ]*(?:in|inch\w*|mm|cm|\")(?: thick)?$)", "thickness "),
    # numbers put right, and settings
    (r"^(\d+(?:\.\d+)?) ?g(?:rams?)?(?: (?:of )?(?:cure|pink(?: salt)?|curing salt))?,? not (\d+(?:\.\d+)?)"
     r"(?: ?g(?:rams?)?)?(?: (?:went |is |are )?in)?$", r"i put in \1 grams not \2"),
    # what somebody has, and nothing of it said yet
    (r"^((?:(?:i|we|ive|got|have|bought|just) )+(?:an? )?\d[\d.]* ?(?:lbs?|pounds?|kgs?|kilos?)\b[^?\d]{3,40}?),?"
     r" (?:so |and )?(?:what now|now what|whats next|what next|(?:where|how) do i start)\W*$", r"\1"),
    (r"^(?:(?:less|more|lower|higher|only) salt|salt (?:it )?(?:a (?:bit|little) |much )?(?:less|more|lower"
     r"|higher))[,;]? (?:to |at |like )?(?=\d(?:\.\d+)? ?%)", "salt "),
)  # fmt: skip
