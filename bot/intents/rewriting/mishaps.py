"""What went wrong, and the weather."""

from typing import Final

from bot.intents.rewriting.words import SPAN, rules
from core import patterns as re

_NEW_BAG: Final = (
    r"(?:(?:re-?|double ?)bagged(?: (?:it|them|the meat|all))*|(?:put|moved|swapped|transferred|got)(?: (?:it|them|all"
    r"|the meat|everything|over))* (?:in|into|to) (?:an? |the )?(?:new|fresh|clean|second|another|bigger) (?:bag|one))"
)

_LEFT: Final = r"(?:left ?overs|rest|remains|remainder|what was left)(?: of (?:it|them|the \w+))?"
_THE_MEAL: Final = r"(?:that|dinner|lunch|supper|eating|(?:we|they) ate|the meal|carving)"


def _for_hours(found: re.Match[str]) -> str:
    """«from 2 til 5» with the hours between; on a clock of twelve without its halves the longer way is not known."""
    half = {"am": 0, "pm": 12}
    began, ended = ((int(found[n]) % 12, found[f"{n}m"]) for n in "ab")
    if began[1] and ended[1]:
        return f"power cut {(ended[0] + half[ended[1]] - began[0] - half[began[1]]) % 24 or 24} hours, "
    if began[1] or ended[1] or began[0] >= ended[0]:
        return "power cut, "  # for how long is asked
    return f"power cut {ended[0] - began[0]} hours, "


RULES: Final = rules(
    (r"\b(fridge (?:is |has |was |just )*(?:dead|died|broken?|off|failed|out|packed in)(?: overnight| last night"
     r"| in the night| today)?)"
     r",? (?:and )?(?:its |it is |reads |says |shows |at )*(?=\d{2}(?: ?[cf])? (?:inside|in there"
     r"|in it)\b)", r"\1, fridge "),
    # a door that stood open, a current that was off, and what the fridge reads
    (r"\b((?:(?:left|leave|forgot) (?:the |my )?(?:fridge|door|it)|fridge(?: door)? (?:was|is|got|stood"
     r"|has been|had been)"
     r"(?: left)?) (?:open|ajar)\b[^,;?\d]*?),? (?:(?:it|its|and|now|fridge|it is) )*(?:says|reads|shows|showing|its"
     r"|at|is|now) "
     r"(?=\d{1,2}(?:\.\d)?(?: ?[cf])?(?: now)?$)", r"\1, fridge "),
    (r"\b(?:the )?(?:power|current|electric\w*) (?:was|were|went|has been|had been) (?:off|out"
     r"|down) from (?P<a>1[0-2]|[1-9])"
     r"(?: ?(?P<am>[ap]m))? (?:to|until|till?) (?P<b>1[0-2]|[1-9])(?: ?(?P<bm>[ap]m))?"
     r"(?: last night| in the night| this morning| overnight)?"
     r",? (?:and |but |so )?(?=(?:the )?fridges? (?:is|reads|says|at|now|shows|still))", _for_hours),
    (r"\b((?:power|current|electric\w*) (?:was|were|is|has been|went) (?:off|out"
     r"|down) [^,;?]*?),? (?:and )?(?=(?:the )?fridge"
     r"s? (?:is|reads|says|at|now|shows|still))", r"\1, "),    # snow is cold air; a slush of it is an ice bath
    (r"^(?!.*\b(?:brine|beer|water)\b)(?:(?:i|we|put|set|stuck|got|its|it|is|are|them|they|the|meat|bird|birds|fish"
     r"|turkey"
     r"|chickens?|now|just|sitting|lying|cooling|chilling|outside|out) )*(?:in|into|on) (?:the |a )?snow(?: ?(?:bank"
     r"|drift|pile))?(?: outside)?,? (?:to (?:cool|chill)(?: down| off)?|cooling|chilling)(?: down| off)?$",
     "in the chill, on a rack"),
    # until then it stood out
    (rf"^(?:(?:i|we|then|and|only|put|got|moved|stuck|the) )*{_LEFT} (?:(?:went|were|was|got|put|only) )*"
     rf"(?:back )?(?:in|into) (?:the )?(?:fridge|freezer),? (?=after|(?:\S+ )+?(?:later|after))(?:(?:only|about|maybe"
     rf"|like|around|after) )*({SPAN}|\d{{1,2}}(?:\.5)? ?hours?|a couple (?:of )?hours?)"
     rf"(?: (?:later|after(?:wards)?)(?: {_THE_MEAL})?)?$", r"the leftovers sat out for \1"),
    (r"\b(fridge (?:is |has |was |just )*(?:dead|died|broken?|off|failed|out)),? (?:and )?(?:its |it is |reads |says "
     r"|shows |at )*(?=\d{2}(?: ?[cf])? (?:in there|inside|in it)\b)", r"\1, fridge "),
    (r"^(?:whats|what is|what was) left (?=(?:is|was|sat|stood|has been|still)\b)", "leftovers "),
    (r"\b((?:fire|coals|smoker|pit|grill) (?:was|were|went|has been|had been) out),? (?=(?:about |around |maybe "
     r"|roughly )*(?:\d+(?:\.\d+)? ?(?:min\w*|h|hrs?|hours?)|(?:half )?an hour|half (?:an )?hour)\b)", r"\1 for "),
    (r"\blids (?=(?:been |was |is )?(?:open|off|up|closed|shut)\b)", "lid has "),
    (r"^(?:the )?(brine|pickle|liquid|juice) (?:got )?spil(?:led|t),? ?(?:about |some |like )?", r"the bag leaked \1 "),
    (r"^(?:i |we )?spil(?:led|t) (?:about |some of |some )?(.{0,20}?)(?: of)? ?(?:the )?(brine|pickle"
     r"|liquid)(?: (?:while|when|as|on|all over|onto|in the|pouring|filling)\b.{0,30})?$", r"the bag leaked \1 \2"),
    # «it is 60 f out» is the weather, and no middle that came out
    (r"\b(?:its|it is) (\d{2,3} ?(?:[fc]\b|degrees\b(?: [fc]\b)?)) out(?: (?:here|there|tonight|today|now))*$",
     r"its \1 outside"),
    (r"^(raining|snowing|pouring|hailing)( down| hard| a bit| here| now)*$", r"its \1"),
    (r"^(?:the )?door (?:was |is |stood |has been |got )?(?:left )?(?:ajar|open),? (?:and )?(?:its "
     r"|now )*([3-6]\d(?: ?[cf])?)(?: now)?$", r"fridge door was left open, fridge \1"),
    (r"^(?:the )?door (?:was |is |stood |has been |got )?(?:left )?(?:ajar|open) (?=(?:all|over ?night|for|since))",
     "fridge door left open "),
    # another bag takes the liquid along: nothing went into its cure a second time
    (rf"(?P<leak>\b(?:leak|burst|split|ripp|drip|seep)\w*\b.{{0,60}}?),? (?:so |and |but |i |we "
     rf"|ive )*{_NEW_BAG}(?: now| instead)?(?=$|[,;.])", r"\g<leak>"),
    (rf"^(?:(?:i|we|ive|just|ok|have|now) )*{_NEW_BAG}(?: now)?$", "noted"),
    (r"\b(half|most|some|a third|a quarter|all)(?: of)? (?:the )?(?:brine|juice|liquid)s? (?:has |have "
     r"|all )?(?:leaked|ran|came|spilled|spilt|dripped|poured|is gone)(?: out| away)?\b(?: when i opened it)?",
     r"bag leaked, \1 of it"),
    (r"^(?:oops |whoops |i |we )*(?:poured|tipped|spilled|spilt|knocked)(?: (?:out|over|away))?(?: (?P<s>all|most|half"
     r"|some|a third))?(?: of)? ?(?:the )?(?:brine|pickle|liquid|bag|tub|bucket)(?: (?:out|over"
     r"|away))?,? (?:by (?:accident|mistake)|accidentally|whoops|oops)$",
     lambda m: f"bag leaked, {m['s'] or 'all'} of it"),
    (r"\bcats (?:n|and|&) dogs\b", "hard"),
    (r"^(?:(?:the )?bags? (?:is |are |looks? )?(?:ok|okay|fine|good|tight|dry),? )?(?:and )?no leaks?(?: so far"
     r"| yet)?$", "noted"),
    (rf"^(?:(?:it|was|only|just|about|like|maybe) )*({SPAN}|a couple of h(?:ou)?rs?) on the (?:bench|counter|table|side"
     r"|worktop|sink|drainer)\b[^\d?]*$", r"left out on the counter for \1"),
    (r"(?:^(?:it |fire )?(?:went|was|gone) out|\b(?:grill|smoker|fire|pit) (?:stopped|cut out|died|was off|was out))"
     rf" for ({SPAN}),? (?:but |and )?(?:its |now )*(?=back\b)", r"fire went out for \1, its "),
    (r"\b(?:(?:blowing )?a (?:howling |real |proper )?gale(?: blowing)?|storming)(?: (?:here|outside|now))*\b",
     "strong wind"),
    (r"^leaks(?: a (?:bit|little))?$", "bag leaks"),
)  # fmt: skip
