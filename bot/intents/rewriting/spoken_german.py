"""German numbers and hours of the clock as they are spoken, in digits: «achtundfünfzig», «5 vor halb 8».

The hours are those of the whole language: «halb acht» is 7:30, «viertel acht» 7:15 and «dreiviertel acht» 7:45 wherever
they are said at all (Duden, Die Grammatik; from memory). Digits, commas and small numbers are already digits here.
"""

from collections.abc import Iterator
from typing import Final

from bot.intents.rewriting.german_dates import with_nth
from core import patterns as re

_ONES: Final = ("", "ein", "zwei", "drei", "vier", "fünf", "sechs", "sieben", "acht", "neun")
_TEENS: Final = (
    "zehn", "elf", "zwölf", "dreizehn", "vierzehn", "fünfzehn", "sechzehn", "siebzehn", "achtzehn", "neunzehn",
)  # fmt: skip
_TENS: Final = ("", "", "zwanzig", "dreißig", "vierzig", "fünfzig", "sechzig", "siebzig", "achtzig", "neunzig")
_HALVES: Final = {"anderthalb": "1.5", "eineinhalb": "1.5"} | {
    f"{word}einhalb": f"{number}.5" for number, word in enumerate(_ONES) if number > 1
}
_WORD: Final = re.compile(r"\b[a-zäöüß]{5,}\b")
WRITTEN_OUT: Final = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss"})
_NO_MEASURE: Final = (
    r"(?!\d|[.:]\d| ?(?:kg|kilo|g\b|gramm|pfund|mm|cm|zoll|liter|l\b|ml|%|prozent|°|grad|c\b|celsius|f\b|fahrenheit"
    r"|h\b|stunde|min|tag|woche|mal\b|stück))"
)
_HOUR: Final = rf"(?P<hour>2[0-4]|1\d|0?[1-9]|eins)\b{_NO_MEASURE}"
_NO_PROBE: Final = r"(?<!kern )(?<!garraum )(?<!grill )(?<!schrank )(?<!lake )"
_MINUTES: Final = r"viertel|5|10|15|20|25"
_OF_HALF: Final = re.compile(rf"\b(?P<min>5|10) (?:min\w* )?(?P<way>vor|nach) halb {_HOUR}")
_HALF: Final = re.compile(rf"\bhalb {_HOUR}")
_QUARTER: Final = re.compile(rf"\b(?P<part>dreiviertel|drei viertel|3 ?viertel|3/4|viertel) {_HOUR}")
_AROUND: Final = re.compile(rf"{_NO_PROBE}\b(?P<min>{_MINUTES})(?: min\w*)? (?P<way>vor|nach|über) {_HOUR}")
_NEARLY: Final = re.compile(rf"\b(?:kurz|knapp) (?:vor|nach) {_HOUR}")
_ONE: Final = re.compile(r"\b(um|bis|ab|gegen|seit|so um) eins\b")
_CLOCK: Final = re.compile(r"\b(?P<hour>\d{1,2}) uhr (?P<min>[0-5]\d|5)\b(?! ?(?:grad|°|c\b|kg|mm|cm|%))")
_POUNDS: Final = re.compile(r"\b(\d{1,3}(?:\.\d{1,2})?|eine?|(?:ein )?halbes) pfund\b")  # the metric one, of 500 g
_COMMA: Final = re.compile(r"\b(\d{1,3}) komma (\d)(?: (\d))?\b")
_DAYTIME: Final = (
    r"(?P<half>morgens|in der früh|früh|(?:am )?vormittags?|(?:am )?nachmittags?|(?:am )?abends?|am morgen|nachts"
    r"|in der nacht)"
)
_OCLOCK: Final = r"(?P<time>(?:2[0-4]|1\d|0?[1-9])(?::[0-5]\d)?)"
_BEHIND: Final = re.compile(
    rf"\b(?:(?P<at>um|gegen|ab|bis|seit|auf) {_OCLOCK}{_NO_MEASURE}(?: uhr)?"
    rf"|{_OCLOCK.replace('time', 'bare')} uhr) {_DAYTIME}\b"
)
_BEFORE: Final = re.compile(
    rf"(?<!heute )(?<!gestern )(?<!morgen )(?<!tag )\b{_DAYTIME} "
    rf"(?:so )?(?P<at>um|gegen|ab|bis) {_OCLOCK}{_NO_MEASURE}(?: uhr)?(?P<bare>)"
)
_AFTER_NOON: Final = ("nachmittag", "abend")


def _numbers() -> Iterator[tuple[str, str]]:
    yield from _HALVES.items()
    for number in range(10, 1000):
        hundreds, word = number // 100, _below_hundred(number % 100)
        ways = ("hundert", "einhundert", "hundertund") if hundreds == 1 else (f"{_ONES[hundreds]}hundert",)
        yield from ((f"{ahead}{word}", str(number)) for ahead in (ways if hundreds else ("",)))


def _below_hundred(number: int) -> str:
    if number < 10:
        return "eins" if number == 1 else _ONES[number]
    if number < 20:
        return _TEENS[number - 10]
    one = f"{_ONES[number % 10]}und" if number % 10 else ""
    return f"{one}{_TENS[number // 10]}"


_BY_WORD: Final = {way: digits for word, digits in _numbers() for way in (word, word.translate(WRITTEN_OUT))}


def in_digits(text: str) -> str:
    """A plain German line with its spoken numbers and hours of the clock in digits; the rest as it is."""
    text = _WORD.sub(lambda found: _BY_WORD.get(found[0], found[0]), text)
    text = _COMMA.sub(lambda found: f"{found[1]}.{found[2]}{found[3] or ''}", text)
    text = _POUNDS.sub(_in_kilos, text)
    text = _CLOCK.sub(lambda found: f"{found['hour']}:{int(found['min']):02d}", text)
    text = _ONE.sub(r"\1 1", text)
    text = _OF_HALF.sub(lambda found: _moved(found, -30 + _signed(found)), text)
    text = _HALF.sub(lambda found: _moved(found, -30), text)
    text = _QUARTER.sub(lambda found: _moved(found, -45 if found["part"] == "viertel" else -15), text)
    text = _AROUND.sub(lambda found: _moved(found, _signed(found)), text)
    text = _NEARLY.sub(lambda found: found["hour"], text)
    text = _BEFORE.sub(_of_the_day, text)
    return with_nth(_BEHIND.sub(_of_the_day, text))


def _in_kilos(found: re.Match[str]) -> str:
    """«5 pfund» is 2.5 kg wherever German is spoken; the pound of 454 g is «lb» there."""
    many = found[1]
    pounds = 0.5 if many.endswith("halbes") else 1.0 if many.startswith("ein") else float(many)
    return f"{pounds / 2:g} kg"


def _signed(found: re.Match[str]) -> int:
    minutes = 15 if found["min"] == "viertel" else int(found["min"])
    return -minutes if found["way"] == "vor" else minutes


def _moved(found: re.Match[str], minutes: int) -> str:
    """The hour, so many minutes on, on a dial of 12 hours where it was said on one."""
    hour = 1 if found["hour"] == "eins" else int(found["hour"])
    at = hour * 60 + minutes
    dial = 12 if hour <= 12 else 24
    return f"{at // 60 % dial or dial % 24 or 12}:{at % 60:02d}"


def _of_the_day(found: re.Match[str]) -> str:
    """«8 uhr abends» is 8 pm; at night it is what is dark."""
    at, time, half = found["at"] or "um", found["time"] or found["bare"], found["half"]
    hour = int(time.partition(":")[0])
    if hour > 12:
        return f"{at} {time}"
    later = any(word in half for word in _AFTER_NOON)
    dark = "nacht" in half and "nachm" not in half and 6 < hour < 12
    return f"{at} {time} {'pm' if later or dark else 'am'}"
