"""The whole bot on a machine whose clock is off: `python -m tests.durability.off_by SECONDS run`.

Only this process sees it so: whoever asks Python for the time here is told another.
"""

import datetime as times
import sys
import time
from typing import Any

TRUE = times.datetime
TRUE_SECONDS = time.time


class Sees(type):
    """Any moment is one of the class that stands in for `datetime`."""

    def __instancecheck__(cls, thing: object) -> bool:
        return isinstance(thing, TRUE)


def shift(seconds: float) -> None:
    """From now on every import finds a clock that is off by so much."""
    off = times.timedelta(seconds=seconds)

    class Shifted(TRUE, metaclass=Sees):
        __slots__ = ()  # as large as the true one, which compiled libraries look at

        def __new__(cls, *args: Any, **kwargs: Any) -> Any:
            return TRUE(*args, **kwargs)

        @classmethod
        def now(cls, tz: times.tzinfo | None = None) -> Any:
            return TRUE.now(tz) + off

    times.datetime = Shifted  # type: ignore[misc]
    time.time = lambda: TRUE_SECONDS() + seconds


if __name__ == "__main__":
    # compiled libraries know the true class by its address, and ask nobody for the time
    import numpy  # noqa: F401
    import psycopg  # noqa: F401
    import sqlalchemy.dialects.postgresql.psycopg  # noqa: F401

    shift(float(sys.argv[1]))
    from bot.__main__ import main

    sys.exit(main(sys.argv[2:]))
