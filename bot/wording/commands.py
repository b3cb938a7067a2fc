"""The few commands that are offered in a menu, by language and kind of chat; each is a plain word without the slash too.

A group is offered what concerns everybody in it; what is one person's own stays in the private chat.
"""

from typing import Final

from bot.wording.language import ENGLISH, OFFERED, Words, speaking

_DOES: Final = Words(
    {
        "plan": "The whole week on one page",
        "now": "What to do now",
        "batches": "Every batch under way",
        "safe": "Is it safe, and by which rule",
        "record": "Everything that was done, as a file to keep",
        "undo": "Take back the last thing said",
        "settings": "Units, hours, place: how to say them",
        "help": "What you can say here",
    }
)
_OF_CHATS: Final = {
    "private": ("plan", "now", "batches", "safe", "record", "undo", "settings", "help"),
    "group": ("plan", "now", "batches", "safe", "record", "undo", "help"),
}


def _menu(language: str, chats: str) -> tuple[str | None, str, tuple[tuple[str, str], ...]]:
    """The language (None: everybody's), the kind of chat, and the commands with what they do."""
    with speaking(language):
        commands = tuple((name, _DOES[name]) for name in _OF_CHATS[chats])
    return None if language == ENGLISH else language, chats, commands


MENUS: Final = tuple(
    _menu(language, chats) for chats in _OF_CHATS for language in (ENGLISH, *sorted(OFFERED - {ENGLISH}))
)
