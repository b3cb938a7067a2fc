"""What the core refuses, as one tree. A leaf is a thing the caller does differently about.

    SaltbellError
    ├── OutOfRange          a number that cannot be: say the range, ask again
    ├── Missing             a fact that only the cook knows: ask for it
    ├── Refused             a rule or a law says no, whoever asks
    │   ├── OverLimit       a dose over a legal limit: say the limit and the dose that passes
    │   ├── UnknownCure     a curing salt of unknown strength: no dose, no cure plan
    │   ├── OtherWay        a cut that may not be cured in this way: say in which it may
    │   ├── ByTheClock      nitrite in a brine that is left by the clock: plain salt, or an equilibrium
    │   ├── TooLate             what is to be changed is done already
    │   └── TooLong         a cure past the longest that is planned unasked
    ├── TooSoon             no safe plan ends by then: say what is possible instead
    ├── Gone                the batch, step or message that was meant is not there (any more)
    ├── Unreadable          a data file that a cook wrote cannot be read: say the file, the place and why
    ├── NotKept             the store could not keep it: say so, never "done"
    └── NotDelivered        a channel could not deliver: try again after a while, or give up

Errors carry facts. Sentences are made in `bot/wording/refusals.py`; a test holds the two together.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta


class SaltbellError(Exception):
    """The root: whatever the house itself raises."""


@dataclass(eq=False)
class OutOfRange(SaltbellError):
    """A quantity lies outside the range in which the equation or the trade makes sense; `of` names the cut it is of."""

    quantity: str
    value: float
    low: float
    high: float
    unit: str = ""
    of: str = ""


@dataclass(eq=False)
class Missing(SaltbellError):
    """A fact is needed that nobody but the cook can know."""

    quantity: str


class Refused(SaltbellError):
    """A rule says no, and no words of the cook change that."""


@dataclass(eq=False)
class OverLimit(Refused):
    """A nitrite or nitrate dose over the limit of the jurisdiction."""

    substance: str
    found_mg_kg: float
    limit_mg_kg: float
    jurisdiction: str
    source: str
    status: str
    passing_cure_kg: float | None = None


@dataclass(eq=False)
class UnknownCure(Refused):
    """The strength of the curing salt is unknown, or the salt is no cure at all."""

    said: str


@dataclass(eq=False)
class TooLong(Refused):
    """A cure longer than the longest that is planned without a confirmation."""

    days: float
    limit_days: float


@dataclass(eq=False)
class RawTooLong(Refused):
    """Meat in salt alone that would lie raw for longer than the chart has it, from the salt to the fire.

    `fish` is no meat that a cure in place of the salt would keep.
    """

    days: float
    limit_days: float
    fish: bool = False


@dataclass(eq=False)
class TooLate(Refused):
    """What is asked to be changed is done: the meat is in its cure, on the fire, or off it."""

    what: str


@dataclass(eq=False)
class OtherWay(Refused):
    """A cut that may not be cured in this way; `ways` are those in which it may."""

    cut: str
    method: str
    ways: tuple[str, ...]


@dataclass(eq=False)
class ByTheClock(Refused):
    """Nitrite in a strong brine that is left by the clock: nobody can tell how much of it the meat took."""

    strength: float


@dataclass(eq=False)
class TooMany(Refused):
    """As many batches are under way in a chat as are kept apart there."""

    most: int


@dataclass(eq=False)
class TooSoon(SaltbellError):
    """No safe plan ends by the deadline; `earliest` does with the same piece and method."""

    deadline: datetime
    earliest: datetime
    cure_days_p90: float


@dataclass(eq=False)
class Gone(SaltbellError):
    """What was meant is not there, or not this person's to see."""

    what: str


@dataclass(eq=False)
class Unreadable(SaltbellError):
    """A data file is not as its schema says."""

    file: str
    where: str
    why: str


@dataclass(eq=False)
class NotKept(SaltbellError):
    """The store could not keep what was said (disk full, read-only, locked)."""

    why: str


@dataclass(eq=False)
class NotDelivered(SaltbellError):
    """A message could not be delivered now.

    `after` is the wait before the next try, None to give it up. `uncertain` says that it may have
    arrived all the same. `chat_gone` says that nothing more can reach this chat. `paced` says that nothing failed:
    its turn is simply not before `after`.
    """

    after: timedelta | None
    uncertain: bool = False
    chat_gone: bool = False
    moved_to: str | None = None
    paced: bool = False
