"""Words for the chill against its rule: what is to be reached and by when, and whether it will be."""

from datetime import datetime, timedelta

from bot.intents.served import GONE, PRAISED
from bot.wording import chilling, numbers, safety
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.cold import CHILL_CLOCK_C
from core.batch.pass_now import help_now
from core.person import Person
from core.safety.cooling import CoolingVerdict
from core.safety.cooling_rules import judged_rules
from core.safety.findings import Outcome, Rule, Status
from core.safety.history import printed_f
from core.units import Celsius, celsius_from_fahrenheit

GRANTS = "130-80-40"  # the rule whose clock the talk tells


def rule_of_cooling() -> str:
    """The two rules that grant, with their sources."""
    return say(
        "Rule: FSIS cooling guideline (Appendix B, 1999), option 1; or FDA Food Code 3-501.14: 57 to 21 °C (135 to 70 °F) in 2 h, "
        "to 5 °C (41 °F) in 6 h in all."
    )


def stands(a: Assessment) -> str:
    """How the chill stands: what is to be reached, by when, and what to do if it will not be."""
    found = a.ledger.cooling
    if found is None:
        return ""
    match found.kind:
        case Outcome.SAFE:
            return _met(a)
        case Outcome.NOT_YET:
            return _stage_ahead(found, a)
        case Outcome.CANNOT_SAY if found.decided_by is not None and found.decided_by.clock is Status.UNKNOWN:
            if found.of(GRANTS).clock is Status.UNKNOWN and _is_falling(found, a):
                return _go_on(found, a)
            return say(
                "No reading shows that it was cold in time, {between}.\nI cannot say that it is safe, to keep or to eat, and heating it "
                "again undoes not all that may have grown. A core that you did read counts: type it with its hour, like «core 22 c at "
                "18:10». Without one, throwing it away is the safe way.",
                between=_between(found, a),
            )
        case Outcome.CANNOT_SAY:
            return say(
                "The chill is slower than the rules that I can grant.\nIt is inside the 15 h row for cured meat of 1999 at best, and the one of 2021 "
                "also wants ascorbate: I cannot say it is safe to keep. Eat it today, heated to 74 °C (165 °F), or throw it away."
            )
        case _:
            failed = [safety.finding(f, a) for f in a.ledger.verdict.because if f.rule is Rule.COOLING]
            return "\n".join([safety.VERDICTS[found.kind], *failed[:1]])


def _is_falling(found: CoolingVerdict, a: Assessment) -> bool:
    """Whether the last core that was read is inside the stage that no reading shows: colder it has still to get."""
    core, stage = a.cooling.readings[-1].celsius if a.cooling.readings else None, found.of(GRANTS).stages[0].stage
    return core is not None and stage.to_f < printed_f(core) < stage.from_f


def _go_on(found: CoolingVerdict, a: Assessment) -> str:
    """What is to be reached all the same, while no reading shows when the clock of it began."""
    stage = found.of(GRANTS).stages[0].stage
    return say(
        "Ice water now, or more ice, stirred, and read it again soon: {low} is due {limit} after it fell below {high}.\n"
        "No reading shows when that was, {between}, so I cannot say that it is safe, to keep or to eat. A core that you did read counts: "
        "type it with its hour, like «core 55 c at 18:10». Without one, throwing it away is the safe way.",
        low=numbers.at_most(celsius_from_fahrenheit(stage.to_f), a.person),
        high=numbers.temperature(celsius_from_fahrenheit(stage.from_f), a.person),
        limit=numbers.hours(stage.max_h),
        between=_between(found, a),
    )


def _between(found: CoolingVerdict, a: Assessment) -> str:
    """The hours that decide: those of the readings between which it may have been too slow."""
    since, *until = (numbers.when(r.at, a.person, a.now) for r in found.deciding)
    if not until:
        return say("from {since} till now", since=since)
    return say("from {since} to {until}", since=since, until=until[-1])


def beside_the_meal(a: Assessment, told: str) -> str:
    """A word for what was told of the meal, and what stands against eating it."""
    glad, against = say("Good to hear.") if PRAISED in told else "", before_eating(a)
    if against and GONE in told:
        against = say("All of it is eaten; I could not have said that it was safe: «is it safe» tells why.")
    return "\n".join(line for line in (glad, against) if line)


def before_eating(a: Assessment) -> str:
    """What stands against eating it as it is, told again when it is cut; "" where nothing does."""
    if a.ledger.cooling is not None and a.ledger.cooling.kind is Outcome.CANNOT_SAY:
        return stands(a)
    if a.ledger.verdict.kind is not Outcome.CANNOT_SAY:
        return ""
    if "serve" in a.batch.done:
        return say(
            "I cannot say that it is safe, or was: please do not serve what is left on my word. «is it safe» tells why."
        )
    return not_cleared(a, named=False)


def not_cleared(a: Assessment, named: bool) -> str:
    """That nobody can say that it is safe, and where it is told why; by its name where there are several batches."""
    said = say("{verdict} «is it safe» tells why.", verdict=safety.VERDICTS[Outcome.CANNOT_SAY])
    return f"{a.batch.name}: {said}" if named else said


def _met(a: Assessment) -> str:
    """The chill is over in time; whether it may be kept for that, the rest of the record says."""
    found = a.ledger.verdict
    if found.kind is Outcome.SAFE:
        return say("The chill met its rule: it may be kept.")
    return "\n".join([say("The chill met its rule."), safety.VERDICTS[found.kind], safety.finding(found.deciding, a)])


def _stage_ahead(found: CoolingVerdict, a: Assessment) -> str:
    stage = found.next_stage
    core = a.cooling.readings[-1].celsius if a.cooling.readings else None
    if core is not None and core >= celsius_from_fahrenheit(130.0):
        return _before_the_clock(a)
    if stage is None or stage.deadline is None:
        return say("The hours of the chill do not count yet.")
    if core is not None and "chill" not in a.batch.done:
        return _begin_now(a, core)
    goal = numbers.at_most(celsius_from_fahrenheit(stage.stage.to_f), a.person)
    text = say(
        "It must read {goal} or colder by {deadline}.",
        goal=goal,
        deadline=numbers.when(stage.deadline, a.person, a.now),
    )
    return text if core is None else f"{text}\n{_pace(a, core, stage.deadline)}".strip()


def _begin_now(a: Assessment, core: Celsius) -> str:
    """Under 60 °C, and nobody said that it is in the chill."""
    help_ = chilling.now(a)
    return say(
        "Start the chill now: it is at {core}. Say «in the chill» when it is in.\n{help}",
        core=numbers.temperature(core, a.person),
        help=help_ or rule_of_cooling(),
    )


def _before_the_clock(a: Assessment) -> str:
    core = a.cooling.readings[-1].celsius if a.cooling.readings else None
    if core is not None and core <= CHILL_CLOCK_C and "chill" not in a.batch.done:
        return _begin_now(a, core)
    if "chill" in a.batch.done:
        return _in_the_cold(a)
    at = a.cooling.at_60c
    when = (
        say(", about {at}", at=numbers.when(numbers.quarter(at, up=False), a.person, a.now))
        if at is not None and at > a.now
        else ""
    )
    return chill_from(a.person, when)


def _in_the_cold(a: Assessment) -> str:
    """The clock that is still to start, and the hours of its rule from then on."""
    first, second = next(rule for rule in judged_rules() if rule.key == GRANTS).stages
    return say(
        "It is in the chill; the clock of the rule starts when the core falls below {limit}.\n"
        "From there it has {hours} to {low}, and {more} more to {cold}: started now, by {at} and by {at2}.",
        limit=numbers.both(54.4, a.person),
        hours=numbers.hours(first.max_h),
        low=numbers.at_most(celsius_from_fahrenheit(first.to_f), a.person),
        more=numbers.hours(second.max_h),
        cold=numbers.at_most(celsius_from_fahrenheit(second.to_f), a.person),
        at=numbers.when(a.now + timedelta(hours=first.max_h), a.person, a.now),
        at2=numbers.when(a.now + timedelta(hours=first.max_h + second.max_h), a.person, a.now),
    )


def chill_from(person: Person, when: str = "") -> str:
    """When to begin the chill and from where the rule counts, in one sentence; `when` is the hour of the first."""
    return say(
        "Start the chill at {limit}{when}; the rule counts its hours from {limit2} down.",
        limit=numbers.both(60.0, person),
        when=when,
        limit2=numbers.both(54.4, person),
    )


def _pace(a: Assessment, core: Celsius, deadline: datetime) -> str:
    """Whether the corner will be reached in time, by the chill as its readings have it."""
    forecast, since = a.cooling.forecast, a.cooling.since
    if len(a.cooling.readings) > 1 and core >= a.cooling.readings[-2].celsius and "chill" in a.batch.done:
        before = numbers.when(a.cooling.readings[-2].at, a.person, a.now)
        return say("It has not fallen since {before}: {help}.", before=before, help=_help(a))
    if forecast is None or since is None:
        return ""
    reached = forecast.to(26.7 if core > celsius_from_fahrenheit(80.0) else 4.4)
    if reached is None or max(since + timedelta(hours=reached.p50), a.now) >= deadline:
        return say("At this pace it will not: {help}.", help=_help(a))
    if since + timedelta(hours=reached.p90) >= deadline:
        return say("It may just miss that: {help}.", help=_help(a))
    return say("It is on its way.")


def _help(a: Assessment) -> str:
    """What makes it pass, as it is computed; where nothing does for sure, what cools most."""
    found = help_now(a)
    if found is None:
        return say("cut it to thin slices now, and into ice water")
    return chilling.action(found, a)
