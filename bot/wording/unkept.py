"""Words for what no record holds, and for the vessel and the water of a brine in hand."""

from dataclasses import replace

from bot.wording import numbers, plans, sums_salt
from bot.wording.language import say
from core.answers import mixing
from core.batch.assess import Assessment
from core.cure.judgement import Verdict, judge
from core.safety.history import printed_f
from core.units import Celsius, Kilograms, celsius_from_fahrenheit

COLD_F = 40.0  # sources.FSIS_DANGER_ZONE
COLD_C = celsius_from_fahrenheit(COLD_F)


def no_record(a: Assessment) -> str:
    """A deed that is no step: nobody was asked to say it, so nobody knows."""
    return say(
        "That I do not keep: only steps, readings and what went wrong are on record, and what is said as a note. {next}",
        next=plans.coming(a),
    ).strip()


def by_record() -> str:
    """Why an answer is as it is that only repeats what was told."""
    return say(
        "That comes from the record of this batch: what was told and read, and its plan. The plan rests on this:"
    )


def vessel(a: Assessment) -> str:
    """How big a tub or a bag this piece wants."""
    mass = a.batch.setup.mass
    return sums_salt.water(mass, mixing.vessel(mass), a.person)


def water(a: Assessment) -> str:
    """Another water than the plan's: its litres are wanted, and what they change."""
    water_kg = a.dose.water_kg if a.dose is not None else 0.0
    if not water_kg:
        return say(
            "No water goes into this cure: what stands in the bag the salt drew from the meat. Leave it in, it carries the cure.\n"
            "If water did go in, type how much, like «2 l water».\n{next}",
            next=plans.coming(a),
        ).strip()
    return say(
        "How much water is in it by now? Type all of it, like «2 l water», and I work out the nitrite and the salt anew.\n"
        "Planned were {litres} l with {cure} of curing salt.",
        litres=numbers.plain(round(water_kg, 2)),
        cure=numbers.grams(a.dose.cure_kg if a.dose else 0.0),
    )


def cold_enough(brine: Celsius, a: Assessment) -> str:
    """Whether a brine of such a temperature may take the meat; read as it is printed, never to the warm side."""
    limit, shown = numbers.both(COLD_C, a.person), numbers.temperature(brine, a.person)
    if printed_f(brine) <= COLD_F:
        return say("{shown} is cold enough: the meat goes in at {limit} or colder.", shown=shown, limit=limit)
    return say(
        "{shown} is too warm: the meat goes in at {limit} or colder. Ice in a shut bag helps.", shown=shown, limit=limit
    )


def to_be_read(a: Assessment) -> str:
    """That a brine which nobody read yet is read before the meat goes in."""
    limit = numbers.both(COLD_C, a.person)
    return say("Not before it reads {limit} or colder: read the brine now, and send me the number.", limit=limit)


def thinned(a: Assessment, litres: Kilograms) -> str:
    """So much water in a cure that was weighed to lie dry: what its nitrite and its salt come to, and that it is asked."""
    if a.dose is None:
        return water(a)
    then = replace(a.dose, method="brine", water_kg=litres)
    return say(
        "This cure was weighed to lie dry. In {litres} l of water it comes to {nitrite} nitrite, instead of {now}, and {salt} salt, "
        "instead of {salt2}.\nDoes it lie in that water? Tap it, and I judge it so. If none is in yet, put none in: what stands in "
        "the bag the salt drew.",
        litres=numbers.plain(round(litres, 2)),
        nitrite=numbers.ppm(then.ingoing().nitrite),
        now=numbers.ppm(a.dose.nitrite_ingoing),
        salt=numbers.percent(then.salt_fraction),
        salt2=numbers.percent(a.dose.salt_fraction),
    )


def lies_in(litres: Kilograms) -> str:
    """The tap that says so."""
    return say("It lies in {litres} l of water", litres=numbers.plain(round(litres, 2)))


def more_water(a: Assessment, litres: Kilograms) -> str:
    """So much water more in a brine in hand: its nitrite and its salt with that, and how it is said."""
    d = a.dose
    if d is None:
        return water(a)
    then = replace(d, water_kg=d.water_kg + litres)
    weak = judge(then).verdict is Verdict.UNDER_FLOOR
    lead = (
        say("That thins it too far: brine of the same strength instead, never water alone.")
        if weak
        else say("It thins it a little: with {litres} l more it still does.", litres=numbers.plain(round(litres, 2)))
    )
    return f"{lead}\n" + say(
        "It would be {nitrite} nitrite, instead of {now}, and {salt} salt, instead of {salt2}. If it is in, type all of the water, "
        "like «{all} l water». A bag pressed flat and turned covers it too.",
        nitrite=numbers.ppm(then.ingoing().nitrite),
        now=numbers.ppm(d.nitrite_ingoing),
        salt=numbers.percent(then.salt_fraction),
        salt2=numbers.percent(d.salt_fraction),
        all=numbers.plain(round(then.water_kg, 2)),
    )


def more_salt(a: Assessment, more: Kilograms | None) -> str:
    """Plain salt beyond what was weighed, in a cure in hand: what it comes to, and what it is worth."""
    d = a.dose
    if d is None or more is None:
        return say(
            "Plain salt too much costs taste, not safety, and the curing salt stays as it was weighed.\nSay it once more with its grams, "
            "and I reckon what it comes to. Was it curing salt, tell me its grams before anything else."
        )
    then = replace(d, salt_kg=d.salt_kg + more)
    return say(
        "With {more} more it is {salt} salt in all, instead of {planned}; most like 2 to 2.5 %.\nIt costs taste, not safety: the curing salt "
        "stays as it was weighed. Fry a thin slice after the rinse; too salty, ask «how long to soak».",
        more=numbers.grams(more),
        salt=numbers.percent(then.salt_fraction),
        planned=numbers.percent(d.salt_fraction),
    )
