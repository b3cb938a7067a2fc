"""Words for smoked fish: what has to be held so that it keeps as smoked fish does, and what is cooked fish only."""

from bot.wording import meats, numbers
from bot.wording.language import say
from core.batch.assess import Assessment
from core.plan.recipe import product
from core.safety.after import LEFTOVERS, use_by_of
from core.safety.done import held_as_smoked
from core.safety.storage import keeping


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
        smoked=numbers.both(_smoked_c(a), a.person),
    )


def off(a: Assessment) -> str:
    """Fish that came off before the half hour was shown: back on, or what it is then; nothing where it was."""
    dates = use_by_of(a.ledger.record)
    if not meats.fish(a) or dates is None or held_as_smoked(a.ledger.record):
        return ""
    when = numbers.day(dates.at, a.person)
    if a.batch.setup.target_c < _smoked_c(a):
        return say("Cooked fish, to be used by {when}, and never packed without air.\n", when=when)
    return say(
        "30 min at {smoked} are not shown. Back on within 2 h for them, with a reading at either end; "
        "else it is cooked fish: use it by {when}, and never pack it without air.\n",
        smoked=numbers.both(_smoked_c(a), a.person),
        when=when,
    )


def cooked_c(a: Assessment) -> float:
    """The core at which it is cooked at least: that of fish under that of smoked fish. [°C]"""
    return product(a.batch.setup.product).cooked_from_c or a.floor_c


def _smoked_c(a: Assessment) -> float:
    return product(a.batch.setup.product).safety_floor_c
