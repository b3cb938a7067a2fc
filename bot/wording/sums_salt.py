"""What the sums of salt, water and sugar come to, in words: the figure first, then the rule or the band."""

from math import ceil

from bot import measures
from bot.wording import numbers
from bot.wording.language import Words, decimal, later, say
from core.answers.amounts import CUP, Span
from core.answers.mixing import BAG, IN_A_BAG, Scaled
from core.cure.judgement import Judgement
from core.person import Person
from core.units import Fraction, Kilograms

KINDS = Words({
    "table": later("fine table salt"), "coarse": later("coarse salt or dense flakes"), "light": later("light flakes"),
})  # fmt: skip


def plain_beside(whole: Kilograms, cure: Kilograms, plain: Kilograms) -> str:
    """Plain salt, where the curing salt that goes in beside it is told."""
    return say(
        "{plain} of plain salt: {whole} in all, less the salt in {cure} of curing salt.",
        plain=numbers.grams(plain),
        whole=numbers.grams(whole),
        cure=numbers.grams(cure),
    )


def of_the_usual(strength: Fraction) -> str:
    """Whose curing salt was reckoned with, where its grams are not told."""
    return say(
        "That curing salt is the dose of the {strength} kind; with another tell me its grams.",
        strength=numbers.percent(strength),
    )


def usual_salt(low: Kilograms, high: Kilograms, counted: Kilograms, person: Person) -> str:
    """Salt by the house's share."""
    return say(
        "{low} to {high} of salt for {counted}: 2.25 to 2.5 %, what is in the curing salt counted in.\n"
        "In a brine the water is counted with the meat; tell me the litres and I take them in.",
        low=numbers.grams(low),
        high=numbers.grams(high),
        counted=numbers.mass(counted, person),
    )


def dry_on_fish(low: Kilograms, high: Kilograms, mass: Kilograms, person: Person) -> str:
    """Salt on fish that lies in no brine."""
    return say(
        "{low} to {high} of salt for {mass} of fish: 2.25 to 2.5 %, with as much sugar or less.\n"
        "A night in the fridge, then rinse and dry it until tacky. No nitrite in fish.",
        low=numbers.grams(low),
        high=numbers.grams(high),
        mass=numbers.mass(mass, person),
    )


def sugar(found: Span, counted: Kilograms, person: Person) -> str:
    """Sugar, which nobody needs."""
    if found.low == found.high:
        return say(
            "{usual} of sugar for {counted}.\nIt is for taste alone; the dose and the days stay.",
            usual=numbers.grams(found.usual),
            counted=numbers.mass(counted, person),
        )
    return say(
        "{low} to {high} of sugar for {counted}: 0.5 to 1.5 %, or none.\nIt is for taste alone; the dose and the days stay.",
        low=numbers.grams(found.low),
        high=numbers.grams(found.high),
        counted=numbers.mass(counted, person),
    )


def strength(share: Fraction, degrees: float) -> str:
    """How strong a brine is."""
    return say(
        "That brine has {share} salt, {degrees} degrees on the salometer: salt in salt and water together.\n"
        "With meat in it, the meat counts too in the end; tell me its weight and I work that out.",
        share=numbers.percent(share, 1),
        degrees=f"{degrees:.0f}",
    )


def water_for(salt: Kilograms, share: Fraction, water: Kilograms) -> str:
    """Water for so much salt."""
    return say(
        "{salt} of salt in {water} l of water make a brine of {share}.\n"
        "It is salt in salt and water together, and no cure. Meat in it counts as water too in the end.",
        salt=numbers.grams(salt),
        water=decimal(water, 2),
        share=numbers.percent(share, 1),
    )


def thin(water: Kilograms, was: Fraction, wanted: Fraction) -> str:
    """Water that thins a brine."""
    return say(
        "Add {water} l of water to bring it from {was} to {wanted}.\n"
        "If curing salt is in it, that is thinned as well: then weigh a new one instead.",
        water=decimal(water, 2),
        was=numbers.percent(was, 1),
        wanted=numbers.percent(wanted, 1),
    )


def topup(litres: float, cure: tuple[Kilograms, Fraction], salt: Kilograms) -> str:
    """A brine in the place of what was lost."""
    return say(
        "In {litres} l: {salt} of salt and {cure} of curing salt of {strength}, cold; never plain water.\n"
        "That matches what a weighed brine comes to. What the meat took stays in it, so no more goes in than the limit "
        "leaves over the dose, and none to a brine that stands at its limit: past that it goes on by the uncured rules.",
        litres=numbers.plain(round(litres, 2)),
        salt=numbers.grams(salt),
        cure=numbers.grams(cure[0]),
        strength=numbers.percent(cure[1]),
    )


def spoon_of(typed: float, unit: str, mass: Kilograms) -> str:
    """What a spoon of sugar or spice weighs."""
    return say(
        "{typed} {unit} of it weigh about {mass}, level.\nGround finer or coarser it is another weight: a scale is surer.",
        typed=numbers.plain(typed),
        unit=unit,
        mass=numbers.grams(mass),
    )


def kosher(light: Span, dense: Span, told: measures.Measure, cups: float) -> str:
    """Kosher salt by volume, which is one of two, and as fine salt."""
    return say(
        "It depends on the flake: {light} of light flakes, {dense} of dense ones.\n"
        "Both are sold as kosher, so weigh it: by weight any salt will do. By volume that is {first} or {second} {unit} of {table}.",
        light=numbers.grams(light.usual),
        dense=numbers.grams(dense.usual),
        first=_as_volume(light.usual, "table", told.typed / cups),
        second=_as_volume(dense.usual, "table", told.typed / cups),
        unit=told.unit,
        table=KINDS["table"],
    )


def salt(found: Span, kind: str, told: measures.Measure, cups: float) -> str:
    """What cups or spoons of salt weigh, and how much that is of the other kinds."""
    others = [one for one in ("table", "light", "coarse") if one != kind]
    first, second = (_as_volume(found.usual, one, told.typed / cups) for one in others)
    return say(
        "{typed} {unit} of {kind} weigh about {usual} ({low} to {high}): weigh it, and any salt will do.\n"
        "By volume that is {first} {unit} of {one}, or {second} {unit} of {other}.",
        typed=numbers.plain(told.typed),
        unit=told.unit,
        kind=KINDS[kind],
        usual=numbers.grams(found.usual),
        low=numbers.grams(found.low),
        high=numbers.grams(found.high),
        first=first,
        one=KINDS[others[0]],
        second=second,
        other=KINDS[others[1]],
    )


def _as_volume(mass: Kilograms, kind: str, units_a_cup: float) -> str:
    low, high = CUP[kind]
    return decimal(units_a_cup * mass / ((low + high) / 2.0), 2)


def in_spoons(mass: Kilograms, low: float, high: float) -> str:
    """Curing salt by the spoon, which is only a check."""
    return say(
        "{mass} of curing salt are {low} to {high} level teaspoons, and that is only a check.\n"
        "The spread is too wide for nitrite: buy a scale that shows 0.1 g, or borrow one, before you dose.",
        mass=numbers.grams(mass),
        low=decimal(low, 1),
        high=decimal(high, 1),
    )


def water_of(water: Kilograms, share: Fraction) -> str:
    """Brine as a told share of the meat."""
    return say(
        "{water} l of water, which is {share} of the meat.\n"
        "Tell me the meat and the water together and I weigh the cure and the salt for both.",
        water=decimal(water, 1),
        share=numbers.percent(share, 0),
    )


def water(mass: Kilograms, tub: Span, person: Person) -> str:
    """How much water, and how big a bag or a tub."""
    return say(
        "For {mass} in a bag {bag_low} to {bag_high} l of water, in a tub {tub_low} to {tub_high} l.\n"
        "The bag holds {small} to {large} l, the tub {least} to {most} l with room for the meat. More water takes more "
        "curing salt: tell me the litres before you weigh.",
        mass=numbers.mass(mass, person),
        bag_low=decimal(IN_A_BAG[0] * mass, 1),
        bag_high=decimal(IN_A_BAG[1] * mass, 1),
        tub_low=decimal(0.6 * mass, 1),
        tub_high=decimal(mass, 1),
        small=f"{BAG[0] * mass:.0f}",
        large=f"{BAG[1] * mass:.0f}",
        least=f"{tub.low:.0f}",
        most=ceil(tub.high),
    )


def sugar_eaten(mass: Kilograms, usual: Kilograms, most: Kilograms) -> str:
    """The sugar in so much cooked meat."""
    return say(
        "About {usual} of sugar in {mass} as eaten, {most} at most: the fire takes water and leaves the sugar.\n"
        "Some stays in the brine or is rinsed off, so it is an estimate.",
        usual=numbers.grams(usual),
        mass=numbers.grams(mass),
        most=numbers.grams(most),
    )


def without_skin(said: str) -> str:
    """A dose for a belly whose rind is on."""
    first, _, rest = said.partition("\n")
    return f"{first}\n" + say("The rind takes no cure and is counted out: 90 % of the weight.") + f"\n{rest}"


def nitrite_of_cure(cure: tuple[Kilograms, Kilograms], strength: Fraction) -> str:
    """The nitrite in so much curing salt."""
    low, high = (mass * strength for mass in cure)
    shown = (
        _milligrams(low) if high - low < 1e-6 else say("{low} to {high}", low=_milligrams(low), high=_milligrams(high))
    )
    return say(
        "{nitrite} of nitrite are in it, with a curing salt of {strength}; the rest is salt.",
        nitrite=shown,
        strength=numbers.percent(strength),
    )


def nitrite_of_meat(mass: Kilograms, target: float, person: Person) -> str:
    """The nitrite that went into so much meat."""
    return say(
        "At {target}, {nitrite} of nitrite go into {mass}; most of it is used up by the time it is eaten.\n"
        "That is what goes in, no analysis of what is left.",
        target=numbers.ppm(target),
        nitrite=_milligrams(mass * target * 1e-6),
        mass=numbers.mass(mass, person),
    )


def _milligrams(mass: Kilograms) -> str:
    return f"{mass * 1e6:.0f} mg"


def scaled(
    found: Scaled,
    sizes: tuple[Kilograms, Kilograms],
    was: tuple[Kilograms, ...],
    of_cure: str,
    person: Person,
) -> str:
    """A recipe in another size; `of_cure` says what its curing salt is, which is no dose until it is held to the limit."""
    pairs = ", ".join(
        say("{was} become {now}", was=numbers.grams(old), now=numbers.grams(new))
        for old, new in zip(was, found.masses, strict=True)
    )
    said = say(
        "Take {factor} times everything, for {mine} instead of {base}.",
        factor=decimal(found.factor, 2),
        mine=numbers.mass(sizes[1], person),
        base=numbers.mass(sizes[0], person),
    )
    lines = [said, f"{pairs}." if pairs else "", of_cure]
    return "\n".join(line for line in lines if line)


def held_to_the_limit(made: Judgement | None) -> str:
    """What is said of the curing salt of a recipe, whose grams may be told."""
    if made is None:
        return say("Curing salt I weigh by your meat and its strength, not by a recipe: ask me for the dose.")
    level, limit = numbers.ppm(made.ingoing.nitrite), numbers.ppm(made.limit.max_mg_kg)
    if not made.limit.passes(made.ingoing.nitrite):
        return say(
            "But do not use its curing salt: at 6.25 % that is {level}, over the limit of {limit}. Ask me for the dose.",
            level=level,
            limit=limit,
        )
    return say(
        "Its curing salt is {level} at 6.25 %, under the limit of {limit}; count any water too.",
        level=level,
        limit=limit,
    )
