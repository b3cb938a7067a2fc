"""Who is let in: those of a list or with a code where the bot is private, everybody within limits where it is open.

A group is let in as a whole; who is let in in person is so in every chat. An invitation to a batch lets in too: whoever
gave it was let in. A day is one of UTC.
"""

import hmac
from dataclasses import dataclass
from datetime import date
from typing import Final

from core.service.entry import Entry
from core.service.turn import Said
from core.store import members, visits
from core.store.database import Transaction

TRIES: Final = 5  # messages of a stranger in a day that are looked at: a code cannot be found by trying


@dataclass(frozen=True)
class Rules:
    """Whom the keeper lets in.

    `allowed` are numbers of people and groups, `code` is what anybody may say to be let in: with either the bot is
    private. Without, `messages` of one chat and `new_chats` are taken in a day, None for no limit.
    """

    allowed: frozenset[str] = frozenset()
    code: str | None = None
    messages: int | None = None
    new_chats: int | None = None
    keeper: str | None = None

    @property
    def private(self) -> bool:
        """Whether only some are let in."""
        return bool(self.allowed) or self.code is not None


@dataclass(frozen=True)
class Knock:
    """What is said at the door: the words, and the code of an invitation to a batch that they hold."""

    text: str
    invitation: str | None = None


def entry(rules: Rules, knock: Knock, tx: Transaction, said: Said) -> Entry:
    """What becomes of a message at the door; it is counted."""
    if said.person == rules.keeper:
        return Entry.OPEN
    return _private(rules, knock, tx, said) if rules.private else _limited(rules, tx, said)


def _private(rules: Rules, knock: Knock, tx: Transaction, said: Said) -> Entry:
    if {said.person, said.chat} & rules.allowed or visits.admitted(tx, said.chat, said.person):
        return Entry.OPEN
    found = visits.count(tx, said.chat, _day(said))
    if found.messages > TRIES:
        return Entry.SILENT
    invited = knock.invitation is not None and members.opens(tx, knock.invitation, said.now)
    if not invited and (rules.code is None or not _is_code(knock.text, rules.code)):
        return Entry.STRANGER
    visits.admit(tx, said.chat)
    return Entry.OPEN if invited else Entry.WELCOME


def _is_code(text: str, code: str) -> bool:
    """Whether it is the code, alone or behind the word with which a channel opens a link."""
    plain = text.strip().removeprefix("/start").strip()
    return hmac.compare_digest(plain.encode(), code.encode())


def _limited(rules: Rules, tx: Transaction, said: Said) -> Entry:
    if rules.messages is None and rules.new_chats is None:
        return Entry.OPEN
    day = _day(said)
    found = visits.count(tx, said.chat, day)
    if found.new and rules.new_chats is not None and visits.new_on(tx, day) > rules.new_chats:
        visits.drop(tx, said.chat)
        return Entry.FULL
    if rules.messages is None or found.messages <= rules.messages:
        return Entry.OPEN
    return Entry.ENOUGH if found.messages == rules.messages + 1 else Entry.SILENT


def _day(said: Said) -> date:
    return said.now.date()
