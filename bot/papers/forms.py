"""The forms in which a record is had, and the file that each makes."""

from collections.abc import Callable
from typing import Final

from bot.apart import apart
from bot.papers.guarded import rows
from bot.papers.page import page
from bot.papers.plain import plain
from bot.wording.records import record
from core.batch.batch_record import BatchRecord

FORMS: Final[dict[str, Callable[[BatchRecord], bytes]]] = {
    "pdf": lambda r: apart("bot.papers.sheet:sheet", record(r)),
    "html": lambda r: page(record(r)),
    "csv": rows,
    "json": plain,
}
