"""What a sum still needs to know, asked one thing at a time."""

from collections.abc import Sequence
from math import floor

from bot.intents.intents import Choose
from bot.measures import from_house
from bot.wording import numbers
from bot.wording.asking import STRENGTHS, Rows, button
from bot.wording.language import Words, decimal, later, point, say
from core.cure.judgement import Judgement
from core.person import Person
from core.units import Celsius, Fraction, Kilograms, MilligramsPerKilogram

ASKED = Words({
    "meat": later("How much meat is it? Type its weight, like «3.2 kg» or «7 lb»."),
    "body": later("How thick is it at its thickest? Type it like «48 mm» or «2 in»."),
    "strength": later("How strong is your curing salt? Its packet says the nitrite in percent; tap it or type it, like «6.25 %»."),
    "people": later("For how many people? Type a number, like «12 people»."),
    "days": later("For how many days? Type them, like «7 days»."),
    "hours": later("For how many hours? Type them, like «10 h»."),
    "species": later("Which meat is it? Each has its own table."),
    "fractions": later("Which strength shall the brine have? Type it like «5 %»."),
    "water": later("How much water is it? Type it like «2 l»."),
})  # fmt: skip


def missing(wanted: str) -> tuple[str, Rows]:
    """The question, with the usual answers to tap."""
    return ASKED[wanted], rows(wanted)


def rows(wanted: str) -> Rows:
    """The usual answers to tap."""
    match wanted:
        case "strength":
            return (tuple(button(point(label), Choose("sum", label)) for _, label in STRENGTHS if "%" in label),)
        case "species":
            kinds = {"beef": say("Beef"), "pork": say("Pork"), "chicken": say("Chicken"), "turkey": say("Turkey")}
            return (tuple(button(label, Choose("sum", kind)) for kind, label in kinds.items()),)
        case _:
            return ()


def by_strength(doses: tuple[tuple[Fraction, Kilograms], ...]) -> tuple[str, Rows]:
    """The strength, asked with what each of the usual ones would take."""
    (one, first), (other, second) = doses
    text = say(
        "How strong is your curing salt? With {one} nitrite it takes {first}, with {other} {second}.\n"
        "Its packet says it in percent; tap it or type it, like «6.25 %». Without it there is no dose.",
        one=numbers.percent(one),
        first=numbers.grams(first),
        other=numbers.percent(other),
        second=numbers.grams(second),
    )
    return text, rows("strength")


def in_ounces(cures: Sequence[Kilograms]) -> str:
    """Doses in ounces, to the hundredth below, for a scale that shows no grams, and how fine it has to be."""
    return say(
        "In ounces that is {doses}: it takes a scale that shows 0.01 oz, or 0.1 g.",
        doses=" / ".join(f"{decimal(floor(from_house(one, 'oz') * 100) / 100, 2)} oz" for one in cures),
    )


def for_each(count: int, cures: Sequence[Kilograms]) -> str:
    """Doses of each of so many pieces alike, of a dose for all of them."""
    return say(
        "That is for all of it: {doses} for each of {count} pieces that weigh the same, else by the weight of each.",
        doses=" / ".join(numbers.grams_down(one) for one in cures),
        count=count,
    )


def by_meat(cure: Kilograms, meats: tuple[tuple[Fraction, Kilograms], ...], person: Person) -> tuple[str, Rows]:
    """The strength, asked with the meat that so much of a strong and of a weak curing salt is for."""
    (one, first), (other, second) = meats
    text = say(
        "How strong is your curing salt? {cure} with {one} nitrite are for {first} of meat, with {other} for {second}.\n"
        "Its packet says it in percent; tap it or type it, like «6.25 %».",
        cure=numbers.grams(cure),
        one=numbers.percent(one),
        first=numbers.mass(first, person),
        other=numbers.percent(other),
        second=numbers.mass(second, person),
    )
    return text, rows("strength")


def by_level(
    made: tuple[tuple[Fraction, Judgement], ...],
    right: Kilograms | None = None,
    least: MilligramsPerKilogram | None = None,
) -> tuple[str, Rows]:
    """The strength, asked with the nitrite that a strong and a weak curing salt would bring.

    `right` is what of the strong one would be right for that meat [kg]; `least` what it brings, where spoons weigh least.
    """
    (one, first), (other, second) = made
    thin = say("Under {weak} is too little to count as cured.", weak=numbers.ppm(first.floor))
    text = say(
        "How strong is your curing salt? With {one} nitrite that is {first}, with {other} {second}; the limit is {limit}.\n"
        "Its packet says it in percent; tap it or type it, like «6.25 %».",
        one=numbers.percent(one),
        first=_level(first, least),
        other=numbers.percent(other),
        second=numbers.ppm(second.ingoing.nitrite),
        limit=numbers.ppm(first.limit.max_mg_kg),
    )
    more = [thin] if first.ingoing.nitrite < first.floor else []
    if first.ingoing.nitrite > first.limit.max_mg_kg:
        more.append(say(
            "With {one} that is over the limit: do not use it, and eat nothing that lies in it until its packet shows a weaker one. "
            "Rinsing and soaking do not make it safe.",
            one=numbers.percent(one),
        ))  # fmt: skip
    if right is not None and not first.floor <= first.ingoing.nitrite <= first.limit.max_mg_kg:
        more.append(
            say("Right for that meat would be {dose} of {one}.", dose=numbers.grams(right), one=numbers.percent(one))
        )
    return "\n".join((text, *more)), rows("strength")


def for_all_of_it(right: Kilograms, strength: Fraction) -> str:
    """What a mix would have wanted with all the water that came to it."""
    return say(
        "Right for all of it would be {dose} of {one}, and salt and sugar grow with the water.",
        dose=numbers.grams(right),
        one=numbers.percent(strength),
    )


def _level(most: Judgement, least: MilligramsPerKilogram | None) -> str:
    if least is None or most.ingoing.nitrite - least < 1.0:
        return numbers.ppm(most.ingoing.nitrite)
    return say("{low} to {high}", low=f"{least:.0f}", high=numbers.ppm(most.ingoing.nitrite))


def by_nitrite(cure: Kilograms, strengths: tuple[Fraction, Fraction]) -> tuple[str, Rows]:
    """The strength, asked with the nitrite that so much of a strong and of a weak curing salt holds."""
    one, other = strengths
    text = say(
        "How strong is your curing salt? In {cure} of it are {first} mg of nitrite with {one}, {second} mg with {other}.\n"
        "Its packet says it in percent; tap it or type it, like «6.25 %».",
        cure=numbers.grams(cure),
        first=f"{cure * one * 1e6:.0f}",
        one=numbers.percent(one),
        second=f"{cure * other * 1e6:.0f}",
        other=numbers.percent(other),
    )
    return text, rows("strength")


def topped_up(missing: Kilograms, of: tuple[Fraction, MilligramsPerKilogram], cold: Celsius, person: Person) -> str:
    """What is missing of a dose that was too small, where somebody asks to add it; `of` are strength and level."""
    strength, target = of
    return say(
        "{missing} of the {strength} kind are missing to {target}, never more. Dissolved in a little cold water and spread over both "
        "faces they make it right within a day of the first, if it lay at {cold} or below; its days begin anew then. So late a dose "
        "cures less evenly: turn it often, and what is grey inside later counts as not cured.",
        missing=numbers.grams_down(missing),
        strength=numbers.percent(strength),
        target=numbers.ppm(target),
        cold=numbers.both(cold, person),
    )


def too_late() -> str:
    """A dose that was too small, and lay for more than a day: nothing is put in after it."""
    return say(
        "It has lain for over a day: a second dose now would spread nobody knows how, so none goes in. It counts as not cured: "
        "cook it through within the days that raw meat keeps, and cool it by the stricter rules."
    )


def over() -> str:
    """A tap on a question that is answered."""
    return say("That question is answered. Ask it anew, with its figures.")
