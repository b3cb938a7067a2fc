"""What mixes come to beside one another, in words: two recipes for one meat, salt by another kind of spoon, a tub."""

from collections.abc import Mapping, Sequence
from math import ceil

from bot.measures import Measure, from_house
from bot.wording import numbers
from bot.wording.language import Words, decimal, later, say
from bot.wording.sums import converted
from bot.wording.sums_salt import KINDS
from core.answers.amounts import Span
from core.cure.dose import Dose
from core.cure.judgement import Judgement
from core.person import Person
from core.units import Fraction, Kilograms

WHAT = Words({"cure": later("curing salt"), "salt": later("salt"), "sugar": later("sugar")})


def recipes(made: tuple[tuple[str, float, Judgement], ...], own: Dose, person: Person) -> str:
    """What every recipe comes to, and the dose to weigh instead."""
    lines = [
        say(
            "Weigh {cure} of curing salt of {strength}, and trust none of the spoons: {nitrite} on {meat}{water}.",
            cure=numbers.grams(own.cure_kg),
            strength=numbers.percent(own.nitrite_fraction),
            nitrite=numbers.ppm(own.nitrite_ingoing),
            meat=numbers.mass(own.meat_kg, person),
            water=say(" in {litres} l", litres=decimal(own.water_kg, 1)) if own.water_kg else "",
        )
    ]
    return "\n".join([*lines, *(_one(*each) for each in made)])


def ask_with(strength: Fraction, made: tuple[tuple[str, float, Judgement], ...]) -> str:
    """The strength, asked with what each recipe would come to with the usual one."""
    lead = say(
        "How strong is your curing salt? With {strength} nitrite, and the spoons as they weigh:",
        strength=numbers.percent(strength),
    )
    last = say("Its packet says it in percent; tap it or type it, like «6.25 %», and I weigh it for your meat.")
    return "\n".join([lead, *(_one(*each) for each in made), last])


def _one(spoons: str, low: float, high: Judgement) -> str:
    level = say("{low} to {high}", low=f"{low:.0f}", high=numbers.ppm(high.ingoing.nitrite))
    limit = numbers.ppm(high.limit.max_mg_kg)
    if not high.limit.passes(high.ingoing.nitrite):
        return say("{spoons} would be {level}: over the limit of {limit}.", spoons=spoons, level=level, limit=limit)
    if high.ingoing.nitrite < high.floor:
        return say("{spoons} would be {level}: too little to count as cured.", spoons=spoons, level=level)
    return say("{spoons} would be {level}, under the limit of {limit}.", spoons=spoons, level=level, limit=limit)


def spoons_of_salt(mass: Kilograms, spoons: Span, unit: str, kind: str) -> str:
    """Plain salt by the spoon or the cup."""
    return say(
        "{mass} of {kind} are about {usual} {unit}, level ({low} to {high}): a scale is surer, and any salt will do by weight.",
        mass=numbers.grams(mass),
        kind=KINDS[kind],
        usual=decimal(spoons.usual, 1),
        unit=unit,
        low=decimal(spoons.low, 1),
        high=decimal(spoons.high, 1),
    )


def of_each(grams: Mapping[str, Kilograms], counted: Kilograms, person: Person) -> str:
    """What each share comes to, and that curing salt is salt."""
    parts = ", ".join(
        say("{mass} of {what}", mass=numbers.grams(mass), what=WHAT[name]) for name, mass in grams.items()
    )
    said = say("{parts} for {counted}.", parts=parts, counted=numbers.mass(counted, person))
    if not {"cure", "salt"} <= grams.keys():
        return said
    return f"{said}\n" + say(
        "Curing salt is nearly all salt: {plain} of plain salt beside it make up the share.",
        plain=numbers.grams(max(grams["salt"] - grams["cure"], 0.0)),
    )


def cure_beside(doses: tuple[tuple[Fraction, Kilograms], ...]) -> str:
    """The curing salt of the usual strengths, where its strength is not told."""
    (one, first), (other, second) = doses
    return say(
        "The curing salt goes by its packet: {first} of {one}, {second} of {other}. It counts as salt: take as much less of the plain.",
        one=numbers.percent(one),
        first=numbers.grams(first),
        other=numbers.percent(other),
        second=numbers.grams(second),
    )


def by_spoon(mass: Kilograms, spoons: float, unit: str) -> str:
    """Sugar or spice by the spoon."""
    return say(
        "{mass} are about {spoons} {unit}, level, as such a spoon usually weighs; a scale is surer.",
        mass=numbers.grams(mass),
        spoons=decimal(spoons, 1),
        unit=unit,
    )


def pounds_and_ounces(typed: float, unit: str, mass: Kilograms) -> str:
    """A mass in pounds and ounces, to the half ounce."""
    halves = round(from_house(mass, "oz") * 2)
    pounds, rest = divmod(halves, 32)
    return say(
        "{typed} {unit} is {pounds} lb {ounces} oz.",
        typed=numbers.plain(typed),
        unit=unit,
        pounds=pounds,
        ounces=numbers.plain(rest / 2),
    )


def per_kilo(grams: float) -> str:
    """Grams for a kilo as a share."""
    return say("{grams} g for a kilo are {share} %.", grams=numbers.plain(grams), share=numbers.plain(grams / 10.0))


def share_of(share: float, mass: Measure, part: Kilograms) -> str:
    """A share of a mass."""
    return say(
        "{share} % of {mass} {unit} is {part} g.",
        share=numbers.plain(share),
        mass=numbers.plain(mass.typed),
        unit=mass.unit,
        part=numbers.plain(round(part * 1000.0, 2)),
    )


def compared(told: tuple[float, str], there: tuple[float, str], limit: tuple[float, bool]) -> str:
    """A temperature in the other unit, and whether it is below a number of that."""
    value, below = there[0], limit[1]
    is_so = value < limit[0] if below else value > limit[0]
    said = converted(*told, *there)
    if is_so:
        return f"{say('Yes.')} {said}"
    return f"{say('No.')} {said}"


def meat_of_spoons(meats: tuple[Kilograms, ...], of: tuple[Fraction, float], person: Person) -> str:
    """How much meat spoons of a curing salt are for, by the least and the most that they weigh."""
    return say(
        "At {strength} nitrite that is for {low} to {high} of meat, dry, at {level}; see that the packet says so.",
        strength=numbers.percent(of[0]),
        low=numbers.mass(meats[0], person),
        high=numbers.mass(meats[-1], person),
        level=numbers.ppm(of[1]),
    )


def meat_for(cure: Kilograms, strength: Fraction, meat: Kilograms, level: float, person: Person) -> str:
    """How much meat a curing salt is for."""
    return say(
        "{cure} of the {strength} kind are for {meat} of meat, dry, at {level}; in a brine the water counts with it.\n"
        "Weigh it for the meat that you have: what is left keeps, dry and dark.",
        cure=numbers.grams(cure),
        strength=numbers.percent(strength),
        meat=numbers.mass(meat, person),
        level=numbers.ppm(level),
    )


def fits(litres: float, wanted: Span) -> str:
    """Whether a vessel holds it."""
    if litres >= wanted.high:
        return say("Yes: it goes in, with room to spare.")
    if litres >= wanted.low:
        return say("Just: with little brine, and the meat must be covered.")
    return say("No: take one of {litres} l or more.", litres=ceil(wanted.high))


def salt_beside(plain: Kilograms, share: Fraction) -> str:
    """Plain salt that goes in with a strong curing salt, to the house's share of all that is counted."""
    return say(
        "Plain salt with it: about {plain}, so that all is {share} with what the curing salt brings; a weak one brings all of it.",
        plain=numbers.grams(plain),
        share=numbers.percent(share),
    )


def sugar_beside(found: Span) -> str:
    """Sugar that goes in with a dose."""
    return say(
        "Sugar, for taste alone: {low} to {high}, 0.5 to 1.5 %.",
        low=numbers.grams(found.low),
        high=numbers.grams(found.high),
    )


def salt_of_all(share: Fraction, salt: Sequence[Kilograms]) -> str:
    """The plain salt of a brine by its share of meat and water: in a bag, in a tub, each from little water to much."""
    in_bag, bag, in_tub, tub = (numbers.grams(one) for one in salt)
    return say(
        "Salt, {share} of meat and water together: {in_bag} to {bag} in the bag, {in_tub} to {tub} in the tub.",
        share=numbers.percent(share),
        in_bag=in_bag,
        bag=bag,
        in_tub=in_tub,
        tub=tub,
    )


def sodium_by_label(mass: Kilograms, salt: tuple[Kilograms, Kilograms]) -> str:
    """Sodium in what is eaten, by its label; `salt` and the sodium in it."""
    return say(
        "About {sodium} mg of sodium in {mass}, by its label: as much as {salt} g of salt.",
        sodium=f"{round(salt[1] * 1e5) * 10:.0f}",
        mass=numbers.grams(mass),
        salt=decimal(salt[0] * 1000.0, 1),
    )


def sodium_there(mass: Kilograms, salt: tuple[Kilograms, Kilograms], salted: Fraction) -> str:
    """Sodium in what is eaten, where its own share of salt is told; `salt` and the sodium in it."""
    return say(
        "Roughly {sodium} mg of sodium in {mass}: {salt} g of salt, at {salted} of what is eaten.",
        sodium=f"{round(salt[1] * 1e5) * 10:.0f}",
        mass=numbers.grams(mass),
        salt=decimal(salt[0] * 1000.0, 1),
        salted=numbers.percent(salted),
    )


def spooned(found: Sequence[Measure], factor: float) -> str:
    """What a recipe tells by the spoon and the cup, in another size."""
    pairs = ", ".join(
        say(
            "{was} become {now}",
            was=f"{numbers.plain(round(m.typed, 2))} {m.unit}",
            now=f"{numbers.plain(round(m.typed * factor, 2))} {m.unit}",
        )
        for m in found
    )
    return f"{pairs}."


def salty(share: Fraction) -> str:
    """How salty a mix makes the meat, what is in the curing salt counted."""
    return say(
        "All its salt is {share} of what is salted, that of the curing salt counted; 2 to 2.5 % suits most.",
        share=numbers.percent(share),
    )


def kosher_for_kosher(masses: tuple[Kilograms, Kilograms], told: Measure) -> str:
    """One flake in place of the other by volume: light ones for dense ones, and the other way round."""
    light, dense = masses
    return say(
        "Light flakes in place of dense ones: {more} {unit}. Dense ones in place of light ones: {less} {unit}.",
        more=decimal(told.typed * dense / light, 2),
        less=decimal(told.typed * light / dense, 2),
        unit=told.unit,
    )
