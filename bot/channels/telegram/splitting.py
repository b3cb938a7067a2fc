"""A long text as several messages, cut where a reader would pause.

Lengths are UTF-16 code units: the Bot API measures entities in them, and they are never fewer than characters.
"""

import re
from collections.abc import Iterator

TEXT_LIMIT = 4096  # Bot API, sendMessage: 1-4096 characters after entities parsing
CAPTION_LIMIT = 1024  # Bot API, sendPhoto
# tried in this order: between paragraphs, lines, sentences, words
PAUSES = (r"\n\s*\n", r"\n", r"(?<=[.!?…:;])\s+", r"\s+")


def length(text: str) -> int:
    """Length of a text as the Bot API may count it: UTF-16 code units."""
    return len(text) + sum(character > "\uffff" for character in text)


def split(text: str, limit: int = TEXT_LIMIT) -> list[str]:
    """The text as parts of at most `limit`, none of them blank; only blanks at a cut are lost."""
    return list(_parts(text.strip(), limit))


def _parts(text: str, limit: int) -> Iterator[str]:
    while length(text) > limit:
        head, tail = _cut(text, limit)
        yield head
        text = tail
    if text:
        yield text


def _cut(text: str, limit: int) -> tuple[str, str]:
    reach = _reach(text, limit)
    for pause in PAUSES:
        places = [place for place in re.finditer(pause, text[: reach + 1]) if place.start() >= reach // 4]
        if places:
            return text[: places[-1].start()].rstrip(), text[places[-1].end() :].lstrip()
    return text[:reach], text[reach:].lstrip()


def _reach(text: str, limit: int) -> int:
    """How many characters of the text fill `limit`."""
    reach, units = 0, 0
    for character in text:
        units += 2 if character > "\uffff" else 1
        if units > limit:
            break
        reach += 1
    return reach
