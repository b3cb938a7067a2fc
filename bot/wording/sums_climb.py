"""What a slow climb of the core comes to: in time, still open, or too late, for whole meat and for what was opened."""

from collections.abc import Sequence

from bot.wording import numbers
from bot.wording.language import Words, later, say
from core.person import Person
from core.safety.come_up import COME_UP, ClimbJudgement
from core.safety.findings import Status
from core.units import Celsius, Hours, celsius_from_fahrenheit

WHOLE = "whole"
OF_WHAT = Words({
    WHOLE: later("A whole piece, not injected"),
    "opened": later("A bird, or meat that was injected, rolled or minced"),
})  # fmt: skip


def climbing(judged: Sequence[ClimbJudgement], core: Celsius, hours: Hours, person: Person) -> str:
    """The clocks that may count, each with how it stands."""
    now = say("It reads {core} after {hours}.", core=numbers.both(core, person), hours=numbers.hours(hours))
    return "\n".join([*(_stands(one, hours, person) for one in judged), now])


def _stands(judged: ClimbJudgement, hours: Hours, person: Person) -> str:
    climb = judged.climb
    fields = {
        "what": OF_WHAT[WHOLE if climb is COME_UP else "opened"],
        "limit": numbers.both(celsius_from_fahrenheit(climb.to_f), person),
        "within": numbers.hours(climb.max_h),
    }
    match judged.status:
        case Status.FAILED:
            return say("{what}: throw it away. It has to pass {limit} within {within} of going on.", **fields)
        case Status.OPEN:
            return say(
                "{what}: it has {left} left to pass {limit}, of {within} from going on. A hotter pit or an oven now, and read it again.",
                left=numbers.hours(climb.max_h - hours),
                **fields,
            )
        case Status.PASSED:
            return say("{what}: in time, it passed {limit} within {within} of going on.", **fields)
        case _:
            return say("{what}: in time only if it read {limit} within {within} of going on.", **fields)
