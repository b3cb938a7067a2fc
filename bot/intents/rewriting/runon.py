"""Statements that run on without a comma, as a phone writes down what was spoken: «fridge is 36 flipped it».

A comma is set only between a deed and a thermometer that has its number, so that no hour becomes a temperature.
"""

from typing import Final

from bot.intents.meats import as_meat
from bot.intents.rewriting.words import WEEKDAY, rewritten, rules
from bot.intents.temperatures.swings import APART
from core import patterns as re

_NUMBER: Final = r"-?\d{1,3}(?:\.\d)?(?: ?(?:°|degrees?|deg)? ?[cf]\b| degrees)?"
_COLD_OR_PIT: Final = r"(?:fridge|refrigerator|brine|pit|smoker|grill)"
_DEED: Final = r"(?:flipped|(?:both|all) turned|turned (?:it|them|both)|wrapped|rinsed|wrapping)"
_DONE: Final = r"(?:flipped|(?:both|all) turned|turned (?:it|them|both)|wrapped|rinsed|done|did it)"
_RULES: Final = re.Rules(rules(
    # a question, and the day it is asked of behind a comma
    (rf"^((?:so |and |ok )*(?:can|could|may|shall|should|is it ok to|ok to) (?:i|we|it|they|you)? ?[^,;.?\d]+), ?"
     rf"(?=(?:on )?(?:{WEEKDAY}|tomorrow|tonight)(?: (?:morning|afternoon|evening|night))?\?*$)", r"\1 "),
    (rf"\b((?:{_COLD_OR_PIT}|core|meat|internal)\b[^,;.?\d]{{0,16}}{_NUMBER}) "
     rf"(?=(?:(?:i|we|ive|just|have) )*{_DEED}\b)", r"\1, "),
    (rf"\b({_DONE}\b(?:[^,;.?]|\.(?=\d)){{0,40}}?)(?<! in)(?<! the)(?<! my)(?<! of)(?<! from)(?<! to)(?<! with) (?="
     rf"(?:the |my )?{_COLD_OR_PIT}s?\b[^,;.?]{{0,20}}\d)", r"\1, "),
    (rf"^({_DONE}(?: it| them| her| the bag)?) (?=(?:a )?(?:bit|lots?|little|some|bag|theres|there)\b)",
     r"\1, "),
    # «flipped fridge 3c push dinner to 3»: after its unit a reading is at its end
    (r"(\b(?:fridge|brine|core|meat|pit)\b[^,;.?\d]{0,16}\d{1,3}(?:\.\d)? ?[cf]) (?=(?:push|move|shift|bump|delay"
     r"|postpone|dinner|lunch|supper|meal|remind|skip|pause|guests?|make it|lets)\b)", r"\1, "),
    # what was read, and what is going to be done about it
    (rf"^((?:(?:(?:{_COLD_OR_PIT}|core|meat|hit|its|at|now|and|down|to|been|has"
     rf"|dropped|fell|fallen|gone|sagged|slipped) )*(?<!\d){_NUMBER}(?!\d)(?: still)?,? ?){{1,3}})(?<=[ ,])"
     rf"(?=(?:(?:so|im|i am|we are|were|and|now) )*(?:gonna|going to|about to|ill|i will|time to)\b)", r"\1, "),
    # what was read, and what was put on the fire
    (rf"\b((?:{_COLD_OR_PIT}|core|meat|internal)\b[^,;.?\d]{{0,16}}{_NUMBER}) (?=(?:(?:i|we|so|just|have|ive|and) )*"
     r"(?:threw|chucked|tossed|added|topped|put) (?:(?:on|in|up|some|more|a|an|another|extra|fresh) )*(?:coals?"
     r"|charcoal|wood|lump"
     r"|splits?|logs?|fuel|briqu\w+|pellets|chunks?)\b)", r"\1, "),
    (r"\b((?:threw|chucked|tossed|added|topped|put) (?:(?:on|in|up|some|more|a|an|another|extra|fresh) )*(?:coals?"
     r"|charcoal|wood|lump"
     r"|splits?|logs?|fuel|briqu\w+|pellets|chunks?)(?: on| in| up)?) (?:and )?(?=(?:we|were|lunch|dinner|supper"
     r"|guests?|people"
     r"|folks)\b)", r"\1, "),
    # what befell a fridge, and what it reads
    (r"\b(power cut[^,;?]*?hours?|(?:fridge|door)\b[^,;?\d]* (?:open|ajar)\b[^,;?\d]*?) (?=(?:the )?fridge (?:is |at "
     r"|now |has |reads "
     r"|says )*\d)", r"\1, "),
    # how cold it is by now, and what goes in
    (r"^((?:(?:its|it is|brine|is|now|down|at|to|the) )+\d{2}(?: ?[cf])?(?: now)?),? (?:so |and )?(?=(?:(?:im|i am"
     r"|we are|now) )*(?:putting"
     r"|dropping|popping|sticking) (?:it|them|the \w+|her|him) in\b)", r"\1, "),
    # a strength, and where somebody is
    (r"(\d ?%(?: (?:nitrite|cure|curing salt|salt|pink(?: salt)?))?),? (?:and )?(?=(?:im|i am|we are"
     r"|were) in [a-z])", r"\1, "),
    # what was read, and what a nose tells
    (r"(?<=\w),? (?:and |n |but )?(?=(?:it|one(?: of (?:them|the [a-z]+)| bag| piece)?|the [a-z]+|that one)"
     r" (?:smells?|stinks?|reeks?|whiffs?)\b)", ", "),
    # what was forgotten, and is done now
    (r"\b((?:missed|forgot)\b[^,;?]{3,40}?),? (?:and |but )?(?=(?:just|now|jetzt|grad|gerade|eben|im|i) (?:just "
     r"|now )*(?:done|did"
     r"|doing|flipped|turned|flipping|turning)\b)", r"\1, "),
    # what was read or done, and till when nobody is there
    (r"(?<=\d) (?=(?:(?:and|im|i am|we are|ill be|well be) )*(?:gone|away|off|out|back|busy|quiet|asleep|at work|in bed"
     r"|not (?:home|here)|(?:be|stay|keep) quiet|shut up|shush|hush|leave me be|leave us alone|no (?:pings|calls"
     r"|reminders)) "
     r"(?:til|till|until|at) (?:about )?(?:\d|noon|midnight|tonight|tomorrow|late|the |mon|tue|wed|thu|fri|sat|sun))",
     ", "),
    # what was read, and what is asked about it
    (rf"\b((?:{_COLD_OR_PIT}|core|meat|internal)\b[^,;.?\d]{{0,16}}{_NUMBER}) "
     r"(?=(?:do|can|should|shall|may|could|what|how|when (?:do|can|should|to)|ok to|safe to|too)\b)", r"\1, "),
))  # fmt: skip


_STARTS: Final = re.compile(
    r"\s+(?=(?:the )?(?:fridge|brine|pit|smoker|grill|core|meat|internal)s?\b|[1-4]\d\d\b|(?:its |now )?(?:windy|breezy"
    r"|calm|flipped|(?:its )?going in|everythings? in|all in|(?:and |so )*in (?:it|she|he|they) (?:goe?s?|went)"
    r"|meats? in|slicing|carving|turned|wrapped|rinsed|resting|lit|on at|off at|off|took it|pulled it|put it|in the"
    r"|in foil|in paper)\b)"
)
_GOES_ON: Final = re.compile(r"\b(?:at|in|on|to|by|with|of|for|from|under|over)$")  # no statement ends so
_LONGEST: Final = 9  # words of a line that has no comma


def halves(text: str) -> list[tuple[str, str]]:
    """Where a short line without a comma may be two statements: «meat on 8:15» and «pit 230»."""
    if len(text.split()) > _LONGEST or not re.search(r"\d", text) or APART.search(text):
        return []
    starts = (found for found in _STARTS.finditer(text) if found.start())
    pairs = ((text[: found.start()], text[found.end() :]) for found in starts)
    return [(one, two) for one, two in pairs if not _GOES_ON.search(one)]


# «bacon in at 90 c»: with its unit, or as no clock shows, that is the pit that it went into
_IN_A_PIT: Final = re.compile(
    r"^(?:(?:the|my|now|ok|and) )*(?:meat|pork|beef|bacon|belly|bellys?|ham|brisket|flat|point|loin|shoulder|butt"
    r"|turkey|chicken|bird|duck|goose|salmon|trout|fish|ribs)s? (?:(?:is|are|was|went|goes|now|just) )*(?:in|on)"
    r"(?: the (?:smoker|pit|grill|oven|cooker|kettle))?,? at (?P<pit>(?:[6-9]\d|1[0-7]\d) ?(?:°|degrees?|deg)? ?c"
    r"|(?:1[5-9]\d|[23]\d\d) ?(?:°|degrees?|deg)? ?f|(?:180|190|200|225|250|275|300|325|350|375))(?= now$|$)"
)
# «meat on 250», «on at 225»: no meat is so hot, so the pit is; behind «at» only what no clock shows as often
_ON_A_PIT: Final = re.compile(
    r"\b((?:meat|it|its|bird) (?:(?:is|are|was|went|goes|now) )*on) (?:(?=[23]\d\d\b)|at (?=(?:225|250|275|300|325|350"
    r"|375)\b))(?=\d{3}(?: ?f| degrees)?(?:$|[,;.]| and\b))"
)


def parted(text: str) -> str:
    """A plain line with a comma where one statement ends and the next begins."""
    text = _IN_A_PIT.sub(r"meat is on, pit \g<pit>", rewritten(text, _RULES))
    spoken = as_meat(text)
    return _ON_A_PIT.sub(r"\1, pit ", spoken) if _ON_A_PIT.search(spoken) else text
