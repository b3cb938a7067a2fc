"""What a falling core comes to, in words: kept hot for the table, or cold enough in time."""

from math import floor

from bot.wording import numbers
from bot.wording.cooling import GRANTS
from bot.wording.language import say
from core.person import Person
from core.safety.cooling import CoolingVerdict, RuleJudgement, StageJudgement
from core.safety.cooling_rules import CoolingRule
from core.safety.findings import Outcome, Status
from core.units import Celsius, Hours, celsius_from_fahrenheit

HOT: Celsius = 60.0
A_MINUTE: Hours = 1.0 / 60.0


def kept_hot(last: Celsius, stays: tuple[Hours, Hours], wanted: Hours | None, person: Person) -> str:
    """How long it stays at 60 °C or above by its last two readings, and whether that does until the meal."""
    soon, late = stays
    hot = numbers.both(HOT, person)
    if wanted is not None and wanted <= soon:
        first = say("By your readings it is hot enough until you eat, with a probe in it.")
    elif wanted is not None:
        first = say(
            "It does not stay hot until you eat: into an oven at 70 to 75 °C (160 to 165 °F) now, or eat it now, "
            "or chill it quickly and heat it again."
        )
    else:
        first = say("Hot it is still: read it again before that time is over, or put it into a low oven.")
    rule = say(
        "It is {last}, and by your readings at {hot} in {soon} to {late}. For the table it stays at {hot} or above "
        "until it is eaten; below that it has 2 h off the heat, and then it is thrown away.",
        last=numbers.both(last, person),
        hot=hot,
        soon=numbers.hours(_less(soon)),
        late=numbers.hours(_less(max(soon, late))),
    )
    return f"{first}\n{rule}"


def cooled(verdict: CoolingVerdict, person: Person, latest: Hours | None = None) -> str:
    """How a fall of the core stands under the rules; `latest` is the hour of the day at which its stage is over."""
    match verdict.kind:
        case Outcome.SAFE:
            first = say("In time: it keeps the cooling rule. Into the fridge with it.")
        case Outcome.NOT_YET:
            first = say("In time so far: keep it cooling, and read it again.")
        case Outcome.CANNOT_SAY if verdict.of(GRANTS).clock is Status.UNKNOWN:
            first = say("These readings do not show that it was in time, so I cannot call it safe.")
        case Outcome.CANNOT_SAY:
            first = say("Too slow for plain meat. I cannot call it safe.")
        case _:
            first = say("Too slow: throw it away. Heating it again does not undo it.")
    stages = _stages(verdict, person) if latest is None else _runs_till(verdict, latest, person)
    return f"{first}\n{stages}\n{_cured(verdict)}".strip()


def _runs_till(verdict: CoolingVerdict, latest: Hours, person: Person) -> str:
    """The stage that runs, with the hour at which it is over."""
    judged = verdict.next_stage or verdict.stage
    return say(
        "From {high} to {low} it may take {limit}: be there by {at}, counted from your last reading at {high} or above.",
        high=numbers.both(celsius_from_fahrenheit(judged.stage.from_f), person),
        low=numbers.at_most(celsius_from_fahrenheit(judged.stage.to_f), person),
        limit=numbers.hours(judged.stage.max_h),
        at=_at(latest),
    )


def _stages(verdict: CoolingVerdict, person: Person) -> str:
    """The stage that still runs, and of the rule that grants else the one that is not kept, or the first."""
    stages = verdict.of(GRANTS).stages
    judged = verdict.next_stage or next((one for one in stages if one.status is not Status.PASSED), stages[0])
    stage = judged.stage
    fields = {
        "high": numbers.both(celsius_from_fahrenheit(stage.from_f), person),
        "low": numbers.at_most(celsius_from_fahrenheit(stage.to_f), person),
        "limit": numbers.hours(stage.max_h),
    }
    if verdict.kind is Outcome.CANNOT_SAY and judged.status is Status.UNKNOWN:
        return say(
            "From {high} to {low} it may take {limit}; between your readings it may have taken up to {most}.",
            **fields,
            most=numbers.hours(judged.hours_at_most),
        )
    if judged.hours_by_line < A_MINUTE:
        return say("From {high} to {low} it may take {limit}, counted from that last reading.", **fields)
    return say(
        "From {high} to {low} it may take {limit}; by your readings it took {took}. One more between them would tell more.",
        **fields,
        took=numbers.hours(judged.hours_by_line),
    )


def _cured(verdict: CoolingVerdict) -> str:
    if verdict.kind is not Outcome.CANNOT_SAY:
        return ""
    return say(
        "The longer rule is for meat that was cured to the middle, with its nitrite weighed: 5 h down to 26 °C (80 °F), "
        "10 h more to 7 °C (45 °F). Not cured, or not sure: throw it away."
    )


def by_the_longer_rule(longer: RuleJudgement, runs: StageJudgement | None, latest: Hours | None, person: Person) -> str:
    """How a fall stands under the rule of cured meat, for who is sure that it was, and until when its stage runs."""
    clock = longer.clock
    if clock is Status.FAILED:
        return say("By the longer rule it is too slow as well: throw it away.")
    if clock is Status.UNKNOWN:
        return ""
    if runs is None or latest is None:
        return say("By the clock alone it keeps that longer rule so far.")
    low = numbers.at_most(celsius_from_fahrenheit(runs.stage.to_f), person)
    return say(
        "By the clock alone it keeps that longer rule so far: it must be at {low} by {at}.", low=low, at=_at(latest)
    )


def in_time(falls: tuple[Hours, Hours], left: Hours) -> str:
    """Whether a core will be cold enough within the time that it has left."""
    soon, late = falls
    fields = {"soon": numbers.hours(soon), "late": numbers.hours(max(soon, late)), "left": numbers.hours(_less(left))}
    if late <= left:
        return say("At this pace it takes {soon} to {late} more, and it has {left} left: it should make it.", **fields)
    if soon <= left:
        return say(
            "At this pace it takes {soon} to {late} more, since it slows down, and it has {left} left. That is tight: "
            "more ice, stirred, and thick pieces halved.",
            **fields,
        )
    return say(
        "At this pace it takes {soon} more and longer, and it has {left} left: too slow. More ice now, stirred, and thick pieces halved.",
        **fields,
    )


def cold_by(
    first: Celsius, began: Hours, rules: tuple[CoolingRule, CoolingRule], ends: list[tuple[Hours, ...]], person: Person
) -> str:
    """Until when each rule wants it how cold, counted from a hot reading."""
    (warm, cold), (_, colder) = ((stage.to_f for stage in rule.stages) for rule in rules)
    hours = [stage.max_h for rule in rules for stage in rule.stages]
    return say(
        "{warm} by {soon}, then {cold} by {late}.\n"
        "Plain meat has {few} from {high} to {warm} and {more} more to {cold}; counted from {first} at {began} that is on the "
        "safe side. Cured to the middle, with its nitrite weighed, it has till {long} for {warm} and till {longest} for {colder}.",
        warm=_to(warm, person),
        cold=_to(cold, person),
        colder=_to(colder, person),
        high=numbers.both(celsius_from_fahrenheit(rules[0].stages[0].from_f), person),
        few=numbers.hours(hours[0]),
        more=numbers.hours(hours[1]),
        first=numbers.both(first, person),
        began=_at(began),
        **{name: _at(hour) for name, hour in zip(("soon", "late", "long", "longest"), ends[0] + ends[1], strict=True)},
    )


def _to(fahrenheit: float, person: Person) -> str:
    return numbers.at_most(celsius_from_fahrenheit(fahrenheit), person)


def _at(hour: Hours) -> str:
    """An hour of the day, to the minute below: nobody is told of more time than there is."""
    return "{:02d}:{:02d}".format(*divmod(floor(hour * 60.0 + 1e-6), 60))


def _less(hours: Hours) -> Hours:
    """To the five minutes below: nobody is told of more time than there is."""
    return floor(hours * 12 + 1e-6) / 12


def as_fahrenheit() -> str:
    """A fall without its unit that begins so cold that it may have been told in the other one."""
    return say("I took these as °F, as you read yours: in °C it is another matter, so say it with its unit then.")
