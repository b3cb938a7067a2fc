"""Words for what the ledger finds: the verdict first, then the rule, its source, and the readings that decided."""

from collections.abc import Sequence
from math import floor

from bot.wording import numbers
from bot.wording.language import Words, decimal, later, point, say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.safety.findings import Finding, Outcome, Rule, Status
from core.safety.fridge import MENDED_F
from core.safety.ledger import Verdict
from core.sources import Source
from core.units import Celsius, celsius_from_fahrenheit, fahrenheit_from_celsius

VERDICTS = Words(
    {
        Outcome.SAFE: "Safe to serve, as far as the record shows.",
        Outcome.NOT_YET: "Not yet.",
        Outcome.EAT_NOW: "Eat it now, do not keep it.",
        Outcome.CANNOT_SAY: "I cannot say that this is safe, so please do not serve it on my word.",
        Outcome.THROW_AWAY: "Please throw it away. I am sorry; no taste or smell can clear this.",
    }
)
EAT_OR_CHILL = later("Safe to serve now, as far as the record shows; whether it keeps, the chill has to show yet.")
RULES = Words(
    {
        Rule.CORE_POSSIBLE: "the readings themselves",
        Rule.NITRITE_CEILING: "nitrite under the ceiling for what is eaten",
        Rule.FRIDGE: "fridge at 4 °C (40 °F) or below through the cure",
        Rule.BRINE: "brine at 4 °C (40 °F) or below",
        Rule.RAW_KEEPING: "raw meat kept no longer than the chart says",
        Rule.LONGEST_CURE: "no longer in the cure than is planned",
        Rule.COME_UP: "10 to 55 °C (50 to 130 °F) on the way up within 6 h in all",
        Rule.REACH_140: "60 °C (140 °F) within 4 h of going on",
        Rule.HELD_140: "held at 60 °C (140 °F) or above",
        Rule.DONENESS: "the core floor, 63 °C (145 °F)",
        Rule.LETHALITY: "the time-temperature table for the kill",
        Rule.POULTRY_165: "74 °C (165 °F) for birds",
        Rule.FISH_160: "72 °C (160 °F) for 30 min for smoked fish",
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
        Rule.SPOILED: "no sour or rotten smell, no slime, no fuzz",
        Rule.PARASITES: "trichinae, by the table that was law until 2018",
    }
)
STATES = Words(
    {
        Status.PASSED: "met",
        Status.FAILED: "not met",
        Status.OPEN: "still running",
        Status.UNKNOWN: "the record does not show it",
    }
)
MISSING = Words(
    {
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
        "mg_kg": "how many grams of curing salt are in it, and how strong it is",
    }
)
MOST = 3
FAR_OVER = 1.5  # times what the table asks: the table vouches for no number above its own
TO_COME = frozenset({  # what the fire and the chill have to show yet
    Rule.COME_UP, Rule.REACH_140, Rule.HELD_140, Rule.DONENESS, Rule.LETHALITY, Rule.POULTRY_165, Rule.FISH_160,
    Rule.PARTIAL_COOK, Rule.COOLING, Rule.TWO_HOURS, Rule.RAW_KEEPING, Rule.USE_BY,
})  # fmt: skip
FIRST = (Rule.COOLING, Rule.DONENESS, Rule.HELD_140, Rule.FRIDGE, Rule.LETHALITY)


def verdict(a: Assessment) -> str:
    """Is it safe: the verdict, what decided, what is missing."""
    v = a.ledger.verdict
    shown = sorted((f for f in v.because if f.means is v.kind), key=_weight) or list(v.because)
    clear = v.kind is Outcome.NOT_YET and not any(map(_speaks_against, v.because))
    so_far = say("Nothing on the record speaks against it so far.") if clear else ""
    lines = [f"{lead(v)} {so_far}".strip(), *(finding(f, a) for f in shown[:MOST])]
    wanted = "" if _no_way_back(v) else missing([f for f in v.because if f.missing], a)
    return "\n".join(line for line in (*lines, wanted, cooling_numbers(a)) if line)


def _speaks_against(f: Finding) -> bool:
    """Whether something went wrong that still runs: a fridge that is warm, a dose that is in twice; no fire to come."""
    return f.status is Status.OPEN and f.rule not in TO_COME and f.detail != "not_watched"


def lead(v: Verdict) -> str:
    """The verdict in a sentence: of meat that is done but not yet cold, both halves."""
    going_on = v.kind is Outcome.SAFE and any(f.rule is Rule.COOLING and f.status is Status.OPEN for f in v.because)
    return say(EAT_OR_CHILL) if going_on else VERDICTS[v.kind]


def still_thrown(a: Assessment) -> str:
    """Before an answer that somebody might take for leave to eat a batch that is to be thrown away."""
    return say("Please throw «{name}» away: nothing that follows clears it.", name=a.batch.name)


def eaten() -> str:
    """Of what was eaten though it was to be thrown away: what to look out for, and whom to call."""
    return say(
        "Eaten already: blurred sight, drooping eyelids, trouble swallowing or breathing, even days later, is an emergency: "
        "call the emergency number at once. Cramps or being sick: your local poison centre or a doctor. Nobody eats more of it."
    )


def _no_way_back(v: Verdict) -> bool:
    """Whether no reading and no cooking would clear what decided: too much nitrite, or what is thrown away."""
    decided = [f for f in v.because if f.means is v.kind]
    too_much = any(f.rule is Rule.NITRITE_CEILING and not f.missing for f in decided if v.kind is Outcome.CANNOT_SAY)
    return v.kind is Outcome.THROW_AWAY or too_much


def _weight(f: Finding) -> int:
    """Of many findings those that decide most are shown."""
    return FIRST.index(f.rule) if f.rule in FIRST else len(FIRST)


def finding(f: Finding, a: Assessment) -> str:
    """One rule: what it asks, how it stands, the readings that decided, and where it is printed."""
    by = (
        say(", by {deadline}", deadline=numbers.when(f.deadline, a.person, a.now))
        if f.deadline is not None and f.status is Status.OPEN
        else ""
    )
    counted = f.value is not None and f.limit is not None and f.status is not Status.PASSED
    counted = counted and f.rule is not Rule.VACUUM_FISH  # its name and its reading say both
    amount = f" ({against(f, a)})" if counted else ""
    name = RULES[f.rule]
    return f"{name[0].upper()}{name[1:]}: {STATES[f.status]}{amount}{by}.{_readings(f, a)} {source(f.source)}"


def against(f: Finding, a: Assessment) -> str:
    """The value against its limit: «2 h 30 min; 1 h 30 min at most», «5.1 log of 6.5 log»."""
    value, limit = _amount(f, f.value, a), _amount(f, f.limit, a)
    if f.unit not in ("h", "d", "mg/kg"):
        return say("{value} of {limit}", value=value, limit=limit)
    unread = say("unread for ") if f.rule is Rule.FRIDGE and f.status is Status.UNKNOWN and f.unit == "h" else ""
    return say("{unread}{value}; {limit} at most", unread=unread, value=value, limit=limit)


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
            return f"{decimal(value, 1)} log"
        case _:
            return point(f"{value:.2g}")


def _readings(f: Finding, a: Assessment) -> str:
    if not f.readings:
        return ""
    read = ((numbers.temperature(r.celsius, a.person), numbers.when(r.at, a.person, a.now)) for r in f.readings[-2:])
    said = say(" and ").join(f"{celsius} ({when})" for celsius, when in read)
    return say(" Read: {said}.", said=said)


def source(s: Source) -> str:
    """«(USDA FSIS …, 2021)», with a word where it is from memory or practice."""
    note = {"MEMORY": say(", from memory"), "PRACTICE": say(", no source"), "DERIVED": say(", derived")}.get(
        s.status, ""
    )
    year = f", {s.year}" if s.year.strip("-") else ""
    return f"({s.title}{year}{note})"


def missing(findings: Sequence[Finding], a: Assessment) -> str:
    """«What would show it: …», with the time by which it has to be shown."""
    asked = [f for f in findings if f.missing == "hours_above_40f"]  # told at any time, it settles the matter
    findings = [f for f in findings if f.deadline is None or f.deadline > a.now or f in asked]
    wanted = list(dict.fromkeys(MISSING.get(f.missing, f.missing.replace("_", " ")) for f in findings))
    if not wanted:
        return ""
    deadlines = [f.deadline for f in findings if f.deadline is not None and f.deadline > a.now]
    by = say(" by {min}", min=numbers.when(min(deadlines), a.person, a.now)) if deadlines else ""
    return say("What would show it: {join}{by}.", join=", ".join(wanted[:2]), by=by)


def cooling_numbers(a: Assessment) -> str:
    """Kill in numbers, for whoever asks."""
    kill = a.ledger.lethality
    if kill is None or kill.fraction <= 0:
        return ""
    over = (
        say(", well over {required_log} log", required_log=numbers.plain(kill.required_log))
        if kill.fraction >= FAR_OVER
        else ""
    )
    share = (
        say("met{over}", over=over)
        if kill.met
        else say("{floor} % of what is required", floor=floor(kill.fraction * 100))
    )
    return say(
        "Kill by the time-temperature table ({required_log} log): {share}. {source}",
        required_log=numbers.plain(kill.required_log),
        share=share,
        source=source(kill.source),
    )


def fridge(a: Assessment, celsius: Celsius) -> str:
    """A fridge reading: right, to be mended, or a stop."""
    f = round(fahrenheit_from_celsius(celsius), 6)
    if f > MENDED_F:
        return say(
            "Too warm: above {limit} the two-hour rule counts. Turn it down now.",
            limit=numbers.at_most(celsius_from_fahrenheit(MENDED_F), a.person),
        )
    if f > 40.0:
        warm = say("A little warm: turn it down, move it low and to the back, and read it again in two hours.")
        day = say(
            "Over {limit} for 2 h at most it harms nothing; up to a day, never over {mended}, the cure goes on. Longer, or nobody "
            "knows how long: ask «is it safe», and throw it away in doubt.",
            limit=numbers.both(celsius_from_fahrenheit(40.0), a.person),
            mended=numbers.at_most(celsius_from_fahrenheit(MENDED_F), a.person),
        )
        return f"{warm}\n{day}" if a.batch.phase is Phase.CURING else warm
    if f > 38.0 and any(found.rule is Rule.VACUUM_FISH for found in a.ledger.verdict.because):
        return say("Too warm for fish without air: 3 °C (38 °F) at most. Turn it down, and ask me «is it safe».")
    if f < 36.0:
        return say("Cold, which is safe; colder than 2 °C (36 °F) the cure is slow.")
    return say("The fridge is right.")
