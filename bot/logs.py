"""Log lines for the keeper: one a line, plain or JSON, and never a word of what people say.

A fault is told by its kind and the places it passed, without its own words: those may quote a message.
"""

import json
import logging
import traceback
from datetime import UTC, datetime
from types import TracebackType

PLAIN = "%(asctime)s %(levelname)s %(name)s: %(message)s"
Fault = tuple[type[BaseException], BaseException, TracebackType | None] | tuple[None, None, None]


def fault(info: Fault) -> str:
    """A fault and what it came of: kinds and places, the innermost last."""
    _, found, _ = info
    told: list[str] = []
    while found is not None:
        places = (
            f"  {frame.filename}:{frame.lineno} {frame.name}" for frame in traceback.extract_tb(found.__traceback__)
        )
        told = [type(found).__name__, *places, *told]
        found = found.__cause__ or (None if found.__suppress_context__ else found.__context__)
    return "\n".join(told)


class PlainLine(logging.Formatter):
    """A line that a person reads."""

    def __init__(self) -> None:
        super().__init__(PLAIN)

    def formatException(self, ei: Fault) -> str:  # noqa: N802 - the name is the library's
        """The fault without its words."""
        return fault(ei)


class JsonLine(logging.Formatter):
    """One JSON object a line, for whatever collects them."""

    def format(self, record: logging.LogRecord) -> str:
        """The record as JSON."""
        line = {
            "at": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "room": record.name,
            "text": record.getMessage(),
        }
        told = fault(record.exc_info) if record.exc_info else record.exc_text
        return json.dumps(line | ({"fault": told} if told else {}), ensure_ascii=False)


def begin(level: str, *, as_json: bool) -> None:
    """From now on everything is logged so, to the standard error."""
    handler = logging.StreamHandler()
    handler.setFormatter(JsonLine() if as_json else PlainLine())
    logging.basicConfig(level=level.upper(), handlers=[handler], force=True)
