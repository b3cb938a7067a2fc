"""Sums about units, salt, the dose, days and how much to buy: figures of a line in, words with their sources out."""

from dataclasses import replace

from bot import measures
from bot.conversation.sums_hot import Answer, setup_of
from bot.intents.sums import bare_grams, converted, rate
from bot.intents.told import Told
from bot.wording import per_weight, sums, sums_hot
from core.answers import amounts
from core.batch import material
from core.cure.contents import SATURATED_BRINE, Contents, salometer_degrees
from core.cure.dose import Dose, Recipe, dose, from_teaspoons, house_target
from core.cure.judgement import Judgement, judge
from core.errors import Missing, OverLimit, SaltbellError
from core.plan.recipe import product
from core.safety.thaw import thaw
from core.service.turn import Turn
from core.units import Fraction, Kilograms, MilligramsPerKilogram

KITCHEN = ("COMMON_PRACTICE",)
USUAL = (0.0625, 0.0588)
APART = (0.0625, 0.006)  # the strong and the weak kind, ten times apart: what is right with one is no cure or too much
FISH_WATER = 1.0  # l of water for a kg of fish in a bag. Common practice
FISH_SALT = 1.0 / 7.0  # of the water by volume; sources.HOT_SMOKED_FISH
COARSE_STEP = 0.001  # kg, a common kitchen scale
SALTS = {"light": "light", "coarse": "coarse", "kosher": "coarse"}


def need(value: float | None, wanted: str) -> float:
    """A figure that a sum cannot do without; raises Missing with what to ask for."""
    if value is None:
        raise Missing(wanted)
    return value


def _convert(turn: Turn, line: Told) -> Answer:
    found = converted(line.text)
    if found is None:
        raise Missing("body")
    quantity, wanted = found
    value = measures.from_house(quantity.value, wanted)
    return sums.converted(quantity.typed, quantity.unit, value, wanted), (), {"value": value, "unit": wanted}


def _spoons(turn: Turn, line: Told) -> Answer:
    volume = next(m for m in measures.find(line.text) if m.kind == "volume")
    cups = measures.from_house(volume.value, "cup")
    if line.spoons is not None:
        low, high = from_teaspoons(line.spoons)
        return sums.spoon_of_cure(line.spoons, low, high), KITCHEN, {"low_kg": low, "high_kg": high}
    kind = (
        "light" if "light" in line.text else "coarse" if any(w in line.text for w in ("coarse", "kosher")) else "table"
    )
    found = amounts.salt_by_volume(cups, kind)
    return sums.salt_by_volume(found, kind, amounts.CUP), KITCHEN, {"salt_kg": found.usual}


def _dose(turn: Turn, line: Told) -> Answer:
    within_the_law(turn, line)
    mass = need(line.meat, "meat")
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    found = _weighed(turn, line, mass, strength)
    keys = [source.key for source in found.sources]
    return (
        per_weight.asked_for(found, turn.person),
        keys,
        {"cure_kg": found.cure_kg, "nitrite_ingoing_mg_kg": found.nitrite_ingoing},
    )


def _level(line: Told) -> MilligramsPerKilogram | None:
    """The nitrite that was asked for, where the line names a level of its own."""
    return next((m.value for m in measures.find(line.text) if m.kind == "ppm"), None)


def within_the_law(turn: Turn, line: Told) -> None:
    """Raises OverLimit for a level that no dose of any weight or strength may make."""
    try:
        _weighed(turn, line, line.meat or 1.0, USUAL[0])
    except OverLimit as over:
        raise replace(over, passing_cure_kg=None) from over  # the passing dose hangs on a strength that nobody told


def usual_doses(turn: Turn, line: Told) -> tuple[tuple[Fraction, Kilograms], ...] | None:
    """The dose for the usual strengths, while the strength is not told; None where none passes."""
    try:
        return tuple((one, _weighed(turn, line, need(line.meat, "meat"), one).cure_kg) for one in USUAL)
    except SaltbellError:
        return None


def _weighed(turn: Turn, line: Told, mass: Kilograms, strength: Fraction) -> Dose:
    kind, place = _class(line), turn.person.jurisdiction
    method = "dry" if line.water is None else "brine"
    return dose(
        Recipe(
            method=method,
            meat_kg=mass,
            nitrite_fraction=strength,
            product_class=kind,
            jurisdiction=place,
            nitrite_target=_level(line) or house_target(place, kind, method),
            water_share=(line.water or 0.0) / mass if line.water else 0.5,
        )
    )


def _class(line: Told) -> str:
    named = "bacon" if line.cut == "pork_belly" and not line.product else line.product
    return product(named).product_class if named else "whole_muscle"


def _ppm(turn: Turn, line: Told) -> Answer:
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    found = _judged(turn, line, strength)
    value = found[1].ingoing.nitrite
    return (
        sums.ppm(found[1], found[0].ingoing.nitrite, strength),
        (found[1].limit.source.key, "FSIS_HANDBOOK_1995"),
        {"nitrite_high_mg_kg": value, "nitrite_limit_mg_kg": found[1].limit.max_mg_kg},
    )


def _judged(turn: Turn, line: Told, strength: Fraction) -> list[Judgement]:
    """The least and the most that was told of, by law."""
    per_kilo = rate(line.text)
    mass = 1.0 if per_kilo is not None else need(line.meat, "meat")
    low, high = (per_kilo, per_kilo) if per_kilo is not None else _cure(line)
    return [judge(_mixed(turn, line, mass, (cure, strength))) for cure in (low, high)]


def usual_levels(turn: Turn, line: Told) -> tuple[tuple[Fraction, Judgement], ...] | None:
    """What a strong and a weak curing salt would make, by law, while the strength is not told."""
    try:
        return tuple((one, _judged(turn, line, one)[-1]) for one in APART)
    except SaltbellError:
        return None


def _cure(line: Told) -> tuple[Kilograms, Kilograms]:
    spoon = next((m for m in measures.find(line.text) if m.unit in ("tsp", "tbsp")), None)
    if line.cure is not None:
        return line.cure, line.cure
    if spoon is None:
        raise Missing("meat")
    return from_teaspoons(measures.from_house(spoon.value, "tsp"))


def _mixed(turn: Turn, line: Told, mass: Kilograms, cure: tuple[Kilograms, Fraction]) -> Contents:
    return Contents(
        method="dry" if line.water is None else "brine",
        meat_kg=mass,
        cure_kg=cure[0],
        nitrite_fraction=cure[1],
        salt_kg=line.salt or 0.0,
        water_kg=line.water or 0.0,
        product_class=_class(line),
        jurisdiction=turn.person.jurisdiction,
    )


def _brine(turn: Turn, line: Told) -> Answer:
    strength, water = line.fractions[0], need(line.water, "water")
    salt = amounts.salt_for(strength, water)
    return sums.brine(salt, strength, water, salometer_degrees(strength)), ("SALOMETER",), {"salt_kg": salt}


def _salometer(turn: Turn, line: Told) -> Answer:
    if line.fractions:
        strength = line.fractions[0]
        return sums.salometer(salometer_degrees(strength), strength), ("SALOMETER",), {"strength": strength}
    degrees = next((float(word) for word in line.text.split() if word.replace(".", "").isdigit()), None)
    strength = need(degrees, "fractions") / 100.0 * SATURATED_BRINE
    return sums.salometer(salometer_degrees(strength), strength), ("SALOMETER",), {"strength": strength}


def _salt_for(turn: Turn, line: Told) -> Answer:
    """Salt of a share of what is counted: the meat, and the water where there is any."""
    share = next(f for f in line.fractions if 0.005 <= f <= 0.06)
    counted = need(line.meat, "meat") + (line.water or 0.0)
    salt = share * counted
    return sums.salt_for(salt, share, counted, turn.person), KITCHEN, {"salt_kg": salt}


def _equilibrium(turn: Turn, line: Told) -> Answer:
    share = amounts.salinity(need(line.salt, "meat"), need(line.water, "water"), line.meat or 0.0)
    return sums.equilibrium(share), KITCHEN, {"salt_fraction": share}


def _fish(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    water = line.water or FISH_WATER * mass
    low, high = amounts.CUP["table"]
    cups = measures.from_house(FISH_SALT * water, "cup")
    salt = cups * (low + high) / 2.0
    return sums.fish_brine(mass, water, salt, turn.person), ("HOT_SMOKED_FISH", "COMMON_PRACTICE"), {"salt_kg": salt}


def _days(turn: Turn, line: Told) -> Answer:
    """Days as a plan would have them: the product's own way, and no fewer than it wants."""
    setup = setup_of(line)
    found = material.days_of(setup, turn.person)
    band, refusal = material.planned_days(setup, (found, found.immersion.dose), None)
    if refusal is not None or band is None:
        raise refusal or Missing("body")
    keys = [source.key for source in found.sources]
    return sums.days(band, setup.method, found.immersion.piece, turn.person), keys, {"cure_days": band.p90}


def _shopping(turn: Turn, line: Told) -> Answer:
    people = int(need(line.people, "people"))
    raw = amounts.raw_for(people, _tender(line), each=line.each)
    if line.each is not None:
        return sums.shopping_each(people, line.each, raw.usual, turn.person), KITCHEN, {"raw_kg": raw.usual}
    return sums.shopping(people, raw, turn.person), KITCHEN, {"raw_kg": raw.usual}


def _portions(turn: Turn, line: Told) -> Answer:
    mass, whole = need(line.meat, "meat"), "packer" in line.text
    count = amounts.portions(mass, _tender(line), whole)
    left = amounts.cooked(mass, _tender(line), whole)
    return sums.portions(mass, count, left, turn.person), KITCHEN, {"portions": count.usual}


def _yield(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    left = amounts.cooked(mass, _tender(line), "packer" in line.text)
    return sums.yields(mass, left, turn.person), KITCHEN, {"left_kg": left.usual}


def _tender(line: Told) -> bool:
    return line.species in ("", "beef") or line.cut == "pork_shoulder"


def _thaw(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    bird = line.species in ("turkey", "chicken", "duck", "fish")
    fridge, water = thaw(mass, "fridge", bird), thaw(mass, "water", bird)
    return sums.thaw(mass, fridge, water, turn.person), (fridge.source.key,), {"high_h": fridge.high}


def _scale(turn: Turn, line: Told) -> Answer:
    masses = [m.value for m in measures.find(line.text) if m.kind == "mass"]
    bare = bare_grams(line.text)
    small = bare / 1000.0 if bare is not None else max(masses)
    step = min(masses) if masses and min(masses) <= 0.01 else COARSE_STEP
    found = amounts.coarse(small, step)
    return sums_hot.coarse(small, found), KITCHEN, {"stock_kg": found.stock}


def _rub(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    spice = "rub" not in line.text.split()
    said = sums_hot.per_kilo(mass, amounts.SPICE if spice else amounts.RUB, spice, turn.person)
    return said, KITCHEN, {"rub_kg": mass * amounts.RUB[1]}


SUMS = {
    "convert": _convert, "spoons": _spoons, "dose": _dose, "ppm": _ppm, "brine": _brine, "salometer": _salometer,
    "equilibrium": _equilibrium, "salt_for": _salt_for, "fish_brine": _fish, "days": _days, "shopping": _shopping,
    "portions": _portions, "yield": _yield, "thaw": _thaw, "scale": _scale, "rub": _rub,
}  # fmt: skip
