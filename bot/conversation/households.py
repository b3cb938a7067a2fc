"""A batch that several people have: inviting, joining, leaving, handing over; what one did is told to the rest."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime
from functools import partial

from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import HandOver, Invite, Join, Leave
from bot.reply import Reply, to_body
from bot.wording import answers, language, marks, safety
from bot.wording import households as words
from core.batch.assess import Assessment
from core.batch.events import Handed
from core.errors import Gone
from core.plan.steps import Kind, Step
from core.safety.findings import Outcome
from core.service import batches, households, steps
from core.service.turn import Turn

TOLD = frozenset({"step_done", "happened", "cancel"})  # intents of which those hear who have the batch too
HELD_BACK = frozenset({"answer_kind", "refused", "noted_before", "asked"})


def household(turn: Turn, meant: Understood, intent: Invite | Join | Leave | HandOver) -> Sequence[Reply]:
    """One of them done and answered."""
    match intent:
        case Join(code):
            return _join(turn, code)
        case Invite():
            a = batches.look(turn, meant.of(intent.batch))
            code = households.invite(turn, a.batch.id)
            return (
                Reply(words.invitation(a, code), facts=facts(a) | {"invitation": code}, about=a.batch.id, invite=code),
            )
        case Leave():
            return _leave(turn, batches.look(turn, meant.of(intent.batch)))
        case HandOver():
            return _hand_over(turn, meant, intent)


def _join(turn: Turn, code: str) -> Sequence[Reply]:
    try:
        change = households.join(turn, code)
    except Gone:
        return (Reply(words.no_invitation(), facts={"answer_kind": "declined"}),)
    a = change.after
    taken = next((one for one in reversed(a.batch.handed) if one.chat == turn.said.chat), None)
    _tell(turn, a, lambda: words.came(turn.person.name, a))
    if taken is not None:
        _tell(turn, a, lambda: words.takes(taken.name, taken, a))
    text = words.joined(a, households.owner_name(turn, a.batch.id), taken)
    return (Reply(text, facts=facts(a), about=a.batch.id),)


def _leave(turn: Turn, a: Assessment) -> Sequence[Reply]:
    if not households.leave(turn, a.batch.id):
        return (Reply(words.not_left(a), facts=facts(a) | {"answer_kind": "declined"}, about=a.batch.id),)
    _tell(turn, a, lambda: words.went(turn.person.name, a))
    return (Reply(words.left(a), facts={"left": a.batch.id}),)


def _hand_over(turn: Turn, meant: Understood, intent: HandOver) -> Sequence[Reply]:
    a = batches.look(turn, meant.of(intent.batch))
    handed = _handed(turn, meant, intent, a)
    if not handed.name or (not handed.person and not meant.message.in_group):
        code = households.invite(turn, a.batch.id, replace(handed, until=_end(turn, intent)))
        text = "\n".join((words.reach(handed.name, a, code), words.then(handed, _end(turn, intent), a)))
        return (Reply(text, facts=facts(a) | {"invitation": code}, about=a.batch.id, invite=code),)
    done = [_given(turn, batch, handed) for batch in _named_or_all(turn, a.batch.id, intent.batch)]
    about = done[0].batch.id if len(done) == 1 else None
    told_back = words.mine if intent.to == "me" and not turn.person.name else words.handed
    text = told_back(done[0], handed)
    if back := _back(turn, intent):
        done = [households.hand(turn, each.batch.id, back).after for each in done]
        text = f"{text}\n{words.back_from(back, done[0])}"
    return (Reply(text, facts=facts(done[0]) if about else {}, about=about),)


def _back(turn: Turn, intent: HandOver) -> Handed | None:
    """From the end of a hand-over on who speaks answers for it again; None where no end was told."""
    end = _end(turn, intent)
    if end is None:
        return None
    return Handed(intent.task, end, turn.person.id, turn.person.name or words.somebody(), turn.said.chat)


def _end(turn: Turn, intent: HandOver) -> datetime | None:
    ends = intent.until is not None and intent.until > max(intent.at or turn.now, turn.now)
    return intent.until if ends and intent.to != "me" and intent.task != "cure" else None


def _given(turn: Turn, batch: str, handed: Handed) -> Assessment:
    """One batch, or what has to be done with it, in other hands."""
    after = households.hand(turn, batch, handed).after
    _tell(turn, after, lambda: words.takes(handed.name, handed, after))
    return after


def _named_or_all(turn: Turn, meant: str, named: str | None) -> Sequence[str]:
    """Who has the fire or the flips has those of every batch that the same people have, unless one was named."""
    if named:
        return (named,)
    with_whom = {chat for chat, _ in households.others(turn, meant)}
    here = sorted(batches.open_here(turn), key=lambda row: row.name)
    alike = [row.id for row in here if {chat for chat, _ in households.others(turn, row.id)} == with_whom]
    return sorted(alike, key=lambda batch: batch != meant)


def _handed(turn: Turn, meant: Understood, intent: HandOver, a: Assessment) -> Handed:
    """To whom, as they are known in this batch; in a group a name that is not known is called by name there."""
    since = max(intent.at or turn.now, turn.now)
    if intent.to == "me":
        return Handed(intent.task, since, turn.person.id, turn.person.name or words.somebody(), turn.said.chat)
    found = households.known(turn, a.batch.id, intent.to) if intent.to else None
    if found is not None:
        person, chat, name = found
        return Handed(intent.task, since, person, name, chat)
    name = intent.to[:1].upper() + intent.to[1:]
    return Handed(intent.task, since, "", name, turn.said.chat if meant.message.in_group else "")


def who(turn: Turn, a: Assessment) -> Reply:
    """Everybody who is in, and who answers for what."""
    text = words.who(a, households.names(turn, a.batch.id), doser(turn, a))
    return Reply(text, facts=facts(a) | {"answer_kind": "batch", "topic": "who"}, about=a.batch.id)


def doser(turn: Turn, a: Assessment) -> str:
    """Who weighs the cure, by name: to whom it was handed, else who began the batch; "" where nobody else hears."""
    heard = households.is_shared(turn, a.batch.id) or households.in_group(turn, a.batch.id)
    if not heard or a.batch.setup.nitrite_target == 0.0:
        return ""
    handed = next((one.name for one in reversed(a.batch.handed) if one.task == "cure"), "")
    return handed or households.owner_name(turn, a.batch.id)


def is_dosing(a: Assessment, step: Step) -> bool:
    """Whether a step is the one in which the curing salt is weighed."""
    return a.batch.setup.nitrite_target != 0.0 and step.kind is Kind.BRINE


def before(turn: Turn, a: Assessment, step: Step) -> str:
    """Who did a step that was noted already, where it was somebody else; of a dose, that there is no second."""
    did = households.who_did(turn, a.batch.id, step.key)
    if did is None or did[0] == turn.person.id:
        return ""
    name = households.name_of(turn, did[0])
    if not name:
        return ""
    return words.no_second(did[1], name, a) if is_dosing(a, step) else words.by(name)


def of_dose(turn: Turn, a: Assessment, text: str) -> str:
    """The dose, with who weighs it, or that it is in."""
    did = households.who_did(turn, a.batch.id, str(Kind.BRINE))
    name = doser(turn, a)
    if not name:
        return text
    if did is not None:
        return f"{words.no_second(did[1], households.name_of(turn, did[0]) or name, a)}\n{text}"
    return f"{words.only_one(name)}\n{text}"


def told(turn: Turn, replies: Sequence[Reply]) -> None:
    """What was done, went wrong, ended or is to be thrown away, in one message to each other chat of its batch."""
    heard: dict[str, list[Reply]] = {}
    for reply in replies:
        if reply.about and not HELD_BACK & reply.facts.keys() and (reply.facts["intent"] in TOLD or _thrown(reply)):
            heard.setdefault(reply.about, []).append(reply)
    for batch, those in heard.items():
        a = steps.look(turn, batch)  # by the name that it has at home
        _tell(turn, a, partial(_all_of, turn, a, those), quiet=not any(map(_loud, those)))


def _thrown(reply: Reply) -> bool:
    return reply.facts.get("verdict") == Outcome.THROW_AWAY


def _loud(reply: Reply) -> bool:
    """A dose, so that there is no second one, and meat that nobody may eat."""
    return reply.facts.get("step_kind") == str(Kind.BRINE) or _thrown(reply)


def _all_of(turn: Turn, a: Assessment, those: Sequence[Reply]) -> str:
    return words.told(turn.person.name, "\n".join(dict.fromkeys(_line(reply, a) for reply in those)), a.batch.name)


def _line(reply: Reply, a: Assessment) -> str:
    """The first line of the answer; a step, what happened, and the verdict, in the language of who hears of it."""
    if _thrown(reply):
        return safety.VERDICTS[Outcome.THROW_AWAY]
    if what := reply.facts.get("happened"):
        return answers.incident(a, str(what)).split("\n", 1)[0]
    step = a.plan.step(str(reply.facts.get("step"))) if a.plan and reply.facts["intent"] == "step_done" else None
    if step is None or step.done_at is None:
        return reply.text.split("\n", 1)[0]
    return marks.was_done(step, a, step.done_at)


def _tell(turn: Turn, a: Assessment, text: Callable[[], str], *, quiet: bool = True) -> None:
    for chat, code in households.others(turn, a.batch.id):
        with language.speaking(code):
            said = Reply(text(), quiet=quiet, about=a.batch.id, language=language.spoken(), facts={"told": a.batch.id})
            households.tell(turn, a.batch.id, chat, to_body(said))
