"""Sums of salt, water and sugar: figures of a line in, words with their sources out."""

import re
from typing import Final

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salty import ounces_too, packet_strength, share_named
from bot.intents.pouring import poured_of, spoonful
from bot.intents.rates import CURE_SPOKEN_OF, PLAIN_ASKED, cure_beside, shares
from bot.intents.sums.fitting import is_curing, masses, salt_share
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import beside_the_cure, by_unit, salt_wished
from bot.wording import brines, sums, sums_mixed, sums_salt
from core.answers import amounts, mixing
from core.cure.contents import SATURATED_BRINE, STRONG_CURES, salometer_degrees
from core.cure.dose import from_teaspoons, house_target, teaspoons
from core.cure.nitrite import cure_for_dry
from core.errors import Missing
from core.service.turn import Turn
from core.units import Fraction, Kilograms

KITCHEN: Final = ("COMMON_PRACTICE",)
FISH_WATER: Final = 1.0  # l of water for a kg of fish in a bag. Common practice
FISH_SALT: Final = 1.0 / 7.0  # of the water by volume; sources.HOT_SMOKED_FISH
_RAISED: Final = re.compile(r"\b(?:salt|raise|stronger|from|up to|bump|bring (?:it )?up)\b(?!.*\bwater\b)")
_AS_EATEN: Final = re.compile(r"\b(?:per|in|for|each|an?|every) (?:100 ?g|slice|serving|portion|plate|sandwich)\b")
_A_PLATE: Final[Kilograms] = 0.2
HOUSE_SALT: Final = (0.0225, 0.025)  # of all that is counted. Common practice
# of a curing salt nobody names; a weak one brings more salt by a twentieth of its weight
STRONG: Final = STRONG_CURES[0]
_KINDS: Final = (
    ("coarse", r"\b(?:coarse|dense|sea)\b"),
    ("light", r"\b(?:light|flak[ey]\w*|feathery)\b"),
    ("kosher", r"\bkosher\b"),
    ("table", r"\b(?:table|fine|pickling|canning|plain)\b"),
)  # fmt: skip
_SPOONS: Final = (
    ("tbsp", r"\b(?:tbsps?|tablespoons?|spoons?|spoonfuls?)\b"), ("tsp", r"\b(?:tsps?|teaspoons?)\b"),
    ("cup", r"\bcups?\b"),
)  # fmt: skip
_OWN: Final = re.compile(
    r"\b(?:but )?(?:(?:i|we|ive) (?:only |just )?|only |just )(?:have|got)\b|\b(?:mine|what i have) is\b"
)
_BY_LITRE: Final = re.compile(
    r"\b(?:per|a|to the|each|every|for each) (?:1 )?(?P<unit>lit(?:er|re)|l|gallon|gal|quart|qt)\b"
)
_ADDED: Final = re.compile(r"\b(?:add\w*|top\w* up with|poured in|more|extra)\b[^,;]{0,16}$")


def need(value: float | None, wanted: str) -> float:
    """A figure that a sum cannot do without; raises Missing with what to ask for."""
    if value is None:
        raise Missing(wanted)
    return value


def counted(line: Told) -> Kilograms:
    """What salt is a share of: the meat, and the water of a brine with it."""
    return need(line.meat, "meat") + (line.water or 0.0)


def _brine(turn: Turn, line: Told) -> Answer:
    if line.water is None and line.salt is not None:
        strength = line.fractions[0]
        water = amounts.water_for(strength, line.salt)
        return sums_salt.water_for(line.salt, strength, water), ("SALOMETER",), {"water_kg": water}
    litre = 1.0 if re.search(r"\bratio\b", line.text) else None
    said, keys, body = _brine_of(line.fractions[0], need(line.water or litre, "water"))
    return ounces_too(line.text, said, body["salt_kg"]), keys, body


def _brine_of(strength: Fraction, water: Kilograms) -> Answer:
    salt = amounts.salt_for(strength, water)
    return sums.brine(salt, strength, water, salometer_degrees(strength)), ("SALOMETER",), {"salt_kg": salt}


def _salometer(turn: Turn, line: Told) -> Answer:
    if line.fractions:
        strength = line.fractions[0]
    else:
        degrees = next((float(word) for word in line.text.split() if word.replace(".", "").isdigit()), None)
        strength = need(degrees, "fractions") / 100.0 * SATURATED_BRINE
    if line.water is not None:
        return _brine_of(strength, line.water)
    return sums.salometer(salometer_degrees(strength), strength), ("SALOMETER",), {"strength": strength}


def _salt_for(turn: Turn, line: Told) -> Answer:
    """Salt of a share of what is counted, and where no share is told, of the house's."""
    share, all_ = salt_share(line), counted(line)
    if share is None:
        low, high = (one * all_ for one in HOUSE_SALT)
        if line.species == "fish" and line.water is None:
            return sums_salt.dry_on_fish(low, high, all_, turn.person), KITCHEN, {"salt_kg": low}
        return sums_salt.usual_salt(low, high, all_, turn.person), KITCHEN, {"salt_kg": low}
    said, body = sums.salt_for(share * all_, share, all_, turn.person), {"salt_kg": share * all_}
    by_share = shares(line.text).get("cure", share_named(line)) * all_ or None
    if (cure := cure_beside(line.text) or line.cure or by_share) is not None:
        plain = max(share * all_ - cure * (1.0 - packet_strength(line)), 0.0)
        said, body = sums_salt.plain_beside(share * all_, cure, plain), {"salt_kg": share * all_, "plain_kg": plain}
    elif PLAIN_ASKED.search(line.text) and (usual := _usual_cure(turn, line)) is not None:
        plain = max(share * all_ - usual * (1.0 - packet_strength(line)), 0.0)
        said = sums_salt.plain_beside(share * all_, usual, plain)
        said = said if line.strength else f"{said}\n{sums_salt.of_the_usual(STRONG)}"
        body = {"salt_kg": share * all_, "plain_kg": plain}
    return said, KITCHEN, body


def beside(line: Told, plain: Kilograms | None) -> str:
    """The plain salt that goes in with a dose, where it is not told yet, and the sugar, where they are asked for."""
    wanted, all_ = beside_the_cure(line.text), counted(line)
    share = salt_wished(line) or HOUSE_SALT[0]
    said = sums_mixed.salt_beside(plain, share) if plain is not None and "salt" in wanted else ""
    sweet = sums_mixed.sugar_beside(mixing.sugar(all_, None)) if "sugar" in wanted else ""
    return "\n".join(filter(None, (said, sweet)))


def _usual_cure(turn: Turn, line: Told) -> Kilograms | None:
    """The curing salt of the strong kind that would go in beside the salt, where it is spoken of; dry or in a brine."""
    if not CURE_SPOKEN_OF.search(line.text):
        return None
    target = house_target(turn.person.jurisdiction, "whole_muscle", "brine" if line.water else "dry")
    return cure_for_dry(target, counted(line), packet_strength(line))


def _sugar_eaten(line: Told) -> Answer:
    """The sugar in what is eaten, where its share of the raw meat is told: the fire takes water, and no sugar."""
    mass, (low, high) = line.meat or amounts.PORTION[1], amounts.left_of("", True)
    usual, most = (mass * line.fractions[0] / left for left in ((low + high) / 2.0, low))
    return sums_salt.sugar_eaten(mass, usual, most), KITCHEN, {"sugar_kg": usual}


def _sugar(turn: Turn, line: Told) -> Answer:
    if _AS_EATEN.search(line.text) and line.fractions and (line.meat or 0.0) <= _A_PLATE:
        return _sugar_eaten(line)
    all_ = counted(line)
    found = mixing.sugar(all_, shares(line.text).get("sugar") or next(iter(line.fractions), None))
    said = sums_salt.sugar(found, all_, turn.person)
    if _spoon_asked(line):
        said = f"{said}\n{_by_spoon(line, found.usual)}"
    return said, KITCHEN, {"sugar_kg": found.usual}


def _equilibrium(turn: Turn, line: Told) -> Answer:
    by_litre = _BY_LITRE.search(line.text)
    if by_litre and line.salt is not None and (wanted := _volume_beside(line, by_litre.end())):
        return _so_much_at(line.salt / measures.find(f"1 {by_litre['unit']}")[0].value, wanted, line.text)
    cup = spoonful(line.text) if line.salt is None else None
    poured = sum(m.value for m in poured_of(line.text) if m != cup)
    meat = line.meat or by_unit(line.text) or 0.0
    share = amounts.salinity(_salt_told(line, cup), max(poured, line.water or 0.0), meat)
    if not meat:
        return sums_salt.strength(share, salometer_degrees(share)), ("SALOMETER",), {"salt_fraction": share}
    return sums.equilibrium(share), KITCHEN, {"salt_fraction": share}


def _volume_beside(line: Told, behind: int) -> Kilograms | None:
    """A volume of one's own behind a rate, «80 g per litre … i need 3 quarts»."""
    return next((m.value for m in poured_of(line.text[behind:])), None)


def _so_much_at(rate: Fraction, water: Kilograms, text: str) -> Answer:
    """Salt for so much water at grams for each litre."""
    strength = rate / (1.0 + rate)
    said = ounces_too(text, sums.brine(rate * water, strength, water, salometer_degrees(strength)), rate * water)
    return said, ("SALOMETER",), {"salt_kg": rate * water}


def _salt_told(line: Told, cup: measures.Measure | None) -> Kilograms:
    """Salt by its weight, or by the cup as it usually weighs."""
    if cup is None:
        return need(line.salt, "meat")
    kind = _kind_of_salt(line.text, cup)
    return amounts.salt_by_volume(measures.from_house(cup.value, "cup"), "coarse" if kind == "kosher" else kind).usual


def _dilute(turn: Turn, line: Told) -> Answer:
    poured = poured_of(line.text)
    strength = max(line.fractions)
    if len(line.fractions) > 1 and line.fractions[0] < line.fractions[-1] and _RAISED.search(line.text):
        weak, wanted = line.fractions[0], line.fractions[-1]
        salt = mixing.salt_to_raise(mixing.brine_mass(poured[0].value, weak), weak, wanted)
        return brines.raised(salt, (weak, wanted)), KITCHEN, {"salt_kg": salt}
    if len(line.fractions) > 1:
        brine = mixing.brine_mass(poured[0].value, strength) if poured else need(line.meat, "water")
        more = mixing.water_to_thin(brine, strength, min(line.fractions))
        return sums_salt.thin(more, strength, min(line.fractions)), KITCHEN, {"water_kg": more}
    if len(poured) < 2:
        raise Missing("water")
    water = next((m for m in poured if _ADDED.search(line.text[: m.start])), min(poured, key=lambda m: m.value))
    brine = mixing.brine_mass(sum(m.value for m in poured) - water.value, strength)
    share = mixing.thinned(brine, strength, water.value)
    return sums_salt.strength(share, salometer_degrees(share)), KITCHEN, {"salt_fraction": share}


def _topup(turn: Turn, line: Told) -> Answer:
    """A brine like that which all comes to, for what was lost."""
    litres = min(m.value for m in poured_of(line.text))
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    target = house_target(turn.person.jurisdiction, "whole_muscle", "brine")
    cure = cure_for_dry(target, litres, strength)
    salt = HOUSE_SALT[0] * litres - cure * (1.0 - strength)
    body = {"cure_kg": cure, "salt_kg": max(salt, 0.0)}
    return sums_salt.topup(litres, (cure, strength), max(salt, 0.0)), ("FSIS_HANDBOOK_1995", *KITCHEN), body


def _fish(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    water = line.water or FISH_WATER * mass
    low, high = amounts.CUP["table"]
    salt = measures.from_house(FISH_SALT * water, "cup") * (low + high) / 2.0
    return sums.fish_brine(mass, water, salt, turn.person), ("HOT_SMOKED_FISH", *KITCHEN), {"salt_kg": salt}


def _spoons(turn: Turn, line: Told) -> Answer:
    told = spoonful(line.text)
    if told is None:
        raise Missing("meat")
    if line.spoons is not None or is_curing(line.text) or not _names_any(line.text):  # never as if it were any salt
        spoons = line.spoons or measures.from_house(told.value, "tsp")
        low, high = from_teaspoons(spoons)
        said = sums.spoon_of_cure(spoons, low, high)
        if "how much meat" in line.text:
            strength = line.strength or turn.person.cure_nitrite_fraction or STRONG
            level = house_target(turn.person.jurisdiction, "whole_muscle", "dry")
            meats = tuple(one * strength * 1e6 / level for one in (low, high))
            said = f"{said}\n{sums_mixed.meat_of_spoons(meats, (strength, level), turn.person)}"
        return said, KITCHEN, {"low_kg": low, "high_kg": high}
    if other := amounts.spice_named(line.text):
        mass = amounts.of_a_teaspoon(other) * measures.from_house(told.value, "tsp")
        return sums_salt.spoon_of(told.typed, told.unit, mass), ("USDA_SR28",), {"mass_kg": mass}
    kind, cups = _kind_of_salt(line.text, told), measures.from_house(told.value, "cup")
    if kind == "kosher":
        light, dense = (amounts.salt_by_volume(cups, one) for one in ("light", "coarse"))
        said = sums_salt.kosher(light, dense, told, cups)
        if _OWN.search(line.text[told.end :]):  # which of the two it is for the other, nobody has said
            said = f"{sums_mixed.kosher_for_kosher((light.usual, dense.usual), told)}\n{said}"
        return said, KITCHEN, {"low_kg": light.low, "high_kg": dense.high}
    found = amounts.salt_by_volume(cups, kind)
    return sums_salt.salt(found, kind, told, cups), KITCHEN, {"salt_kg": found.usual}


def _names_any(text: str) -> bool:
    """Whether a line says what is on the spoon; where it does not, that may be the curing salt."""
    named = any(re.search(words, text) for _, words in _KINDS) or "salt" in text
    return named or amounts.spice_named(text) is not None


def _kind_of_salt(text: str, told: measures.Measure) -> str:
    """The salt behind the spoon or the cup; where it only says what somebody has instead, any flake may be meant."""
    behind, _, own = _OWN.sub("~", text[told.end :], count=1).partition("~")
    places = [(found.start(), kind) for kind, words in _KINDS if (found := re.search(words, behind))]
    return min(places)[1] if places else "kosher" if own.strip(" ?.!") else "table"


def _spoons_of_salt(line: Told, mass: Kilograms, kind: str) -> Answer:
    """Plain salt by the spoon or the cup that is asked for, else by the tablespoon."""
    unit = _spoon_asked(line) or "tbsp"
    cup = amounts.salt_by_volume(1.0, kind)
    one = measures.to_house(1.0, unit) / measures.to_house(1.0, "cup")
    span = amounts.Span(*(mass / (one * of) for of in (cup.high, cup.usual, cup.low)))
    return sums_mixed.spoons_of_salt(mass, span, unit, kind), KITCHEN, {"spoons": span.usual}


def _spoon_asked(line: Told) -> str | None:
    """The spoon or the cup that is asked for."""
    return next((unit for unit, words in _SPOONS if re.search(words, line.text)), None)


def _by_spoon(line: Told, mass: Kilograms) -> str:
    """Sugar or spice by the spoon that is asked for, as it is named; else white sugar."""
    unit, name = _spoon_asked(line) or "tbsp", amounts.spice_named(line.text) or "sugar"
    one = amounts.of_a_teaspoon(name) * measures.from_house(measures.to_house(1.0, unit), "tsp")
    return sums_mixed.by_spoon(mass, mass / one, unit)


def _tsp_of(turn: Turn, line: Told) -> Answer:
    if amounts.spice_named(line.text) and not is_curing(line.text):
        mass = need(line.sugar or min(masses(line.text), default=None), "meat")
        return _by_spoon(line, mass), ("USDA_SR28",), {"mass_kg": mass}
    plain = "table" if line.salt is not None else None
    salted = next((kind for kind, words in _KINDS if re.search(words, line.text)), plain)
    if salted is not None and not is_curing(line.text):
        kind = "coarse" if salted == "kosher" else salted
        return _spoons_of_salt(line, need(line.salt or min(masses(line.text), default=None), "meat"), kind)
    mass = need(line.cure or min(m.value for m in measures.find(line.text) if m.kind == "mass"), "meat")
    low, high = teaspoons(mass)
    return sums_salt.in_spoons(mass, low, high), KITCHEN, {"teaspoons_low": low, "teaspoons_high": high}


SUMS = {
    "brine": _brine, "salometer": _salometer, "salt_for": _salt_for, "sugar": _sugar, "equilibrium": _equilibrium,
    "dilute": _dilute, "topup": _topup, "fish_brine": _fish, "spoons": _spoons, "tsp_of": _tsp_of,
}  # fmt: skip
