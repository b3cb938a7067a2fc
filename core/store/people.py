"""People: who is spoken to, and what the bot last asked them (a restart forgets neither)."""

from typing import Any, Final, cast

from sqlalchemy import bindparam, delete, select, update

from core.person import Person
from core.store.codec import decode, encode
from core.store.database import Transaction
from core.store.tables import asked as questions
from core.store.tables import people

_OF: Final = questions.c.chat == bindparam("of_chat"), questions.c.person == bindparam("of_person")
QUESTION: Final = select(questions.c.question).where(*_OF)
THERE: Final = select(questions.c.person, questions.c.question).where(_OF[0]).order_by(questions.c.person)
ANSWERED: Final = delete(questions).where(*_OF)
SETTINGS: Final = select(people.c.settings).where(people.c.id == bindparam("of"))


def load(tx: Transaction, person_id: str) -> Person | None:
    """The person of that id, None for a stranger."""
    return tx.once(_load, person_id, tables=frozenset({"people"}))


def save(tx: Transaction, person: Person) -> None:
    """Keep a person as they are now."""
    new = tx.insert(people).values(id=person.id, settings=encode(person))
    tx.execute(new.on_conflict_do_update(index_elements=["id"], set_={"settings": new.excluded.settings}))


def asked(tx: Transaction, chat: str, person_id: str) -> dict[str, Any] | None:
    """What this person was last asked in this chat and has not answered, with the half intent it belongs to."""
    return tx.once(_asked, chat, person_id, tables=frozenset({"asked"}))


def asked_there(tx: Transaction, chat: str) -> dict[str, dict[str, Any]]:
    """What the people of a chat were last asked in it and have not answered, by their ids."""
    found = tx.execute(THERE, {"of_chat": chat}).all()
    return {row.person: cast("dict[str, Any]", decode(row.question)) for row in found}


def ask(tx: Transaction, chat: str, person_id: str, question: dict[str, Any] | None) -> None:
    """Keep what is asked now, in place of what was asked before; None when it was answered or dropped."""
    if question is None:
        if asked(tx, chat, person_id) is not None:
            tx.execute(ANSWERED, {"of_chat": chat, "of_person": person_id})
        return
    new = tx.insert(questions).values(chat=chat, person=person_id, question=encode(question))
    instead = {"question": new.excluded.question}
    tx.execute(new.on_conflict_do_update(index_elements=["chat", "person"], set_=instead))


def forget(tx: Transaction, person_id: str) -> None:
    """Nothing is kept of a person any more: neither settings nor what they were asked, in any chat."""
    tx.execute(delete(questions).where(questions.c.person == person_id))
    tx.execute(delete(people).where(people.c.id == person_id))


def chat_moved(tx: Transaction, old: str, new: str) -> None:
    """The chat has another id now; what was asked in the new one already stands."""
    known = select(questions.c.person).where(questions.c.chat == new)
    tx.execute(delete(questions).where(questions.c.chat == old, questions.c.person.in_(known)))
    tx.execute(update(questions).where(questions.c.chat == old).values(chat=new))


def _asked(tx: Transaction, chat: str, person_id: str) -> dict[str, Any] | None:
    kept = tx.execute(QUESTION, {"of_chat": chat, "of_person": person_id}).scalar()
    return None if kept is None else cast("dict[str, Any]", decode(kept))


def _load(tx: Transaction, person_id: str) -> Person | None:
    kept = tx.execute(SETTINGS, {"of": person_id}).scalar()
    return None if kept is None else cast("Person", decode(kept))
