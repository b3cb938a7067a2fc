"""What the rate of a packet, and a dose on a scale that is out, come to in words."""

from bot.measures import from_house
from bot.wording import numbers
from bot.wording.language import say
from core.answers.amounts import CLOSE, Coarse
from core.cure.judgement import Judgement
from core.person import Person
from core.units import Fraction, Kilograms


def by_packet(
    dose: tuple[Kilograms, Kilograms],
    made: Judgement,
    ours: tuple[Fraction, Kilograms | None],
    meat: Kilograms,
    person: Person,
) -> str:
    """The dose by that rate, beside the limit; where it passes none, that it is not used, and the right one."""
    low, high = dose
    strength, right = ours
    shown = numbers.grams(high) if high - low < 1e-4 else f"{low * 1000:.1f} – {numbers.grams(high)}"
    fields = {
        "dose": shown,
        "meat": numbers.mass(meat, person),
        "strength": numbers.percent(strength),
        "level": numbers.ppm(made.ingoing.nitrite),
        "limit": numbers.ppm(made.limit.max_mg_kg),
    }
    if not made.limit.passes(made.ingoing.nitrite):
        said = say(
            "Do not use that rate: {dose} for {meat} are {level} with a curing salt of {strength}, and the limit is {limit}.",
            **fields,
        )
    elif made.ingoing.nitrite < made.floor:
        said = say(
            "By that rate {dose} for {meat}; with a curing salt of {strength} that is {level}, too little to count as cured.",
            **fields,
        )
    else:
        said = say(
            "{dose} for {meat} by that rate: {level} with a curing salt of {strength}; the limit is {limit}.", **fields
        )
    lines = [said, see_the_packet()]
    if right is not None and not made.floor <= made.ingoing.nitrite <= made.limit.max_mg_kg:
        lines.insert(
            1, say("Right for that meat would be {dose} of {one}.", dose=numbers.grams(right), one=fields["strength"])
        )
    return "\n".join(lines)


def at_rate(mass: Kilograms, meat: Kilograms, person: Person) -> str:
    """So much of a seasoning by its rate."""
    return say("{mass} for {meat} by that rate.", mass=numbers.grams(mass), meat=numbers.mass(meat, person))


def at_rate_poured(mass: Kilograms, litres: float) -> str:
    """So much of a seasoning for so much of a brine."""
    return say("{mass} for {litres} l by that rate.", mass=numbers.grams(mass), litres=numbers.plain(round(litres, 2)))


def see_the_packet() -> str:
    """What a level goes by whose strength nobody told."""
    return say("See that the packet says this strength, and weigh it.")


def out_by(dose: Kilograms, out: Kilograms, target: float) -> str:
    """A dose on a scale that is out by so much: the share, and what the nitrite then is."""
    share = out / dose
    return say(
        "{out} is {share} of {dose}: a dose for {target} comes to {low} to {high}.\n"
        "Check the scale with a known weight; one that shows 0.1 g is close enough.",
        out=numbers.grams(out),
        share=numbers.share(share),
        dose=numbers.grams(dose),
        target=numbers.ppm(target),
        low=f"{target * (1.0 - share):.0f}",
        high=numbers.ppm(target * (1.0 + share)),
    )


def instead(dose: Kilograms, got: Kilograms, target: float) -> str:
    """What was weighed in the place of a dose: the nitrite that it makes; too much is taken out, however little."""
    fields = {
        "got": numbers.grams(got),
        "share": numbers.share(abs(1.0 - got / dose)),
        "dose": numbers.grams(dose),
        "target": numbers.ppm(target),
        "made": numbers.ppm(target * got / dose),
        "rest": numbers.grams(abs(dose - got)),
    }
    if got > dose:
        return say(
            "Take {rest} out again before it is mixed: {got} is {share} over {dose}.\n"
            "A dose for {target} would come to {made}.",
            **fields,
        )
    if 1.0 - got / dose <= CLOSE:
        return say(
            "Close enough: {got} is {share} under {dose}.\n"
            "A dose for {target} comes to {made}. Add the rest only on a scale that shows 0.1 g.",
            **fields,
        )
    return say(
        "Too little: {got} is {share} under {dose}, so add {rest}, weighed.\nA dose for {target} comes to {made}.",
        **fields,
    )


def in_ounces(dose: Kilograms, step: float, found: Coarse) -> str:
    """A dose on a scale that shows ounces, and how far its steps leave it open."""
    close = found.error_high <= CLOSE
    said = say(
        "{dose} is {ounces} oz; a scale in steps of {step} oz may be out by {low} to {high}.",
        dose=numbers.grams(dose),
        ounces=numbers.plain(round(from_house(dose, "oz"), 2)),
        step=numbers.plain(step),
        low=numbers.share(found.error_low),
        high=numbers.share(found.error_high),
    )
    buy = say("Borrow or buy one that shows 0.1 g, and check it with a known weight.")
    return f"{said}\n{say('That is close enough; check it with a known weight.') if close else buy}"
