"""What went wrong and is not decided yet: its question, asked again where other news had taken its place."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from bot.conversation import answered, still_asked
from bot.conversation.understand import Understood
from bot.intents.deviations import ASKED, SLOT
from bot.intents.intents import Ask, Happened, Intent, Reading
from bot.reply import Reply
from bot.wording import asking, deviations
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.safety.incidents import needed
from core.safety.record import Incident
from core.service import batches
from core.service.turn import Turn

EATERS = "eaters"  # a yes or a no, and no fact of what went wrong
_STANDS = frozenset({"now", "catch_up", "safe", "plan"})  # asked so, what is open belongs to the answer


def decides(a: Assessment, what: str) -> tuple[str, asking.Rows, str]:
    """The question for the facts that still decide the latest of its kind, its buttons and slot; or nothing."""
    told = [i for i in a.ledger.record.incidents if i.what == what]
    return _question(a, told[-1]) if told else ("", (), "")


def again(turn: Turn, meant: Understood, replies: Sequence[Reply]) -> Sequence[Reply]:
    """The replies; behind what was read, told or asked, where no other question stands, the one that still decides."""
    before = meant.a if any(_news(intent, meant.a) for intent in meant.intents) else None
    if not replies or before is None or _open(before) is None or not _free(turn):
        return replies
    *others, last = replies
    if last.about != before.batch.id or last.to or last.document or last.picture:
        return replies
    found = _open(batches.look(turn, last.about))
    if found is None:
        return replies
    question, rows, asked = found
    if question not in last.text:
        last = replace(last, text=f"{last.text}\n{question}", buttons=(*last.buttons, *rows))
    turn.ask({**asked, "batch": last.about})
    return (*others, last)


def eaters(turn: Turn, batch: str, changes: dict[str, Any]) -> Reply | None:
    """The question for those at risk, where one kind of them alone was denied."""
    if changes.get("at_risk_eaters", "") is not None:
        return None
    text, rows = asking.eaters(batch)
    turn.ask({"slot": EATERS, "batch": batch})
    return Reply(text, buttons=rows, facts={"answer_kind": "asked_back", "asked": EATERS}, about=batch)


def _free(turn: Turn) -> bool:
    """Whether nothing else is asked that this question would displace."""
    return (turn.open_question() or {}).get("slot") in (None, answered.SLOT, still_asked.SLOT)


def _news(intent: Intent, a: Assessment | None) -> bool:
    """Whether what is open belongs behind it: of raw meat any reading, later only what asks how it stands."""
    raw = a is not None and a.batch.phase in (Phase.WAITING, Phase.CURING, Phase.DRYING)
    stands = isinstance(intent, Ask) and intent.topic in _STANDS
    return stands or isinstance(intent, Happened) or (raw and isinstance(intent, Reading))


def _open(a: Assessment) -> tuple[str, asking.Rows, dict[str, Any]] | None:
    """The question of the latest that is undecided; None where nothing is, or the meat is thrown away anyhow."""
    if a.ledger.thrown or a.batch.finished:
        return None
    for incident in reversed(a.ledger.record.incidents):
        question, rows, slot = _question(a, incident)
        if question:
            return question, rows, {"slot": slot} if slot == EATERS else {"slot": still_asked.SLOT, "what": slot}
    question, what = deviations.unshown(a, deviations.WATCHED)
    return (question, (), {"slot": still_asked.SLOT, "what": SLOT + what, "anew": True}) if question else None


def _question(a: Assessment, incident: Incident) -> tuple[str, asking.Rows, str]:
    wanted = needed(incident, a.ledger.record) if incident.what in ASKED else ()
    if wanted == ("at_risk_eaters",):
        return (*asking.eaters(a.batch.id), EATERS)
    question = deviations.wanted(incident.what, wanted)
    return question, (), SLOT + incident.what if question else ""
