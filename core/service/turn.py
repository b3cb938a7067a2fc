"""One turn of the talk: everything that one message changes happens in one transaction, or not at all.

The message's key, its effect and the replies to it are committed together; a message that comes again
changes nothing.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from core.person import Person
from core.service.entry import LISTENS, Entry
from core.store import inbox, outbox, people
from core.store.database import Database, Transaction

House = Database  # what is kept, as the rooms above the store name it


@dataclass(frozen=True)
class Said:
    """What the channel knows of a message.

    Its key (unique for each delivery), the chat, who spoke, when it was sent and when it arrived, and `ref`,
    its name in the channel, by which a later edit finds what it changed.
    """

    key: str
    chat: str
    person: str
    name: str
    said_at: datetime
    now: datetime
    language: str | None = None
    ref: str = ""


@dataclass
class Turn:
    """A turn under way. `person` is who spoke, as kept before and changed during this turn; a stranger is not kept."""

    tx: Transaction
    said: Said
    person: Person
    replies: int = 0
    entry: Entry = Entry.OPEN
    _for: str = ""  # whose question the line answers, where it is not the speaker's own

    @property
    def now(self) -> datetime:
        """When the turn happens, aware UTC."""
        return self.said.now

    def say(self, body: dict[str, Any], *, answering: str | None = None, about: str | None = None) -> str:
        """Put a reply into the outbox: it goes out once this turn is committed. `about` is the batch it speaks of."""
        self.replies += 1
        return outbox.put_reply(self.tx, self.said.chat, body, self.now, answering=answering, batch=about)

    def keep_person(self, **changes: Any) -> Person:
        """Change something that is kept of who spoke."""
        self.person = replace(self.person, **changes)
        people.save(self.tx, self.person)
        return self.person

    def open_question(self) -> dict[str, Any] | None:
        """What the bot last asked this person in this chat, if it still waits for an answer."""
        return people.asked(self.tx, self.said.chat, self.person.id)

    def asked_of_others(self) -> tuple[tuple[str, dict[str, Any]], ...]:
        """What the bot last asked others in this chat, with their ids; nothing in a private chat."""
        if self.said.chat == self.said.person:
            return ()
        there = people.asked_there(self.tx, self.said.chat)
        return tuple((person, question) for person, question in there.items() if person != self.person.id)

    def answer_for(self, person: str) -> None:
        """What is asked next, or answered, takes the place of that person's question too."""
        self._for = person

    def ask(self, question: dict[str, Any] | None) -> None:
        """Keep what the bot asks now, with the half intent it belongs to; None once it is answered."""
        if self._for:
            people.ask(self.tx, self.said.chat, self._for, None)
        people.ask(self.tx, self.said.chat, self.person.id, question)


Door = Callable[[Transaction, Said], Entry]


def open_door(_: Transaction, __: Said) -> Entry:
    """Everybody is listened to."""
    return Entry.OPEN


@contextmanager
def begin(house: House, said: Said, newcomer: Person, door: Door = open_door) -> Iterator[Turn | None]:
    """A turn for one message, or None where that message was taken before.

    `newcomer` holds the defaults of somebody who speaks for the first time; `door` says whether they are listened to.
    """
    with house.transaction() as tx:
        tx.take_turns(said.chat, said.person)
        if not inbox.first_time(tx, said.key, said.now):
            yield None
            return
        entry = door(tx, said)
        fresh = replace(newcomer, id=said.person, language=said.language or newcomer.language)
        yield Turn(tx, said, _person(tx, said, fresh) if entry in LISTENS else fresh, entry=entry)


def _person(tx: Transaction, said: Said, fresh: Person) -> Person:
    known = people.load(tx, said.person)
    if known is not None and (known.name == said.name or not said.name):
        return known
    person = replace(known or fresh, name=said.name)
    people.save(tx, person)
    return person
