"""When meat has to be on the fire, when off it for the meal that was wanted, and until when a wrap brings it there."""

from datetime import datetime, timedelta

from core.batch import material
from core.batch.assess import Assessment
from core.heat.cook import WrapKind
from core.heat.wrap_by import WrapBy, wrap_by
from core.plan.anchors import BEFORE_HOT
from core.plan.hours import span
from core.plan.recipe import product

LIKELY_BARE = 0.8  # so many in time without a wrap, and nobody is told to wrap. Judgement


def off_by(a: Assessment) -> datetime | None:
    """The latest moment to take it off for the meal that was wanted; None where no meal was named."""
    wanted = a.batch.setup.deadline
    if wanted is None or a.plan is None:
        return None
    hours = product(a.batch.setup.product).hours
    if not a.chilled:
        return wanted - span(BEFORE_HOT) - span(hours.least_rest)
    rest, chill = a.plan.step("rest"), a.plan.step("chill")
    if rest is None or chill is None:
        return None
    resting = chill.due - rest.due
    cooling = material.chill_of(a.batch.setup, 60.0).to(4.4)
    cold = cooling.p50 if cooling else 24.0
    return wanted - resting - span(cold) - span(hours.set) - span(hours.slice_before_meal)


def raw_until(a: Assessment) -> datetime | None:
    """When meat in salt alone has to be on the fire, so that its raw days are within the chart; None for no bound."""
    return product(a.batch.setup.product).raw_until(a.batch.setup, a.batch.done.get("into_cure"))


def latest_wrap(a: Assessment, kind: WrapKind = "foil") -> WrapBy | None:
    """Until when to wrap, for meat that is on the fire, bare, and wanted at an hour that is still ahead."""
    needed = off_by(a)
    if needed is None or a.on_at is None or a.ready is None or a.batch.setup.wrap != "none" or "wrap" in a.batch.done:
        return None
    if needed <= a.now:
        return None
    hours = (needed - a.on_at) / timedelta(hours=1)
    # to the quarter hour, so that a minute more does not cost another run
    return wrap_by(
        material.cook_of(a.batch, a.person), material.history_of(a.batch, a.now), round(hours * 4.0) / 4.0, kind
    )
