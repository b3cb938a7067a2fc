"""A time as it was spoken: the day, the hour and the part of the day that a text names, and which hours fit them."""

from dataclasses import dataclass, replace
from datetime import time
from typing import Final

from bot import measures
from bot.intents.clock import wall_of
from bot.intents.context import Context
from bot.intents.days import Day, find_day
from bot.intents.hours import Clock, find_clock
from core import patterns as re

# the usual hour of a part of the day, and the half of the day it lies in
PARTS: Final = {
    "breakfast": (9, "am"), "frühstück": (9, "am"), "morning": (8, "am"), "mornin": (8, "am"), "früh": (8, "am"),
    "brunch": (11, "am"), "lunch": (13, "pm"), "lunchtime": (13, "pm"), "mittagessen": (13, "pm"),
    "afternoon": (15, "pm"), "nachmittag": (15, "pm"), "tea": (17, "pm"), "dinner": (18, "pm"), "supper": (18, "pm"),
    "abendessen": (18, "pm"), "evening": (19, "pm"), "abend": (19, "pm"), "tonight": (20, "pm"), "tonite": (20, "pm"),
    "night": (20, "pm"), "nite": (20, "pm"), "bedtime": (22, "pm"), "teatime": (17, "pm"),
}  # fmt: skip
_PART: Final = re.compile(rf"\b(?:{'|'.join(PARTS)})\b")
_MEAL_PARTS: Final = ("breakfast", "morning", "tea", "dinner", "supper", "evening", "night", "nite", "tonight")
_OF_THE_NIGHT: Final = ("night", "nite", "tonight")
_FIRST_MEAL, _LATEST_MEAL = 7, 22  # hours at which people sit down; «dinner at 11:00» is none of the night


@dataclass(frozen=True)
class Spoken:
    """What was named of a time: a day, an hour, a part of the day; and from which hour people eat."""

    day: Day | None
    clock: Clock | None
    part: str
    from_hour: int = 10

    def times(self, usual: int) -> tuple[time, ...]:
        """The times of day that fit, the usual hour of that part of the day where none was said."""
        if self.clock is None:
            return (time(usual),)
        half = PARTS[self.part][1] if self.part else ""
        return self._settled(self.clock, half).times() if half else self.clock.times()

    def as_written(self, context: Context) -> bool:
        """Whether an hour stands as it is written: with its minutes, and a day beside it or a clock of 24 hours."""
        clock = self.clock is not None and self.clock.written and not self.part
        return clock and (self.day is not None or context.units.temperature == "c")

    def meal_times(self, clock: Clock, on_24_hours: bool) -> tuple[time, ...]:
        """The times of an hour at which people may eat; on a clock of 24 hours one from 7:00 stands as written."""
        half = PARTS[self.part][1] if self.part in _MEAL_PARTS else ""
        settled = self._settled(clock, half).times() if half else clock.times()
        latest = 23 if self.part in _OF_THE_NIGHT else _LATEST_MEAL
        times = settled if settled[0].hour <= latest else clock.times()
        if clock.written and on_24_hours and not half and times[0].hour >= _FIRST_MEAL:
            return times[:1]
        awake = tuple(t for t in times if self.from_hour <= t.hour <= 21)
        return awake or times

    def _settled(self, clock: Clock, half: str) -> Clock:
        small_hours = half == "pm" and self.part in _OF_THE_NIGHT and clock.hour < 5
        settled = clock.half or clock.hour > 12 or small_hours
        return clock if settled else replace(clock, half=half)


def as_spoken(text: str, context: Context, past: bool = False, dates: bool = False) -> Spoken:
    """What a text names of a time. With `past` a weekday is the last one, with `dates` a bare «12th» is a day too."""
    plain = masked(text)
    day = find_day(plain, wall_of(context.now, context.zone).date(), past, dates)
    parts = _PART.findall(plain)
    part = next((p for p in parts if p in _OF_THE_NIGHT), parts[0] if parts else "")  # «dinner tonight at 11»
    return Spoken(day, find_clock(plain), part)


def masked(text: str) -> str:
    """The text with its masses, lengths, temperatures and shares blanked out: none of them is an hour."""
    for measure in measures.find(text):
        if measure.kind != "duration":
            text = text[: measure.start] + " " * (measure.end - measure.start) + text[measure.end :]
    return text
