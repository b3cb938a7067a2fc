"""What a person can ask for, one frozen dataclass a thing, each with a sentence that means it.

Times are aware UTC, quantities in units of the house; `batch` is one that was named, None that of the talk.
"""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from core.batch.events import Probe


@dataclass(frozen=True)
class Start:
    """«3.2 kg brisket flat for saturday 13:00». `said` holds the Setup fields that were understood.

    `pieces` are the masses [kg] of several pieces; "mass" in `said` is then their sum. `unclear` holds what was typed
    and could not be taken, as "slot:words": "unit:7.5", "mass:900 kg", "meat:moon", "strength:cure #1", "percent:3 %",
    "thickness:2 to 3 in", "deadline:sat 5" ("meals" in `said` are the days it may be), "cut:packer", "cooker:pellets".
    `assumed` names a usual value: "cut" (brisket is a flat), "deadline_hour", "deadline_next", and "deadline_shifted"
    or "deadline_twice" for a wall time that the clocks jump over or show twice. `then` are other meats to begin.
    """

    said: dict[str, Any] = field(default_factory=dict)
    unclear: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()
    pieces: tuple[float, ...] = ()
    then: tuple[dict[str, Any], ...] = ()


@dataclass(frozen=True)
class Change:
    """«it's 48 mm thick», «make it dry», «cure is 6.25 %», «pit 110 c»: Setup fields that were stated."""

    changes: dict[str, Any]
    batch: str | None = None


@dataclass(frozen=True)
class MoveDeadline:
    """«dinner moved to 15:00», «an hour earlier»: `to`, or `by`, a day; `assumed` as in Start; `eaten` «hot»."""

    to: datetime | None = None
    by: timedelta | None = None
    batch: str | None = None
    assumed: tuple[str, ...] = ()
    eaten: str = ""


@dataclass(frozen=True)
class StepDone:
    """«done», «flipped»: `step` is a key, a Kind, or None for what is due; `some_time`: of `at` the day is told."""

    step: str | None = None
    at: datetime | None = None
    detail: str = ""
    also_previous: bool = False
    batch: str | None = None
    some_time: bool = False


@dataclass(frozen=True)
class StepMissed:
    """«forgot this morning», «don't count sunday»: missed `at` a time (None: the latest), or all of its local day."""

    step: str | None = None
    at: datetime | None = None
    whole_day: bool = False
    batch: str | None = None


@dataclass(frozen=True)
class StepSkipped:
    """«skip that one», «skip the morning one»: `at` is about when it would be, None for the next."""

    step: str | None = None
    batch: str | None = None
    at: datetime | None = None


@dataclass(frozen=True)
class Snooze:
    """«later», «ok 20 mins», «remind me at 9»: one of `until` and `by`; neither means the usual while."""

    until: datetime | None = None
    by: timedelta | None = None
    step: str | None = None
    batch: str | None = None


@dataclass(frozen=True)
class Temperature:
    """One number of a reading: where (None: to be told from the phase), how warm, when (None: now).

    `unit` is "c" or "f", None where it was not said: `value` is then as typed, and settled by plausibility or asked.
    """

    value: float
    unit: str | None = None
    probe: Probe | None = None
    at: datetime | None = None


@dataclass(frozen=True)
class Reading:
    """«158», «158/245», «70c pit 120», «was 82f at 9, 44 at 7am». `beside` was read too and does not count: a lid."""

    temperatures: tuple[Temperature, ...]
    tender: bool = False
    batch: str | None = None
    beside: tuple[Temperature, ...] = ()


@dataclass(frozen=True)
class Correct:
    """«no, 185», «that was yesterday's», «it's celsius», «i flipped at 7 not 8»: what is different is set.

    `step` narrows a corrected hour to the step that was named. A unit of mass or length is that of the piece, in place
    of `unit_was` («lbs not kg»). `gone`: read off no meat, and taken out.
    """

    value: float | None = None
    unit: str | None = None
    probe: Probe | None = None
    at: datetime | None = None
    days_back: int = 0
    was: float | None = None
    to_batch: str | None = None
    step: str | None = None
    batch: str | None = None
    unit_was: str | None = None
    gone: bool = False


@dataclass(frozen=True)
class Undo:
    """«undo»; «take back the last flip»: `step` is a Kind, or "reading"."""

    batch: str | None = None
    step: str | None = None


@dataclass(frozen=True)
class Ask:
    """«what now», «plan», «why 11 days», «is it safe», «how much longer», «show me the curve».

    `topic` is one of now, who, plan, why, safe, eta, picture, log, dose, thickness, pit, yield, cautions, record,
    export; about the cure itself what_if, soak, law, judge, poison; beside the fire fuel, light, fire, wrap, stall,
    hold, chill, pull, tender, tough. `about` narrows "why" ("days", "dose", "hours", "chill"), "picture" ("cook",
    "cure", "chill"), "record" ("html", "csv", "json"; else PDF), "what_if" ("day", "inject", "immerse", "pierce",
    "split").
    """

    topic: str
    about: str = ""
    text: str = ""
    batch: str | None = None


@dataclass(frozen=True)
class Question:
    """Any other question: answered from the entries, or honestly not."""

    text: str


@dataclass(frozen=True)
class Happened:
    """«fire went out at 2», «power cut», «left it on the counter», «bag leaked», «i dosed it twice».

    `what` is one of fire_out, power_cut, warm_fridge, warm_brine, left_out, leaked, dosed_twice, spoiled, forgot_cure,
    wrong_salt, cure_as_salt, cure_in_rub, lid, flare, unwrapped, cut, frozen, thawed. `facts` may hold "salt"
    ("nitrate" or "no_cure"), "hours", "overnight", "core_c", "room_c", "celsius", "thickness", "all" (of it is frozen).
    """

    what: str
    facts: dict[str, Any] = field(default_factory=dict)
    at: datetime | None = None
    batch: str | None = None


@dataclass(frozen=True)
class Debrief:
    """«1.9 kg after», «grey 12 mm of 48», «took 9 hours», «8/10»: a mark of many; `unmeasured`: grey of no width."""

    mass: float | None = None
    grey: float | None = None
    of: float | None = None
    salt: int | None = None
    batch: str | None = None
    hours: float | None = None
    unmeasured: bool = False
    rated: tuple[float, float] | None = None


@dataclass(frozen=True)
class Settings:
    """«only kg and c», «we are in Chicago», «quiet from 23 to 6», «flips at 7 and 19», «gas cooker»: Person fields.

    No changes at all: the zone is wrong or unknown and has to be asked; `unclear` is then the place that was typed.
    """

    changes: dict[str, Any]
    unclear: str = ""


@dataclass(frozen=True)
class Pause:
    """«pause», «going out til 6», «away wed till fri»: from `since`, or now."""

    until: datetime | None = None
    batch: str | None = None
    since: datetime | None = None


@dataclass(frozen=True)
class Resume:
    """«ok I'm back, carry on»."""

    batch: str | None = None


@dataclass(frozen=True)
class HandOver:
    """«Jo has the fire till 8», «I weigh the cure»: `to` is a name, "me" or ""; `task` is fire, flips, cure or all."""

    to: str = ""
    at: datetime | None = None
    task: str = "all"
    batch: str | None = None
    until: datetime | None = None


@dataclass(frozen=True)
class Invite:
    """«invite», «share it with jo»: `to` is a name as typed, or ""."""

    to: str = ""
    batch: str | None = None


@dataclass(frozen=True)
class Join:
    """«join abcdefghjk», or the link of an invitation."""

    code: str


@dataclass(frozen=True)
class Leave:
    """«leave the batch»."""

    batch: str | None = None


@dataclass(frozen=True)
class Cancel:
    """«cancel», «stop this batch»; `sure` once it was confirmed."""

    batch: str | None = None
    sure: bool = False


@dataclass(frozen=True)
class Choose:
    """A tap or a word («yes», «6.25 %», «meat») that answers the bot: `slot` is what was asked, `value` the answer."""

    slot: str
    value: Any
    batch: str | None = None


@dataclass(frozen=True)
class Greet:
    """«hello», /start; `thanks` for «thanks», `nod` for «great», «got it»."""

    kind: str = "hello"


@dataclass(frozen=True)
class Help:
    """«help»."""


@dataclass(frozen=True)
class Unclear:
    """A bare or broken thing to be asked about; `options` are what it may be, `why` its sentence."""

    why: str
    text: str = ""
    options: tuple[Any, ...] = ()


Intent = (
    Start | Change | MoveDeadline | StepDone | StepMissed | StepSkipped | Snooze | Reading | Correct | Undo
    | Ask | Question | Happened | Debrief | Settings | Pause | Resume | HandOver | Invite | Join | Leave | Cancel
    | Choose | Greet | Help | Unclear
)  # fmt: skip
