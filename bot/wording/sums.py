"""What a sum comes to, in words: the figure first, then the rule or the band that it stands on."""

from math import ceil

from bot.wording import numbers
from bot.wording.language import decimal, say
from bot.wording.per_weight import WAYS
from core.answers.amounts import Span
from core.cure.judgement import Judgement
from core.heat.band import Band
from core.meat.piece import Piece
from core.person import Person
from core.plan.anchors import LONGEST_CURE
from core.plan.steps import Band as Days
from core.units import Fraction, Kilograms, Metres, celsius_from_fahrenheit

FIRST_MARK_H = 1.5  # to 80 °F; sources.FSIS_COOLING_1999
LONG = 16.0  # days by the rule, from which injecting is the better way. Common practice
TOO_SALTY, MILD = 0.028, 0.019  # of meat; 2 to 2.5 % suits most. Common practice
SIGNS = {"c": "°C", "f": "°F", "in": "in", "cup": "cups"}


def converted(typed: float, unit: str, value: float, wanted: str) -> str:
    """One quantity in another unit."""
    digits = 1 if abs(value) >= 10 or wanted in ("c", "f", "mm") else 2
    shown = decimal(value, digits)
    if "." in shown or "," in shown:
        shown = shown.rstrip("0").rstrip(".,")
    return say(
        "{typed} {unit} is {value} {wanted}.",
        typed=numbers.plain(typed),
        unit=SIGNS.get(unit, unit),
        value=shown,
        wanted=SIGNS.get(wanted, wanted),
    )


def spoon_of_cure(spoons: float, low: Kilograms, high: Kilograms) -> str:
    """What spoons of curing salt may weigh."""
    return say(
        "Weigh it: curing salt, {spoons} tsp level, is anything from {low} to {high}.\n"
        "That spread is too wide for nitrite, so a spoon is only a check on the scale.",
        spoons=numbers.plain(spoons),
        low=numbers.grams(low),
        high=numbers.grams(high),
    )


def ppm(found: Judgement, low: float, strength: Fraction) -> str:
    """What a mix comes to, against the limit."""
    high = found.ingoing.nitrite
    shown = numbers.ppm(high) if high - low < 1.0 else f"{low:.0f} – {numbers.ppm(high)}"
    said = say(
        "That is {ppm} of nitrite, with a curing salt of {strength}; the limit is {limit}.",
        ppm=shown,
        strength=numbers.percent(strength),
        limit=numbers.ppm(found.limit.max_mg_kg),
    )
    if not found.limit.passes(high):
        return (
            said
            + "\n"
            + say(
                "Over the limit: do not use it. If meat already lies in it, do not eat it: soaking does not make it safe."
            )
        )
    if high < found.floor:
        return said + "\n" + say("That is too little to count as cured: ask me for the dose.")
    return said + "\n" + say("It keeps the limit, weighed on a scale; spoons and other strengths are another matter.")


def brine(salt: Kilograms, strength: Fraction, water: Kilograms, degrees: float) -> str:
    """Salt for a brine of a strength."""
    return say(
        "{salt} of salt in {water} of water make a brine of {strength}, {degrees} degrees on the salometer.\n"
        "It is salt in salt and water together; this is no cure.",
        salt=numbers.grams(salt),
        water=say("{litres} l", litres=numbers.plain(round(water, 2))),
        strength=numbers.percent(strength),
        degrees=f"{degrees:.0f}",
    )


def salometer(degrees: float, strength: Fraction) -> str:
    """Degrees and percent of a brine."""
    return say(
        "{degrees} salometer degrees are {strength} salt; a brine that takes no more has 100 degrees.",
        degrees=numbers.plain(round(degrees, 1)),
        strength=numbers.percent(strength, 1),
    )


def salt_for(salt: Kilograms, share: Fraction, counted: Kilograms, person: Person) -> str:
    """Salt as a share of what is counted."""
    return say(
        "{salt} of salt are {share} of {counted}.\n"
        "Curing salt counts as salt: take as much less of the plain. In a brine the water is counted with the meat.",
        salt=numbers.grams(salt),
        share=numbers.percent(share),
        counted=numbers.mass(counted, person),
    )


def equilibrium(share: Fraction) -> str:
    """Salt once everything is even."""
    if share > TOO_SALTY:
        after = say("That is salty; 2 to 2.5 % suits most. Less salt, or out by the clock and a soak.")
    elif share < MILD:
        after = say("That is mild: 2 to 2.5 % suits most, birds 1.5 to 2 %. What is in curing salt counts with it.")
    else:
        after = say(
            "That is what suits most, 2 to 2.5 %, once all is even; curing salt on top counts with it, and the fire makes it saltier."
        )
    return say("{share} salt in the end, in meat and liquid alike.", share=numbers.percent(share, 1)) + "\n" + after


def fish_brine(mass: Kilograms, water: Kilograms, salt: Kilograms, person: Person) -> str:
    """A brine for fish, by the clock."""
    return say(
        "{salt} of plain salt in {water} l of water for {mass} of fish: a seventh of the water by volume.\n"
        "An hour or two in the fridge, then rinse and dry it until tacky. No nitrite in fish.",
        salt=numbers.grams(salt),
        water=decimal(water, 1),
        mass=numbers.mass(mass, person),
    )


def days(found: tuple[Days, float | None], method: str, piece: Piece, person: Person) -> str:
    """Days in the cure, the way that they are for, and the trade's own rule beside them where it waits longer."""
    band, by_rule = found
    lead = {"thick": numbers.length(piece.thickness, person), "way": WAYS[method], "days": numbers.days(band.p90)}
    if by_rule is not None and band.p90 < by_rule <= LONG:
        lines = [_to_the_rule(lead, by_rule)]
    else:
        lines = [
            say("{thick}, {way}: {days} until 9 in 10 are pink in the middle.", **lead),
            _by_rule(by_rule, band.p90),
        ]
    if not piece.measured:
        lines.append(say("The thickness is my guess from the weight; measure the thickest spot and tell me."))
    return "\n".join(line for line in lines if line)


def _to_the_rule(lead: dict[str, str], by_rule: Days) -> str:
    """From our days to those of the trade's rule, which are the surer ones."""
    return say(
        "{thick}, {way}: {days} at the least, {rule} to be sure.\n"
        "By {days} 9 in 10 are pink in the middle; {rule} is the trade's rule, mm squared over 200 and half for a round: "
        "it waits for even salt. Kept cold, longer does no harm, up to {longest} days.",
        **lead,
        rule=numbers.days(ceil(by_rule)),
        longest=numbers.plain(LONGEST_CURE),
    )


def not_injected(by_rule: Days) -> str:
    """What a piece that is planned with needles would want without them, by the trade's rule."""
    return say(
        "Not injected it takes far longer: {days} by the trade's rule, mm squared over 200 and half for a round. So thick a piece is better injected, or split.",
        days=numbers.days(ceil(by_rule)),
    )


def _by_rule(days_: float | None, ours: float) -> str:
    if days_ is None:
        return say("The needles bring the cure in, so the days are for colour and salt.")
    if days_ <= ours:
        return ""
    said = say(
        "The trade's rule, mm squared over 200 and half for a round, would be {days}: it waits for even salt. "
        "Kept cold, longer does no harm, up to {longest} days.",
        days=numbers.days(ceil(days_)),
        longest=numbers.plain(LONGEST_CURE),
    )
    return f"{said} {say('So thick a piece is better injected, or split.')}" if days_ > LONG else said


def shopping_each(people: int, each: Kilograms, raw: Kilograms, person: Person) -> str:
    """What to buy for portions of a told size."""
    return say(
        "Buy about {raw} of trimmed raw meat: {people} times {each} cooked, and what fire and slicing take.\n"
        "Half as much again, if you buy it untrimmed.",
        raw=numbers.mass(raw, person),
        people=people,
        each=numbers.grams(each),
    )


def shopping(people: int, raw: Span, person: Person) -> str:
    """What to buy."""
    return say(
        "Buy about {usual} of trimmed raw meat for {people} people, at 150 g cooked each.\n"
        "From {low} with much beside it to {high} for hungry ones. Half as much again, if you buy it untrimmed.",
        usual=numbers.mass(raw.usual, person),
        people=people,
        low=numbers.mass(raw.low, person),
        high=numbers.mass(raw.high, person),
    )


def portions(raw: Kilograms, count: Span, left: Span, person: Person) -> str:
    """How many it feeds."""
    return say(
        "About {usual} portions of 150 g: {few} large ones, {many} small ones.\n"
        "Of {raw} raw I expect {left} cooked, between {low} and {high}.",
        usual=f"{count.usual:.0f}",
        few=f"{count.low:.0f}",
        many=f"{count.high:.0f}",
        raw=numbers.mass(raw, person),
        left=numbers.mass(left.usual, person),
        low=numbers.mass(left.low, person),
        high=numbers.mass(left.high, person),
    )


def yields(raw: Kilograms, left: Span, person: Person) -> str:
    """What is left of it."""
    return say(
        "About {left} of {raw} is left, between {low} and {high}: trimming and fire take the rest.",
        left=numbers.mass(left.usual, person),
        raw=numbers.mass(raw, person),
        low=numbers.mass(left.low, person),
        high=numbers.mass(left.high, person),
    )


def chill(
    thick: Metres, ice: tuple[Band | None, Band | None], rack: tuple[Band | None, Band | None], person: Person
) -> str:
    """How long to cool, in ice water and on a rack."""
    slow = rack[0] is None or rack[0].p90 > FIRST_MARK_H
    lead = say("The fridge alone is too slow for it: ice water, or cut it thinner.") if slow else say("Either will do.")
    return f"{lead}\n" + say(
        "In ice water about {ice_80} from {from_c} to {mark}, and {ice_40} to {cold}, at {thick} thick.\n"
        "Bare on a rack in the fridge {rack_80} and {rack_40}. The rule: 1.5 h to the first, 5 h more to the second.",
        ice_80=_band(ice[0]),
        ice_40=_band(ice[1]),
        rack_80=_band(rack[0]),
        rack_40=_band(rack[1]),
        from_c=numbers.both(celsius_from_fahrenheit(130.0), person),
        mark=numbers.at_most(celsius_from_fahrenheit(80.0), person),
        cold=numbers.both(celsius_from_fahrenheit(40.0), person),
        thick=numbers.length(thick, person),
    )


def _band(found: Band | None) -> str:
    return say("more than a day") if found is None else numbers.hours(found.p90)
