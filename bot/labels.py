"""What is written on pictures, one noun a picture: worded in `bot/wording`, put in its place by `bot/charts`."""

from dataclasses import dataclass


@dataclass(frozen=True)
class CookWords:
    """What is written on a cook: axis, keys, marks."""

    temperature: str
    core: str
    pit: str
    expected: str
    band: str
    pit_set: str
    target: str
    ready: str
    stall: str
    wrap: str
    wrap_by: str
    now: str
    deadline: str


@dataclass(frozen=True)
class CureWords:
    """What is written on a cure."""

    now: str  # over the slice as it would be now, and over the one at the end
    end: str
    now_mark: str  # over the days, at now and at the end
    end_mark: str
    pink: str
    perhaps: str
    grey: str
    all_pink: str
    fat: str
    nitrite: str  # what is at the centre, without its unit
    salt: str
    days: str
    pink_from: str
    salt_wanted: str
    expected: str
    band: str


@dataclass(frozen=True)
class ChillWords:
    """What is written on a piece that cools."""

    temperature: str
    core: str
    expected: str
    band: str
    too_warm: str
    now: str
