"""Everything that one derivation of the plan is told: the batch as set up, what was done of it, and the hour."""

from dataclasses import dataclass
from datetime import datetime, time

from core.but import but
from core.plan.hours import Wall
from core.plan.progress import Progress
from core.plan.recipe import Product
from core.plan.setup import Setup, by_the_clock
from core.plan.steps import Durations
from core.units import Hours

DRIED_IN_A_DAY: Hours = 6.0  # of a day that starts with a night in the salt. Common practice
BRINE_STIRRED: Hours = 1.0  # salt alone, stirred into cold water with ice, then read. Common practice


@dataclass(frozen=True)
class Case:
    """Everything that one derivation of the plan is told."""

    setup: Setup
    product: Product
    durations: Durations
    progress: Progress
    wall: Wall
    now: datetime
    flip_hours: tuple[time, ...] = (time(8, 0), time(20, 0))

    @property
    def chilled(self) -> bool:
        """Whether the meat is chilled before it is sliced."""
        return self.product.purpose(self.setup.purpose).chilled

    @property
    def needs_brine(self) -> bool:
        """Whether there is a brine to be made and chilled."""
        return self.setup.method in ("brine", "inject")

    @property
    def brine_wait(self) -> Hours:
        """From making the brine until it is cold: what was dissolved hot takes the night."""
        return BRINE_STIRRED if by_the_clock(self.setup) else self.product.hours.brine_chill

    @property
    def within_a_day(self) -> bool:
        """Whether it lies in salt alone and keeps raw for so few hours that salt, rack and fire follow in one go."""
        within = self.product.raw_within(self.setup)
        return within is not None and within <= 24.0 and not by_the_clock(self.setup)

    @property
    def dry_hours(self) -> Hours:
        """How long it dries before the fire."""
        usual = self.product.hours.dry
        return min(usual, DRIED_IN_A_DAY) if self.within_a_day else usual

    def done(self, key: str) -> datetime | None:
        """When a step was done, if it was."""
        return self.progress.done.get(key)

    def as_settled(self) -> "Case":
        """The case as it stood when the cook last said when the meal is; what was done since is not done yet."""
        then = min(self.now, self.progress.settled or self.progress.started)
        done = {key: at for key, at in self.progress.done.items() if at <= then}
        return but(self, now=then, progress=but(self.progress, done=done))

    def at_start(self) -> "Case":
        """The same case as if it were still the moment at which the batch was begun: what was asked for first."""
        return but(self, now=min(self.now, self.progress.started))
