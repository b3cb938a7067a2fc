"""More that is asked around a batch: is it late, who did what, a step that is past, and what a new thing makes of it."""

from datetime import datetime, timedelta

from bot.wording import (
    answers,
    doses,
    lateness,
    meats,
    numbers,
    plans,
    recalled,
    reckoned,
    sooner,
    standing,
    steps,
    turning,
)
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.meat.piece import Species
from core.plan.anchors import LONGEST_CURE
from core.plan.steps import Kind, State, Step
from core.safety.storage import keeping
from core.units import Kilograms, MilligramsPerKilogram

OVERDUE = timedelta(minutes=30)
MOST_LISTED = 6
LESS_SALT = 0.0025  # a quarter of a percentage point, as after a batch that was too salty


def late(a: Assessment) -> str:
    """Whether anything is overdue, and whether the meal is had as wanted."""
    if a.plan is None:
        return plans.now(a)
    over = [s for s in a.plan.steps if s.state is State.DUE and a.now - s.due > OVERDUE and s.kind is not Kind.FLIP]
    if over:
        names = ", ".join(
            say("{name}, since {when}", name=steps.name(s, a), when=numbers.when(s.due, a.person, a.now)) for s in over
        )
        return say("Overdue: {names}.", names=names) + f"\n{sooner.in_time(a)}"
    return say("Nothing is overdue.") + f"\n{sooner.in_time(a)}"


def done_step(a: Assessment, kind: Kind, who: str) -> str:
    """When a step was done and by whom; that it was not, and when it is due."""
    found = a.plan.of_kind(kind) if a.plan else ()
    done = [s for s in found if s.done_at is not None]
    at = max((s.done_at for s in done if s.done_at), default=a.batch.done.get(kind.value))
    name = steps.NAMES[kind]
    if at is None:
        if found:
            return say("Not yet. {due}", due=standing.of_step(kind, a))
        return say("{name}: not noted. {due}", name=name, due=plans.coming(a))
    when = numbers.when(at, a.person, a.now)
    if who:
        return say("{name}: {when}, by {who}. {next}", name=name, when=when, who=who, next=plans.coming(a)).strip()
    return say("{name}: {when}. {next}", name=name, when=when, next=plans.coming(a)).strip()


def earliest(a: Assessment, then: Assessment) -> str:
    """The soonest meal that is safe and done, beside the one that is planned."""
    if then.plan is None or a.plan is None:
        return plans.now(a)
    told = say(
        "At the earliest {soonest}, safe and done; planned is {serve}. Nothing is moved yet.",
        soonest=numbers.when(numbers.quarter(then.plan.serve, up=True), a.person, a.now),
        serve=numbers.when(a.plan.serve, a.person, a.now),
    )
    return "\n".join([told, *lateness.hot_instead(a, a.now)])


def grams(a: Assessment, mass: Kilograms) -> str:
    """What so many grams of the curing salt come to in this batch."""
    d = a.dose
    if d is None or d.limit is None or d.cure_kg <= 0.0:
        return doses.dose(a) or plans.now(a)
    level: MilligramsPerKilogram = d.nitrite_ingoing * mass / d.cure_kg
    lead = say(
        "{mass} of the {strength} kind would be {level} here; weighed out for it are {cure}, {own}, and the limit is {limit}.",
        mass=numbers.grams(mass),
        strength=numbers.percent(d.nitrite_fraction),
        level=numbers.ppm(level),
        cure=numbers.grams(d.cure_kg),
        own=numbers.ppm(d.nitrite_ingoing),
        limit=numbers.ppm(d.limit.max_mg_kg),
    )
    if not d.limit.passes(level):
        return f"{lead}\n" + say(
            "Over the limit: do not use it. If it is in already, do not eat the meat, and tell me the grams."
        )
    return f"{lead}\n" + say("Never add to a cure on a guess.")


def no_fire(a: Assessment, day: datetime | None) -> str:
    """Nothing to cook on for a while: what may wait and for how long."""
    match a.batch.phase:
        case Phase.COOKING:
            return say(
                "It may not wait half cooked: finish it in an oven now, same pit, same core, probe in it. {next}",
                next=plans.coming(a),
            )
        case Phase.WAITING | Phase.CURING:
            return _longer_in_the_cure(a, day)
        case Phase.DRYING:
            return f"{_raw_in_the_fridge(a)}\n{_move(a, day)}"
        case _:
            return say("The fire is behind it: nothing has to wait. {next}", next=plans.coming(a))


def _raw_in_the_fridge(a: Assessment) -> str:
    """How long it may lie raw, by the storage chart: what is only salted from the salt on, what is cured from then on."""
    limit, chart = numbers.both(4.4, a.person), keeping(_raw_line(a), "raw")
    days = numbers.days(numbers.half_down(chart.days))
    if meats.plain(a):
        return say(
            "Raw and only salted it keeps {days} in all at {limit} or below; else an oven, or freeze it.",
            days=days,
            limit=limit,
        )
    return say(
        "Out of the cure it keeps {days} raw at {limit} or below; else an oven, or freeze it.", days=days, limit=limit
    )


def _raw_line(a: Assessment) -> str:
    """The line of the chart that raw meat of this kind stands on."""
    species = a.piece.cut.species
    if species is Species.FISH:
        return "fish"
    if not meats.plain(a):
        return "corned_beef"
    return "poultry" if species in (Species.TURKEY, Species.CHICKEN, Species.DUCK) else "roast"


def _longer_in_the_cure(a: Assessment, day: datetime | None) -> str:
    if meats.plain(a):
        return f"{_raw_in_the_fridge(a)}\n{_move(a, day)}"
    most = say("It may stay in the cure, cold, up to {longest} days in all.", longest=numbers.plain(LONGEST_CURE))
    return f"{most}\n{_raw_in_the_fridge(a)}\n{_move(a, day)}"


def _move(a: Assessment, day: datetime | None) -> str:
    if day is None:
        return say("Move the meal, like «dinner at 15:00», and I move the rest.")
    return say(
        "For a cook on {day} move the meal to the day after, and I move the rest.", day=numbers.day(day, a.person)
    )


def photo(a: Assessment) -> str:
    """Nobody sees pictures here: what to look for, and what the record says."""
    return say(
        "I see no pictures. Tell me in words: does it smell sour or rotten, is it slimy, is there fuzz? Any of them: throw it away.\n"
        "Pink, brown or grey, a shine and a little foam are usual. By the record: {verdict}",
        verdict=answers.safe(a),
    )


def another_meat(a: Assessment) -> str:
    """Another cut beside this one is a batch of its own."""
    return say(
        "That is a batch of its own, with its own dose, days and bag.\nType its weight, its thickness and the meal, like "
        "«2 kg pork loin 60 mm for saturday 13:00».\nNot into the tub of «{name}»: the dose of both would be wrong, and "
        "birds never lie beside red meat.",
        name=a.batch.name,
    )


def another_piece(a: Assessment, mass: Kilograms) -> str:
    """A piece that joins a cure under way: what it takes beside, and that its days begin anew."""
    d = a.dose
    if a.batch.phase not in (Phase.WAITING, Phase.CURING):
        return say("This one is out of its cure: the new piece needs one of its own. Type its weight and the meal.")
    if d is None or d.cure_kg <= 0.0:
        return doses.dose(a) or plans.now(a)
    if recalled.dosed_at(a) is None:
        whole = numbers.mass(a.batch.setup.mass + mass, a.person)
        return say("Nothing is in yet: type «it weighs {whole}», and I weigh it all anew.", whole=whole)
    thin = d.nitrite_ingoing * _base(a) / (_base(a) + mass)
    cure = d.nitrite_ingoing * 1e-6 * mass / d.nitrite_fraction
    salt = max(a.batch.setup.salt_fraction * mass - cure, 0.0)
    return say(
        "Better in a bag of its own, with its own dose and days: start it, like «start {mass} flat». In the same bag:\n"
        "Weigh {cure} curing salt of {strength} and {salt} salt for it.\n"
        "The cure that is in is weighed for {old}; with {mass} more it thins out to {thin}. Dissolve them in a little of the liquid and turn it well. The days of the new piece begin today; the same kind of "
        "meat only, never birds beside red meat.",
        cure=numbers.grams(cure),
        strength=numbers.percent(d.nitrite_fraction),
        salt=numbers.grams(salt),
        old=numbers.mass(a.batch.setup.mass, a.person),
        mass=numbers.mass(mass, a.person),
        thin=numbers.ppm(thin),
    )


def _base(a: Assessment) -> Kilograms:
    """What the nitrite of a dose is counted over. [kg]"""
    d = a.dose
    return a.batch.setup.mass if d is None else d.cure_kg * d.nitrite_fraction * 1e6 / d.nitrite_ingoing


def reweighed(a: Assessment, mass: Kilograms) -> str:
    """Another weight than was said: what the dose that is in comes to on it."""
    d, setup = a.dose, a.batch.setup
    shown = numbers.mass(mass, a.person)
    if d is None or d.limit is None or recalled.dosed_at(a) is None:
        return say("Type «it weighs {mass}», and I weigh it all anew: nothing is in yet.", mass=shown)
    level = d.nitrite_ingoing * _base(a) / max(_base(a) + mass - setup.mass, 1e-6)
    lead = say(
        "{cure} on {mass} instead of {old} come to {level}; the limit is {limit}.",
        cure=numbers.grams(d.cure_kg),
        mass=shown,
        old=numbers.mass(setup.mass, a.person),
        level=numbers.ppm(level),
        limit=numbers.ppm(d.limit.max_mg_kg),
    )
    if not d.limit.passes(level):
        return f"{lead}\n" + say(
            "That is over it: do not eat it so. Weigh it once more, and tell me, like «it weighs {mass}».", mass=shown
        )
    return f"{lead}\n" + say(
        "It may stay as it is: add nothing, take nothing out. To note it, type «it weighs {mass}».", mass=shown
    )


def again(a: Assessment, less: int) -> str:
    """The same once more, with less salt or more: the curing salt stays, the weight is anew."""
    salt = a.batch.setup.salt_fraction
    then = salt + less * LESS_SALT
    lead = say(
        "{what}: {salt} salt then; so {then}, and the curing salt stays as the law has it.",
        what=meats.what(a),
        salt=numbers.percent(salt),
        then=numbers.percent(then),
    )
    return f"{lead}\n" + say(
        "Type the new weight, its thickness and the meal with it, like «3.2 kg brisket flat 48 mm salt {then} for saturday 13:00».",
        then=numbers.percent(then),
    )


def which_call(a: Assessment) -> str:
    """What the last call was for: the batch, what it is, and the step."""
    past = [s for s in a.plan.steps if s.due <= a.now and s.kind is not Kind.SERVE] if a.plan else []
    if not past:
        return say(
            "It is for «{name}»: {what}. {next}", name=a.batch.name, what=meats.what(a), next=plans.coming(a)
        ).strip()
    last: Step = max(past, key=lambda s: s.due)
    return say(
        "It is for «{name}»: {what}.\nThe last that fell due is {step}, {when}. {next}",
        name=a.batch.name,
        what=meats.what(a),
        step=steps.name(last, a),
        when=numbers.when(last.due, a.person, a.now),
        next=plans.coming(a),
    ).strip()


def call_at(a: Assessment, kind: Kind | None) -> str:
    """When a step is called for, which cannot be set by the hours before it."""
    lead = plans.coming(a) if kind is None else standing.of_step(kind, a).splitlines()[0]
    return (
        f"{lead}\n"
        + say(
            "I call at its hour, not before it. A step that is due is put off like «in an hour»; the meal moves all of them."
        )
        + (f"\n{turning.flips_sooner(a)}" if kind is Kind.FLIP else "")
    )


def taken_over(a: Assessment) -> str:
    """What whoever takes over has to do, in order."""
    lines = standing.to_do(a)
    end = say("A missed flip does no harm; the readings matter.")
    return "\n".join((say("To pass on:"), *lines[:MOST_LISTED], end)) if lines else ""


def compared(a: Assessment, past: Assessment | None) -> str:
    """This one beside the last."""
    if past is None:
        return say("This is the first that I know of.") + f"\n{standing.since(a)}"
    return f"{reckoned.last_time(past)}\n" + say("This one: {since}", since=standing.since(a))
