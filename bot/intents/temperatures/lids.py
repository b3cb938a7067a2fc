"""A dial in the lid, read beside the grate: the grate is where the meat lies, so the lid is heard and not noted."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Temperature
from bot.intents.temperatures.plausible import Number, meanings
from core import patterns as re
from core.batch.events import Probe

_LID: Final = r"(?:the )?(?:lid|dome|dial)"
_VALUE: Final = r"(?P<{}>\d{{3}})(?: ?(?P<{}_unit>[cf])\b)?"
_READ: Final = re.compile(
    rf"(?:,? ?(?:and|but))? ?\b{_LID}\b(?:[^\d]{{0,12}}| (?:thermometer|gauge|probe"
    rf"|dial)[^\d]{{0,12}}){_VALUE.format('after', 'after')}"
    rf"|(?:,? ?(?:and|but))? ?\b{_VALUE.format('before', 'before')} (?:on|at|in|by) {_LID}\b(?! \d)"
)


def grate_alone(text: str, context: Context) -> tuple[str, tuple[Temperature, ...]]:
    """A plain line without what the lid read, and that; as it is where no grate was read beside it."""
    found = _READ.search(text) if "grate" in text.split() else None
    if found is None:
        return text, ()
    side = "after" if found["after"] else "before"
    number = Number(float(found[side]), found[f"{side}_unit"], Probe.PIT)
    return _READ.sub("", text, count=1).strip(" ,"), meanings(number, context)[:1]
