"""Sums about the dose and nitrite: figures of a line in, words with their sources out."""

import re
from collections.abc import Sequence
from dataclasses import replace

from bot import measures
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import beside, need
from bot.conversation.sums_salty import how_salty
from bot.intents.cures import poured, times
from bot.intents.pouring import is_other, poured_of
from bot.intents.rates import rate
from bot.intents.sums.told import Told, told
from bot.intents.sums.wanted import by_unit, salt_wished
from bot.intents.weights import asked_for_each
from bot.wording import per_weight, sums, sums_asked, sums_mixed, sums_salt
from core.cure.contents import STRONG_CURES, WEAK_CURES, Contents
from core.cure.dose import Dose, Recipe, dose, from_teaspoons, house_target
from core.cure.judgement import Judgement, judge
from core.cure.nitrite import skin_free
from core.errors import Missing, OverLimit, SaltbellError
from core.plan.recipe import products
from core.service.turn import Turn
from core.units import Fraction, Kilograms, MilligramsPerKilogram

LAW = ("FSIS_HANDBOOK_1995",)
# the strong and the weak kind, ten times apart: what is right with one is no cure or too much
APART = (STRONG_CURES[0], WEAK_CURES[0])
_FIRST_KIND = re.compile(
    r"(?:#|\bno ?|\bnumber |\bcure |\bpowder |\bsalt )1\b(?! ?(?:kg|g|lb|%|tsp|tbsp))"
)  # always a strong one
SKIN_ON = re.compile(r"\b(?:skin|rind)[- ]?(?:is )?(?:still )?on\b|\bwith (?:the |its )?(?:skin|rind)\b")
_TOPS_UP = re.compile(r"\b(?:top(?:ping|ped)? (?:it )?up|add|put (?:in )?more|more|the rest|fix|mend|save)\b")
_BY_THE_OUNCE = re.compile(r"(?<!\d)(?<!\d )\b(?:oz|ounces?)\b")  # asked for, and no weight of the meat
IN_TIME_H = 24.0  # so long a dose may still be put in; later little is known of where it goes. Common practice
COLD_C = 4.4  # 40 °F; sources.FSIS_DANGER_ZONE
_BY_THE_LITRE = re.compile(r"\b(?:per|a|each|every|for 1|to the) (?:1 )?(?:lit(?:er|re)|l|kilo of (?:brine|pickle))\b")


def _dose(turn: Turn, line: Told) -> Answer:
    within_the_law(turn, line)
    of_pickle = _meat_of_pickle(line)
    line = line if of_pickle is None else replace(line, water=None)
    mass = counted_meat(line, line.meat or of_pickle or by_unit(line.text))
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    found = weighed(turn, line, mass, strength)
    keys = [source.key for source in found.sources]
    said = "\n".join(
        filter(
            None,
            (
                per_weight.asked_for(found, turn.person),
                in_ounces(line.text, [found.cure_kg]),
                for_each(line, [found.cure_kg]),
                beside(replace(line, meats=(mass,)), None),
            ),
        )
    )
    body = {"cure_kg": found.cure_kg, "nitrite_ingoing_mg_kg": found.nitrite_ingoing}
    return of_its_rind(line, said), keys, body


def counted_meat(line: Told, mass: Kilograms | None) -> Kilograms:
    """The meat that a limit counts: without its rind, where the line says that it is on. Raises Missing("meat")."""
    return skin_free(need(mass, "meat"), bool(SKIN_ON.search(line.text)))


def of_its_rind(line: Told, said: str) -> str:
    """The words of a dose, with what was counted out for a rind that is on."""
    return sums_salt.without_skin(said) if SKIN_ON.search(line.text) else said


def in_ounces(text: str, cures: Sequence[Kilograms]) -> str:
    """Doses in ounces too, where that is how they are asked for or what the scale shows; nothing else."""
    return sums_asked.in_ounces(cures) if _BY_THE_OUNCE.search(text.lower()) else ""


def for_each(line: Told, cures: Sequence[Kilograms]) -> str:
    """Doses of each piece, where a line asks for that of a weight that is divided; nothing else."""
    count = asked_for_each(line.text)
    return sums_asked.for_each(count, [one / count for one in cures]) if count > 1 else ""


def _meat_of_pickle(line: Told) -> Kilograms | None:
    """The meat that so much pickle is pumped into, where the pickle is told and no meat; a litre of it for a kilo."""
    if line.pump is None or line.meat is not None:
        return None
    pickle = 1.0 if _BY_THE_LITRE.search(line.text) else line.water
    return None if pickle is None else pickle / line.pump


def _level(line: Told) -> MilligramsPerKilogram | None:
    """The nitrite that was asked for, where the line names a level of its own."""
    return next((m.value for m in measures.find(line.text) if m.kind == "ppm"), None)


def within_the_law(turn: Turn, line: Told) -> None:
    """Raises OverLimit for a level that no dose of any weight or strength may make."""
    try:
        weighed(turn, line, line.meat or 1.0, STRONG_CURES[0])
    except OverLimit as over:
        raise replace(over, passing_cure_kg=None) from over  # the passing dose hangs on a strength that nobody told


def usual_doses(turn: Turn, line: Told) -> tuple[tuple[Fraction, Kilograms], ...] | None:
    """The dose for the usual strengths, while the strength is not told; None where none passes."""
    try:
        return tuple(
            (one, weighed(turn, line, counted_meat(line, line.meat or by_unit(line.text)), one).cure_kg)
            for one in STRONG_CURES
        )
    except SaltbellError:
        return None


def salt_and_sugar(turn: Turn, line: Told) -> str:
    """The plain salt and the sugar beside a dose whose strength is not told, where they are asked for with it."""
    try:
        found = weighed(turn, line, counted_meat(line, line.meat), STRONG_CURES[0])
    except SaltbellError:
        return ""
    return beside(line, found.salt_kg)


def weighed(turn: Turn, line: Told, mass: Kilograms, strength: Fraction) -> Dose:
    """The dose of a line for so much meat and a curing salt of that strength, by the law of the place."""
    kind, place = class_of(line), turn.person.jurisdiction
    method = "inject" if line.pump else "dry" if line.water is None else "brine"
    return dose(
        Recipe(
            method=method,
            meat_kg=mass,
            nitrite_fraction=strength,
            product_class=kind,
            jurisdiction=place,
            nitrite_target=_level(line) or house_target(place, kind, method),
            water_share=(line.water or 0.0) / mass if line.water else 0.5,
            salt_fraction=salt_wished(line) or Recipe.salt_fraction,
            **({"pump_fraction": line.pump} if line.pump else {}),
        )
    )


def class_of(line: Told) -> str:
    """The class of the law, by the product that is named."""
    made = products().get("bacon" if line.cut == "pork_belly" and not line.product else line.product)
    return made.product_class if made else "whole_muscle"


def _ppm(turn: Turn, line: Told) -> Answer:
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    if len(spoonfuls(line)) > 1:
        return _beside_ours(turn, line, strength)
    found = judged(turn, line, strength)
    value = found[1].ingoing.nitrite
    said = sums.ppm(found[1], found[0].ingoing.nitrite, strength)
    made = (strength, found[1])
    salt = how_salty(line, (rate(line.text) or _cure(line))[1], strength)
    return (
        "\n".join(filter(None, (said, salt, topped_up(turn, line, made), thinned(turn, line, made)))),
        (found[1].limit.source.key, "FSIS_HANDBOOK_1995"),
        {"nitrite_high_mg_kg": value, "nitrite_limit_mg_kg": found[1].limit.max_mg_kg},
    )


def spoonfuls(line: Told) -> list[measures.Measure]:
    """The doses by the spoon, each other than the ones before it: one of every recipe; no sugar and no plain salt."""
    found = [m for m in measures.find(line.text) if m.unit in ("tsp", "tbsp") and not is_other(line.text, m)]
    return [m for n, m in enumerate(found) if m.value not in [one.value for one in found[:n]]]


def of_recipes(turn: Turn, line: Told, strength: Fraction) -> tuple[tuple[str, float, Judgement], ...]:
    """What the dose of each recipe may come to on this meat, from the least that its spoons weigh to the most."""
    mass = need(line.meat, "meat")
    made = []
    for m in spoonfuls(line):
        spoons = measures.from_house(m.value, "tsp")
        low, high = (judge(mixed(turn, line, mass, (cure, strength))) for cure in from_teaspoons(spoons))
        made.append((f"{m.typed:g} {m.unit}", low.ingoing.nitrite, high))
    return tuple(made)


def _beside_ours(turn: Turn, line: Told, strength: Fraction) -> Answer:
    made, own = of_recipes(turn, line, strength), weighed(turn, line, need(line.meat, "meat"), strength)
    body = {"cure_kg": own.cure_kg, "nitrite_high_mg_kg": max(high.ingoing.nitrite for _, _, high in made)}
    return sums_mixed.recipes(made, own, turn.person), (made[0][2].limit.source.key, *LAW), body


def judged(turn: Turn, line: Told, strength: Fraction) -> list[Judgement]:
    """The least and the most that was told of, by law."""
    per_kilo = rate(line.text)
    mass = 1.0 if per_kilo is not None else need(line.meat, "meat")
    low, high = per_kilo or _cure(line)
    put_in = times(line.text)
    return [judge(mixed(turn, line, mass, (put_in * cure, strength))) for cure in (low, high)]


def usual_levels(turn: Turn, line: Told) -> tuple[tuple[Fraction, Judgement], ...] | None:
    """What a strong and a weak curing salt would make, by law, while the strength is not told."""
    try:
        kinds = STRONG_CURES if _FIRST_KIND.search(line.text) else APART
        return tuple((one, judged(turn, line, one)[-1]) for one in kinds)
    except SaltbellError:
        return None


def right_dose(turn: Turn, line: Told, strength: Fraction) -> Kilograms | None:
    """The dose of that strength for the meat that is told; None where none is, or none passes. [kg]"""
    try:
        return weighed(turn, line, counted_meat(line, line.meat), strength).cure_kg
    except SaltbellError:
        return None


def topped_up(turn: Turn, line: Told, made: tuple[Fraction, Judgement]) -> str:
    """What is missing of a dry dose that was too small, where the line asks to add it; nothing else.

    It is what brings a mix that is under its floor to the house's level, and never over it.
    """
    return "" if line.water is not None else missing(turn, (line.text, class_of(line)), made)


def thinned(turn: Turn, line: Told, made: tuple[Fraction, Judgement]) -> str:
    """What would be right for a mix that more water came to, where what is in it keeps the law; nothing else."""
    strength, found = made
    lawful = found.floor <= found.ingoing.nitrite <= found.limit.max_mg_kg
    grew = len(poured(line.text, poured_of(line.text))) > 1
    right = right_dose(turn, line, strength) if lawful and grew else None
    return "" if right is None else sums_asked.for_all_of_it(right, strength)


def missing(turn: Turn, of: tuple[str, str], made: tuple[Fraction, Judgement]) -> str:
    """The same of a line's words and the class of its meat."""
    (text, kind), (strength, found) = of, made
    if not _TOPS_UP.search(text) or not found.top_up_cure_kg:
        return ""
    if any(hours > IN_TIME_H for hours in told(text).durations):
        return sums_asked.too_late()
    target = house_target(turn.person.jurisdiction, kind, "dry")
    return sums_asked.topped_up(found.top_up_cure_kg, (strength, target), COLD_C, turn.person)


def _cure(line: Told) -> tuple[Kilograms, Kilograms]:
    spoon = next(iter(spoonfuls(line)), None)
    if line.cure is not None:
        return line.cure, line.cure
    if spoon is None:
        raise Missing("meat")
    return from_teaspoons(measures.from_house(spoon.value, "tsp"))


def mixed(turn: Turn, line: Told, mass: Kilograms, cure: tuple[Kilograms, Fraction]) -> Contents:
    """What is in the mix of a line, as the law counts it."""
    return Contents(
        method="dry" if line.water is None else "brine",
        meat_kg=mass,
        cure_kg=cure[0],
        nitrite_fraction=cure[1],
        salt_kg=line.salt or 0.0,
        water_kg=line.water or 0.0,
        product_class=class_of(line),
        jurisdiction=turn.person.jurisdiction,
    )


def _nitrite_in(turn: Turn, line: Told) -> Answer:
    """The nitrite of so much curing salt, or what went into so much meat."""
    if line.cure is None and line.spoons is None:
        mass = need(line.meat, "meat")
        target = _level(line) or house_target(turn.person.jurisdiction, "whole_muscle", "dry")
        return sums_salt.nitrite_of_meat(mass, target, turn.person), LAW, {"nitrite_kg": mass * target * 1e-6}
    low, high = _cure(line)
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    return sums_salt.nitrite_of_cure((low, high), strength), LAW, {"nitrite_kg": high * strength}


def _meat_for(turn: Turn, line: Told) -> Answer:
    """How much meat so much curing salt is for, dry, at the house's level."""
    low, _ = _cure(line)
    strength = need(line.strength or turn.person.cure_nitrite_fraction, "strength")
    mass, target = _meat_of(turn, line, strength)
    return sums_mixed.meat_for(low, strength, mass, target, turn.person), LAW, {"meat_kg": mass}


def _meat_of(turn: Turn, line: Told, strength: Fraction) -> tuple[Kilograms, MilligramsPerKilogram]:
    target = _level(line) or house_target(turn.person.jurisdiction, class_of(line), "dry")
    return _cure(line)[0] * strength * 1e6 / target, target


def usual_meats(turn: Turn, line: Told) -> tuple[tuple[Fraction, Kilograms], ...]:
    """The meat that so much of a strong and of a weak curing salt is for."""
    return tuple((one, _meat_of(turn, line, one)[0]) for one in APART)


SUMS = {
    "dose": _dose, "ppm": _ppm,
    "nitrite_in": _nitrite_in, "meat_for": _meat_for,
}  # fmt: skip
