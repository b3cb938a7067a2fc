"""From a message to what was meant by it, and to the batch that it is about."""

from dataclasses import dataclass, replace
from typing import Any

from bot.conversation import of_the_meal, open_question, several, still_asked, whose
from bot.conversation.as_it_stands import fitted
from bot.conversation.half import unpack
from bot.conversation.in_one_go import in_one_go
from bot.conversation.in_the_making import brine_cools, to_weigh
from bot.conversation.likewise import likewise
from bot.intents.buttons import from_payload
from bot.intents.called import OfWhat, by_meat, names_meat
from bot.intents.context import Context
from bot.intents.intents import (
    Ask,
    Intent,
    Question,
    Reading,
    Settings,
    Start,
    Unclear,
)
from bot.intents.places import zones_at
from bot.intents.read import batch_named, read
from bot.reply import Message, Reply
from bot.wording import general, refusals
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.errors import Gone
from core.service import batches, steps
from core.service.turn import Turn

LONGEST = 4096
PLACES = ("location", "venue")


@dataclass(frozen=True)
class Understood:
    """What was meant: the intents in order, the batch that the talk is about, and the question that was open."""

    message: Message
    intents: tuple[Intent, ...]
    batch: str | None
    asked: dict[str, Any] | None
    a: Assessment | None = None
    sure: bool = True  # whether the batch was named, answered or tapped, or is the only one
    goes_on: bool = False  # another step follows this one in the same breath
    began: Assessment | None = None  # the batch before the first of several such steps

    @property
    def reading_says_it(self) -> bool:
        """Whether a line reads the pit or the brine and no more: with that is said what to do."""
        told = [t for one in self.intents if isinstance(one, Reading) for t in one.temperatures]
        return bool(told) and all(t.probe in (Probe.PIT, Probe.BRINE) for t in told)

    def of(self, named: str | None) -> str:
        """The batch that an intent is about; raises Gone where there is none."""
        found = named or self.batch
        if found is None:
            raise Gone("batch")
        return found


def understand(turn: Turn, message: Message) -> Understood | Reply:
    """What a message means, or the reply to one that cannot be read."""
    if message.pressed is not None:
        return _tapped(turn, message)
    if message.other is not None and not message.text.strip():
        return Reply(refusals.cannot_read(message.other), facts={"intent": "unreadable"})
    if message.other in PLACES:
        return _place(turn, message, unpack(turn.open_question()))
    message = whose.named(turn, message)
    asked, answered = _asked(turn, message)
    batch = _about(turn, message, asked, answered=answered)
    a = batches.look(turn, batch) if batch else None
    asked = None if a is not None and _tells_of_another(turn, message, asked, a) else asked
    if message.edits is not None:
        return _edited(turn, message, batch)
    called = steps.step_of_message(turn, batch, message.answers) if batch and message.answers else None
    context = context_of(turn, message, asked, a)
    context = replace(context, due_step=called) if called else context
    if too := likewise(turn, message.text, context):
        named = str(getattr(too[0], "batch", None))
        return Understood(message, too, named, asked, batches.look(turn, named))
    text = message.text[: LONGEST * 2]
    intents = still_asked.answered(text, asked, context, several.where_they_stand(turn, read(text, context)))
    meant = Understood(message, fitted(intents, message.text, a, called), batch, asked, a)
    if those := several.answered(intents, asked):
        return _of_those(turn, _line_kept(turn, meant), those)
    several_here = len(batches.open_here(turn)) > 1 and not all(getattr(one, "batch", None) for one in intents)
    certain = _certain(turn, message, asked if answered else None)
    return _sorted_out(turn, meant) if several_here and not certain else meant


def _tells_of_another(turn: Turn, message: Message, asked: dict[str, Any] | None, a: Assessment) -> bool:
    """Whether a line, while one batch is half begun, tells a deed or a reading of another: «brine at 3, beef in»."""
    if (asked or {}).get("said") is None or open_question.answers(turn, message, context_of(turn, message, asked, a)):
        return False
    intents = read(message.text[: LONGEST * 2], context_of(turn, message, None, a))
    return all(isinstance(intent, several.HAPPENED) for intent in intents)


def _asked(turn: Turn, message: Message) -> tuple[dict[str, Any] | None, bool]:
    """The question that is open to the line, and whether it is answered, as far as anything hangs on that."""
    alone = turn.said.chat == turn.said.person and len(batches.open_here(turn)) <= 1
    if alone:
        return open_question.own_of(turn, message), True

    def context(asked: dict[str, Any]) -> Context:
        here = {row.id for row in batches.open_here(turn)}
        batch = asked.get("batch")
        return context_of(turn, message, asked, batches.look(turn, batch) if batch in here else None)

    return open_question.of(turn, message, context)


def _place(turn: Turn, message: Message, asked: dict[str, Any] | None) -> Understood | Reply:
    """A shared location: the zone of the nearest place; where that is, is kept nowhere."""
    found = zones_at(message.text, message.said_at)
    if not found:
        return Reply(refusals.cannot_read(message.other or ""), facts={"intent": "unreadable"})
    return Understood(message, (Settings({"zone": found[0]}),), None, asked)


def _certain(turn: Turn, message: Message, asked: dict[str, Any] | None) -> bool:
    """Whether the batch was named, or the message answers one of ours or an open question about it."""
    replied = bool(message.answers and steps.batch_of_message(turn, message.answers))
    return replied or bool((asked or {}).get("batch")) or batch_named(message.text, _names(turn, message)) is not None


def _sorted_out(turn: Turn, meant: Understood) -> Understood | Reply:
    """A line without a name, among several batches: the one that it fits, all that it says, or the question which."""
    if meat := several.of_no_batch(turn, meant.message, meant.intents):
        return several.ask(turn, meant.message, meat=meat)
    if each := several.apart(turn, meant.intents):
        return replace(meant, intents=each)
    those = (
        several.fitting(turn, meant.message, meant.intents) or _read_for_each(turn, meant) or _elsewhere(turn, meant)
    )
    if len(those) > 1 and (
        (several.says_all(meant.message) and not several.measures_one(meant.intents))
        or in_one_go(turn, meant.intents, those)
    ):
        return _of_those(turn, meant, those)
    fit, those = those, whose.own_first(turn, those, meant.intents, meant.batch)
    if len(those) > 1 or (not those and several.is_bare(meant.message, meant.intents)):
        return several.ask(turn, meant.message, those)
    found = meant if not those or those[0] == meant.batch else _of_those(turn, meant, those)
    return replace(found, sure=len(fit) == 1)


def _elsewhere(turn: Turn, meant: Understood) -> tuple[str, ...]:
    """A line that means nothing in the batch of the talk, and a reading or a deed that waits in one other."""
    if not any(isinstance(intent, Question | Unclear) for intent in meant.intents):
        return ()
    others = [row.id for row in batches.open_here(turn) if row.id != meant.batch]
    own = whose.own(turn)
    if own in others and all(isinstance(intent, several.HAPPENED) for intent in _read_for(turn, meant, own)):
        return (own,)
    takes = [key for key in others if several.takes(_read_for(turn, meant, key)[0], batches.look(turn, key))]
    return tuple(takes) if len(takes) == 1 else ()


def _read_for_each(turn: Turn, meant: Understood) -> tuple[str, ...]:
    """The batches that a deed or a bare number can be of, the line read for each of them."""
    if meant.a is None or not several.tells(meant.intents) or several.said_twice(meant.intents, meant.a):
        return ()
    here = [row.id for row in batches.open_here(turn)]
    return tuple(key for key in here if several.may_be(_read_for(turn, meant, key), batches.look(turn, key)))


def _read_for(turn: Turn, meant: Understood, batch: str) -> list[Intent]:
    context = context_of(turn, meant.message, None, batches.look(turn, batch))
    return read(meant.message.text[: LONGEST * 2], context)


def _of_those(turn: Turn, meant: Understood, those: tuple[str, ...]) -> Understood:
    """The line read for each of the batches that it is about."""
    intents = tuple(i for key in those for i in several.of_all(_read_for(turn, meant, key), (key,)))
    return replace(meant, intents=intents, batch=those[0], a=batches.look(turn, those[0]))


def _line_kept(turn: Turn, meant: Understood) -> Understood:
    """The line that waited for the answer which batch it is about."""
    asked = meant.asked or {}
    turn.ask(None)
    said = replace(meant.message, text=asked["line"], said_at=asked["at"], pressed=None)
    return replace(meant, message=said, asked=None)


def _tapped(turn: Turn, message: Message) -> Understood | Reply:
    intent = from_payload(message.pressed or "")
    if intent is None:
        return Reply(general.old_button(), facts={"intent": "old_button"})
    named = getattr(intent, "batch", None)
    try:
        a = batches.look(turn, named) if named else None
    except Gone:
        return Reply(general.old_button(), facts={"intent": "old_button"})
    record = isinstance(intent, Ask) and intent.topic == "record"  # of a batch that is over it can still be had
    if a is not None and a.batch.finished and not record:
        return Reply(general.over(a), facts={"intent": "old_button"})
    meant = Understood(message, (intent,), named, unpack(turn.open_question()), a)
    those = several.answered((intent,), meant.asked)
    return _of_those(turn, _line_kept(turn, meant), those) if those else meant


def _edited(turn: Turn, message: Message, batch: str | None) -> Understood | Reply:
    """An edited message takes the place of what was read in it; where nothing was, it is asked to be said anew."""
    found = steps.said_in(turn, batch, message.edits or "") if batch else ()
    asked = unpack(turn.open_question())
    a = batches.look(turn, batch) if batch else None
    intents = read(message.text, context_of(turn, message, asked, a))
    if batch is None or not found or any(isinstance(i, Question | Unclear | Start) for i in intents):
        return Reply(general.edited(), facts={"intent": "edited"})
    for event in found:
        batches.correct(turn, batch, event.number, None)
    return Understood(replace(message, edits=None), tuple(intents), batch, asked, batches.look(turn, batch))


def _about(turn: Turn, message: Message, asked: dict[str, Any] | None, *, answered: bool) -> str | None:
    """The batch of the talk: the one named, the message or question answered, the last spoken of, the latest."""
    here = {row.id: row for row in batches.open_here(turn)}
    if len(here) <= 1:  # whatever else says which it is could only say the same
        return next(iter(here), None)
    by_name = batch_named(message.text, _names(turn, message))
    by_reply = steps.batch_of_message(turn, message.answers) if message.answers else None
    by_question = (asked or {}).get("batch") if answered else None
    candidates = (by_name, by_reply, by_question, steps.batch_last_spoken_of(turn))
    return next((c for c in candidates if c in here), list(here)[-1])


def _names(turn: Turn, message: Message) -> Context:
    """What tells which batch a line names: how they are called, and where it has a word for meat, what they are of."""
    here = tuple(reversed(batches.open_here(turn)))
    by_its_meat = bool(here) and names_meat(message.text.lower())
    return Context(
        now=message.said_at,
        batches=tuple((row.id, row.name) for row in here),
        of_what=tuple(_of_what(turn, row.id) for row in here) if by_its_meat else (),
    )


def _of_what(turn: Turn, batch: str) -> OfWhat:
    known = batches.look(turn, batch).batch
    return known.name.lower(), known.setup.product, known.setup.cut


def _elsewhere_named(
    turn: Turn, message: Message, a: Assessment | None
) -> tuple[tuple[str, str, float | None, float | None], ...]:
    """Where the batches stand that a line names, where it names several: each is read against its own phase."""
    text = by_meat(message.text.lower(), _names(turn, message).of_what)
    named = [row.id for row in batches.open_here(turn) if row.name.lower() in text]
    those = [batches.look(turn, key) for key in named if len(named) > 1 and (a is None or key != a.batch.id)]
    last = ((one.batch, one.batch.last(Probe.CORE), one.batch.last(Probe.PIT)) for one in those)
    return tuple(
        (b.id, b.phase.value, core.celsius if core else None, pit.celsius if pit else None) for b, core, pit in last
    )


def context_of(turn: Turn, message: Message, asked: dict[str, Any] | None, a: Assessment | None) -> Context:
    """What a line of this chat is read against: the batch as it stands, and the question that is open."""
    person = turn.person
    base = replace(
        _names(turn, message),
        zone=person.zone,
        units=person.units,
        language=person.language,
        asked=None if still_asked.is_it(asked) else (asked or {}).get("slot"),
        asked_value=(asked or {}).get("value"),
        asked_probe=Probe(probe) if (probe := (asked or {}).get("probe")) else None,
        asked_of_start=(asked or {}).get("said") is not None,
        flip_hours=person.flip_hours,
        home_zone=person.home_zone,
        elsewhere=_elsewhere_named(turn, message, a),
    )
    if a is None:
        return base
    core, pit = a.batch.last(Probe.CORE), a.batch.last(Probe.PIT)
    return replace(
        base,
        batch=a.batch.id,
        phase=a.batch.phase.value,
        last_core_c=core.celsius if core else None,
        core_at=core.at if core else None,
        last_pit_c=pit.celsius if pit else None,
        target_c=a.batch.setup.target_c,
        deadline=of_the_meal.in_mind(a),
        due_step=steps.due_step(turn, a),
        soon_step=steps.soon_step(a),
        mass=a.batch.setup.mass,
        dry=a.batch.setup.method == "dry",
        on_at=a.on_at,
        out_due=steps.out_due(a),
        brine_made=brine_cools(a),
        to_weigh=to_weigh(a),
        probe_asked=steps.probe_asked(a),
    )
