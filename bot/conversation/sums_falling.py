"""Sums of a core that falls: against the rules of cooling, or as meat that is kept hot for the table."""

import re
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import accumulate
from math import log
from typing import Final

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.intents.sums.of_days import EATEN_AT
from bot.intents.sums.of_heat import between, drops, kept_hot, since_the_first, steps_down
from bot.intents.sums.told import Told
from bot.wording import sums_falling
from bot.wording.cooling import GRANTS
from core.errors import Missing
from core.safety.cooling import CoolingVerdict, StageJudgement, judge_cooling
from core.safety.cooling_rules import CoolingRule, Use, judged_rules
from core.safety.findings import Outcome, Status
from core.safety.history import printed_f
from core.service.turn import Turn
from core.units import Celsius, Hours, celsius_from_fahrenheit

HOT_C: Final[Celsius] = 60.0  # 140 °F: from there on the cooling is counted; sources.FSIS_DANGER_ZONE
ROOM_C: Final[Celsius] = 20.0
COOL_C: Final[Celsius] = 26.7  # 80 °F: a fall that begins under it may be one in °C. Judgement
_PLAIN: Final = re.compile(
    r"\b(?:uncured|(?:not|isnt|never|wasnt) cured|(?:no|without)(?: any)? (?:cure|nitrite)|plain)\b"
)
_CURED: Final = re.compile(r"^(?!.*\b(?:un|not |isnt |never )cured\b).*\b(?:cured|pastrami|ham|bacon|corned)\b")


def _cooling(turn: Turn, line: Told) -> Answer:
    """Readings of a falling core as a history that ends now, and judged as any other.

    Where only the end is told, it began as hot as the clock of the rule: no credit for hoping.
    """
    if found := drops(line):
        return _still_hot(turn, line, ((-1.0, found[0] + found[1]), (0.0, found[0])))
    marks = _marks(line)
    if kept_hot(line) and len(marks) > 1:
        return _still_hot(turn, line, marks)
    began = turn.now - timedelta(hours=marks[-1][0])
    history = tuple((began + timedelta(hours=hours), core) for hours, core in marks)
    verdict = _no_credit(judge_cooling(history, None, None, turn.now + timedelta(minutes=1)), marks[0][1])
    if _PLAIN.search(line.text) and verdict.kind is Outcome.CANNOT_SAY and verdict.of(GRANTS).clock is Status.FAILED:
        verdict = replace(verdict, kind=Outcome.THROW_AWAY)  # the longer rule is for cured meat
    keys = (verdict.decided_by.rule.source.key, "FSIS_COOLING_1999")
    body = {"verdict": verdict.kind.value, "hours": marks[-1][0]}
    said = sums_falling.cooled(verdict, turn.person, _latest(verdict.next_stage, line, began))
    if line.reads_f and marks[0][1] < COOL_C and not measures.of_kind(line.text, "temperature"):
        said = f"{said}\n{sums_falling.as_fahrenheit()}"
    if ahead := _ahead(verdict, marks):
        said = f"{said}\n{ahead}"
    if _CURED.search(line.text) and verdict.kind is Outcome.CANNOT_SAY:
        longer = next(judged for judged in verdict.rules if _is_longer(judged.rule))
        runs = next((one for one in longer.stages if one.status is Status.OPEN), None)
        left = sums_falling.by_the_longer_rule(longer, runs, _latest(runs, line, began), turn.person)
        said = f"{said}\n{left}".strip()
    return said, keys, body


def _no_credit(verdict: CoolingVerdict, first: Celsius) -> CoolingVerdict:
    """A rule that begins hotter than the first reading is not kept by it: nobody knows how long it took from there."""
    shorter = verdict.of(GRANTS)
    hoped = verdict.decided_by is not shorter and printed_f(first) < verdict.decided_by.stages[0].stage.from_f
    if not hoped or shorter.clock is not Status.FAILED or verdict.kind not in (Outcome.SAFE, Outcome.NOT_YET):
        return verdict
    return replace(verdict, kind=Outcome.CANNOT_SAY, decided_by=shorter, stage=shorter.stages[0])


def _marks(line: Told) -> tuple[tuple[Hours, Celsius], ...]:
    """Hours from the first reading on, and the readings; none whose time is not told, however cold it is."""
    told_ = steps_down(line)
    hot = told_ if len(told_) > 1 else (max(HOT_C, *line.temperatures), *line.temperatures)
    hot = hot[: max(len(line.clocks), len(line.durations) + 1, 2)]
    clocks = line.clocks[: len(hot)] if EATEN_AT.search(line.text) else line.clocks  # the last is that of the meal
    if len(clocks) == len(hot):
        hours = since_the_first(line)[: len(hot)]
    elif len(line.durations) >= len(hot) - 1:
        hours = [0.0, *accumulate(line.durations[: len(hot) - 1])]
    else:
        took = between(line)
        if took is None:
            raise Missing("hours")
        hot, hours = (hot[0], hot[-1]), [0.0, took]
    return tuple(zip(hours, hot, strict=True))


def _round(line: Told) -> Hours:
    return 12.0 if line.half_told else 24.0


def _still_hot(turn: Turn, line: Told, marks: tuple[tuple[Hours, Celsius], ...]) -> Answer:
    """Meat that is kept for the table and still above 60 °C: how long that lasts, and whether it does to the meal."""
    (_, first), (_, last) = marks[-2:]
    soon, late = _until(HOT_C, marks)
    meal = line.clocks[len(marks)] if len(line.clocks) == len(marks) + 1 else None
    wanted = None if meal is None else (meal - line.clocks[len(marks) - 1]) % _round(line)
    body = {"stays_h": soon, "wanted_h": -1.0 if wanted is None else wanted, "fell_k": first - last}
    return sums_falling.kept_hot(last, (soon, late), wanted, turn.person), ("FSIS_DANGER_ZONE",), body


def _until(goal: Celsius, marks: tuple[tuple[Hours, Celsius], ...]) -> tuple[Hours, Hours]:
    """Hours from the last reading to a colder one: straight on, and slowing down as in the air of a room."""
    (began, first), (ended, last) = marks[-2:]
    hours = max(ended - began, 1.0 / 60.0)
    straight = (last - goal) / max(first - last, 0.1) * hours
    slowing = log((last - ROOM_C) / (goal - ROOM_C)) / log((first - ROOM_C) / (last - ROOM_C)) * hours
    return straight, slowing


def _latest(judged: StageJudgement | None, line: Told, began: datetime) -> Hours | None:
    """The hour of the day at which the stage that runs is over, where the hour of the first reading is told."""
    if judged is None or judged.deadline is None or not line.clocks:
        return None
    ahead = (judged.deadline - began) / timedelta(hours=1)
    told = line.open_halves.index(False) if not all(line.open_halves) else 0  # the first hour that is known
    return (line.clocks[told] - since_the_first(line)[told] + ahead) % 24.0


def _ahead(verdict: CoolingVerdict, marks: tuple[tuple[Hours, Celsius], ...]) -> str:
    """Whether it will be cold enough in time, where two readings show how fast it falls in the stage that runs."""
    judged = verdict.next_stage
    if verdict.kind is not Outcome.NOT_YET or judged is None or len(marks) < 2:
        return ""
    goal = celsius_from_fahrenheit(judged.stage.to_f)
    if not ROOM_C < goal < marks[-1][1] < marks[-2][1]:
        return ""
    return sums_falling.in_time(_until(goal, marks), judged.stage.max_h - judged.hours_by_line)


def _cold_by(turn: Turn, line: Told) -> Answer:
    """Until when a core must be cold that was read hot at an hour: by the rule that grants, and by that of cured meat.

    Each clock runs from that reading on, at 130 °F or hotter: later it may begin, and sooner never.
    """
    began = _nearest_half(turn, line.clocks[0]) if line.half_told else line.clocks[0]
    rules = {rule.use: rule for rule in judged_rules() if rule.key == GRANTS or _is_longer(rule)}
    granted, longer = rules[Use.GRANTS], rules[Use.CURED]
    ends = [_ends(began, rule) for rule in (granted, longer)]
    said = sums_falling.cold_by(max(line.temperatures), began, (granted, longer), ends, turn.person)
    return said, (granted.source.key, longer.source.key), {"first_h": ends[0][0], "second_h": ends[0][1]}


def _is_longer(rule: CoolingRule) -> bool:
    """The row of cured meat that wants no ascorbate."""
    return rule.use is Use.CURED and rule.min_ascorbate is None


def _ends(began: Hours, rule: CoolingRule) -> tuple[Hours, ...]:
    """The hours of the day at which each stage of a rule is over."""
    return tuple((began + hours) % 24.0 for hours in accumulate(stage.max_h for stage in rule.stages))


def _nearest_half(turn: Turn, hour: Hours) -> Hours:
    """An hour of which the half of the day is not told: that of the two which is nearer to now."""
    now = turn.now.astimezone(turn.person.tz)
    at = now.hour + now.minute / 60.0
    return min((hour % 12.0, hour % 12.0 + 12.0), key=lambda one: min((one - at) % 24.0, (at - one) % 24.0))


SUMS = {"cooling": _cooling, "cold_by": _cold_by}
