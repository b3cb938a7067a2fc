"""A batch that several people have: inviting, joining, leaving, handing over, and who did what."""

from datetime import datetime, timedelta
from typing import Final

from core.batch.assess import Change
from core.batch.events import Done, Event, Handed
from core.errors import Gone
from core.service import batches as kept
from core.service import record
from core.service.turn import Turn
from core.store import batches, members, outbox, people
from core.store.batches import Row
from core.store.members import Member

OPEN_FOR: Final = timedelta(days=7)  # an invitation; judgement: a family answers within a week


def invite(turn: Turn, batch_id: str, handing: Handed | None = None) -> str:
    """A code that lets one more chat have a batch; raises Gone where the batch is not this chat's."""
    kept.look(turn, batch_id)
    return members.invite(turn.tx, batch_id, turn.now + OPEN_FOR, handing)


def join(turn: Turn, code: str) -> Change:
    """This chat has the batch too, and what was handed to whoever comes.

    Raises
    ------
    Gone
        There is no such invitation, it was used, its time is over, or so is the batch: one answer for all of them.
    TooMany
        As many as this chat keeps apart are under way in it; the invitation stays open.
    """
    record.make_room(turn)
    found = members.take(turn.tx, code, turn.now)
    row = None if found is None else batches.get(turn.tx, found.batch)
    if found is None or row is None or row.closed_at is not None:
        raise Gone("invitation")
    if row.chat != turn.said.chat:
        members.add(turn.tx, Member(row.id, turn.said.chat, turn.person.id, turn.now))
    if isinstance(found.handing, Handed):
        name = turn.person.name or found.handing.name
        taken = Handed(found.handing.task, max(found.handing.since, turn.now), turn.person.id, name, turn.said.chat)
        return record.add(turn, row.id, [(one, turn.now) for one in (taken, *_back(turn, found.handing, row))])
    after = record.look(turn.tx, row.id, turn.now)
    record.remind(turn.tx, after)
    return Change(after, after)


def _back(turn: Turn, handing: Handed, row: Row) -> tuple[Handed, ...]:
    """From the end of what was handed over on, who began the batch answers for it again."""
    if handing.until is None or handing.until <= turn.now:
        return ()
    return (Handed(handing.task, handing.until, row.owner, name_of(turn, row.owner), row.chat),)


def leave(turn: Turn, batch_id: str) -> bool:
    """This chat has the batch no longer; False where it was begun here, and so cannot be left."""
    kept.look(turn, batch_id)
    row = batches.get(turn.tx, batch_id)
    if row is None or row.chat == turn.said.chat:
        return False
    _out(turn, batch_id, turn.said.chat)
    return True


def _out(turn: Turn, batch_id: str, chat: str) -> None:
    """What a chat had taken over goes back to everybody."""
    members.remove(turn.tx, batch_id, chat)
    handed = record.look(turn.tx, batch_id, turn.now).batch.handed
    tasks = sorted({one.task for one in handed if one.chat == chat})
    record.add(turn, batch_id, [(Handed(task, turn.now), turn.now) for task in tasks])


def forget(turn: Turn) -> None:
    """Who is forgotten has no batch of others any more."""
    for member in members.of_person(turn.tx, turn.person.id):
        _out(turn, member.batch, member.chat)


def hand(turn: Turn, batch_id: str, handed: Handed) -> Change:
    """Somebody answers for something from a time on."""
    return record.add(turn, batch_id, [(handed, turn.now)])


def known(turn: Turn, batch_id: str, name: str) -> tuple[str, str, str] | None:
    """Id, chat and name of the one person of a batch that a name means; None where it is nobody, or may be two."""
    wanted = name.casefold()
    found = {
        person_id: (chat, called)
        for person_id, chat in _people(turn, batch_id)
        if (called := name_of(turn, person_id)) and wanted in (called.casefold(), called.casefold().split(" ")[0])
    }
    return next(((key, *rest) for key, rest in found.items()), None) if len(found) == 1 else None


def _people(turn: Turn, batch_id: str) -> list[tuple[str, str]]:
    """Everybody who has a batch or has spoken of it, each with the chat where they are reached."""
    row = batches.get(turn.tx, batch_id)
    sharing = {member.person: member.chat for member in members.of_batch(turn.tx, batch_id)}
    home = row.chat if row else turn.said.chat
    spoken = {event.by for event in batches.events(turn.tx, batch_id)} | ({row.owner} if row else set())
    return sorted(sharing.items()) + sorted((person, home) for person in spoken - sharing.keys())


def name_of(turn: Turn, person_id: str) -> str:
    """What a person is called; "" for one who is not known, or has no name."""
    person = people.load(turn.tx, person_id)
    return person.name if person else ""


def names(turn: Turn, batch_id: str) -> tuple[str, ...]:
    """The names of everybody who has a batch, in order."""
    found = (name_of(turn, person_id) for person_id, _ in _people(turn, batch_id))
    return tuple(sorted({name for name in found if name}))


def owner_name(turn: Turn, batch_id: str) -> str:
    """Who began a batch, by name."""
    row = batches.get(turn.tx, batch_id)
    return name_of(turn, row.owner) if row else ""


def is_shared(turn: Turn, batch_id: str) -> bool:
    """Whether more than one chat, or more than one person, has a batch."""
    return len(_people(turn, batch_id)) > 1


def in_group(turn: Turn, batch_id: str) -> bool:
    """Whether a batch was begun in a chat that is not its owner's own."""
    row = batches.get(turn.tx, batch_id)
    return row is not None and row.chat != row.owner


def who_did(turn: Turn, batch_id: str, step: str) -> tuple[str, datetime] | None:
    """Who said that a step was done, by id, and when it was; None where nobody did."""
    found = [e for e in kept.standing(turn, batch_id) if isinstance(e.what, Done) and e.what.step == step]
    return (_sayer(turn, batch_id, found[-1]), found[-1].at) if found else None


def _sayer(turn: Turn, batch_id: str, event: Event) -> str:
    """Who said it first: a correction of the hour is no deed."""
    first = next((e for e in batches.events(turn.tx, batch_id) if e.number == event.number), event)
    return first.by


def others(turn: Turn, batch_id: str) -> list[tuple[str, str]]:
    """Every other chat of a batch, with the language of who has it there."""
    row = batches.get(turn.tx, batch_id)
    who = {m.chat: m.person for m in members.of_batch(turn.tx, batch_id)} | ({row.chat: row.owner} if row else {})
    found = {chat: people.load(turn.tx, person) for chat, person in who.items() if chat != turn.said.chat}
    return [(chat, person.language if person else turn.person.language) for chat, person in sorted(found.items())]


def tell(turn: Turn, batch_id: str, chat: str, body: dict[str, object]) -> None:
    """Something to another chat of a batch."""
    outbox.put_reply(turn.tx, chat, body, turn.now, batch=batch_id)
