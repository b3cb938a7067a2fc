"""What each pattern needs, kept beside Python's own bytecode: to read it from 2,300 patterns costs a second of a start.

It is kept as bytecode is: for this Python and this `needed.py` alone, only where bytecode may be written, and where it
cannot be read or written, all goes on without it.
"""

import hashlib
import json
import secrets
import sys
from contextlib import suppress
from importlib.util import cache_from_source
from pathlib import Path
from typing import Final

from core.patterns import needed
from core.patterns.needed import Need, needs

NAME: Final = "needs.json"


class Kept:
    """The needs of patterns in a file, until they are kept there; None: nothing is kept."""

    def __init__(self, file: Path | None) -> None:
        self._file = file
        self._by: Final = _maker()
        self._known: Final = _read(file, self._by)
        self._new = False

    def needs(self, pattern: str, flags: int) -> tuple[Need, ...]:
        """What a pattern needs, as it is kept, or read from it now."""
        name = f"{flags} {pattern}"
        if name in self._known:
            return tuple(frozenset(need) for need in self._known[name])
        found = needs(pattern, flags)
        if self._file is not None:
            self._known[name] = [sorted(need) for need in found]
            self._new = True
        return found

    def keep(self) -> None:
        """Keep what was read from patterns since the start, and forget it. Two processes may do so at once."""
        file, self._file = self._file, None
        if file is not None and self._new:
            beside = file.with_name(f"{file.name}.{secrets.token_hex(4)}")
            with suppress(OSError):
                file.parent.mkdir(parents=True, exist_ok=True)
                beside.write_text(json.dumps({"by": self._by, "needs": self._known}), "utf-8")
                beside.replace(file)
        self._known.clear()


def place() -> Path | None:
    """Where bytecode would be kept, where it may be written."""
    return None if sys.dont_write_bytecode else Path(cache_from_source(needed.__file__)).with_name(NAME)


def _maker() -> str:
    """What the needs are read by: another Python or another reader may read others."""
    try:
        source = Path(needed.__file__).read_bytes()
    except OSError:  # in an archive
        return ""
    return hashlib.blake2b(source + sys.version.encode(), digest_size=16).hexdigest()


def _read(file: Path | None, by: str) -> dict[str, list[list[str]]]:
    try:
        told = json.loads(file.read_text("utf-8")) if file is not None and by else {}
        known: dict[str, list[list[str]]] = told["needs"] if told.get("by") == by else {}
    except (OSError, ValueError, AttributeError, KeyError):
        return {}
    return known


KEPT: Final = Kept(place())
