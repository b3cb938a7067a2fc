"""The spoken and the mistyped as one writes it: «quarter to eight», «a kilo and a half», «flpped»."""

import re
from functools import lru_cache
from typing import Final

_MINUTES: Final = {"quarter": 15, "viertel": 15, "half": 30}
_SPOKEN_CLOCK: Final = re.compile(
    r"\b(?:(?P<past>(?:a )?quarter|viertel|half|\d{1,2})(?: min\w{0,5})? (?:past|nach) (?P<h1>1[0-2]|[1-9]|one)"
    r"|(?P<to>(?:a )?quarter|viertel) (?:to|vor|of) (?P<h2>1[0-2]|[1-9]|one)"
    r"|(?<=\bat )(?P<to2>5|10|20|25) (?:to|vor) (?P<h3>1[0-2]|[1-9]|one))\b(?! ?(?:kg|lb|kilo|c\b|f\b|°))"
)
_AND_A_HALF: Final = re.compile(r"\ba (?P<unit>kilo|pound|kg|lb) and (?:a )?(?P<part>half|quarter)\b")
_AT_ONE: Final = re.compile(
    r"\b(at|by|until|till|since|around|um) one\b(?=$|[ ,.;!?]*$| (?:on|sat|sun|mon|tue"
    r"|wed|thu|fri|today|tom))"
)
_ONE_UNIT: Final = re.compile(r"\b(?:one|ein(?:e[nr]?)?) (?=hours?\b|minutes?\b|days?\b|weeks?\b|stunde|tag\b|woche)")
_CURE_ONE: Final = re.compile(r"\bcure (?:number|no\.?|nr\.?|num) ?(?:one|1)\b")
_MORE: Final = re.compile(r"\b(\d{1,3}) more (min|h\b|hour)")
_ISH: Final = re.compile(r"\b(\d{1,2})ish\b")
# words that decide what a line means, and that people mistype with greasy thumbs
_KEYS: Final = (
    "flipped", "fridge", "brisket", "wrapped", "rinsed", "thickness", "celsius", "fahrenheit", "pastrami", "charcoal",
    "tomorrow", "yesterday", "saturday", "sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "dinner",
    "turned", "soaked", "rubbed", "sliced", "chilled", "salmon", "turkey", "minutes", "forgot", "finished", "boneless",
    "percent", "counter", "leaking", "holiday", "internal", "reminder", "breakfast", "midnight",
)  # fmt: skip
# words as they are that stand one letter from a key
_KNOWN: Final = frozenset((
    *_KEYS, *(f"{key}s" for key in _KEYS), "diner", "sundae", "rinse", "rinses", "slice", "slices", "slicer", "chill",
    "chills", "chiller", "forget", "forgets", "minute", "minuten", "counted", "counts", "rubber", "turner",
    "internals", "finish", "finishes", "freitag", "leaving", "leaning", "leading",
))  # fmt: skip
_TYPED: Final = re.compile(r"[a-z]{5,12}")
_ONE_WORD: Final = re.compile(r"(?P<word>[a-z]{4,5})(?P<end>[ .!]*)$")
_NOT_DONE: Final = frozenset(
    ("dose", "dome", "gone", "bone", "none", "zone", "down", "dine", "dune", "tone", "cone", "dost")
)


def written(text: str) -> str:
    """A plain line with its numbers in digits, its spoken hours and slips as they would be written."""
    text = _SPOKEN_CLOCK.sub(_clock, text).replace("minus one", "-1")
    text = _AND_A_HALF.sub(lambda m: f"{1.5 if m['part'] == 'half' else 1.25} {m['unit']}", text)
    text = _ONE_UNIT.sub("1 ", _AT_ONE.sub(r"\1 1", text))
    text = _MORE.sub(r"\1 \2", text)
    text = _ISH.sub(r"\1", _CURE_ONE.sub("cure #1", text))
    alone = _ONE_WORD.match(text)
    if alone and alone["word"] not in _NOT_DONE and _one_slip(alone["word"], "done"):
        return f"done{alone['end']}"
    return _TYPED.sub(lambda m: _mended(m[0]), text)


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


@lru_cache(maxsize=4096)
def _mended(word: str) -> str:
    """The key word that a word is one slip away from, where there is just one; it begins alike."""
    if word in _KNOWN:
        return word
    near = [key for key in _KEYS if key[0] == word[0] and _one_slip(word, key)]
    return near[0] if len(near) == 1 else word


def _one_slip(one: str, two: str) -> bool:
    """Whether two words are one letter dropped, added, changed or two swapped apart."""
    if abs(len(one) - len(two)) > 1:
        return False
    start = next((i for i, (a, b) in enumerate(zip(one, two, strict=False)) if a != b), min(len(one), len(two)))
    rest_one, rest_two = one[start:], two[start:]
    changed = rest_one[1:] == rest_two[1:] or rest_one[1:] == rest_two or rest_one == rest_two[1:]
    swapped = len(rest_one) > 1 and rest_one[1::-1] == rest_two[:2] and rest_one[2:] == rest_two[2:]
    return changed or swapped
