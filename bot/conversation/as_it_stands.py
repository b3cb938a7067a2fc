"""What a line tells, fitted to the batch as it stands: the step that was called for, meat that still thaws or is in."""

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot.conversation import of_the_meal
from bot.intents.intents import Change, Happened, Intent, Snooze, StepDone, StepMissed, StepSkipped
from bot.intents.questions import is_question
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.plan.steps import Kind

_IN_ITS_CURE: Final = re.compile(
    r"\b(?:brin\w*|cur\w+|bag\w*|tub|bucket|pickle|salt\w*|inject\w*|lake|pökel\w*|beutel)\b"
)
_THAWED: Final = re.compile(r"\b(?:thawed|defrosted|aufgetaut)\b")
_INJECTED: Final = re.compile(r"\binjected\b(?! (?:is|it is)\b)", re.IGNORECASE)


def fitted(intents: Sequence[Intent], text: str, a: Assessment | None, called: str | None) -> tuple[Intent, ...]:
    """What was told, each thing once; `called` is the step of the reminder that the line answers."""
    frozen = any(isinstance(one, Change) and one.changes.get("frozen") for one in intents)  # «frozen solid btw»
    told = [_thawed(of_the_meal.put_right(one, text, a) if a else one, a, text) for one in intents]
    told = [_to_thaw(_put_in(_of_step(one, called), a, text), a, text, frozen) for one in told]
    told = [*_frozen_after_all(told, a, text), *told]
    return tuple(one for n, one in enumerate(told) if one not in told[:n])  # «injected and in the tub»


def _frozen_after_all(told: Sequence[Intent], a: Assessment | None, text: str) -> list[Intent]:
    """«thawing it now», of meat that nobody said was frozen: it has to thaw through before it meets the cure."""
    thaws = any(isinstance(one, StepDone) and one.step == Kind.THAW for one in told)
    known = a is None or a.batch.setup.frozen or any(isinstance(one, Change) for one in told)
    raw = a is not None and a.batch.phase is Phase.WAITING and "into_cure" not in a.batch.done
    return [Change({"frozen": True})] if thaws and raw and not known and not _THAWED.search(text.lower()) else []


def _of_step(intent: Intent, called: str | None) -> Intent:
    """An answer to a reminder that names no step means the one that was called for there."""
    unnamed = isinstance(intent, StepDone | StepMissed | StepSkipped | Snooze) and intent.step is None
    return replace(intent, step=called) if called and unnamed else intent  # type: ignore[type-var]


def _put_in(intent: Intent, a: Assessment | None, text: str) -> Intent:
    """«injected it», where the pickle for that is made and the meat not in it: done, and no change of plan.

    What runs out of the needle's holes is no leak of a bag in which nothing lies yet.
    """
    wished = isinstance(intent, Change) and intent.changes == {"method": "inject"}
    ran_out = isinstance(intent, Happened) and intent.what == "leaked"
    told = (wished or ran_out) and _INJECTED.search(text)
    if not told or a is None or a.batch.phase is not Phase.WAITING or "brine" not in a.batch.done:
        return intent
    planned = a.batch.setup.method == "inject" and not is_question(text.lower())
    return StepDone(str(Kind.INTO_CURE)) if planned else intent


def _thawed(intent: Intent, a: Assessment | None, text: str) -> Intent:
    """«its thawed», of meat that is down as frozen: it is over, and does not begin now."""
    over = isinstance(intent, StepDone) and intent.step == Kind.THAW and _THAWED.search(text.lower())
    return Change({"frozen": False}) if over and a is not None and a.batch.setup.frozen else intent


def _to_thaw(intent: Intent, a: Assessment | None, text: str, frozen: bool) -> Intent:
    """«in the fridge since last night», of meat that is still frozen: there it thaws, and in no cure."""
    into = isinstance(intent, StepDone) and intent.step == Kind.INTO_CURE
    done = a.batch.done.keys() if a is not None else ()
    waits = a is not None and (frozen or a.batch.setup.frozen) and not {"thaw", "into_cure"} & {*done}
    named = _IN_ITS_CURE.search(text.lower())
    return replace(intent, step=str(Kind.THAW)) if into and waits and not named else intent  # type: ignore[call-arg]
