"""Words for a dose that is asked for without a batch: so much curing salt for so much meat."""

from bot.wording import cautions, numbers
from bot.wording.cited import cite
from bot.wording.language import Words, decimal, say
from core.cure.dose import Dose
from core.person import Person

NO_SALT = 0.00005  # kg
WAYS = Words({"dry": "dry, in a bag", "comminuted": "minced", "inject": "injected", "brine": "in a brine"})


def asked_for(found: Dose, person: Person) -> str:
    """The grams first, then what they come to, the limit with its source, and how they go in."""
    limit = found.limit
    if limit is None:
        return ""
    low, high = found.teaspoons
    lines = [
        say(
            "Weigh {cure} curing salt of {strength} for {meat}, {way}.",
            cure=numbers.grams(found.cure_kg),
            strength=numbers.percent(found.nitrite_fraction),
            meat=numbers.mass(found.meat_kg, person),
            way=WAYS[found.method],
        ),
        say(
            "That is {nitrite_ingoing} nitrite of {base}; the limit is {max} ({jurisdiction}, {where}{memory}).",
            nitrite_ingoing=numbers.ppm(found.nitrite_ingoing),
            base=say("meat and pickle") if found.method == "brine" else say("green meat"),
            max=numbers.ppm(limit.max_mg_kg),
            jurisdiction=limit.jurisdiction,
            where=limit.where,
            memory=say(", from memory") if limit.status == "MEMORY" else "",
        ),
        _how(found),
        say(
            "{low} to {high} level teaspoons is only a check on the scale.", low=decimal(low, 1), high=decimal(high, 1)
        ),
    ]
    mind = cautions.lines(c for c in found.cautions if c.key != "nitrite_weigh_exactly")
    return "\n".join([*lines, *mind, cite(found.sources)])


def _how(found: Dose) -> str:
    water, salt = decimal(found.water_kg, 2), numbers.grams(found.salt_kg - found.rubbed_salt_kg)
    match found.method:
        case "comminuted":
            return say("Salt and spice by your recipe; it is mixed through evenly. Sausages I do not plan.")
        case "inject":
            return say("In {water} kg water with {salt} salt; all of it is injected.", water=water, salt=salt)
        case "brine":
            return say("In {water} kg water with {salt} salt; all of the meat lies in it.", water=water, salt=salt)
        case _ if found.salt_kg - found.rubbed_salt_kg < NO_SALT:
            return say(
                "No other salt: the curing salt brings all of it. All of it goes onto the meat and into the bag."
            )
        case _:
            return say("Weigh {salt} salt with it; all of it goes onto the meat and into the bag.", salt=salt)
