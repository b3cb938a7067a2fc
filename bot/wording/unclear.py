"""Words for what may be several things, or cannot be: asked once, with what works and the taps for it."""

import re
from collections.abc import Callable, Sequence
from typing import Any

from bot.intents.intents import Change, MoveDeadline, Snooze, Unclear
from bot.wording import asking, language, numbers, options, other_cuts, refusals, taken
from bot.wording.remarks import REMARKS
from core.person import Person


def say(intent: Unclear, person: Person) -> tuple[str, asking.Rows]:
    """What was typed and could not be taken, with what works."""
    rows = taps(intent.options[:4], person)
    if intent.why in _CANNOT_BE:
        return _CANNOT_BE[intent.why](intent.text), rows
    if intent.why in ("unit", "number") and not rows and re.search(r"%|salt|cure|percent", intent.text):
        return refusals.no_strength(intent.text), rows
    if intent.why == "unit" and _of_a_packet(intent):
        return refusals.bare_strength(intent.text), rows
    if intent.why == "word" and _is_a_day(intent):
        return language.say(
            "What is on «{typed}»: the meal, or a step? Tap the meal, or say what it is, like «remind me tomorrow».",
            typed=intent.text,
        ), rows
    if intent.why == "rest":
        return _left_over(intent.text, tapped=bool(rows)), rows
    texts = _texts(intent.text, person)
    return texts.get(intent.why, texts["likely"]), rows


def _of_a_packet(intent: Unclear) -> bool:
    """Whether all that is offered are strengths of a curing salt."""
    told = [one.changes.keys() if isinstance(one, Change) else {} for one in intent.options]
    return bool(told) and all(keys == {"cure_nitrite_fraction"} for keys in told)


def _is_a_day(intent: Unclear) -> bool:
    """Whether a day was said and no more: nothing is offered but the meal on it, or a step that waits till then."""
    *steps, last = intent.options or (None,)
    waits = all(isinstance(step, Snooze) and step.until for step in steps)
    return isinstance(last, MoveDeadline) and last.to is not None and len(steps) <= 1 and waits


def nothing_to_mend() -> str:
    """A correction of a reading that nobody has sent in the last hours."""
    return language.say(
        "I find no reading of the last hours that this puts right, so nothing is changed.\n"
        "Tap it if that is what it reads now, or say it whole, with its place, like «fridge 38 f» or «core 158»."
    )


def which_size() -> str:
    """A unit put right, where it is not known which number it belongs to."""
    return language.say("Which number is that about? Type it with its unit, like 3.2 kg or 48 mm.")


def so_already(value: float, unit: str) -> str:
    """A unit put right that is the one which was noted."""
    return language.say(
        "It is noted as {size} already, so nothing is changed. If that is not right, type it whole, like «it weighs 3.1 kg».",
        size=f"{numbers.plain(value)} {unit}",
    )


def taps(offered: Sequence[Any], person: Person) -> asking.Rows:
    """A tap for each of the things that may be meant."""
    return tuple((asking.button(options.label(o, person), o),) for o in offered)


def _left_over(typed: str, *, tapped: bool) -> str:
    """What was told in passing and nobody took."""
    if tapped:
        return language.say(
            "Not taken: «{typed}». Tap what it was, or say it on its own; if it was nothing, let it be.", typed=typed
        )
    return language.say("Not taken: «{typed}». If it counts, say it on its own, with its word.", typed=typed)


def _texts(typed: str, person: Person) -> dict[str, str]:
    degree = "158/245" if person.units.temperature == "f" else "70/120"
    core, pit = ("158 f", "245 f") if person.units.temperature == "f" else ("70 c", "120 c")
    return {
        "likely": language.say(
            "I am not sure I got «{typed}» right, so nothing is noted yet. Tap what it was, or say it in other words.",
            typed=typed,
        ),
        "brine": asking.brine(typed),
        "number": language.say(
            "What is «{typed}»? Say what it was, like «core {split}», «fridge 3 c» or «pit {split2}».",
            typed=typed,
            split=degree.split("/")[0],
            split2=degree.split("/")[1],
        ),
        "too_long": language.say(
            "That is more than I can take in at once. Say it in one short line, like «core 158» or «what now»."
        ),
        "empty": language.say("I got nothing to read there. Type it in words, like «flipped» or «what now»."),
        "unit": language.say(
            "In which unit is {typed}? Type it with its unit, like 3.2 kg, 48 mm or 70 c.", typed=typed
        ),
        "at": language.say(
            "«{typed}»: is that the hour, or what it read? Tap it, or type it like «brine 3 c».", typed=typed
        ),
        "ahead": language.say(
            "«{typed}»: that hour is still to come today. When was it? Tap it, or type the hour anew.", typed=typed
        ),
        "share": language.say(
            "{typed} of what? Tap it if it is that; else say it with its word, like «cure is 6.25 %» or «salt 2.25 %».",
            typed=typed,
        ),
        "pair": language.say(
            "Which is which in «{typed}»? Tap it, or type each by its name, like «core {core} pit {pit}».",
            typed=typed,
            core=core,
            pit=pit,
        ),
        "other": language.say("I cannot read that. Type it in words, like «flipped» or «core 158»."),
    }


def _no_hour(typed: str) -> str:
    return language.say("There is no {typed} on the clock. Type the hour like 8:00 or 20:00, or 8 pm.", typed=typed)


def _remark(why: str) -> Callable[[str], str]:
    """The question that a short remark is met with."""
    return lambda typed: language.say(REMARKS[why], typed=typed)


_CANNOT_BE = {
    **{why: _remark(why) for why in REMARKS},
    "hour": _no_hour,
    "strength": refusals.odd_strength,
    "mass": lambda typed: taken.again("mass", typed),
    "thickness": lambda typed: taken.again("thickness", typed),
    "meat": other_cuts.unknown_meat,
    "ruler": lambda typed: language.say(
        "«{typed}» is no measure that I can plan by. Hold a ruler to the thickest spot, and type it like 48 mm or 1.9 in.",
        typed=typed,
    ),
}
