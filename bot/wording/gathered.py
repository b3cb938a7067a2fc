"""Several reminders that stand at the same time, in one message: the action of each, and its button."""

from collections.abc import Sequence
from datetime import datetime
from typing import NamedTuple

from bot.intents.intents import StepDone
from bot.reply import Button, Reply
from bot.wording import asking, households, language, numbers, reminders, steps, tasks
from core.batch.assess import Assessment
from core.plan.reminders import FLIP_AND_FRIDGE
from core.plan.steps import Step, Urgency


class Called(NamedTuple):
    """A step that is called for: its key, the kind of its reminder, when it was due (aware UTC), its batch, and whose."""

    step: str
    kind: str
    due_at: datetime
    a: Assessment
    who: str = ""


def say(standing: Sequence[Called]) -> Reply:
    """One message for all of them, each with the name of its batch before it."""
    found = [(call, call.a, step) for call in standing if call.a.plan and (step := call.a.plan.step(call.step))]
    rows = tuple(_button(a, step) for _, a, step in found if step.kind not in asking.ANSWERED_IN_WORDS)
    names = {a.batch.id: a.batch.name for _, a, _ in found}
    fridges = dict.fromkeys(reminders.fridge_too(a) for call, a, _ in found if call.kind == FLIP_AND_FRIDGE)
    facts = {"reminder": "several", "batches": sorted(names.values()), "steps": [step.key for _, _, step in found]}
    return Reply(
        "\n".join([*(_line(call, a, step) for call, a, step in found), *fridges]),  # of all of them once
        buttons=rows,
        kind="reminder",
        quiet=all(step.urgency is Urgency.QUIET for _, _, step in found),
        about=next(iter(names)) if len(names) == 1 else None,
        facts=facts,
    )


def _line(call: Called, a: Assessment, step: Step) -> str:
    """The action; all of it where it is more than a flip or a reading, since it is said only here."""
    name = a.batch.name[:1].upper() + a.batch.name[1:]
    text = tasks.task(step, a)
    text = text.split("\n", 1)[0] if step.urgency is Urgency.QUIET else text
    text = households.called(call.who, text) if call.who else text
    text = f"{name}: {text}"
    if a.now - call.due_at <= reminders.LATE:
        return text
    return language.say("{text} It was due {due}.", text=text, due=numbers.when(call.due_at, a.person, a.now))


def _button(a: Assessment, step: Step) -> tuple[Button, ...]:
    name = a.batch.name[:1].upper() + a.batch.name[1:]
    label = language.say("{name}: {step}: done", name=name, step=steps.name(step, a))
    return (asking.button(label, StepDone(step.key, batch=a.batch.id)),)
