"""Hours of the day as they are written: «8», «7:20», «8.30 pm», «20 Uhr», «noon»."""

from dataclasses import dataclass
from datetime import time
from typing import Final

from bot.intents.days import MONTH
from core import patterns as re

_HALF: Final = r"(?P<half>am(?! i\b)|pm|a\.m\.?|p\.m\.?)"
_BEFORE: Final = (
    r"\b(?:at|@|to|by|until|til|till|since|from|around|before|after|ready for|um|bis|ab|von|gegen|seit|auf) "
)
CLOCKS: Final = re.Rules(
    (re.compile(pattern), None)
    for pattern in (
        rf"(?<![\d.:/])(?P<h>[01]?\d|2[0-4]):(?P<m>[0-5]\d)(?::[0-5]\d)? ?{_HALF}?(?!\d)",
        rf"(?<![\d.:/])(?P<h>1[0-2]|0?\d)(?:\.(?P<m>[0-5]\d))? ?{_HALF}(?![^\W\d_])",
        r"(?<![\d.:/])(?P<h>[01]?\d|2[0-4])(?:[.](?P<m>[0-5]\d))? ?(?:oclock|uhr)\b",
        r"(?<![\d.:/])(?P<h>1[3-9]|2[0-3])h\b",
        rf"(?:{_BEFORE})(?:about |around |~ ?)?(?P<h>[01]?\d|2[0-4])\.(?P<m>[0-5]\d)(?![\d%])",
        rf"(?:{_BEFORE})(?:about |around |~ ?)?(?P<h>[01]?\d|2[0-4])(?P<m>[0-5]\d)?"
        rf"(?![\w:/%°\"-]|\.(?!$| (?!{MONTH})))",  # «at 4. we like it salty», no «4. march»
        r"\b(?P<word>noon|midday|midnight|mittags?|mitternacht)\b",
    )
)
_WORD_HOURS: Final = {"noon": 12, "midday": 12, "mittag": 12, "mittags": 12, "midnight": 0, "mitternacht": 0}


@dataclass(frozen=True)
class Clock:
    """An hour as it was written, with its half of the day where that was said."""

    hour: int
    minute: int
    half: str = ""
    written: bool = False  # with its minutes, «7:20»

    def times(self) -> tuple[time, ...]:
        """The times of day that it may be: two where neither am nor pm was said."""
        hour = self.hour % 24
        if self.half:
            return (time(hour % 12 + (12 if self.half == "pm" else 0), self.minute),)
        if hour == 0 or hour > 12:
            return (time(hour, self.minute),)
        return (time(hour, self.minute), time((hour + 12) % 24, self.minute))


def clocks(text: str) -> tuple[time, ...]:
    """Every time of day in a line of settings, in order: «7 and 19», «22:30 to 7», «8 am»."""
    found = re.finditer(
        rf"(?<![\d.:])(?P<h>[01]?\d|2[0-4])(?:[:.](?P<m>[0-5]\d))? ?{_HALF}?(?![\d%]|[.:]\d)|\b(?P<word>noon"
        rf"|midnight)\b",
        text,
    )
    out = []
    for hit in found:
        clock = read_clock(hit)
        out.append(clock.times()[0])
    return tuple(out)


def find_clock(plain: str) -> Clock | None:
    """The first hour of a plain text without measures."""
    hit = next((found for found, _ in CLOCKS.hits(plain)), None)
    return read_clock(hit) if hit else None


def read_clock(found: re.Match[str]) -> Clock:
    """The hour of a match of one of CLOCKS."""
    parts = found.groupdict()
    if word := parts.get("word"):
        return Clock(_WORD_HOURS[word], 0, "pm" if _WORD_HOURS[word] else "am")
    half = (parts.get("half") or "").replace(".", "")
    if not half and parts["h"][0] == "0":  # «02:30» is written on a clock of 24 hours
        half = "am"
    return Clock(int(parts["h"]), int(parts.get("m") or 0), half, ":" in found[0])
