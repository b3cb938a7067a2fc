"""From a batch to the data of its pictures, drawn with the words of the house."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from bot.apart import apart
from bot.charts.shown import Band, Chill, Cook, Cure, Curve, Frame, Rule, Slice
from bot.labels import ChillWords, CookWords, CureWords
from bot.reply import Picture
from bot.wording import answers, numbers
from bot.wording import pictures as words
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.batch.in_time import LIKELY_BARE, latest_wrap, off_by
from core.batch.slices import course_of, front_of
from core.heat.curve import Curve as HeatCurve
from core.heat.stall import Stall
from core.meat.piece import Shape
from core.plan.steps import TimeBand
from core.units import SECONDS_PER_DAY, Celsius, celsius_from_fahrenheit

SKIN_DRAWN = 0.004  # m; how thick fat or skin is drawn, whatever it is


def drawn(a: Assessment, subject: str) -> Picture:
    """The picture of a batch, with the sentence that says the same."""
    shown = {"cook": _cook, "chill": _chill, "cure": _cure}[subject]
    png = apart(f"bot.charts.{subject}:draw", *shown(a))
    return Picture(png, answers.picture(a, subject), f"{a.batch.name}-{subject}")


Shown = tuple[Cook | Chill | Cure, CookWords | ChillWords | CureWords, Frame]  # what a chart is handed


def _frame(a: Assessment, title: str) -> Frame:
    return Frame(title, a.person.tz, a.person.units, words.days(), say(words.NOTHING))


def _readings(a: Assessment, probe: Probe, since: datetime | None) -> tuple[tuple[datetime, float], ...]:
    return tuple((r.at, r.celsius) for r in a.batch.of_probe(probe) if since is None or r.at >= since)


def _curve(start: datetime, curve: HeatCurve) -> Curve:
    at = tuple(start + timedelta(hours=h) for h in curve.hours)
    return Curve(at, Band(curve.p10, curve.p50, curve.p90))


def _cook(a: Assessment) -> Shown:
    start = a.on_at or (a.plan.step("meat_on").due if a.plan and a.plan.step("meat_on") else a.now)  # type: ignore[union-attr]
    if a.cook is None:
        return Cook(), words.said(words.COOK), _frame(a, words.cook_title(a))
    target = a.batch.setup.target_c
    shown = Cook(
        core=_readings(a, Probe.CORE, a.on_at) if a.on_at else (),
        pit=_readings(a, Probe.PIT, a.on_at) if a.on_at else (),
        expected=_curve(start, _capped(_until(a.cook.curve, a.cook.ready.p90), target)),
        pit_set=a.batch.setup.pit_c,
        target=target,
        ready=_quarters(a.ready) if a.ready else None,
        stall=_spell(a.cook.stall, start),
        wrap=a.batch.done.get("wrap"),
        wrap_by=_wrap_by(a),
        now=a.now if a.on_at else None,
        deadline=_off_by(a),
    )
    return shown, words.cook_words(a), _frame(a, words.cook_title(a))


def _spell(stall: Stall, start: datetime) -> tuple[datetime, datetime] | None:
    if stall.begins is None or stall.lasts is None:
        return None
    begins = start + timedelta(hours=stall.begins.p50)
    return begins, begins + timedelta(hours=stall.lasts.p50)


def _wrap_by(a: Assessment) -> datetime | None:
    """Until when a wrap brings it in time, where that is told: bare it would be late."""
    found = latest_wrap(a)
    if found is None or found.sure is None or a.on_at is None or found.bare >= LIKELY_BARE:
        return None
    return numbers.quarter(a.on_at + timedelta(hours=found.sure), up=False)


def _off_by(a: Assessment) -> datetime | None:
    """When it has to be off for the meal, to the quarter hour before."""
    latest = off_by(a) if a.ready else None
    return numbers.quarter(latest, up=False) if latest else None


def _quarters(ready: TimeBand) -> tuple[datetime, datetime, datetime]:
    """The ready time to the quarter hour, as it is told."""
    middle = numbers.quarter(ready.p50 + timedelta(minutes=7), up=False)
    return numbers.quarter(ready.p10, up=False), middle, numbers.quarter(ready.p90, up=True)


def _capped(curve: HeatCurve, target: Celsius) -> HeatCurve:
    """The curve up to the target, at which it comes off."""
    low, middle, high = (tuple(min(c, target) for c in line) for line in (curve.p10, curve.p50, curve.p90))
    return HeatCurve(curve.hours, low, middle, high, curve.low)


def _until(curve: HeatCurve, hours: float) -> HeatCurve:
    """The curve as far as the picture goes."""
    count = sum(1 for h in curve.hours if h <= hours)
    return HeatCurve(*(line[:count] for line in (curve.hours, curve.p10, curve.p50, curve.p90, curve.low)))


def _chill(a: Assessment) -> Shown:
    cooling = a.cooling
    rules = tuple(Rule(name, _stairs(_clock_start(a, stages[0][1]), stages)) for name, stages in words.rules(a))
    shown = Chill(
        readings=tuple((r.at, r.celsius) for r in cooling.readings),
        expected=_curve(cooling.since, _until(cooling.forecast.curve, 12.0))
        if cooling.since and cooling.forecast
        else Curve(),
        rules=rules if cooling.since else (),
        now=a.now,
    )
    return shown, words.said(words.CHILL), _frame(a, words.chill_title(a))


def _clock_start(a: Assessment, corner_f: float) -> datetime:
    """When the clock of a rule starts: at the last reading at or above its first corner, else with the chill."""
    warm = [r.at for r in a.cooling.readings if r.celsius >= celsius_from_fahrenheit(corner_f)]
    return warm[-1] if warm else a.cooling.since or a.now


def _stairs(start: datetime, stages: Sequence[tuple[float, float]]) -> tuple[tuple[datetime, float], ...]:
    return tuple((start + timedelta(hours=h), celsius_from_fahrenheit(f)) for h, f in stages)


def _cure(a: Assessment) -> Shown:
    if a.cure is None or a.plan is None:
        return Cure(a.piece.thickness), words.said(words.CURE), _frame(a, words.cure_title(a))
    into, end = a.batch.done.get("into_cure"), a.plan.cure_days
    elapsed = (
        None if into is None else max((min(a.now, a.batch.done.get("out", a.now)) - into) / timedelta(days=1), 0.0)
    )
    course = course_of(a.cure, max(end, 1.0))
    shown = Cure(
        thickness=a.piece.thickness,
        now=_slice(a, elapsed) if elapsed else None,
        end=_slice(a, end),
        times=tuple(d * SECONDS_PER_DAY for d in course.days),
        nitrite_centre=Band(*course.nitrite),
        salt_centre=Band(*course.salt),
        pink_from=a.piece.cut.pink_from,
        salt_wanted=a.batch.setup.salt_fraction,
        fat_cap=SKIN_DRAWN if a.piece.sealed_faces else 0.0,
        round=a.piece.cut.shape is Shape.CYLINDER and not a.piece.sealed_faces,
        elapsed=None if elapsed is None else elapsed * SECONDS_PER_DAY,
        cured=end * SECONDS_PER_DAY,
    )
    return shown, words.said(words.CURE), _frame(a, words.cure_title(a))


def _slice(a: Assessment, days: float) -> Slice:
    front = front_of(a.cure, days)  # type: ignore[arg-type]
    return Slice(top=front if a.piece.sealed_faces == 0 else (0.0, 0.0, 0.0), bottom=front)
