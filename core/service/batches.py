"""Start, change, finish and list batches; correct and undo what was said of them."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from math import ceil
from typing import Any

from core.batch.assess import Assessment, Change, assess
from core.batch.batch import fold
from core.batch.events import Assumed, Changed, Corrected, Done, Event, Finished, Paused, Read, Resumed, Started, What
from core.batch.material import dose_of, piece_of
from core.batch.standing import effective
from core.batch.ways import alternatives
from core.errors import Gone, TooLate, TooSoon
from core.meat.cuts import cut
from core.plan.recipe import product, product_of_cut
from core.service import record, wishes
from core.service.anew import SETTLED_BY_THE_CURE, set_up_anew
from core.service.turn import Turn
from core.store import batches, members, people
from core.store.batches import Row


def start(turn: Turn, said: dict[str, Any], spoken: Callable[[str], str] = str) -> Change:
    """Begin a batch from what was said of it; what the person's past says stands where nothing was said.

    `spoken` puts its short name, "flat" or "ham", into the language of who begins it.

    Raises
    ------
    Gone
        There is no such product, cut or purpose.
    OutOfRange
        A weight, thickness or target that cannot be.
    TooMany
        As many as this chat keeps apart are under way.
    """
    record.make_room(turn)
    name = said.get("product") or product_of_cut(said["cut"]).name
    said = _in_pieces(said | {"cut": said.get("cut", product(name).cuts[0])})
    habits = _habits(turn, name, said["cut"])
    assumed = sorted((habits.keys() - said.keys()) | set(said.get("assumed", ())))
    setup = habits | said | {"product": name, "assumed": assumed}
    known = {key: value for key, value in setup.items() if key not in ("product", "assumed")}
    piece_of(product(name).setup(known))  # refuses before anything is kept: no batch without a beginning
    batch_id = batches.new_id(turn.tx)
    label = _label(turn, spoken(short_name(name, setup.get("cut", ""))))
    batches.add(turn.tx, batch_id, turn.said.chat, turn.person.id, label, turn.now)
    return _in_time(turn, record.add(turn, batch_id, [(Started(label, setup), turn.now)]))


def change(turn: Turn, batch_id: str, changes: dict[str, Any]) -> Change:
    """State or change something of the setup.

    Raises
    ------
    TooLate
        The meat is in its cure: the way it is cured is settled, but for water that it was found to lie in.
    OverLimit
        More nitrite is wished than the law allows, where the cure is weighed and no dose is worked out any more.
    """
    settled = changes.keys() & SETTLED_BY_THE_CURE - ({"method"} if "put_in_water" in changes else set())
    now = look(turn, batch_id)
    if settled and "into_cure" in now.batch.done:
        raise TooLate(min(settled))
    if "nitrite_target" in changes and now.batch.dosed is not None:
        dose_of(now.batch.setup.change({"nitrite_target": changes["nitrite_target"]}), now.person.jurisdiction)
    changed = Changed(changes, set_up_anew(turn, now.batch, changes))
    done = _in_time(turn, record.add(turn, batch_id, [(changed, turn.now)]))
    return done if "deadline" in changes else wishes.taken_up(turn, done)


def _in_time(turn: Turn, done: Change) -> Change:
    """Where the meal comes too soon for a method that is open, and no brine made, the quicker dry cure is assumed."""
    after = done.after
    settled = "method" in after.batch.setup.said or "brine" in after.batch.done
    if settled or not isinstance(after.refusal, TooSoon):
        return done
    quicker = next((way for way in alternatives(after) if way.name == "dry" and way.in_time), None)
    if quicker is None:
        return done
    taken = record.add(turn, after.batch.id, [(Assumed(dict(quicker.changes)), turn.now)])
    return Change(done.before, taken.after)


def finish(turn: Turn, batch_id: str, how: str) -> Change:
    """The batch is over: eaten, cancelled or thrown away."""
    return record.add(turn, batch_id, [(Finished(how), turn.now)])


def pause(turn: Turn, batch_id: str, until: datetime | None, since: datetime | None = None) -> Change:
    """Hold back what is not about safety, from a time or now until another or until further notice."""
    return record.add(turn, batch_id, [(Paused(until, since), turn.now)])


def resume(turn: Turn, batch_id: str) -> Change:
    """Let the reminders run again."""
    return record.add(turn, batch_id, [(Resumed(), turn.now)])


def undo(turn: Turn, batch_id: str) -> tuple[tuple[Event, ...], Change]:
    """Take back the last message that said something of a batch; raises Gone where there is nothing to take back."""
    events = _last_said(turn, batch_id)
    return events, record.add(turn, batch_id, [(Corrected(e.number), turn.now) for e in events])


def undo_everywhere(turn: Turn, batch_id: str) -> tuple[tuple[tuple[Event, ...], Change], ...]:
    """Take back the last message of a batch, and in each batch of this chat what that same message said of it.

    Raises Gone where there is nothing to take back.
    """
    message = _last_said(turn, batch_id)[-1].message
    others = [row.id for row in open_here(turn) if row.id != batch_id and last_message(turn, row.id) == message]
    return tuple(undo(turn, one) for one in (batch_id, *others))


def last_message(turn: Turn, batch_id: str) -> str | None:
    """The message that last said something of a batch; None where none did."""
    try:
        return _last_said(turn, batch_id)[-1].message
    except Gone:
        return None


def just_said(turn: Turn, but: str, within: timedelta) -> tuple[Event, ...]:
    """The last message of who speaks, of a batch of this chat other than `but`, where it is no older than that."""
    found: tuple[Event, ...] = ()
    for row in open_here(turn):
        if row.id == but or last_message(turn, row.id) is None:
            continue
        said = _last_said(turn, row.id)
        fresh = said[-1].by == turn.person.id and turn.now - said[-1].said_at <= within
        if fresh and (not found or said[-1].said_at >= found[-1].said_at):
            found = said
    return found


def just_said_by_another(turn: Turn, within: timedelta) -> tuple[str, tuple[Event, ...]]:
    """The latest message of somebody else, no older than that, with the batch of this chat that it was of."""
    said = [(row.id, _last_said(turn, row.id)) for row in open_here(turn) if last_message(turn, row.id) is not None]
    others = [each for each in said if each[1][-1].by != turn.person.id]
    batch, last = max(others, key=lambda each: each[1][-1].said_at, default=("", ()))
    return (batch, last) if last and turn.now - last[-1].said_at <= within else ("", ())


def undo_last(turn: Turn, batch_id: str, kind: str) -> tuple[tuple[Event, ...], Change]:
    """Take back the last step of a kind, or with "reading" those last read; raises Gone where there is none."""
    events = _last_read(turn, batch_id) if kind == "reading" else _last_done(turn, batch_id, kind)
    if not events:
        raise Gone("event")
    return events, record.add(turn, batch_id, [(Corrected(e.number), turn.now) for e in events])


def _last_read(turn: Turn, batch_id: str) -> tuple[Event, ...]:
    """The readings of the last message that held any, and the checks that they answered."""
    message = last_readings(turn, batch_id)[0][0].message
    said = (e for e in standing(turn, batch_id) if e.message == message)
    return tuple(e for e in said if isinstance(e.what, Read) or (isinstance(e.what, Done) and "_check" in e.what.step))


def _last_done(turn: Turn, batch_id: str, kind: str) -> tuple[Event, ...]:
    done = (e for e in standing(turn, batch_id) if isinstance(e.what, Done) and e.what.step.split("/")[0] == kind)
    return tuple(done)[-1:]


def correct(turn: Turn, batch_id: str, number: int, instead: What | None, *, at: datetime | None = None) -> Change:
    """Put something in the place of event `number`, or nothing."""
    return record.add(turn, batch_id, [(Corrected(number, instead, at), turn.now)])


def last_event(turn: Turn, batch_id: str) -> Event:
    """The last thing said of a batch as it stands; raises Gone where there is none."""
    said = [e for e in effective(batches.events(turn.tx, batch_id)) if not isinstance(e.what, Started | Assumed)]
    if not said:
        raise Gone("event")
    return said[-1]


def readings(turn: Turn, batch_id: str) -> tuple[tuple[Event, Read], ...]:
    """Every reading of a batch as it stands, in the order in which they were told."""
    return tuple((e, e.what) for e in effective(batches.events(turn.tx, batch_id)) if isinstance(e.what, Read))


def last_readings(turn: Turn, batch_id: str) -> tuple[tuple[Event, Read], ...]:
    """The readings of the last message that held any, as they stand; raises Gone where there is none."""
    found = readings(turn, batch_id)
    if not found:
        raise Gone("event")
    return tuple((e, what) for e, what in found if e.message == found[-1][0].message)


def _last_said(turn: Turn, batch_id: str) -> tuple[Event, ...]:
    """What an undo takes back: all of the last message; a correction too, but not an undo itself."""
    known = batches.events(turn.tx, batch_id)
    gone = {e.what.target for e in known if isinstance(e.what, Corrected) and e.what.is_undo}
    said = [
        e
        for e in known
        if e.number not in gone
        and not isinstance(e.what, Started | Assumed)
        and not (isinstance(e.what, Corrected) and (e.what.is_undo or e.what.target in gone))
    ]
    if not said:
        raise Gone("event")
    return tuple(e for e in said if e.message == said[-1].message)


def latest(turn: Turn, but: str = "") -> Assessment | None:
    """The last batch that this person began, one left aside; None where there is none."""
    rows = [row for row in batches.of_person(turn.tx, turn.person.id) if row.id != but]
    return record.look(turn.tx, rows[-1].id, turn.now) if rows else None


def look(turn: Turn, batch_id: str) -> Assessment:
    """A batch as it stands now; raises Gone where it is not this chat's."""
    row = batches.get(turn.tx, batch_id)
    if row is None or not _may_see(turn, row):
        raise Gone("batch")
    found = record.look(turn.tx, batch_id, turn.now)
    if row.chat == turn.said.chat:
        return found
    called = next((here.name for here in open_here(turn) if here.id == batch_id), found.batch.name)
    return replace(found, batch=replace(found.batch, name=called))


def standing(turn: Turn, batch_id: str) -> tuple[Event, ...]:
    """What was said of a batch, as it stands after every correction."""
    return effective(batches.events(turn.tx, batch_id))


def without(turn: Turn, batch_id: str, number: int) -> Assessment:
    """A batch as it would stand if event `number` had never been said: what a correction is held against."""
    rest = (event for event in standing(turn, batch_id) if event.number != number)
    return assess(fold(batch_id, rest), record.owner_of(turn.tx, batch_id), turn.now)


def open_here(turn: Turn) -> tuple[Row, ...]:
    """The batches that are under way in this chat, the latest last; where two are alike, the name says whose."""
    rows = batches.open_in(turn.tx, turn.said.chat)
    own = {row.name for row in rows if row.chat == turn.said.chat}
    alike = [row for row in rows if row.chat != turn.said.chat and row.name in own]
    return tuple(replace(row, name=_theirs(turn, row)) if row in alike else row for row in rows)


def _theirs(turn: Turn, row: Row) -> str:
    owner = people.load(turn.tx, row.owner)
    return f"{row.name} {owner.name.split()[0].lower()}" if owner and owner.name else f"{row.name} {row.id[:2]}"


def _may_see(turn: Turn, row: Row) -> bool:
    return row.chat == turn.said.chat or any(m.chat == turn.said.chat for m in members.of_batch(turn.tx, row.id))


def _in_pieces(said: dict[str, Any]) -> dict[str, Any]:
    """More than one piece of that cut can weigh, where nobody said how many: as few and as thick as they can be."""
    of = cut(said["cut"])
    if "pieces" in said or not of.portion or said["mass"] <= of.mass_high:
        return said
    return said | {"pieces": ceil(said["mass"] / of.mass_high), "assumed": ["pieces"]}


def _habits(turn: Turn, name: str, cut_name: str) -> dict[str, Any]:
    """What the person's settings and past batches say before they say anything."""
    person = turn.person
    own = product(name).defaults_of(cut_name)
    habits: dict[str, Any] = {"fridge_c": person.fridge_c} | ({} if "cooker" in own else {"cooker": person.cooker})
    if person.cure_nitrite_fraction is not None:
        habits["cure_nitrite_fraction"] = person.cure_nitrite_fraction
    usual = own.get("salt_fraction")
    if usual is not None and person.learned.salt_shift:
        habits["salt_fraction"] = usual + person.learned.salt_shift
    return habits


def short_name(name: str, cut_name: str) -> str:
    """What a batch is called by: its product, a brisket by its cut."""
    of_cut = name == "pastrami" and cut_name.startswith("brisket")
    return cut_name.rsplit("_", 1)[-1] if of_cut else name.replace("_", " ")


def _label(turn: Turn, base: str) -> str:
    """A name for the batch, unlike the others of this chat: "flat", "flat 2", "ham"."""
    taken = {row.name for row in batches.open_in(turn.tx, turn.said.chat)}
    names = (base if n == 1 else f"{base} {n}" for n in range(1, len(taken) + 2))
    return next(n for n in names if n not in taken)


def all_of(turn: Turn, person_id: str) -> list[tuple[Row, tuple[Event, ...]]]:
    """Every batch of a person with its log, in the order in which they were begun."""
    return [(row, batches.events(turn.tx, row.id)) for row in batches.of_person(turn.tx, person_id)]
