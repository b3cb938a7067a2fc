"""The place of the only process on a store that is one file: who holds it may take back every claim.

A lock on a file beside the store, since a lock on the store itself would disturb SQLite's own (closing a
second handle drops the locks of the first). The system frees it when the process ends, however it ends.
"""

import sys
from pathlib import Path
from typing import IO, Final


class Place:
    """The one place beside a database file."""

    def __init__(self, database: str | None) -> None:
        self.file: Final = Path(f"{database}.place")
        self._held: IO[bytes] | None = None

    def make_room(self) -> None:
        """Make the folder that the database is to stand in; raises OSError where that cannot be."""
        self.file.parent.mkdir(parents=True, exist_ok=True)

    def take(self) -> bool:
        """Whether it is ours now; taken once, it stays ours until `leave`."""
        if self._held is not None:
            return True
        try:
            handle = self.file.open("ab")
        except OSError:  # a read-only directory: nobody can say who is alone
            return False
        if not _lock(handle):
            handle.close()
            return False
        self._held = handle
        return True

    def leave(self) -> None:
        """Leave it to another."""
        if self._held is not None:
            self._held.close()
            self._held = None


def _lock(handle: IO[bytes]) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
