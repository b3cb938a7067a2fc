"""What is counted, as the Prometheus text format, as a health check, and as a report in the keeper's chat.

Truth: Prometheus, "Exposition formats", text format 0.0.4.
"""

from collections.abc import Callable, Iterator, Mapping
from datetime import datetime, timedelta

from bot.keeper.gauges import BOUNDS, Gauges
from core.errors import NotKept
from core.service.turn import House
from core.service.waiting import Backlog

LATE = timedelta(minutes=5)  # judgement: a storm is over by then, an outage is not


class Report:
    """Reads the gauges, and asks the store how far behind it is."""

    def __init__(
        self, gauges: Gauges, house: House, backlog: Callable[[datetime], Backlog], now: Callable[[], datetime]
    ) -> None:
        self.gauges = gauges
        self._house = house
        self._backlog = backlog
        self.now = now

    def health(self) -> tuple[bool, str]:
        """Whether all is well, and one line that says what is not."""
        try:
            behind = self._lag(self._backlog(self.now()))
        except NotKept as trouble:
            return False, f"the store cannot be read: {trouble.why}"
        if self.gauges.not_kept is not None:
            return False, f"the store keeps nothing: {self.gauges.not_kept}"
        if behind > LATE:
            return False, f"what is due goes out {behind.total_seconds():.0f} s late"
        return True, "ok"

    def metrics(self) -> str:
        """Every count, in the Prometheus text format."""
        return "".join(f"{line}\n" for line in self._lines())

    def status(self) -> tuple[Gauges, Backlog, timedelta]:
        """The counts, what is due and not sent, and how late the oldest of it is."""
        found = self._backlog(self.now())
        return self.gauges, found, self._lag(found)

    def _lag(self, found: Backlog) -> timedelta:
        return max(timedelta(0), self.now() - found.oldest) if found.oldest is not None else timedelta(0)

    def _lines(self) -> Iterator[str]:
        gauges = self.gauges
        yield from _counter(
            "saltbell_updates_total", "Messages by what became of their turn.", "result", gauges.updates
        )
        yield from _counter(
            "saltbell_sends_total", "Messages sent, or tried, by what came of it.", "result", gauges.sends
        )
        yield from self._turns()
        name, reckoned = "saltbell_estimate_seconds", self._house.reckoned
        yield f"# HELP {name} Time of working a batch out: its log folded, estimate, plan and verdict."
        yield f"# TYPE {name} summary"
        yield f"{name}_sum {reckoned.seconds:.6f}"
        yield f"{name}_count {reckoned.times}"
        try:
            found = self._backlog(self.now())
        except NotKept:
            yield from _gauge("saltbell_store_up", "Whether the store can be read.", 0)
            return
        yield from _gauge("saltbell_store_up", "Whether the store can be read.", 1)
        yield "# HELP saltbell_outbox_due Messages that are due and not yet sent."
        yield "# TYPE saltbell_outbox_due gauge"
        yield f'saltbell_outbox_due{{sort="reply"}} {found.replies}'
        yield f'saltbell_outbox_due{{sort="reminder"}} {found.reminders}'
        late = self._lag(found).total_seconds()
        yield from _gauge("saltbell_outbox_lag_seconds", "How late the oldest message that is due is.", late)
        yield from _gauge("saltbell_keeps", "Whether the last turn was kept.", int(gauges.not_kept is None))

    def _turns(self) -> Iterator[str]:
        name, below = "saltbell_turn_seconds", 0
        yield f"# HELP {name} Time of a turn: understanding, estimate, plan and commit."
        yield f"# TYPE {name} histogram"
        for bound in BOUNDS:
            below += self.gauges.turns[bound]
            yield f'{name}_bucket{{le="{bound}"}} {below}'
        total = self.gauges.turns.total()
        yield f'{name}_bucket{{le="+Inf"}} {total}'
        yield f"{name}_sum {self.gauges.turn_seconds:.6f}"
        yield f"{name}_count {total}"


def _counter(name: str, tells: str, label: str, counts: Mapping[str, int]) -> Iterator[str]:
    yield f"# HELP {name} {tells}"
    yield f"# TYPE {name} counter"
    for value, count in sorted(counts.items()):
        yield f'{name}{{{label}="{value}"}} {count}'


def _gauge(name: str, tells: str, value: float) -> Iterator[str]:
    yield f"# HELP {name} {tells}"
    yield f"# TYPE {name} gauge"
    yield f"{name} {value}"
