"""How fast a core climbed between the last two readings, and when it is to be read again for that."""

from typing import Final

from core.heat.cook import History
from core.units import Celsius, Seconds

NEXT_LEAST_S: Final = 20 * 60.0
NEXT_MOST_S: Final = 2 * 3600.0
LEAST_WAIT_S: Final = 5 * 60.0


def at_this_pace(history: History, target_c: Celsius) -> Seconds:
    """When the core would be at the target, were it to climb on as between the last two readings; infinite if unknown.

    A core slows as it nears its pit, so it is hardly there sooner, whatever the members hold likely: by then it is
    read. Never within 5 minutes of the last thing seen, nor within 20 where the pace hangs on less than that.
    """
    readings = history.of("core")[-2:]
    apart = readings[-1].seconds - readings[0].seconds if readings else 0.0
    climb = readings[-1].celsius - readings[0].celsius if readings else 0.0
    if not LEAST_WAIT_S < apart <= NEXT_MOST_S or climb <= 0.0:
        return float("inf")
    least = LEAST_WAIT_S if apart >= NEXT_LEAST_S else NEXT_LEAST_S
    there = readings[-1].seconds + (target_c - readings[-1].celsius) * apart / climb
    return max(there, history.last + least)
