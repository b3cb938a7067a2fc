"""A meal that was wanted sooner than it could be had: put off by the house, and taken up again once it can be."""

from dataclasses import replace
from datetime import datetime

from core.batch.assess import Assessment, Change, assess
from core.batch.events import Assumed, Changed, Started
from core.batch.standing import effective
from core.batch.ways import NEARLY
from core.service import record
from core.service.turn import Turn
from core.store import batches


def put_off(turn: Turn, batch_id: str, to: datetime) -> Change:
    """Another meal than was wanted, since that comes too soon: the house assumes it, and the wish stands in the log."""
    return record.add(turn, batch_id, [(Assumed({"deadline": to}), turn.now)])


def taken_up(turn: Turn, done: Change) -> Change:
    """The change, with the meal back at the hour that was wished, where what changed lets it be had then."""
    a = done.after
    wish = _wish(turn, a)
    if wish is None or wish <= turn.now:
        return done
    then = assess(replace(a.batch, setup=replace(a.batch.setup, deadline=wish)), a.person, turn.now)
    if then.plan is None or then.plan.late > NEARLY:
        return done
    return Change(done.before, record.add(turn, a.batch.id, [(Changed({"deadline": wish}), turn.now)]).after)


def _wish(turn: Turn, a: Assessment) -> datetime | None:
    """The meal that was last wanted, where the house has put it off since; None where it stands as it was said."""
    if a.batch.setup.deadline is None or "deadline" in a.batch.setup.said:
        return None
    told = [event.what for event in effective(batches.events(turn.tx, a.batch.id))]
    wanted = [what.setup.get("deadline") for what in told if isinstance(what, Started)]
    wanted += [what.changes["deadline"] for what in told if isinstance(what, Changed) and "deadline" in what.changes]
    return wanted[-1] if wanted else None
