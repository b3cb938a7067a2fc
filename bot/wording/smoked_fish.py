"""Words for smoked fish: what has to be held so that it keeps as smoked fish does, and what is cooked fish only."""

from datetime import timedelta

from bot.wording import meats, numbers
from bot.wording.language import say
from core.batch.asked import held_since
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.person import Person
from core.plan.recipe import product
from core.plan.steps import Kind
from core.safety.after import LEFTOVERS, use_by_of
from core.safety.done import held_as_smoked
from core.safety.history import printed_f
from core.safety.storage import keeping
from core.units import Celsius, Fahrenheit, celsius_from_fahrenheit

SURELY_F: Fahrenheit = 200.0  # air that brings fish to 160 °F; sources.HOT_SMOKED_FISH


def planned(a: Assessment) -> str:
    """What a target under that of smoked fish makes of it; nothing for others."""
    if not meats.fish(a) or a.batch.setup.target_c >= _smoked_c(a):
        return ""
    return say(
        "At {target} it is cooked fish: it keeps {short} in the fridge, as leftovers do. "
        "To keep {long} it takes {smoked} for 30 min: plants that stop sooner test the salt in it.",
        target=numbers.temperature(a.batch.setup.target_c, a.person),
        short=numbers.days(keeping(LEFTOVERS).days),
        long=numbers.days(keeping(product(a.batch.setup.product).storage).days),
        smoked=numbers.at_least(_smoked_c(a), a.person),
    )


def cool_pit(a: Assessment) -> str:
    """Said of a pit that does not surely bring fish to its half hour, by the leaflet; nothing of others."""
    smoked = meats.fish(a) and a.batch.setup.target_c >= _smoked_c(a)
    return under_sure(smoked, (a.batch.setup.pit_c, _smoked_c(a)), a.person)


def under_sure(fish: bool, of: tuple[Celsius, Celsius], person: Person) -> str:
    """The same of any fish, by its pit and the core that it is to come to. [°C]"""
    pit, smoked = of
    if not fish or printed_f(pit) >= SURELY_F:
        return ""
    return say(
        "Under {pit} it is not sure that fish comes to {smoked}: run it hotter towards the end, "
        "or finish it in the kitchen oven within 2 h.",
        pit=numbers.both(celsius_from_fahrenheit(SURELY_F), person),
        smoked=numbers.at_least(smoked, person),
    )


def at_floor(a: Assessment) -> bool:
    """Whether it is fish whose last core stands at its floor or above."""
    core = a.batch.last(Probe.CORE)
    return meats.fish(a) and core is not None and printed_f(core.celsius) >= printed_f(a.floor_c)


def reached(a: Assessment) -> str:
    """On the fire with its core at the floor: since when it counts, till when it stays, or that it was held."""
    floor = numbers.at_least(a.floor_c, a.person)
    since = held_since(a.batch, a.floor_c) or a.now
    until = since + timedelta(hours=a.hold_hours)
    if until <= a.now:
        return say("{floor} for 30 min: take it off now, and say «off».", floor=floor)
    return say(
        "It has reached {floor}: it stays on at that or above until {until}, then read it again, take it off and say «off».",
        floor=floor,
        until=numbers.clock(until, a.person),
    )


def to_hold(a: Assessment) -> str:
    """How long fish that is to keep stays on the fire at its floor; nothing of other meat, or once it is off."""
    if not meats.fish(a) or a.batch.off_at is not None or a.batch.setup.target_c < _smoked_c(a):
        return ""
    if a.on_at is not None and at_floor(a):
        return reached(a)
    return say(
        "On the fire, at {floor} or above in the middle for 30 min: send a reading when it is there, and one after it.",
        floor=numbers.at_least(a.floor_c, a.person),
    )


def off(a: Assessment) -> str:
    """Fish that came off before the half hour was shown: back on, or what it is then; nothing where it was."""
    dates = use_by_of(a.ledger.record)
    if not meats.fish(a) or dates is None or held_as_smoked(a.ledger.record):
        return ""
    step = a.plan.step(Kind.USE_BY.value) if a.plan else None
    when = numbers.day(dates.at if step is None else min(dates.at, step.due), a.person)
    if a.batch.setup.target_c < _smoked_c(a):
        return say("Cooked fish, to be used by {when}, and never packed without air.\n", when=when)
    return say(
        "30 min at {smoked} are not shown. Back on within 2 h for them, with a reading at either end; "
        "else it is cooked fish: use it by {when}, and never pack it without air.\n",
        smoked=numbers.at_least(_smoked_c(a), a.person),
        when=when,
    )


def cooked_c(a: Assessment) -> float:
    """The core at which it is cooked at least: that of fish under that of smoked fish. [°C]"""
    return product(a.batch.setup.product).cooked_from_c or a.floor_c


def _smoked_c(a: Assessment) -> float:
    return product(a.batch.setup.product).safety_floor_c
