"""The forms in which a record is had, and the file that each makes."""

from collections.abc import Callable
from typing import Final

from bot.papers.guarded import rows
from bot.papers.page import page
from bot.papers.plain import plain
from bot.wording.records import record
from core.batch.batch_record import BatchRecord


def _sheet(r: BatchRecord) -> bytes:
    from bot.papers.sheet import sheet  # the PDF writer costs a start half a second

    return sheet(record(r))


FORMS: Final[dict[str, Callable[[BatchRecord], bytes]]] = {
    "pdf": _sheet,
    "html": lambda r: page(record(r)),
    "csv": rows,
    "json": plain,
}
