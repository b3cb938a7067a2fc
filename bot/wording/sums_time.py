"""What the sums of the clock and the calendar come to, in words: when first, then the hours that it stands on."""

from datetime import datetime
from math import ceil, floor

from bot.wording import numbers
from bot.wording.language import decimal, say, say_n
from core.answers.amounts import Span
from core.heat.band import Band
from core.person import Person
from core.units import Celsius, Days, Hours, Kilograms

HOT: Celsius = 60.0
COLD: Celsius = 4.0


def days_before(before: Days, cure: Days, thawing: Days) -> str:
    """How far ahead to begin."""
    return say(
        "Begin {before} before the meal: {parts}.\nType the cut, the weight, the thickness and the day, and I give the dates.",
        before=numbers.days(before),
        parts=_parts(cure, thawing),
    )


def _parts(cure: Days, thawing: Days) -> str:
    parts = say("{cure} in the cure, a day to dry, a day for the fire and a night to chill", cure=numbers.days(cure))
    return parts if not thawing else say("{thawing} to thaw, {parts}", thawing=numbers.days(thawing), parts=parts)


def begin_on(days: tuple[datetime, datetime], counted: tuple[Days, Days, Days], late: bool, person: Person) -> str:
    """The day on which it begins, or that it is too late for it."""
    begin, meal = days
    before, cure, thawing = counted
    if late:
        first = say(
            "Too late for {meal}: it would have begun on {begin}. Thinner pieces or injecting shorten it; else move the meal.",
            meal=numbers.day(meal, person),
            begin=numbers.day(begin, person),
        )
    else:
        first = say(
            "Begin on {begin} at the latest for {meal}; some days sooner does no harm, cold.",
            begin=numbers.day(begin, person),
            meal=numbers.day(meal, person),
        )
    return first + "\n" + say("{before} in all: {parts}.", before=numbers.days(before), parts=_parts(cure, thawing))


def no_time_for_the_rule(days: Days) -> str:
    """That the trade's rule, which waits for even salt, wants more days than there are."""
    return say(
        "The trade's rule, mm squared over 200, would have {days} days in the cure; there is no time for that now.",
        days=numbers.plain(days),
    )


def begin_by_rule(at: tuple[datetime, datetime, datetime], counted: tuple[Days, Days, Days], person: Person) -> str:
    """The day to begin by the trade's rule, which waits for even salt; and the latest, by which the middle is pink."""
    sooner, latest, meal = (numbers.day(one, person) for one in at)
    by_rule, cure, thawing = counted
    return say(
        "Begin on {sooner} for {meal}, {latest} at the latest; sooner does no harm, cold.\n"
        "From {sooner}: {parts}. {days} are the trade's rule, mm squared over 200; from {latest} there are {least}, by which 9 in 10 "
        "are pink in the middle.",
        sooner=sooner,
        latest=latest,
        meal=meal,
        parts=_parts(by_rule, thawing),
        days=numbers.days(by_rule),
        least=numbers.days(cure),
    )


def light_by(at: tuple[datetime, ...], before: int, takes: tuple[Band, Hours], person: Person) -> str:
    """When to light, to put it on and to eat, counted back so many days by the hours that it cooks and rests."""
    (lit, on, eat), (ready, rests) = at, takes
    lead = say("Light it by {lit}", lit=numbers.clock(lit, person))
    if before:
        lead = say_n("{lead} the day before", "{lead} {n} days before", before, lead=lead, n=before)
    first = say(
        "{lead}, meat on by {on}, to slice at {eat}.",
        lead=lead,
        on=numbers.clock(on, person),
        eat=numbers.clock(eat, person),
    )
    return f"{first}\n{_of_hours(ready, rests)} {say('Ready early it is held at {hot} or above.', hot=numbers.both(HOT, person))}"


def _of_hours(ready: Band, rests: Hours) -> str:
    """The hours that were counted back; of those on the fire the likelier ones too, where they are fewer."""
    slow, usual = numbers.hours(numbers.half_up(ready.p90)), numbers.hours(numbers.half(ready.p50))
    if slow == usual:
        return say(
            "That is an hour to settle the fire, {slow} on it and {rests} of rest.",
            slow=slow,
            rests=numbers.hours(rests),
        )
    return say(
        "That is an hour to settle the fire, up to {slow} on it ({usual} is likelier) and {rests} of rest.",
        slow=slow,
        usual=usual,
        rests=numbers.hours(rests),
    )


def likelier(on: datetime, person: Person) -> str:
    """When it would go on by the likelier hours, with nothing in hand."""
    return say("By the likelier hours it goes on at {on}, with nothing in hand.", on=numbers.clock(on, person))


def straight_on(left: Span, at: datetime | None, person: Person) -> str:
    """When a core that goes on rising so will be there."""
    band = {"low": numbers.hours(_quarter(left.low)), "high": numbers.hours(_quarter(left.high))}
    if band["low"] == band["high"]:
        first = say("About {usual} more.", usual=band["low"])
        if at is not None:
            first = say("About {usual} more, so around {at}.", usual=band["low"], at=numbers.clock(at, person))
    elif at is None:
        first = say("About {usual} more, between {low} and {high}.", usual=numbers.hours(_quarter(left.usual)), **band)
    else:
        first = say(
            "About {usual} more, so around {at}; between {low} and {high}.",
            usual=numbers.hours(_quarter(left.usual)),
            at=numbers.clock(at, person),
            **band,
        )
    return (
        first
        + "\n"
        + say(
            "That is the straight line through your two readings, as close as a probe is read. In the stall it takes longer; "
            "wrapped, or with a hotter pit, less. Read it again in half an hour."
        )
    )


def past_the_stall(line: Hours, left: Span) -> str:
    """When a core that has its stall before it will be there."""
    return say(
        "{low} to {high} more: {line} by the straight line, and the stall still lies ahead.\n"
        "At 65 to 75 °C (150 to 170 °F) meat without a wrap stands for two to five hours; wrapped it is less. "
        "Read it again in an hour.",
        low=numbers.hours(_quarter(left.low)),
        high=numbers.hours(_quarter(left.high)),
        line=numbers.hours(_quarter(line)),
    )


def in_the_stall(line: Hours) -> str:
    """Two readings of meat that stands in its stall: no line through them tells when it will be there."""
    return say(
        "These readings are the stall itself: straight on it would be {line}, and sooner is likelier, since it climbs faster once that is over.\n"
        "Wrap it, or run the pit hotter, and it is over sooner. Read it again in an hour.",
        line=numbers.hours(_quarter(line)),
    )


def _quarter(hours: Hours) -> Hours:
    return round(hours * 4) / 4


def _no_longer(hours: Hours) -> Hours:
    """To the quarter of an hour below: nobody is told that it stays hot for longer than it does."""
    return floor(hours * 4) / 4


def stays_hot(stays: Band, wanted: Hours | None, person: Person) -> str:
    """How long it stays hot in a box, and whether that does."""
    hot = numbers.both(HOT, person)
    rule = say(
        "In foil and towels in a shut, dry box it stays above {hot} for {low} to {high}. A probe in it tells, and without "
        "one 4 h are the most; from {hot} down eat it within the hour, or chill it. An oven at 70 to 75 °C (160 to 165 °F) holds it longer.",
        hot=hot,
        low=numbers.hours(_no_longer(stays.p10)),
        high=numbers.hours(_no_longer(stays.p90)),
    )
    if wanted is None:
        return rule
    if wanted <= stays.p10:
        first = say("{wanted} should do, with a probe in it.", wanted=numbers.hours(wanted))
    elif wanted <= stays.p90:
        first = say("{wanted} is at the edge: only with a probe in it, or into an oven.", wanted=numbers.hours(wanted))
    else:
        first = say(
            "{wanted} is too long for a box: an oven, or chill it now and heat it again.", wanted=numbers.hours(wanted)
        )
    return f"{first}\n{rule}"


def in_an_oven(person: Person) -> str:
    """A hold in an oven that is hot enough."""
    return say(
        "Yes: wrapped, in an oven at 65 to 75 °C (150 to 165 °F), as long as a probe in it shows {hot} or above.\n"
        "Hours of it soften and dry it, and do no other harm; in a box it would not stay hot so long.",
        hot=numbers.both(HOT, person),
    )


def done_at(on: datetime, at: tuple[datetime, ...], ready: Band, person: Person) -> str:
    """When a piece is done that goes on at an hour."""
    early, usual, late = (numbers.clock(one, person) for one in at)
    return say(
        "On at {on}, done about {usual}, between {early} and {late}: some {hours} on the fire.\n"
        "Plan an hour of rest behind it; readings narrow it once the meat is on.",
        on=numbers.clock(on, person),
        usual=usual,
        early=early,
        late=late,
        hours=numbers.hours(numbers.half(ready.p50)),
    )


def too_cool(person: Person) -> str:
    """A hold under the line."""
    return say(
        "No: below {hot} in the middle it is no hold, and germs grow. Hotter, or chill it now and heat it again.\n"
        "Off the heat it has 2 h below that line, and then it is thrown away.",
        hot=numbers.both(HOT, person),
    )


def ice(mass: Kilograms, found: Kilograms, person: Person) -> str:
    """How much ice."""
    return say(
        "At least {ice} of ice melt to cool {mass} and as much water; have twice that, and top it up as it goes.\n"
        "Sealed in a bag, under the surface, thick pieces halved, stirred now and then.",
        ice=say("{kilos} kg", kilos=decimal(ceil(found * 10) / 10, 1)),
        mass=numbers.mass(mass, person),
    )


def brine_ice(litres: tuple[float, float], melted: Kilograms, water: Kilograms, person: Person) -> str:
    """How much ice for a brine of which a part was boiled."""
    hot, whole = litres
    lead = say(
        "{ice} of ice and {water} l of cold water to {hot} l of boiled make {whole} l at about {cold}.",
        ice=say("{kilos} kg", kilos=decimal(ceil(melted * 10) / 10, 1)),
        water=decimal(floor(water * 10) / 10, 1),
        hot=decimal(hot, 1),
        whole=decimal(whole, 1),
        cold=numbers.both(COLD, person),
    )
    rule = say(
        "It counts as water in the dose. Stir the curing salt in last, when it is cold, and read it: meat goes in at {cold} or below.",
        cold=numbers.both(COLD, person),
    )
    short = say("All of the rest as ice is still too little: let the boiled part stand first.")
    return f"{lead}\n{rule}" if water > 0.0 else f"{short}\n{rule}"


def left_to_heat(hot: float, whole: float) -> str:
    """What of a brine is left to heat, where the rest goes in as ice."""
    return say(
        "That leaves {hot} l of the {whole} l to heat.", hot=decimal(floor(hot * 10) / 10, 1), whole=decimal(whole, 1)
    )


def brine_cools(
    litres: float,
    room: tuple[Band | None, Celsius],
    fridge: Band | None,
    ice: tuple[Kilograms, Kilograms],
    person: Person,
) -> str:
    """How long a pot of brine cools; the part to keep back as ice, and the ice that all of it takes as it stands."""
    stood, lukewarm = room
    long = say("more than a day")
    lead = say(
        "{litres} l of hot brine take {room} to {lukewarm} on the worktop, lidded, and {fridge} from hot to {cold} in the fridge.",
        litres=numbers.plain(round(litres, 1)),
        room=numbers.hours(numbers.half_up(stood.p90)) if stood else long,
        lukewarm=numbers.temperature(lukewarm, person),
        fridge=numbers.hours(numbers.half_up(fridge.p90)) if fridge else long,
        cold=numbers.both(COLD, person),
    )
    return (
        lead
        + "\n"
        + say(
            "Ice does it at once: boil {hot} l and stir in {ice} kg of ice.\nBoiled, all {litres} l want {more} kg, which counts as water "
            "in the dose. The curing salt and the meat go in when it is cold.",
            hot=decimal(litres - ice[0], 1),
            ice=decimal(ceil(ice[0] * 10) / 10, 1),
            litres=numbers.plain(round(litres, 1)),
            more=decimal(ceil(ice[1] * 10) / 10, 1),
        )
    )
