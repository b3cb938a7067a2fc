"""The facts of a mishap as they were told: what was asked, what is known, and a core that still shows something."""

from typing import Final

from core.safety.history import printed_f
from core.safety.record import Incident
from core.units import Celsius

COOL_AGAIN_F: Final = 50.0  # so cold it may have been cooled again since; JUDGEMENT
CORE_WITHIN: Final = 1.0  # h after it was told, while a cold core still shows what the cut did; JUDGEMENT


def asked(incident: Incident, fact: str) -> bool:
    """Whether it was told, or asked for and not known."""
    return fact in incident.facts or bool(incident.facts.get("unknown"))


def number(incident: Incident, fact: str) -> float | None:
    """A fact that is a number, in its own unit; None where it was not told, or is none."""
    value = incident.facts.get(fact)
    return None if value is None or isinstance(value, str | bool) else float(value)


def yes(incident: Incident, fact: str) -> bool | None:
    """A fact that is yes or no; None where it was not told, or is neither."""
    value = incident.facts.get(fact)
    return value if isinstance(value, bool) else None


def fresh_core(incident: Incident) -> Celsius | None:
    """A core told long after says nothing where it is cold again; a warm one counts whenever it was read."""
    core = number(incident, "core_c")
    after = number(incident, "core_after_h")
    late = after is not None and after > CORE_WITHIN
    return None if core is not None and late and printed_f(core) <= COOL_AGAIN_F else core
