"""A temperature from the yard or the fridge: what cannot be is doubted, the rest is kept; none is lost in silence."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from bot.conversation.guesses import with_degrees
from bot.conversation.half import pack
from bot.conversation.otherwise import ways
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.deviations import SLOT
from bot.intents.intents import Correct, Happened, Reading, StepDone, Temperature
from bot.measures import from_house, to_house
from bot.reply import Reply
from bot.wording import asking, deviations, doneness, readings, recalled
from core.batch.assess import Assessment, Change
from core.batch.batch import Phase
from core.batch.doubts import RANGES, Doubted
from core.batch.events import Done, Probe, Read, What
from core.person import Person
from core.plan.steps import Kind, State, Step
from core.safety.fridge import COLD_F
from core.safety.history import printed_f
from core.service import batches
from core.service import readings as taking
from core.service.readings import Plain
from core.service.steps import AHEAD_OF_TIME
from core.service.turn import Turn
from core.units import Celsius, celsius_from_fahrenheit

SPOTS = frozenset({Probe.CORE, Probe.FRIDGE})  # where several places may be read in one look
BRINE_COLD_C = celsius_from_fahrenheit(40.0)


def take(turn: Turn, meant: Understood, intent: Reading) -> Sequence[Reply]:
    """Readings taken: every one is kept or doubted; none is dropped in silence."""
    a = taking.look(turn, intent.batch or _where_it_fits(turn, meant, intent))
    placed = [(_placed(t, a, turn.person, meant.message.said_at), t) for t in intent.temperatures]
    cooling = a.batch.phase in (Phase.RESTING, Phase.CHILLING)
    counted = deciding(placed, cooling=cooling)
    plain = [one for one, _ in counted]
    doubt = taking.doubt(a, plain)
    if doubt is not None:
        asked = ask(turn, a, plain, doubt, counted[doubt.which][1])
        return (replace(asked, text="\n".join((asked.text, *_not_counted(placed, counted, a)))),)
    scale = with_degrees(turn, intent.temperatures)
    replies = keep(turn, a, plain, tender=intent.tender)
    beside = [readings.lid(t.value, t.unit or turn.person.units.temperature) for t in intent.beside]
    beside += [*_not_counted(placed, counted, a), *([scale] if scale else [])]
    said = _without_the_call(turn, meant, replies[0].text, a.batch.id)
    said = _asked_no_more(turn, meant, said, plain)
    return (replace(replies[0], text="\n".join((said, *beside))), *replies[1:])


def _without_the_call(turn: Turn, meant: Understood, text: str, batch: str) -> str:
    """What a reading says without «take it off», where the same line tells that it is off."""
    off = any(isinstance(one, StepDone) and one.step == Kind.OFF for one in meant.intents)
    call = doneness.there(batches.look(turn, batch)) if off else ""
    return "\n".join(line for line in text.split("\n") if not call or line not in call.split("\n"))


def _asked_no_more(turn: Turn, meant: Understood, text: str, plain: Sequence[Plain]) -> str:
    """What a warm fridge says without «how long», where the same line tells that, or is asked about it as a mishap."""
    told = next((one for one in meant.intents if isinstance(one, Happened) and one.what == "warm_fridge"), None)
    slot = str((turn.open_question() or {}).get("slot"))
    if told is None or slot != f"{SLOT}warm_fridge":
        return text
    turn.ask(None)
    return text.replace(f"\n{deviations.read_warm(batches.look(turn, meant.of(told.batch)), plain)[0]}", "")


def mended(turn: Turn, asked: dict[str, Any], intent: Correct) -> Sequence[Reply]:
    """A doubted reading put right in words («no, 64», «it's celsius», «it's the pit»), and doubted anew."""
    a = taking.look(turn, asked["batch"])
    plain = waiting(asked)
    unit = intent.unit or (asked["unit"] if intent.value is None else turn.person.units.temperature)
    value = asked["typed"] if intent.value is None else intent.value
    which = _which(plain, int(asked["which"]), to_house(value, unit))
    plain[which] = (intent.probe or plain[which][0], to_house(value, unit), plain[which][2])
    doubt = taking.doubt(a, plain)
    if doubt is not None:
        typed = Temperature(value, unit) if doubt.which == which else _as_kept(plain[doubt.which], turn.person)
        return (ask(turn, a, plain, doubt, typed),)
    return keep(turn, a, plain)


def _which(plain: Sequence[Plain], doubted: int, celsius: Celsius) -> int:
    """The reading that a number puts right: the doubted one, or the one beside it where that alone can be so warm."""
    can_be = [low <= celsius <= high for low, high in (RANGES[probe] for probe, _, _ in plain)]
    return can_be.index(True) if can_be.count(True) == 1 and not can_be[doubted] else doubted


def waiting(asked: dict[str, Any]) -> list[Plain]:
    """The readings of the message that is doubted, as they were taken down."""
    return [(Probe(r["probe"]), float(r["celsius"]), r["at"]) for r in asked["readings"]]


def _as_kept(one: Plain, person: Person) -> Temperature:
    unit = person.units.temperature
    return Temperature(round(from_house(one[1], unit), 1), unit)


def deciding(placed: Sequence[tuple[Plain, Temperature]], *, cooling: bool = False) -> list[tuple[Plain, Temperature]]:
    """Of several places of the meat that were read at once («breast 163, thigh 172») the one that counts.

    That is the coldest on the fire, and the warmest as it cools; of a fridge always the warmest.
    """
    counts: dict[tuple[Probe, datetime | None], tuple[Plain, Temperature]] = {}
    for each in placed:
        (probe, celsius, _), at = each[0], each[1].at
        warmest = cooling or probe is Probe.FRIDGE
        if (probe, at) not in counts or (celsius > counts[probe, at][0][1]) is warmest:
            counts[probe, at] = each
    return [each for each in placed if each[0][0] not in SPOTS or counts[each[0][0], each[1].at] is each]


def _not_counted(
    placed: Sequence[tuple[Plain, Temperature]], counted: Sequence[tuple[Plain, Temperature]], a: Assessment
) -> list[str]:
    """That of several places one counts; of a fridge with how far they lie apart."""
    cold = [celsius for (probe, celsius, _), _ in placed if probe is Probe.FRIDGE]
    if len(counted) == len(placed):
        return []
    if len(cold) > 1:
        return [readings.of_the_fridge(min(cold), max(cold), a.person)]
    return [readings.counts(cooling=a.batch.phase in (Phase.RESTING, Phase.CHILLING))]


BELONGS = {Probe.FRIDGE: Phase.CURING, Probe.BRINE: Phase.WAITING, Probe.CORE: Phase.COOKING, Probe.PIT: Phase.COOKING}


def _where_it_fits(turn: Turn, meant: Understood, intent: Reading) -> str:
    """The batch that the talk is about; where a thermometer was named that only one other has, that one."""
    here, wanted = meant.of(None), {BELONGS.get(t.probe) for t in intent.temperatures if t.probe is not None}
    if len(wanted) != 1 or (meant.a is not None and meant.a.batch.phase in wanted):
        return here
    open_ones = [row.id for row in batches.open_here(turn) if row.id != here]
    fitting = [key for key in open_ones if batches.look(turn, key).batch.phase in wanted]
    return fitting[0] if len(fitting) == 1 else here


def _placed(temperature: Temperature, a: Assessment, person: Person, said_at: datetime) -> Plain:
    """Where and how warm. What nothing fits stands for the phase's own thermometer, and is doubted there."""
    cold = a.batch.phase in (Phase.WAITING, Phase.CURING, Phase.DRYING)
    probe = temperature.probe or (Probe.FRIDGE if cold else Probe.CORE)
    unit = temperature.unit or person.units.temperature
    return probe, to_house(temperature.value, unit), temperature.at or said_at


def keep(turn: Turn, a: Assessment, plain: Sequence[Plain], *, tender: bool = False) -> Sequence[Reply]:
    """Readings kept, with what they change."""
    happened: list[tuple[What, datetime]] = [(Read(probe, celsius), at) for probe, celsius, at in plain]
    happened += _steps_met(a, plain)
    after_a_cut = (turn.open_question() or {}).get("slot") == SLOT + "power_cut"  # whether the door stayed shut decides
    if not after_a_cut:
        turn.ask(None)
    change = taking.take(turn, a.batch.id, happened)
    text, rows = readings.report(change, plain, tender=tender)
    question, what = deviations.read_warm(change.after, plain)
    if question and not after_a_cut:
        turn.ask({"slot": SLOT + what, "batch": a.batch.id, "anew": True})
        text, rows = f"{text}\n{question}", ()
    return (Reply(text, buttons=rows, facts=facts(change.after) | _read(plain), about=a.batch.id),)


def put_right(turn: Turn, change: Change, plain: Plain, corrected: str) -> Reply:
    """A reading corrected: what the right one says is said as of any other, with the question that it raises."""
    a = change.after
    judged = readings.judged(change, [plain])
    both = (
        (corrected, judged) if a.batch.phase is Phase.COOKING else (judged, corrected)
    )  # on the fire: the hours first
    said = "\n".join(t for t in both if t)
    question, what = deviations.read_warm(a, [plain])
    if question:
        turn.ask({"slot": SLOT + what, "batch": a.batch.id, "anew": True})
    text = f"{said}\n{question}" if question else said
    return Reply(text, facts=facts(a) | _read([plain]), about=a.batch.id)


def _steps_met(a: Assessment, plain: Sequence[Plain]) -> list[tuple[What, datetime]]:
    """The steps that a reading itself answers: the brine is cold, the fridge was read."""
    if a.plan is None:
        return []
    met: list[tuple[What, datetime]] = []
    for probe, celsius, at in plain:
        if probe is Probe.BRINE and a.batch.setup.method == "dry":
            continue  # its brine is none of this plan: nothing of it was weighed
        if probe is Probe.BRINE and a.batch.phase is Phase.WAITING and "brine" not in a.batch.done:
            met.append((Done("brine"), at))  # whoever reads a brine has made it
        if probe is Probe.BRINE and celsius <= BRINE_COLD_C:
            met.append((Done("brine_check"), at))
        if probe is Probe.FRIDGE:
            met += [(Done(s.key), at) for s in a.plan.of_kind(Kind.FRIDGE_CHECK) if _is_met(s, celsius, at, a)]
    return met


def _is_met(check: Step, celsius: Celsius, at: datetime, a: Assessment) -> bool:
    """A check of the fridge that is called for; a cold last reading is that of a morning, though it is early."""
    last = a.batch.last(Probe.FRIDGE)
    cold = printed_f(celsius) <= COLD_F and (last is None or last.at <= at)  # no earlier one clears a warm one after it
    soon = check.due - at <= AHEAD_OF_TIME
    return check.state is State.DUE or (check.state is State.AHEAD and soon and cold)


def ask(
    turn: Turn,
    a: Assessment,
    plain: Sequence[Plain],
    doubt: Doubted,
    typed: Temperature,
    instead_of: int | None = None,
) -> Reply:
    """Ask about a reading that cannot be. `instead_of` is the number of the event that it is to correct, if any."""
    unit = typed.unit or turn.person.units.temperature
    first = (turn.open_question() or {}).get("slot") != "doubt"
    kept: list[dict[str, Any]] = [{"probe": p.value, "celsius": c, "at": pack(at)} for p, c, at in plain]
    turn.ask({
        "slot": "doubt", "batch": a.batch.id, "readings": kept, "which": doubt.which, "suggested": doubt.suggested,
        "suggested_probe": doubt.suggested_probe, "typed": typed.value, "unit": unit, "instead_of": instead_of,
        "suggested_at": pack(doubt.suggested_at), "why": doubt.why,
    })  # fmt: skip
    said = readings.typed(typed.value, unit)
    suggestion = readings.suggestion(doubt, turn.person, unit)
    slip_of_pit = doubt.why == "typing_slip" and plain[doubt.which][0] is Probe.PIT
    text, rows = asking.doubted(said, "pit_slip" if slip_of_pit else doubt.why, suggestion, a.batch.id)
    if first and instead_of is None and plain[doubt.which][0] is Probe.CORE:
        rows = asking.or_else(rows, typed.value, ways(a, typed.value, unit, doubt.why), a.batch.id)
    if doubt.why == "jump" and (known := recalled.before_a_jump(a, plain[doubt.which][0])):
        text = f"{text}\n{known}"
    if doubt.why != "range" and (supposed := recalled.if_right(taking.supposed(a, plain))):
        text = f"{text}\n{supposed}"
    others = [one for n, one in enumerate(plain) if n != doubt.which] if instead_of is None else []
    text = f"{text}\n{readings.with_the_answer(others, a)}" if others else text
    body = facts(a) | {"answer_kind": "asked_back", "asked": "doubt", "doubt": doubt.why}
    return Reply(text, buttons=rows, facts=body, about=a.batch.id)


def _read(plain: Sequence[Plain]) -> dict[str, Any]:
    return {f"read_{probe.value}_c": celsius for probe, celsius, _ in plain}
