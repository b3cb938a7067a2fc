"""Several batches in one chat: which of them is meant, asked where it may be more than one, and named in what is said.

What is named, answered or tapped is certain. Else the one whose step, reading or trouble it can be; where that is
more than one it is asked, with the line kept meanwhile, and one tap says both.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Any

from bot.conversation import of_the_meal
from bot.conversation.half import pack
from bot.intents.clause import to_batch
from bot.intents.intents import (
    Ask,
    Change,
    Choose,
    HandOver,
    Happened,
    Intent,
    Invite,
    MoveDeadline,
    Question,
    Reading,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Unclear,
)
from bot.intents.meats import of_none
from bot.reply import Message, Reply
from bot.wording import batches as words
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.batch.events import Probe
from core.errors import TooSoon
from core.plan.steps import Kind, State, Step
from core.service import batches
from core.service.turn import Turn

ALL = "all"
FRESH = timedelta(hours=12)  # a step that was called for longer ago is not what a bare «done» means
NEAR = timedelta(hours=3)
OF_THE_RAW = {"thickness", "mass"}  # measured before it is cooked
SOON = timedelta(hours=36)  # a fire that somebody takes over is that of today or tomorrow
HOT = frozenset({Phase.COOKING, Phase.RESTING, Phase.CHILLING})
STANDS_IN = {
    Probe.FRIDGE: frozenset({Phase.CURING, Phase.DRYING}),
    Probe.BRINE: frozenset({Phase.WAITING}),
    Probe.CORE: HOT,
    Probe.PIT: frozenset({Phase.COOKING}),
}
BY_NUMBER = frozenset({Kind.FRIDGE_CHECK, Kind.READING, Kind.BRINE_CHECK, Kind.CHILL_CHECK})
HAPPENED = (StepDone, StepMissed, StepSkipped, Snooze, Reading, Happened)
RECORDED = (*HAPPENED, Change, MoveDeadline)
DEED_ASKED = re.compile(
    r"\W*(?:(?:do|should|shall|can) i |now )*(?:flip|turn|rinse|soak|rub|wrap|slice"
    r"|(?:take|pull|get|put)(?= (?:it|them|that)))(?: (?:it|them|that))?(?: out| off| in| on)?(?: now)? ?\?+\W*$"
)
BOTH = frozenset(("both", "all", "beide", "alle"))


def fitting(turn: Turn, message: Message, intents: Sequence[Intent]) -> tuple[str, ...]:
    """The batches that a line without a name can be about; none where the talk itself tells."""
    here = [batches.look(turn, row.id) for row in sorted(batches.open_here(turn), key=lambda row: row.name)]
    for intent in intents:
        found = tuple(a.batch.id for a in here if _can_be(intent, a, message)) or of_the_meal.kept(
            turn, intent, message
        )
        if found and says_all(message) and not _is_flip(intent):  # «both on», and one of them hours before its time
            return tuple(a.batch.id for a in here if a.batch.id in found or _waits_in(intent, a))
        if found:
            return found
    return ()


def apart(turn: Turn, intents: Sequence[Intent]) -> tuple[Intent, ...]:
    """«fridge 39 pit 250»: each number to the one batch where its thermometer stands; none where one has no such."""
    if len(intents) != 1 or not isinstance(reading := intents[0], Reading) or len(reading.temperatures) < 2:
        return ()
    here = [batches.look(turn, row.id) for row in batches.open_here(turn)]
    places = [[a.batch.id for a in here if t.probe and _stands_in(t.probe, a)] for t in reading.temperatures]
    if any(len(those) != 1 for those in places) or len({those[0] for those in places}) < 2:
        return ()
    each = zip(reading.temperatures, places, strict=True)
    return tuple(replace(reading, temperatures=(t,), batch=those[0]) for t, those in each)


def where_they_stand(turn: Turn, intents: Sequence[Intent]) -> list[Intent]:
    """«155 pit 245, bacon flipped»: beside what is told of one batch, a reading is of the one where it can stand."""
    said = sum(len(one.temperatures) if isinstance(one, Reading) else 1 for one in intents)
    here = [batches.look(turn, row.id) for row in batches.open_here(turn)] if said > 1 else []
    if len(here) < 2:
        return list(intents)
    read = ((_where_they_stand(one, here) if isinstance(one, Reading) and one.batch else [one]) for one in intents)
    return [intent for one in read for intent in one]


def _where_they_stand(reading: Reading, here: Sequence[Assessment]) -> list[Intent]:
    """A reading, as one for each of the batches in which its thermometers stand."""
    those: dict[str | None, list[Temperature]] = {}
    for t in reading.temperatures:
        places = [a.batch.id for a in here if t.probe and _stands_in(t.probe, a)]
        those.setdefault(places[0] if len(places) == 1 else reading.batch, []).append(t)
    return [replace(reading, batch=batch, temperatures=tuple(read)) for batch, read in those.items()]


def may_be(intents: Sequence[Intent], a: Assessment) -> bool:
    """Whether a line as it is read for a batch tells a deed that waits there, or asks about a bare number of it."""
    return any(_waits_in(intent, a) or (isinstance(intent, Unclear) and _is_number(intent)) for intent in intents)


def tells(intents: Sequence[Intent]) -> bool:
    """Whether a line tells a deed, or a thing to be asked about: what may be of another batch, too."""
    return any(isinstance(intent, StepDone | StepMissed | StepSkipped | Unclear) for intent in intents)


def said_twice(intents: Sequence[Intent], a: Assessment) -> bool:
    """Whether a deed was noted in the batch of the talk a while ago: done twice is once, and no other's."""
    kinds = {i.step.split("/")[0] for i in intents if isinstance(i, StepDone) and i.step}
    return any(key.split("/")[0] in kinds and a.now - at <= NEAR for key, at in a.batch.done.items())


def _is_number(intent: Unclear) -> bool:
    return intent.why == "number" and any(isinstance(option, Reading) for option in intent.options)


def _is_flip(intent: Intent) -> bool:
    """Whether it tells of a flip: the next one is hours away, and stays to be made."""
    return isinstance(intent, StepDone) and (intent.step or Kind.FLIP).split("/")[0] == Kind.FLIP


def _waits_in(intent: Intent, a: Assessment) -> bool:
    """«flipped», hours before the next: of a batch in which a step of that name waits at all."""
    if isinstance(intent, Unclear):
        return any(isinstance(option, StepDone) and option.step and _waits_in(option, a) for option in intent.options)
    kind = (intent.step or "").split("/")[0] if isinstance(intent, StepDone | StepMissed | StepSkipped) else ""
    if kind == Kind.FLIP and "into_cure" not in a.batch.done:
        return False  # nothing lies there yet
    waits = (step.state in (State.DUE, State.AHEAD) for step in (a.plan.steps if a.plan else ()) if step.kind == kind)
    return any(waits)


def takes(intent: Intent, a: Assessment) -> bool:
    """Whether a line as it is read for a batch is a reading there, or a deed that is called for about now."""
    waits = isinstance(intent, StepDone) and bool(intent.step) and a.plan is not None
    near = (s for s in a.plan.steps if abs(s.due - a.now) <= NEAR) if waits and a.plan else ()
    return isinstance(intent, Reading) or any(step.kind == getattr(intent, "step", "") for step in near)


def is_bare(message: Message, intents: Sequence[Intent]) -> bool:
    """«its done», «skip it», «flip it?» and nothing else, where no step was called for: it may be of each of them."""
    if len(intents) != 1:
        return False
    unnamed = isinstance(intents[0], StepDone | StepMissed | StepSkipped) and intents[0].step is None
    return unnamed or (isinstance(intents[0], Ask | Question) and bool(DEED_ASKED.match(message.text.lower())))


def of_all(intents: Sequence[Intent], those: Sequence[str]) -> tuple[Intent, ...]:
    """The intents, once for each of several batches."""
    return tuple(to_batch(intent, batch) for batch in those for intent in intents)


def says_all(message: Message) -> bool:
    """«both flipped»: said of every batch that it fits."""
    return bool(BOTH & set(message.text.lower().replace(",", " ").split()))


def measures_one(intents: Sequence[Intent]) -> bool:
    """«both turned, and the big one is 5.5 lb»: no weight and no thickness is that of each."""
    return any(isinstance(intent, Change) and bool(intent.changes.keys() & OF_THE_RAW) for intent in intents)


def of_no_batch(turn: Turn, message: Message, intents: Sequence[Intent]) -> str:
    """The meat that a line tells something of, where none of the batches here is one; else ""."""
    tells = any(isinstance(intent, RECORDED) for intent in intents)
    return of_none(message.text.lower(), [row.name for row in batches.open_here(turn)]) if tells else ""


def ask(turn: Turn, message: Message, those: Sequence[str] = (), meat: str = "") -> Reply:
    """Which of several batches, or of all where the `meat` that was named is none here: asked once, the line kept."""
    names = {row.id: row.name for row in batches.open_here(turn)}
    those = those or tuple(names)
    those = sorted(those, key=names.__getitem__)
    turn.ask({"slot": "batch", "line": message.text, "at": pack(message.said_at), "batches": list(those)})
    text, rows = words.which(message.text, tuple((key, names[key]) for key in those), meat)
    return Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": "batch"})


def answered(intents: Sequence[Intent], asked: dict[str, Any] | None) -> tuple[str, ...]:
    """The batches that an answer to the question names; none where it says more than that."""
    waits = asked is not None and asked.get("slot") == "batch" and bool(asked.get("line"))
    if not waits or asked is None or len(intents) != 1:
        return ()
    (intent,) = intents
    if not isinstance(intent, Choose) or intent.slot != "batch":
        return ()
    chosen = intent.batch or str(intent.value)
    return tuple(asked["batches"]) if intent.value == ALL or chosen == ALL else (chosen,)


def named(turn: Turn, replies: Sequence[Reply], *, sure: bool, meant: Sequence[Intent]) -> list[Reply]:
    """The replies with the name of their batch before them, where there are several; a wrong guess is one tap away."""
    rows = batches.open_here(turn)
    if len(rows) < 2:
        return list(replies)
    names = {row.id: row.name for row in sorted(rows, key=lambda row: row.name)}
    mend = not sure and any(isinstance(intent, RECORDED) for intent in meant)
    out = []
    for reply in replies:
        name = names.get(reply.about or "")
        if name is None:
            out.append(reply)
            continue
        if not sure and all(isinstance(intent, Unclear) for intent in meant) and not reply.buttons:
            text, taps = words.say_which(reply.text, names)
            out.append(replace(reply, text=text, buttons=taps))
            continue
        others = tuple((key, other) for key, other in names.items() if key != reply.about)
        taps = words.not_that_one(reply.about or "", others) if mend and "answer_kind" not in reply.facts else ()
        out.append(replace(reply, text=words.with_name(name, reply.text), buttons=(*reply.buttons, *taps)))
    return out


def _can_be(intent: Intent, a: Assessment, message: Message) -> bool:
    match intent:
        case StepDone(step=step) | StepMissed(step=step) | StepSkipped(step=step) | Snooze(step=step):
            return _goes_on_all_the_same(step, a) or any(map(_called(step, a, message), a.plan.steps if a.plan else ()))
        case Reading(temperatures=temperatures):
            return any(_stands_in(t.probe, a) for t in temperatures if t.probe)
        case Happened():
            return bool(a.batch.done)  # what nobody has begun cannot have leaked
        case Change(changes=changes) if changes.keys() <= OF_THE_RAW:
            return a.batch.phase in (Phase.WAITING, Phase.CURING)
        case Change() | MoveDeadline():
            return says_all(message)
        case HandOver(task=task):
            return _of_task(task, a)
        case Invite():
            return True
        case _:
            return False


def _goes_on_all_the_same(step: str | None, a: Assessment) -> bool:
    """Whether it is the beginning of a batch whose meal comes too soon: who goes on takes a later one."""
    return isinstance(a.refusal, TooSoon) and step in (Kind.BRINE, Kind.INTO_CURE) and step not in a.batch.done


def _of_task(task: str, a: Assessment) -> bool:
    """Whether a batch has what somebody takes over: a fire of today or tomorrow, flips, a dose; all of it, any has."""
    match task:
        case "fire":
            fires = a.plan.of_kind(Kind.LIGHT) if a.plan else ()
            return a.batch.phase in HOT or any(step.due - a.now <= SOON for step in fires if step.state is State.AHEAD)
        case "flips":
            return a.batch.phase is Phase.CURING
        case "cure":
            return a.batch.phase is Phase.WAITING
        case _:
            return True


def _stands_in(probe: Probe, a: Assessment) -> bool:
    mixed = probe is not Probe.BRINE or "brine" in a.batch.done
    if probe is Probe.PIT and "light" in a.batch.done and "meat_on" not in a.batch.done:
        return True  # a fire that burns for it
    return mixed and a.batch.phase in STANDS_IN.get(probe, frozenset())


def _called(meant: str | None, a: Assessment, message: Message) -> Callable[[Step], bool]:
    """Whether a step of a batch waits to be done, and is one that the words can mean."""

    def called(step: Step) -> bool:
        if meant is not None and step.kind != meant.split("/")[0]:
            return False
        if meant is None and (step.kind in BY_NUMBER or step.state is not State.DUE):
            return False
        waits = step.state is State.DUE or (step.state is State.AHEAD and step.due - a.now <= NEAR)
        return waits and a.now - step.due <= FRESH

    return called
