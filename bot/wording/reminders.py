"""Words and buttons for each reminder: what to do now, and no more."""

from datetime import datetime, timedelta

from bot.reply import Reply
from bot.wording import (
    asking,
    cautions,
    general,
    incidents,
    language,
    lateness,
    named,
    numbers,
    put_in,
    safety,
    tasks,
)
from bot.wording.debriefs import next_slot
from core.batch.assess import Assessment, Change
from core.plan.reminders import FLIP_AND_FRIDGE
from core.plan.steps import Kind, Step, Urgency
from core.safety.findings import Outcome

LATE = timedelta(minutes=15)
ALERTS = frozenset({Kind.CHILL, Kind.CHILL_CHECK})
TO_EAT = frozenset({Kind.SLICE, Kind.SERVE, Kind.USE_BY})


def say(a: Assessment, step: Step, kind: str, told: tuple[datetime, int, bool]) -> Reply:
    """A reminder. `told` is when it was due, which repeat it is, and whether it may have arrived before."""
    due, occurrence, repeat = told
    text = _as_shown(step, a, tasks.task(step, a))
    if kind == FLIP_AND_FRIDGE:
        text = f"{text}\n{fridge_too(a)}"
    if occurrence:
        text = "\n".join([language.say("Still open: {text}", text=text), *named.again(step, a)])
    else:
        text = "\n".join([text, *named.following(step, a), *_extra(step, a), *cautions.of_step(step, a)])
    if a.now - due > LATE and not occurrence:  # «still open» says as much
        text = general.late_reminder(numbers.when(due, a.person, a.now), text)
    if repeat:
        text = general.repeat(text)
    return Reply(
        text,
        buttons=_buttons(step, a),
        kind="alert" if step.kind in ALERTS else "reminder",
        quiet=step.urgency is Urgency.QUIET,
        about=a.batch.id,
    )


def _as_shown(step: Step, a: Assessment, text: str) -> str:
    """A call to the table or the last day of what the record does not show safe begins with that."""
    found = a.ledger.verdict
    if step.kind not in TO_EAT or found.kind not in (Outcome.CANNOT_SAY, Outcome.EAT_NOW):
        return text
    lead = (safety.VERDICTS[found.kind], safety.finding(found.deciding, a))
    return "\n".join(lead if step.kind is Kind.USE_BY else (*lead, text))


def thrown(a: Assessment) -> Reply:
    """In place of an alert for meat that the clock alone has condemned."""
    return Reply(incidents.thrown(Change(None, a)), kind="alert", about=a.batch.id)


def fridge_too(a: Assessment) -> str:
    """The fridge is read with the flip."""
    return language.say(
        "And read the fridge: reply like «fridge {more}».", more="38 f" if a.person.units.temperature == "f" else "3 c"
    )


def _extra(step: Step, a: Assessment) -> list[str]:
    if step.kind is Kind.OUT and a.plan is not None:
        chance, weak = a.after_cure(), put_in.too_weak(a)
        pink = language.say(
            "By now {probability_pink} of pieces like this are pink in the middle.",
            probability_pink="" if chance is None else numbers.chance(chance.probability_pink),
        )
        return [weak or pink] if weak or chance is not None else []
    if step.kind is Kind.OFF and a.ready is not None:
        return [language.say("The estimate is {when}.", when=numbers.time_band(a.ready, a.person, a.now))]
    if step.kind is Kind.SLICE:
        asked = [asking.eaters(a.batch.id)[0]] if a.batch.setup.at_risk_eaters is None else []
        return [*lateness.late(a), *asked]
    return []


def _buttons(step: Step, a: Assessment) -> asking.Rows:
    if step.kind is Kind.DEBRIEF and next_slot(a) == "grey":
        return asking.after_slice(a.batch.id)
    if step.kind is Kind.SLICE and a.batch.setup.at_risk_eaters is None:
        return (*asking.step_buttons(step.key, a.batch.id), *asking.eaters(a.batch.id)[1])
    if step.kind in asking.ANSWERED_IN_WORDS:
        return asking.later_button(step.key, a.batch.id)
    return asking.step_buttons(step.key, a.batch.id)
