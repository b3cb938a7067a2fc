"""What the sums of the table come to, in words: to buy, to lose, to keep, to warm."""

from math import ceil, floor

from bot.measures import from_house
from bot.wording import numbers
from bot.wording.language import decimal, say
from core.answers.amounts import Left, Span
from core.person import Person
from core.safety.storage import REHEAT_F, Keeping
from core.units import Days, Fraction, Kilograms, celsius_from_fahrenheit


def raw_for_cooked(cooked: Kilograms, raw: Span, person: Person) -> str:
    """What to buy for so much cooked."""
    return say(
        "Buy about {usual} trimmed for {cooked} cooked, between {low} and {high}.\n"
        "Half as much again, if you buy it untrimmed.",
        usual=numbers.mass(raw.usual, person),
        cooked=numbers.mass(cooked, person),
        low=numbers.mass(raw.low, person),
        high=numbers.mass(raw.high, person),
    )


def untrimmed(mass: Kilograms, person: Person) -> str:
    """What to buy of a whole brisket, whose fat is still to be trimmed."""
    return say("Untrimmed, as a whole packer, about {mass}.", mass=numbers.mass(mass, person))


def halves(each: Kilograms) -> str:
    """A rub of two spices, as much of the one as of the other."""
    return say("In equal parts that is {grams} of each.", grams=numbers.grams(each))


def enough(mass: Kilograms, people: int, raw: Span, person: Person) -> str:
    """Whether so much raw meat is enough."""
    if mass >= raw.usual:
        first = say("Yes: {mass} raw is enough for {people}.", mass=numbers.mass(mass, person), people=people)
    elif mass >= raw.low:
        first = say(
            "Just: {mass} raw is enough for {people} with much beside it.",
            mass=numbers.mass(mass, person),
            people=people,
        )
    else:
        first = say("No: {mass} raw is too little for {people}.", mass=numbers.mass(mass, person), people=people)
    rule = say(
        "Trimmed, about {usual} gives them 150 g cooked each; from {low} with much beside it to {high} for hungry ones.",
        usual=numbers.mass(raw.usual, person),
        low=numbers.mass(raw.low, person),
        high=numbers.mass(raw.high, person),
    )
    return f"{first}\n{rule}"


def lost(left: Fraction, usually: Left) -> str:
    """What a cook left of a piece, and whether that is usual."""
    low, high = usually
    usual = say(
        "Usual is {low} to {high} for it; the rest is water and fat that the fire took.",
        low=numbers.percent(low, 0),
        high=numbers.percent(high, 0),
    )
    return (
        say("{left} is left, so {gone} went.", left=numbers.percent(left, 0), gone=numbers.percent(1.0 - left, 0))
        + f"\n{usual}"
    )


def each_pays(each: float, people: int) -> str:
    """What each pays of what the meat cost."""
    return say(
        "{each} each, for {people}; fuel, wood and spice come on top.", each=decimal(each, 2), people=str(people)
    )


def weighs_now(before: Kilograms, now: Kilograms, person: Person) -> str:
    """What is left of a piece that lost a share."""
    return say("{now} is left of {before}.", now=numbers.mass(now, person), before=numbers.mass(before, person))


def tens(kilograms: Kilograms) -> str:
    """Milligrams, to the ten."""
    return f"{round(kilograms * 1e5) * 10:.0f}"


def sodium(mass: Kilograms, salt: Span, share: float, salted: Fraction) -> str:
    """Sodium in a slice."""
    return say(
        "Roughly {usual} mg of sodium in {mass}, between {low} and {high}.\n"
        "That is {salt} g of salt, {least} to {most}, for meat salted to {salted} before the fire. An estimate, no analysis.",
        usual=tens(salt.usual * share),
        low=tens(salt.low * share),
        high=tens(salt.high * share),
        mass=numbers.grams(mass),
        salt=decimal(salt.usual * 1000.0, 1),
        least=decimal(salt.low * 1000.0, 1),
        most=decimal(salt.high * 1000.0, 1),
        salted=numbers.percent(salted),
    )


def steam(mass: Kilograms, found: Span, person: Person) -> str:
    """How long it steams."""
    return say(
        "{low} to {high} in steam for {mass} from the fridge, until it is {safe} inside.\n"
        "If it is still firm from the smoke, two to three hours until a probe goes in like into butter.",
        low=numbers.hours(found.low),
        high=numbers.hours(found.high),
        mass=numbers.mass(mass, person),
        safe=numbers.both(celsius_from_fahrenheit(REHEAT_F), person),
    )


def keeps(kept: Days, chart: Keeping, person: Person) -> str:
    """Whether something that was kept so long is still to be eaten."""
    fields = {"days": numbers.plain(chart.days), "cold": numbers.at_most(chart.fridge_c, person)}
    rule = (
        say(
            "The chart gives it {days} days at {cold} or below, counted from the cooking; raw, from the shop.\n"
            "A longer wait is nothing that heat, vacuum or a good smell mends.",
            **fields,
        )
        if chart.days == chart.longest
        else say(
            "The chart gives it {days} to {longest} days at {cold} or below, counted from the cooking; raw, from the shop.\n"
            "A longer wait is nothing that heat, vacuum or a good smell mends.",
            longest=numbers.plain(chart.longest),
            **fields,
        )
    )
    if kept <= chart.days:
        first = say("After {kept} it is in time, if it stayed cold all the while.", kept=numbers.days(kept))
    elif kept <= chart.longest:
        first = say("After {kept} it is at its end: today, hot, and not for anybody at risk.", kept=numbers.days(kept))
    else:
        first = say("After {kept} it is too old: throw it away.", kept=numbers.days(kept))
    return f"{first}\n{rule}"


def price(cooked: tuple[float, ...], unit: str, whole: float | None, people: int | None) -> str:
    """What it costs cooked, in whatever money the raw price was."""
    name = say("a kilo") if unit == "kg" else say("a pound")
    low, usual, high = (decimal(one, 2) for one in cooked)
    lines = [
        say(
            "About {usual} {a} cooked, between {low} and {high}: fire and trimming take the rest.",
            usual=usual,
            a=name,
            low=low,
            high=high,
        )
        if low != high
        else say("{usual} {a} cooked, of the share that you have left.", usual=usual, a=name)
    ]
    if whole is not None:
        lines.append(say("The raw piece comes to {whole}.", whole=decimal(whole, 2)))
    if whole is not None and people:
        lines.append(say("By the head that is {each} for {people}.", each=decimal(whole / people, 2), people=people))
    return "\n".join([*lines, say("Fuel, wood and spice come on top.")])


def so_much(cost: float, mass: Kilograms) -> str:
    """What so many grams of it cost, cooked."""
    return say("About {cost} for {mass} cooked.", cost=decimal(cost, 2), mass=numbers.grams(mass))


def by_the_plate(cost: float, each: Kilograms, person: Person) -> str:
    """What the meat of one plate costs."""
    return say(
        "About {cost} a plate of {each}, ends and crumbs taken off.", cost=decimal(cost, 2), each=_small(each, person)
    )


def of_cooked(cooked: Kilograms, count: Span, person: Person) -> str:
    """How many so much cooked meat feeds."""
    return say(
        "{mass} cooked give about {usual} portions of 150 g: {few} large ones, {many} small ones.\nEnds and crumbs are taken off.",
        mass=numbers.mass(cooked, person),
        usual=f"{floor(count.usual)}",
        few=f"{floor(count.low)}",
        many=f"{floor(count.high)}",
    )


def of_a_size(cooked: Kilograms, each: Kilograms, so_many: float, person: Person) -> str:
    """How many portions of a told size so much cooked meat gives."""
    return say(
        "About {n} of {each}: {mass} cooked, less ends and crumbs.",
        n=floor(so_many),
        each=_small(each, person),
        mass=numbers.mass(cooked, person),
    )


def raw_for_each(people: int, each: Kilograms, cooked: Kilograms, person: Person) -> str:
    """What to buy where so much raw meat is meant for each, and what that is cooked."""
    return say(
        "{all} raw: {people} times {each}. Cooked that is about {cooked} each.",
        all=numbers.mass(people * each, person),
        people=people,
        each=numbers.mass(each, person),
        cooked=numbers.mass(cooked, person),
    )


def were_it_raw(so_many: float) -> str:
    """The same of a weight that was told of raw meat."""
    return say("If that was its raw weight, about {n}.", n=floor(so_many))


def were_it_cooked(count: Span) -> str:
    """The portions of a weight that may be told of cooked meat."""
    return say(
        "If it is cooked already: about {usual}, {few} large ones or {many} small ones.",
        usual=floor(count.usual),
        few=floor(count.low),
        many=floor(count.high),
    )


def trimmed(mass: Kilograms, trim: tuple[float, float], person: Person) -> str:
    """What trimming leaves of an untrimmed piece."""
    low, high = trim
    return say(
        "Trimming takes {low} to {high} of a whole packer, so {least} to {most} of {mass} go on. Weigh it then: the dose goes by that.",
        least=numbers.mass(mass * (1.0 - high), person),
        most=numbers.mass(mass * (1.0 - low), person),
        mass=numbers.mass(mass, person),
        low=numbers.percent(low, 0),
        high=numbers.percent(high, 0),
    )


def drawn(gone: Fraction, usual: tuple[float, float]) -> str:
    """What a dry cure drew out of a piece."""
    low, high = usual
    text = say(
        "{gone} went; in a bag with its dry cure {low} to {high} is usual, water that the salt drew.",
        gone=numbers.percent(gone, 1),
        low=numbers.percent(low, 0),
        high=numbers.percent(high, 0),
    )
    after = say("It stays as it is: the dose counts by the weight that went in.")
    much = say("More than that: look whether the bag leaks, since what drips away takes cure with it.")
    return f"{text}\n{much if gone > high else after}"


def rub_and_salt(meat: Kilograms, rub: tuple[float, ...], salt: tuple[float, float], person: Person) -> str:
    """Rub, and the salt that goes with it where no cure brought any."""
    return say(
        "About {usual} of rub for {meat}, from {low} to {high}, and {least} to {most} of salt, since no cure brought any.\n"
        "Not cured, it is plain meat: chilled and kept by the stricter rules.",
        usual=numbers.grams(rub[1] * meat),
        low=numbers.grams(rub[0] * meat),
        high=numbers.grams(rub[2] * meat),
        meat=numbers.mass(meat, person),
        least=numbers.grams(salt[0] * meat),
        most=numbers.grams(salt[1] * meat),
    )


def so_many(mass: Kilograms, people: int, raw: Span, person: Person) -> str:
    """How many pieces of a weight so many eaters want."""
    few, usual, many = (ceil(of / mass - 1e-9) for of in (raw.low, raw.usual, raw.high))
    return say(
        "{usual} of {mass}, trimmed: {raw} raw for {people} at 150 g cooked each; {few} with much beside it, {many} for hungry ones.\n"
        "Bought untrimmed, half as much again.",
        usual=usual,
        mass=numbers.mass(mass, person),
        raw=numbers.mass(raw.usual, person),
        people=people,
        few=few,
        many=many,
    )


def a_head(raw: Span, person: Person) -> str:
    """What one eater wants, cooked and raw."""
    return say(
        "150 g cooked for each, 100 g with much beside it, 200 g for hungry ones: raw and trimmed {usual}, from {low} to {high}.",
        usual=_small(raw.usual, person),
        low=_small(raw.low, person),
        high=_small(raw.high, person),
    )


def _small(mass: Kilograms, person: Person) -> str:
    return f"{decimal(from_house(mass, 'oz'), 0)} oz" if person.units.mass == "lb" else numbers.grams(mass)
