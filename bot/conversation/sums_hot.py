"""Sums about heat: a temperature that was held, how it cooled, hours, fuel, boiling water, sodium of a slice."""

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Any, TypeAlias

from bot.conversation.sums_low_bird import too_low
from bot.intents.sums.of_heat import back_up, beside_a_cold_pit, between, falls
from bot.intents.sums.pits import core_wanted, pits
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import height_asked, kilos_asked
from bot.wording import smoked_fish, sums, sums_beside, sums_boiling, sums_hot
from core.answers.held import held
from core.errors import Missing
from core.heat.band import Band
from core.heat.cook import Cook
from core.heat.cooling import chill
from core.heat.fire import fuel
from core.heat.humid_air import boiling_point, height_of, pressure_at
from core.heat.ready import forecast
from core.meat.cuts import cut
from core.meat.piece import Cut, Piece, Species, piece
from core.plan.recipe import Product, called_by_weight, product_of_cut, products
from core.plan.setup import Setup
from core.safety.fire_out import HOT_F, FireOut, judge_fire_out
from core.safety.history import printed_f
from core.service.turn import Turn
from core.units import Celsius, Hours, Seconds, celsius_from_fahrenheit

Answer: TypeAlias = tuple[str, Sequence[str], dict[str, Any]]
_LOGS = re.compile(r"\blogs?\b")
PIT_C = 121.0  # the plan's own default
A_DAY_H: Hours = 24.0  # a band that reaches so far says that it may not get there at all
SLOW_PIT_C = 90.0  # cooler than that a middle may take longer than the rule for its way up lets it. Judgement
HOT_WATER_C, HOTTEST_WATER_C = 80.0, 130.0  # a probe in boiling water shows no less, and no more
CHART_F, CHART_REST_S = 145.0, 180.0  # sources.FSIS_SAFE_TEMPERATURES
READ_K = 0.05
ANY_MEAT = ("beef", "pork", "chicken", "turkey")
JUST_BELOW_C = 59.9  # of who says «under 140 °F» and no more
FUEL = ("CHARCOAL_HEAT", "PROPANE_HEAT", "COMMON_PRACTICE")
A_NIGHT: Hours = 12.0  # the longer end of what a fire has to last overnight. Common practice
_PULLED = re.compile(r"\b(?:pull\w*|shred\w*|butts?|tender|soft)\b")
_SLICED = re.compile(r"\b(?:slic\w*|cured?|ham)\b")
_A_BIRD = re.compile(r"^(?!.*\b(?:duck|goose|geese|breast|turkey|chicken)).*\b(?:birds?|poultry)\b")
_SKIN_ON = re.compile(r"\b(?:skin[ -]?on|with (?:the |its )?skin|unskinned)\b")
_SKINNED = re.compile(r"\b(?:skinless|skinned|skin(?: is)? off|without (?:the |its )?skin|no skin)\b")
_MINCED = re.compile(
    r"\b(?:minced?|ground|burgers?|sausages?|patt(?:y|ies)|meat ?loaf|meatballs?)\b"
    r"(?! (?:pepper|spice|coriander|mustard))"
)
NEEDLED = re.compile(r"\b(?:inject|pump)\w*\b")
_DRY = r"\bdry[ -]?(?:cur\w+|salt\w*|bag|rub\w*|method|brin\w*)\b|\bcured? dry\b|\bdry(?=\W*$|,? (?:how|for|days)\b)"
_WAYS = ((NEEDLED, "inject"), (re.compile(_DRY), "dry"), (re.compile(r"\b(?:brin\w*|wet|pickle)\b"), "brine"))
_OVERNIGHT = re.compile(r"\b(?:over ?night|overnite|all night|the whole night|through the night)\b")
_STOVES = (
    (re.compile(r"\bpellets?\b"), "pellet"),
    (re.compile(r"\bkettle\b"), "kettle"), (re.compile(r"\boffset\b"), "offset"),
    (re.compile(r"\b(?:propane|gas)\b"), "gas"), (re.compile(r"\b(?:electric\w*|kwh)\b"), "electric"),
    (re.compile(r"\b(?:kamado|ceramic|clay)\b"), "ceramic"), (re.compile(r"\b(?:steel|drum|bullet)\b"), "steel"),
)  # fmt: skip
_OF_FUEL = re.compile(
    r"\b(?:kg|kilos?|lbs?|pounds?) ?(?:bags?|sacks?)? ?(?:of )?(?:charcoal|lump|coals?|briq\w*|propane|gas)\b"
    r"|\b(?:bags?|sacks?|bottles?|cylinders?|tanks?)\b"
    r"|\b(?:charcoal|lump|coals?|briq\w*|pellets?|propane|gas) (?:of )?\d[\d.]* ?(?:kg|kilos?|lbs?|pounds?)\b"
)
CUT_OF = {
    "pork": "pork_loin",
    "turkey": "turkey_breast",
    "chicken": "chicken_whole",
    "duck": "duck_breast",
    "fish": "salmon_side",
}


def piece_of(line: Told) -> Piece:
    """The piece that a line tells: its cut by its words, its mass by its thickness where only that is told.

    Raises Missing("body") where neither is told.
    """
    if line.length is None and line.heaviest is None:
        raise Missing("body")
    one = _cut(line)
    if line.cut == "packer" and line.heaviest is not None and line.heaviest > one.mass_high:  # as thick as it is
        return piece(one, one.mass_high, line.length or one.thickness_scale * line.heaviest ** (1.0 / 3.0))
    mass = line.heaviest or min(max(((line.length or 0.0) / one.thickness_scale) ** 3, one.mass_low), one.mass_high)
    return piece(one, mass, line.length)


def _cut(line: Told) -> Cut:
    """The cut by its name, else that of the product or the animal that comes in pieces of this weight.

    A whole packer is as thick as its point; a bird that nobody names is a chicken or, heavier than those are, a turkey.
    """
    if _A_BIRD.search(line.text) and not line.product:
        chicken = cut("chicken_whole")
        return chicken if (line.heaviest or 0.0) <= chicken.mass_high else cut("turkey_whole")
    if line.cut == "packer":
        return cut("brisket_point")
    if line.cut not in ("", "both", "brisket"):
        return cut(line.cut)
    made = _made(line)
    names = made.cuts if made else (CUT_OF.get(line.species, "brisket_flat"),)
    cuts = [cut(name) for name in names]
    fitting = (one for one in cuts if line.heaviest is None or one.mass_low <= line.heaviest <= one.mass_high)
    return next(fitting, cuts[0])


def _made(line: Told) -> Product | None:
    """The product that is named: by the weight, where no cut says which of two its name stands for."""
    if line.product not in products():
        return None
    return products()[line.product if line.cut else called_by_weight(line.product, line.heaviest or 0.0)]


def setup_of(line: Told) -> Setup:
    """The piece as a plan of its product would have it."""
    meat = piece_of(line)
    made = _made(line) or product_of_cut(meat.cut.name)
    said: dict[str, Any] = {"cut": meat.cut.name, "mass": meat.mass}
    method = next((way for words, way in _WAYS if words.search(line.text)), None)
    if method in made.methods(meat.cut.name):
        said["method"] = method
    return made.setup(said | ({"thickness": line.length} if line.length else {}))


def _lethality(turn: Turn, line: Told) -> Answer:
    if line.species == "":
        return _of_any(turn, line)
    found = held(line.species, line.temperatures[0])
    if found is None:
        return sums_hot.fish(turn.person), ("HOT_SMOKED_FISH",), {}
    seconds = None if line.hours is None or "how long" in line.text else line.hours * 3600.0
    keys = (found.source.key, "FSIS_SAFE_TEMPERATURES")
    if _MINCED.search(line.text):
        return sums_hot.minced(turn.person), keys[1:], {"enough": False}
    if found.enough(seconds) is False and _by_the_chart(line, seconds or 0.0):
        return sums_hot.by_the_chart(found, turn.person), keys, {"asked_s": found.asked or -1.0, "enough": True}
    body = {"asked_s": found.asked if found.asked is not None else -1.0, "enough": found.enough(seconds) is True}
    said = sums_hot.held(found, seconds, turn.person)
    if seconds is not None and found.asked and _LOGS.search(line.text):
        said = f"{said}\n{sums_hot.logs(found, seconds)}"
    return said, keys, body


def _of_any(turn: Turn, line: Told) -> Answer:
    """A temperature that was held of a meat which nobody names: the verdict that holds for each of them.

    Raises Missing("species") where they differ, or where the time is what is asked for.
    """
    seconds = None if line.hours is None or "how long" in line.text else line.hours * 3600.0
    every = [one for name in ANY_MEAT if (one := held(name, line.temperatures[0]))]
    verdicts = {one.enough(seconds) for one in every}
    chart = verdicts != {True} and _by_the_chart(replace(line, species="beef"), seconds or 0.0)
    if len(verdicts) > 1 or None in verdicts or chart or _MINCED.search(line.text):
        raise Missing("species")
    enough, asked = verdicts.pop(), [one.asked for one in every if one.asked is not None]
    said = sums_hot.held_of_any(every[0], (bool(enough), max(asked, default=0.0)), seconds or 0.0, turn.person)
    return said, (every[0].source.key, "FSIS_SAFE_TEMPERATURES"), {"enough": bool(enough)}


def _by_the_chart(line: Told, seconds: Seconds) -> bool:
    """Whether the consumer's chart is met: 145 °F and three minutes of rest, for whole red meat, not injected."""
    hot = line.temperatures[0] >= celsius_from_fahrenheit(CHART_F) - READ_K
    return hot and seconds >= CHART_REST_S and line.species in ("beef", "pork") and not NEEDLED.search(line.text)


def _fire_out(turn: Turn, line: Told) -> Answer:
    """The last good reading and the one now; the time between is the worst case below 140 °F."""
    delicate = line.species in ("turkey", "chicken", "duck")
    if (core := beside_a_cold_pit(line)) is not None:  # nobody read the core while it burned
        hot = printed_f(core) >= HOT_F
        found = judge_fire_out(FireOut(core, between(line), hot, None, delicate=delicate))
        said = sums_hot.stayed_hot(turn.person) if hot else sums_hot.fire_out(found, turn.person)
        return said, (found.source.key,), {"verdict": found.means.value, "case": found.detail}
    hours, before = between(line), max(line.temperatures)
    now = line.temperatures[-1] if back_up(line) else min(line.temperatures)
    if falls(line) and printed_f(now) >= HOT_F and not back_up(line):  # without a fire no core comes up again
        hours = 0.0
    if len(line.temperatures) == 1:  # «fell under 140»
        now = JUST_BELOW_C
    found = judge_fire_out(FireOut(now, hours, printed_f(before) >= HOT_F, None, delicate=delicate))
    body = {"verdict": found.means.value, "case": found.detail}
    return sums_hot.fire_out(found, turn.person), (found.source.key,), body


def _chill(turn: Turn, line: Told) -> Answer:
    meat, marks = piece_of(line), tuple(celsius_from_fahrenheit(f) for f in (130.0, 80.0, 40.0))
    ice, rack = chill(meat, "ice"), chill(meat, "rack", ambient_c=turn.person.fridge_c)
    bands = [(one.between(marks[0], marks[1]), one.between(marks[0], marks[2])) for one in (ice, rack)]
    return sums.chill(meat.thickness, bands[0], bands[1], turn.person), ("FSIS_COOLING_1999", "INCROPERA"), {}


def _pit(line: Told, usual: Celsius = PIT_C) -> Celsius:
    """The pit that is told, however cool; that of the plan where none is."""
    return next(iter(pits(line)), usual)


def until_ready(turn: Turn, line: Told, pit: Celsius | None = None) -> tuple[Band, Celsius, Celsius]:
    """Hours on the fire until such a piece is ready, with the pit and the core that they are for. [h, °C]

    Raises OutOfRange for a pit that never brings it there.
    """
    meat = piece_of(line)
    recipe = _made(line) or product_of_cut(meat.cut.name)
    usual = recipe.defaults_of(meat.cut.name)
    pit = _pit(line, usual.get("pit_c", PIT_C)) if pit is None else pit
    target = core_wanted(line) or recipe.purpose("pulled" if _is_pulled(line, recipe) else usual["purpose"]).target_c
    is_fish = meat.cut.species is Species.FISH
    usually = is_fish or usual.get("skin_on", False) or bool(_SKIN_ON.search(line.text))
    skin_on = usually and not _SKINNED.search(line.text)
    ready = forecast(Cook(replace(meat, skin_on=skin_on), turn.person.cooker, pit, target_c=target)).ready
    if not is_fish:
        return ready, pit, target
    held = recipe.hours.hold_at_target
    return Band(ready.p10 + held, ready.p50 + held, ready.p90 + held), pit, target


def _is_pulled(line: Told, recipe: Product) -> bool:
    """Whether it is cooked until it can be pulled: by its words, and a shoulder that nobody slices or cures."""
    pulled = any(one.name == "pulled" for one in recipe.purposes)
    shoulder = recipe.name == "shoulder" and not _SLICED.search(line.text)
    return pulled and (shoulder or bool(_PULLED.search(line.text)))


def _cook(turn: Turn, line: Told) -> Answer:
    """Hours of a cook; at two pits, both."""
    ready, pit, target = until_ready(turn, line)
    body = {"ready_h": ready.p50}
    keys: tuple[str, ...] = ("COOK_CASE", "TAMU_BRISKET")
    others = [one for one in pits(line) if one != pit]
    if others:
        other = until_ready(turn, line, others[0])
        said = sums_beside.two_pits((ready, pit), (other[0], other[1]), min(target, other[2]), turn.person)
        return said, keys, body | {"other_h": other[0].p50}
    creeps = pit < SLOW_PIT_C and ready.p90 >= A_DAY_H
    said = (sums_hot.creeps if creeps else sums_hot.cook)(ready, pit, target, turn.person)
    if pit < SLOW_PIT_C:
        said, keys = f"{said}\n{sums_hot.slow_pit(turn.person)}", (*keys, "FSIS_COOKING_2021")
    if cool := smoked_fish.under_sure(line.species == "fish", (pit, target), turn.person):
        said = f"{said}\n{cool}"
    several = line.heaviest is not None and (line.meat or 0.0) > line.heaviest
    lead = too_low(piece_of(line), pit, turn.person) or (sums_beside.side_by_side() if several else "")
    return f"{lead}\n{said}".strip(), keys, body


def _hours_meant(text: str) -> Hours | None:
    """The hours of «overnight» and of «per hour»; None where none are meant."""
    if _OVERNIGHT.search(text):
        return A_NIGHT
    return 1.0 if re.search(r"\b(?:per|an|each|every) hour\b", text) else None


def _fuel(turn: Turn, line: Told) -> Answer:
    """Fuel for the hours; where the fuel is told, how long it lasts, and whether that is enough."""
    units = turn.person.units
    reader = replace(turn.person, units=replace(units, mass="kg" if kilos_asked(line.text) else units.mass))
    stove = next((name for words, name in _STOVES if words.search(line.text)), turn.person.cooker)
    one = cut(line.cut if line.cut not in ("", "both", "brisket") else "brisket_flat")
    has = line.meat if _OF_FUEL.search(line.text) else None
    hours = line.hours or _hours_meant(line.text)
    if hours is None and has is None and line.meat is not None:
        hours = until_ready(turn, line)[0].p90
    if hours is None and has is not None:
        a_tenth = fuel(stove, _pit(line), 10.0, one)
        lasts = 10.0 * has / a_tenth.load
        return sums_hot.lasts(has, lasts, _pit(line), reader), FUEL, {"lasts_h": lasts}
    if hours is None:
        raise Missing("hours")
    found = fuel(stove, _pit(line), hours, one)
    said = sums_hot.fuel(found, hours, _pit(line), reader)
    if has is not None and found.kind != "electricity":
        said = f"{sums_hot.goes_round(has >= found.load)}\n{said}"
    return said, [source.key for source in found.sources], {"load_kg": found.load}


def _altitude(turn: Turn, line: Told) -> Answer:
    if line.height is None and height_asked(line):
        height = height_of(line.temperatures[0])
        return (
            sums_boiling.so_high(line.temperatures[0], height, turn.person),
            ("ASHRAE_PSYCHROMETRICS",),
            {"height_m": height},
        )
    height = line.height or 0.0
    at = boiling_point(pressure_at(height))
    said, shown = (
        sums_boiling.boils(height, at, turn.person),
        next((t for t in line.temperatures if HOT_WATER_C < t < HOTTEST_WATER_C), None),
    )
    if shown is not None:
        said = f"{sums_boiling.reads(shown, at, turn.person)}\n{said}"
    return said, ("ASHRAE_PSYCHROMETRICS",), {"boils_c": at}


SUMS = {
    "lethality": _lethality, "fire_out": _fire_out,
    "chill": _chill, "cook": _cook, "fuel": _fuel, "altitude": _altitude,
}  # fmt: skip
