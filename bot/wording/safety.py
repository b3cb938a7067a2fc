"""Words for what the ledger finds: the verdict first, then the rule, its source, and the readings that decided."""

from collections.abc import Sequence
from datetime import datetime, timedelta
from math import floor

from bot.wording import chilling, numbers
from core.batch.assess import Assessment
from core.batch.pass_now import help_now
from core.person import Person
from core.safety.cooling import CoolingVerdict
from core.safety.findings import Finding, Outcome, Rule, Status
from core.sources import Source
from core.units import Celsius, celsius_from_fahrenheit, fahrenheit_from_celsius

VERDICTS = {
    Outcome.SAFE: "Safe to serve, as far as the record shows.",
    Outcome.NOT_YET: "Not yet.",
    Outcome.EAT_NOW: "Eat it now, do not keep it.",
    Outcome.CANNOT_SAY: "I cannot say that this is safe, so please do not serve it on my word.",
    Outcome.THROW_AWAY: "Please throw it away. I am sorry; no taste or smell can clear this.",
}
EAT_OR_CHILL = "Safe to serve now, as far as the record shows; whether it keeps, the chill has to show yet."
RULES = {
    Rule.CORE_POSSIBLE: "the readings themselves",
    Rule.NITRITE_CEILING: "nitrite under the ceiling for what is eaten",
    Rule.FRIDGE: "fridge at 4 °C (40 °F) or below through the cure",
    Rule.BRINE: "brine at 4 °C (40 °F) or below",
    Rule.RAW_KEEPING: "raw meat kept no longer than the chart says",
    Rule.LONGEST_CURE: "no longer in the cure than is planned",
    Rule.COME_UP: "10 to 54 °C (50 to 130 °F) on the way up within 6 h",
    Rule.REACH_140: "60 °C (140 °F) within 4 h of going on",
    Rule.HELD_140: "held at 60 °C (140 °F) or above",
    Rule.DONENESS: "the core floor, 63 °C (145 °F)",
    Rule.LETHALITY: "the time-temperature table for the kill",
    Rule.POULTRY_165: "74 °C (165 °F) for birds",
    Rule.FISH_160: "71 °C (160 °F) for 30 min for smoked fish",
    Rule.PARTIAL_COOK: "cooked through in one go",
    Rule.COOLING: "the cooling: 130-80-40 °F in 1.5 + 5 h, or 135-70-41 °F in 2 + 4 h",
    Rule.TWO_HOURS: "no more than two hours off heat and cold",
    Rule.USE_BY: "within the storage chart",
    Rule.VACUUM_FISH: "vacuum-packed fish under 3 °C (38 °F)",
    Rule.FIRE_OUT: "the fire went out",
    Rule.LEFT_OUT: "left out of the cold",
    Rule.POWER_CUT: "the power cut",
    Rule.LEAK: "the leaked bag",
    Rule.WARM_FRIDGE: "the warm fridge",
    Rule.WARM_BRINE: "the warm brine",
    Rule.DOSED_TWICE: "the cure dosed twice",
    Rule.PARASITES: "trichinae, by the table that was law until 2018",
}
STATES = {
    Status.PASSED: "met",
    Status.FAILED: "not met",
    Status.OPEN: "still running",
    Status.UNKNOWN: "the record does not show it",
}
MISSING = {
    "core_reading": "a core reading",
    "last_good_reading": "the time of the last reading above 60 °C (140 °F)",
    "cooling_reading": "a core reading in the chill",
    "fridge_reading": "a fridge reading",
    "corrected_reading": "that reading, corrected",
    "cook_it": "cooking it through",
    "chill": "the chill",
    "rest_3min": "three minutes of rest at that core",
    "hours_out": "how long it was out",
    "hours_above_40f": "how long it was above 4 °C (40 °F)",
    "day_of_the_leak": "the day on which it leaked",
    "mg_kg": "how many grams of curing salt are in it",
}
MOST = 3
FAR_OVER = 1.5  # times what the table asks: the table vouches for no number above its own
FIRST = (Rule.COOLING, Rule.DONENESS, Rule.HELD_140, Rule.FRIDGE, Rule.LETHALITY)


def verdict(a: Assessment) -> str:
    """Is it safe: the verdict, what decided, what is missing."""
    v = a.ledger.verdict
    shown = sorted((f for f in v.because if f.means is v.kind), key=_weight) or list(v.because)
    going_on = v.kind is Outcome.SAFE and any(f.rule is Rule.COOLING and f.status is Status.OPEN for f in v.because)
    lead = EAT_OR_CHILL if going_on else VERDICTS[v.kind]
    lines = [lead, *(finding(f, a) for f in shown[:MOST])]
    wanted = missing([f for f in v.because if f.missing], a)
    return "\n".join(line for line in (*lines, wanted, cooling_numbers(a)) if line)


def _weight(f: Finding) -> int:
    """Of many findings those that decide most are shown."""
    return FIRST.index(f.rule) if f.rule in FIRST else len(FIRST)


def finding(f: Finding, a: Assessment) -> str:
    """One rule: what it asks, how it stands, the readings that decided, and where it is printed."""
    by = (
        f", by {numbers.when(f.deadline, a.person, a.now)}"
        if f.deadline is not None and f.status is Status.OPEN
        else ""
    )
    counted = f.value is not None and f.limit is not None and f.status is not Status.PASSED
    amount = f" ({_against(f, a)})" if counted else ""
    name = RULES[f.rule]
    return f"{name[0].upper()}{name[1:]}: {STATES[f.status]}{amount}{by}.{_readings(f, a)} {source(f.source)}"


def _against(f: Finding, a: Assessment) -> str:
    """The value against its limit: «2 h 30 min; 1 h 30 min at most», «5.1 log of 6.5 log»."""
    value, limit = _amount(f, f.value, a), _amount(f, f.limit, a)
    if f.unit not in ("h", "d", "mg/kg"):
        return f"{value} of {limit}"
    unread = "unread for " if f.rule is Rule.FRIDGE and f.status is Status.UNKNOWN and f.unit == "h" else ""
    return f"{unread}{value}; {limit} at most"


def _amount(f: Finding, value: float | None, a: Assessment) -> str:
    if value is None:
        return ""
    match f.unit:
        case "h":
            return numbers.hours(value)
        case "°C":
            return numbers.temperature(value, a.person)
        case "mg/kg":
            return numbers.ppm(value)
        case "d":
            return numbers.days(value)
        case "log":
            return f"{value:.1f} log"
        case _:
            return f"{value:.2g}"


def _readings(f: Finding, a: Assessment) -> str:
    if not f.readings:
        return ""
    read = ((numbers.temperature(r.celsius, a.person), numbers.when(r.at, a.person, a.now)) for r in f.readings[-2:])
    said = " and ".join(f"{celsius} ({when})" for celsius, when in read)
    return f" Read: {said}."


def source(s: Source) -> str:
    """«(USDA FSIS …, 2021)», with a word where it is from memory or practice."""
    note = {"MEMORY": ", from memory", "PRACTICE": ", common practice", "DERIVED": ", derived"}.get(s.status, "")
    year = f", {s.year}" if s.year.strip("-") else ""
    return f"({s.title}{year}{note})"


def missing(findings: Sequence[Finding], a: Assessment) -> str:
    """«What would show it: …», with the time by which it has to be shown."""
    findings = [f for f in findings if f.deadline is None or f.deadline > a.now]
    wanted = list(dict.fromkeys(MISSING.get(f.missing, f.missing.replace("_", " ")) for f in findings))
    if not wanted:
        return ""
    deadlines = [f.deadline for f in findings if f.deadline is not None]
    by = f" by {numbers.when(min(deadlines), a.person, a.now)}" if deadlines else ""
    return f"What would show it: {', '.join(wanted[:2])}{by}."


def rule_of_cooling() -> str:
    """The two rules that grant, with their sources."""
    return (
        "Rule: FSIS cooling guideline (Appendix B, 1999), option 1; or FDA Food Code 3-501.14: 57 to 21 °C (135 to 70 °F) in 2 h, "
        "to 5 °C (41 °F) in 6 h in all."
    )


def cooling(a: Assessment) -> str:
    """How the chill stands: what is to be reached, by when, and what to do if it will not be."""
    found = a.ledger.cooling
    if found is None:
        return ""
    match found.kind:
        case Outcome.SAFE:
            return "The chill met its rule: it may be kept."
        case Outcome.NOT_YET:
            return _stage_ahead(found, a)
        case Outcome.CANNOT_SAY if found.decided_by is not None and found.decided_by.clock is Status.UNKNOWN:
            between = " and ".join(numbers.when(r.at, a.person, a.now) for r in found.deciding)
            return (
                f"Between {between} nobody read the core, so the record does not show that it was cold in time: I cannot say it is safe to keep. "
                "Eat it today, heated to 74 °C (165 °F), or throw it away."
            )
        case Outcome.CANNOT_SAY:
            return (
                "The chill is slower than the rules that I can grant. It is inside the 15 h row for cured meat of 1999 at best, and the one of 2021 "
                "also wants ascorbate: I cannot say it is safe to keep. Eat it today, heated to 74 °C (165 °F), or throw it away."
            )
        case _:
            failed = [finding(f, a) for f in a.ledger.verdict.because if f.rule is Rule.COOLING]
            return "\n".join([VERDICTS[found.kind], *failed[:1]])


def _stage_ahead(found: CoolingVerdict, a: Assessment) -> str:
    stage = found.next_stage
    core = a.cooling.readings[-1].celsius if a.cooling.readings else None
    if core is not None and core >= celsius_from_fahrenheit(130.0):
        return _before_the_clock(a)
    if stage is None or stage.deadline is None:
        return "The hours of the chill do not count yet."
    goal = numbers.both(celsius_from_fahrenheit(stage.stage.to_f), a.person)
    text = f"It must read {goal} or colder by {numbers.when(stage.deadline, a.person, a.now)}."
    return text if core is None else f"{text}\n{_pace(a, core, stage.deadline)}".strip()


def _before_the_clock(a: Assessment) -> str:
    if "chill" in a.batch.done:
        return f"It is in the chill; the clock of the rule starts when the core falls below {numbers.both(54.4, a.person)}."
    at = a.cooling.at_60c
    when = (
        f", about {numbers.when(numbers.quarter(at, up=False), a.person, a.now)}"
        if at is not None and at > a.now
        else ""
    )
    return chill_from(a.person, when)


def chill_from(person: Person, when: str = "") -> str:
    """When to begin the chill and from where the rule counts, in one sentence; `when` is the hour of the first."""
    return (
        f"Start the chill at {numbers.both(60.0, person)}{when}; "
        f"the rule counts its hours from {numbers.both(54.4, person)} down."
    )


def _pace(a: Assessment, core: Celsius, deadline: datetime) -> str:
    """Whether the corner will be reached in time, by the chill as its readings have it."""
    forecast, since = a.cooling.forecast, a.cooling.since
    if forecast is None or since is None:
        return ""
    reached = forecast.to(26.7 if core > celsius_from_fahrenheit(80.0) else 4.4)
    if reached is None or max(since + timedelta(hours=reached.p50), a.now) >= deadline:
        return f"At this pace it will not: {_help(a)}."
    if since + timedelta(hours=reached.p90) >= deadline:
        return f"It may just miss that: {_help(a)}."
    return "It is on its way."


def _help(a: Assessment) -> str:
    """What makes it pass, as it is computed; where nothing does for sure, what cools most."""
    found = help_now(a)
    if found is None:
        return "cut it to thin slices now, and into ice water"
    return chilling.action(found, a)


def cooling_numbers(a: Assessment) -> str:
    """Kill in numbers, for whoever asks."""
    kill = a.ledger.lethality
    if kill is None or kill.fraction <= 0:
        return ""
    over = f", well over {kill.required_log:g} log" if kill.fraction >= FAR_OVER else ""
    share = f"met{over}" if kill.met else f"{floor(kill.fraction * 100)} % of what is required"
    return f"Kill by the time-temperature table ({kill.required_log:g} log): {share}. {source(kill.source)}"


def fridge(a: Assessment, celsius: Celsius) -> str:
    """A fridge reading: right, to be mended, or a stop."""
    f = round(fahrenheit_from_celsius(celsius), 6)
    if f > 45.0:
        return f"Too warm: above {numbers.both(celsius_from_fahrenheit(45.0), a.person)} the two-hour rule counts. Turn it down now. How long was it so warm?"
    if f > 40.0:
        return "A little warm: turn it down, move the bag low and to the back, and read it again in two hours. The cure goes on."
    if f < 36.0:
        return "Cold, which is safe; colder than 2 °C (36 °F) the cure is slow."
    return "The fridge is right."
