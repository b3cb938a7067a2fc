"""What nobody said of a batch and that goes by its product or its cut, where one of them is told anew."""

from dataclasses import fields
from typing import Any, Final

from core.batch.batch import Batch
from core.plan.recipe import Product, product
from core.plan.setup import Setup
from core.service.turn import Turn

SETTLED_BY_THE_CURE: Final = frozenset(
    {
        "method",
        "cut",
        "nitrite_target",
        "brine_strength",
        "salt_fraction",
        "sugar_fraction",
        "water_share",
        "pump_fraction",
        "cover_share",
        "skin_on",
        "cure_nitrate_fraction",
    }
)
"""What is settled once the cure is weighed."""
_USUAL: Final = {field.name: field.default for field in fields(Setup)}


def set_up_anew(turn: Turn, batch: Batch, changes: dict[str, Any]) -> dict[str, Any] | None:
    """What the batch is set up to be from then on, beside what is said; None where product and cut stay as they are.

    What was said stands, and so does what is weighed: a corned beef that was begun as pastrami goes into a pot, and a
    ham that turns out to be boned has the dose of one, unless it is in its brine already.
    """
    if not changes.keys() & {"product", "cut"}:
        return None
    was, made = batch.setup, product(changes.get("product", batch.setup.product))
    cut = changes.get("cut", was.cut if was.cut in made.cuts else made.cuts[0])
    own = made.defaults_of(cut)
    open_ = (own.keys() | product(was.product).defaults_of(was.cut).keys()) - was.said
    open_ |= set() if _has(made, was.purpose) else {"purpose"}
    open_ -= SETTLED_BY_THE_CURE if batch.dosed is not None else set()
    usual = _USUAL | {"cooker": turn.person.cooker} | own
    if "salt_fraction" in own:
        usual["salt_fraction"] = own["salt_fraction"] + turn.person.learned.salt_shift
    found = {name: usual[name] for name in open_} | ({} if cut == was.cut else {"cut": cut})
    return {name: value for name, value in found.items() if name not in changes}


def _has(made: Product, purpose: str) -> bool:
    return any(one.name == purpose for one in made.purposes)
