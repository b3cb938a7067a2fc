"""A batch that several people have: inviting, joining, leaving, handing over; what one did is told to the rest."""

from collections.abc import Sequence

from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import Cancel, HandOver, Happened, Intent, Invite, Join, Leave, StepDone
from bot.reply import Reply, to_body
from bot.wording import households as words
from bot.wording import language
from core.batch.assess import Assessment
from core.batch.events import Handed
from core.errors import Gone
from core.plan.steps import Kind, Step
from core.service import batches, households, steps
from core.service.turn import Turn

TOLD = (StepDone, Happened, Cancel)


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
    _tell(turn, a, words.came(turn.person.name, a))
    if taken is not None:
        _tell(turn, a, words.takes(taken.name, taken, a))
    text = words.joined(a, households.owner_name(turn, a.batch.id), taken)
    return (Reply(text, facts=facts(a), about=a.batch.id),)


def _leave(turn: Turn, a: Assessment) -> Sequence[Reply]:
    if not households.leave(turn, a.batch.id):
        return (Reply(words.not_left(a), facts=facts(a) | {"answer_kind": "declined"}, about=a.batch.id),)
    _tell(turn, a, words.went(turn.person.name, a))
    return (Reply(words.left(a), facts={"left": a.batch.id}),)


def _hand_over(turn: Turn, meant: Understood, intent: HandOver) -> Sequence[Reply]:
    a = batches.look(turn, meant.of(intent.batch))
    handed = _handed(turn, meant, intent, a)
    if not handed.name or (not handed.person and not meant.message.in_group):
        code = households.invite(turn, a.batch.id, handed)
        text = words.reach(handed.name, a, code)
        return (Reply(text, facts=facts(a) | {"invitation": code}, about=a.batch.id, invite=code),)
    after = households.hand(turn, a.batch.id, handed).after
    _tell(turn, after, words.takes(handed.name, handed, after))
    return (Reply(words.handed(after, handed), facts=facts(after), about=a.batch.id),)


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
    """Who weighs the cure, by name: to whom it was handed, else who began the batch; "" where nobody else is in."""
    if not households.is_shared(turn, a.batch.id) or a.batch.setup.nitrite_target == 0.0:
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


def told(turn: Turn, replies: Sequence[Reply], intents: Sequence[Intent]) -> None:
    """What was done, went wrong or ended, to every other chat of the batch; a dose so that it is heard."""
    if not any(isinstance(intent, TOLD) for intent in intents):
        return
    for reply in replies:
        refused = {"answer_kind", "refused", "noted_before", "asked"} & reply.facts.keys()
        if reply.about and not refused:
            _tell_of(turn, reply)


def _tell_of(turn: Turn, reply: Reply) -> None:
    a = steps.look(turn, reply.about or "")  # by the name that it has at home
    text = words.told(turn.person.name, reply.text.split("\n", 1)[0], a.batch.name)
    _tell(turn, a, text, quiet=reply.facts.get("step_kind") != str(Kind.BRINE))


def _tell(turn: Turn, a: Assessment, text: str, *, quiet: bool = True) -> None:
    body = Reply(text, quiet=quiet, about=a.batch.id, language=language.spoken(), facts={"told": a.batch.id})
    households.tell_others(turn, a.batch.id, to_body(body))
