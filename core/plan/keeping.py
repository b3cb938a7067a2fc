"""How long meat in salt alone keeps raw, and what of a plan cannot wait for that reason."""

from datetime import datetime, timedelta

from core.errors import RawTooLong
from core.meat.cuts import cut
from core.meat.piece import Species
from core.plan.case import Case
from core.plan.hours import span


def until(case: Case) -> datetime | None:
    """When it has to be on the fire, once it is in; None for cured meat, and for what is not in yet."""
    return case.product.raw_until(case.setup, case.done("into_cure"))


def check(case: Case, lies: timedelta) -> None:
    """Raise RawTooLong for meat in salt alone that is not on the fire within the raw days of the chart."""
    within = case.product.raw_within(case.setup)
    if within is not None and lies > timedelta(hours=within):
        fish = cut(case.setup.cut).species is Species.FISH
        raise RawTooLong(lies / timedelta(days=1), within / 24, fish)


def cannot_wait(case: Case, rested: datetime, meal: datetime) -> bool:
    """Whether a fire that could not wait leaves more hours until a hot meal than meat is held hot for."""
    held = meal - rested > span(case.product.hours.hold_longest)
    return held and until(case) is not None and not case.chilled
