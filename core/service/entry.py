"""Whether the bot listens to a message at all."""

from enum import StrEnum


class Entry(StrEnum):
    """What becomes of a message at the door."""

    OPEN = "open"  # it is listened to
    WELCOME = "welcome"  # it was the code: from here on this chat is listened to
    STRANGER = "stranger"  # the bot is private, and this chat was not let in
    FULL = "full"  # as many new chats came today as are taken in
    ENOUGH = "enough"  # as many messages came from this chat today as are taken; said once
    SILENT = "silent"  # that was said already


LISTENS = frozenset({Entry.OPEN, Entry.WELCOME})
