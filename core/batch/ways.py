"""The ways round a meal that comes too soon: every one is computed before it is offered."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Any, Final

from core.batch.assess import Assessment, assess
from core.batch.batch import Batch, Phase
from core.cure.contents import LEAFLET_BRINE
from core.errors import SaltbellError, TooSoon
from core.plan.hours import wall_of
from core.plan.recipe import product
from core.plan.steps import TimeBand
from core.units import Days

NEARLY: Final = timedelta(minutes=15)  # after the meal that is wanted, and kept all the same. Judgement


@dataclass(frozen=True)
class Way:
    """A way round a refusal: what would be changed, and the meal that it gives."""

    name: str
    changes: tuple[tuple[str, Any], ...]
    serve: datetime
    cure_days: Days

    @property
    def in_time(self) -> bool:
        """Whether it keeps the meal where it was wanted."""
        return all(name != "deadline" for name, _ in self.changes)


def alternatives(a: Assessment) -> tuple[Way, ...]:
    """What does work where the meal comes too soon: each way is computed, none is guessed."""
    if not isinstance(a.refusal, TooSoon):
        return ()
    tries: tuple[tuple[str, dict[str, Any]], ...] = (
        *((("hot", {"purpose": "hot"}),) if _chilled_for_nothing(a) else ()),
        ("inject", {"method": "inject"}),
        ("dry", {"method": "dry"}),
        *_by_the_clock(a),
        *((("thinner", {"thickness": a.piece.thickness / 2, "cut_in": 2}),) if _can_be_split(a) else ()),
        *((name, {"deadline": date}) for name, date in _next_dates(a).items()),
    )
    setup = a.batch.setup
    open_ones = {*product(setup.product).methods(setup.cut), None} - {setup.method}
    found = [_way(a, name, changes) for name, changes in tries if changes.get("method") in open_ones]
    ways = tuple(way for way in found if way is not None)
    in_time = any(way.in_time for way in ways)
    return ways if in_time else (*_quicker(a, tries, open_ones), *ways)


def _can_be_split(a: Assessment) -> bool:
    """Whether a knife makes two flat pieces of it: of a whole bird and of a leg with its bone it does not."""
    return not a.batch.setup.cut.endswith(("_whole", "_bone_in"))


def _by_the_clock(a: Assessment) -> tuple[tuple[str, dict[str, Any]], ...]:
    """Of fish in plain salt: the strong brine of an hour or two, and the same eaten hot."""
    if not product(a.batch.setup.product).hours.brining:
        return ()
    brine = {"method": "brine", "brine_strength": LEAFLET_BRINE}
    return ("strong", brine), *((("strong_hot", {**brine, "purpose": "hot"}),) if _chilled_for_nothing(a) else ())


def _chilled_for_nothing(a: Assessment) -> bool:
    """Whether it is planned to be eaten cold and could be eaten hot, on the day of its fire; thrown away it cannot."""
    made = product(a.batch.setup.product)
    return (
        not a.ledger.thrown
        and "hot" in (one.name for one in made.purposes)
        and made.purpose(a.batch.setup.purpose).chilled
    )


def hot_in_time(a: Assessment) -> Way | None:
    """Eaten hot, where that keeps the meal that is wanted and a cold one would be too late for it; None where not."""
    if a.plan is None or a.plan.wanted is None or a.batch.off_at is not None or not _chilled_for_nothing(a):
        return None
    tried = _with(a, {"purpose": "hot"})
    plan = assess(tried, a.person, a.now).plan
    if plan is None or plan.serve > a.plan.wanted + NEARLY:
        return None
    return Way("hot", (("purpose", "hot"),), plan.serve, plan.cure_days)


def hot_off_the_fire(a: Assessment) -> TimeBand | None:
    """When it is rested and can be eaten hot, of what is planned to be chilled first; None where that is no choice."""
    resting = a.batch.phase is Phase.RESTING and not a.below_floor
    if a.plan is None or (a.batch.off_at is not None and not resting) or not _chilled_for_nothing(a):
        return None
    rest = timedelta(hours=product(a.batch.setup.product).hours.least_rest)
    if a.batch.off_at is not None:
        return TimeBand(*[a.batch.off_at + rest] * 3)
    plan = assess(_with(a, {"purpose": "hot"}), a.person, a.now).plan
    off = plan.step("off") if plan else None
    if off is None:
        return None
    return TimeBand((off.early or off.due) + rest, off.due + rest, (off.late or off.due) + rest)


def without_needle(a: Assessment) -> Assessment | None:
    """The batch as it would be in a brine, or dry where it is in none; None where its cut is cured by needle alone."""
    setup = a.batch.setup
    method = next((m for m in ("brine", "dry") if m in product(setup.product).methods(setup.cut)), None)
    return None if method is None else assess(_with(a, {"method": method}), a.person, a.now)


def _quicker(
    a: Assessment, tries: tuple[tuple[str, dict[str, Any]], ...], open_ones: Collection[str | None]
) -> tuple[Way, ...]:
    """Where no way makes the date: the one by which the meal comes first, if that is sooner than as it stands."""
    soonest: tuple[datetime, Way] | None = None
    for name, changes in tries:
        if "deadline" in changes or changes.get("method") not in open_ones:
            continue
        refused = assess(_with(a, changes), a.person, a.now).refusal
        if not isinstance(a.refusal, TooSoon) or not isinstance(refused, TooSoon):
            continue
        limit = soonest[0] if soonest else a.refusal.earliest
        way = _way(a, name, {**changes, "deadline": refused.earliest}) if refused.earliest < limit else None
        soonest = (refused.earliest, way) if way else soonest
    return (soonest[1],) if soonest else ()


def _next_dates(a: Assessment) -> dict[str, datetime]:
    """The first meal that can be, and the one at the hour and on the weekday that was wanted, where that is later."""
    refusal = a.refusal
    if not isinstance(refusal, TooSoon):
        raise SaltbellError
    date, wall = refusal.deadline, wall_of(a.person)
    while date < refusal.earliest:
        date = wall.at(wall.day(date) + timedelta(days=7), wall.clock(date).replace(tzinfo=None))
    return {"date": date} if date == refusal.earliest else {"soonest": refusal.earliest, "date": date}


def _way(a: Assessment, name: str, changes: dict[str, Any]) -> Way | None:
    tried = assess(_with(a, changes), a.person, a.now)
    if tried.plan is None:
        return None
    stated = tuple((k, v) for k, v in changes.items() if k != "cut_in")
    return Way(name, stated, tried.plan.serve, tried.plan.cure_days)


def _with(a: Assessment, changes: dict[str, Any]) -> Batch:
    """The batch as it would be with these changes."""
    return replace(a.batch, setup=a.batch.setup.change({k: v for k, v in changes.items() if k != "cut_in"}))
