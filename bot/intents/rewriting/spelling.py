"""The spoken and the mistyped as one writes it: «quarter to eight», «a kilo and a half», «flpped»."""

from typing import Final

from bot.intents.rewriting.slips import one_slip
from core import patterns as re

_MINUTES: Final = {"quarter": 15, "viertel": 15, "half": 30}
_SPOKEN_CLOCK: Final = re.compile(
    r"\b(?:(?P<past>(?:a )?quarter|viertel|half|\d{1,2})(?: min\w{0,5})? (?:past|nach) (?P<h1>1[0-2]|[1-9]|one)"
    r"|(?P<to>(?:a )?quarter|viertel) (?:to|vor|of) (?P<h2>1[0-2]|[1-9]|one)|(?:(?<=\bat )|(?<=\bby )"
    r"|(?<=\bsince ))(?P<to2>5|10|20|25) (?:to|vor) (?P<h3>1[0-2]|[1-9]|one))\b(?! ?(?:kg|lb|kilo|c\b|f\b|°))"
)
_AT_ONE: Final = re.compile(
    r"\b(at|by|until|till|since|around|um) one\b(?=$|[ ,.;!?]*$| (?:on|sat|sun|mon|tue|wed|thu|fri|today|tom))"
)
_ONE_UNIT: Final = re.compile(r"\b(?:one|ein(?:e[nr]?)?) (?=hours?\b|minutes?\b|days?\b|weeks?\b|stunde|tag\b|woche)")
_CURE_ONE: Final = re.compile(r"\bcure (?:number|no\.?|nr\.?|num) ?(?:one|1)\b")
# the hour of what went out is no reading: «fire went out at 4, core 58»
_WENT_AT: Final = re.compile(
    r"\b((?:fire|coals?|charcoal|power|gas) (?:went|was|is|has gone) (?:out|off) at (?:1[0-2]|[1-9]))(?=$|[,;] )"
)
_MORE: Final = re.compile(r"\b(\d{1,3}) more (min|h\b|hour)")
_ORDINALS: Final = {
    "first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
    "tenth": 10, "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16,
    "seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20, "thirtieth": 30,
}  # fmt: skip
_ORDINAL: Final = rf"(?:(?:20|30|twenty|thirty)[ -])?(?:{'|'.join(_ORDINALS)})"
_MONTH: Final = r"(?:jan|feb|mar(?:ch)?\b|apr|may\b|june?\b|july?\b|aug|sep|oct|nov|dec)[a-z]*"
_DAY_OF_MONTH: Final = re.compile(
    rf"(?P<before>\b{_MONTH} (?:the )?)(?P<day>{_ORDINAL})\b|\b(?:the )?(?P<first>{_ORDINAL})(?= (?:of )?{_MONTH})"
)
_THE_NTH: Final = re.compile(rf"\b(?P<on>the|on|by) (?P<first>{_ORDINAL})(?! (?:of|flip|time|one|piece|turn|bag)\b)")
_FIRST_SURE: Final = 10  # «the third» may be a third, or the third of something
_ISH: Final = re.compile(r"\b(\d{1,2})ish\b")
_ONE_WORD: Final = re.compile(r"(?P<word>[a-z]{4,5})(?P<end>[ .!]*)$")
_NOT_DONE: Final = frozenset(
    ("dose", "dome", "gone", "bone", "none", "zone", "down", "dine", "dune", "tone", "cone", "dost")
)


def written(text: str) -> str:
    """A plain line with its numbers in digits, its spoken hours and slips as they would be written."""
    text = _SPOKEN_CLOCK.sub(_clock, text).replace("minus one", "-1")
    text = _ONE_UNIT.sub("1 ", _AT_ONE.sub(r"\1 1", text))
    text = _WENT_AT.sub(r"\1 oclock", _THE_NTH.sub(_nth, _DAY_OF_MONTH.sub(_day, text)))
    text = _MORE.sub(r"\1 \2", text)
    text = _ISH.sub(r"\1", _CURE_ONE.sub("cure #1", text))
    alone = _ONE_WORD.match(text)
    if alone and alone["word"] not in _NOT_DONE and one_slip(alone["word"], "done"):
        return f"done{alone['end']}"
    return text


def _nth(found: re.Match[str]) -> str:
    """«on the twentieth» is the 20th."""
    day = _number(found["first"])
    return f"{found['on']} {day}th" if day >= _FIRST_SURE else found[0]


def _day(found: re.Match[str]) -> str:
    """«march seventeenth» is march 17."""
    return f"{found['before'] or ''}{_number(found['day'] or found['first'])}"


def _number(ordinal: str) -> int:
    *tens, last = re.split("[ -]", ordinal)
    return (20 if tens[0] in ("20", "twenty") else 30) + _ORDINALS[last] if tens else _ORDINALS[last]


def _clock(found: re.Match[str]) -> str:
    """«quarter to 8» is 7:45, of the morning or the evening."""
    hour = int((found["h1"] or found["h2"] or found["h3"]).replace("one", "1"))
    word = (found["past"] or found["to"] or found["to2"]).removeprefix("a ")
    minutes = _MINUTES[word] if word in _MINUTES else int(word)
    if minutes > 59:
        return found[0]
    if found["past"]:
        return f"{hour}.{minutes:02d} oclock"
    return f"{(hour - 1) or 12}.{60 - minutes:02d} oclock"
