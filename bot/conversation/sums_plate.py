"""Sums of the table: what to buy, how many it feeds, what is left, how long it keeps, what is in a slice."""

import re
from datetime import timedelta
from typing import Final

from bot import measures
from bot.conversation.sums_cold import SKIN_ON
from bot.conversation.sums_dates import cooked_on, noon
from bot.conversation.sums_hot import Answer
from bot.conversation.sums_salt import KITCHEN, need
from bot.intents.sums.fitting import SMALLEST_PIECE, masses
from bot.intents.sums.of_days import days_kept
from bot.intents.sums.told import Told
from bot.intents.sums.wanted import by_the_plate, cost_each, price, share_kept, share_lost, weights
from bot.wording import sums, sums_birds, sums_hot, sums_mixed, sums_plate
from bot.wording import sums_dates as of_dates
from core.answers import amounts, mixing
from core.cure.nitrite import skin_free
from core.errors import Missing
from core.plan.recipe import products
from core.safety.storage import keeping
from core.service.turn import Turn
from core.units import Kilograms

WHOLE_BIRDS: Final = ("whole_turkey", "chicken", "whole_duck", "goose")
RAW_EACH: Final = 0.4  # kg; nobody eats so much cooked meat: it is what is bought for each. Judgement
SALTED: Final = 0.0225  # the house's salt, of the raw meat
_OF_SPECIES: Final = {"turkey": "turkey", "chicken": "chicken", "duck": "duck", "fish": "salmon"}
_RAW_OF: Final = {"turkey": "poultry", "chicken": "poultry", "duck": "poultry", "fish": "fish"}
_BONE: Final = re.compile(r"\b(?:bone[- ]?in|on the bone|with (?:the )?bone)\b")
_UNCURED: Final = re.compile(r"\b(?:not|isnt|never|un)[ -]?cured\b|\b(?:no|without(?: any)?) (?:cure|curing)\b")
_WEIGHS_NOW: Final = re.compile(r"\b(?:weighs?|weight|left|now|have|heavy)\b")
_RAW: Final = re.compile(r"\b(?:raw|uncooked|before (?:curing|cooking|smoking)|not cured yet|from the shop)\b")
_COOKED: Final = re.compile(
    r"\d ?(?:kg|kilos?|lbs?|pounds?) (?:of )?(?:\w+ )?(?:cooked|finished|sliced|pulled|smoked)\b"
)
_MADE: Final = re.compile(  # what is called so is cooked already
    r"\d ?(?:kg|kilos?|lbs?|pounds?|oz) (?:of )?(?:my |our |the )?(?:pastrami|pulled pork|left ?overs?)\b(?!.*\braw\b)"
)
_UNTRIMMED: Final = re.compile(r"\b(?:untrimmed|packers?|whole brisket)\b")
_TRIMMED: Final = re.compile(r"\btrim\w*\b")
_CURED: Final = re.compile(
    r"\b(?:dry cured?|curing|cure|in the bag|in (?:the )?salt)\b(?!.*\b(?:smok\w*|cook\w*|pit|grill)\b)"
)
_HALVES: Final = re.compile(
    r"\bhalf (?:\w+ ){1,3}(?:and |n |& )?half\b|\b(?:pepper (?:and|n|&) coriander|coriander (?:and|n|&) pepper)\b"
    r"|\b(?:equal parts|50/50|50 ?- ?50|50 50|half and half|1:1)\b"
)
_A_HEAD: Final = re.compile(r"\b(?:per|a|each) (?:person|head|eater|guest|adult|sandwich)\b")
_BUFFET: Final = re.compile(
    r"\b(?:buffet|potluck|with (?:lots of |many |plenty of )?sides|finger food|nibbles|tasting)\b"
)
_STARTER: Final = re.compile(r"\b(?:starters?|appeti[sz]ers?|canap\w+|first course|hors d\w*|tapas|snacks?)\b")
_HOW_MANY: Final = re.compile(
    r"\bhow many (?:\d[\d.]* ?(?:kg|lb) )?(?:whole )?(?:briskets?|flats?|packers?|hams?|turkeys?|chickens?|birds?"
    r"|bellies|butts?|shoulders?|loins?|pieces)\b"
)
_SLICES_ASKED: Final = re.compile(r"\bhow many (?:\d+ ?g )?(?:\w+ )?(?:slices|rashers|strips)\b")
_IN_ALL: Final = re.compile(r"\b(?:all up|in all|all (?:together|told)|altogether|(?:in )?total|together|combined)\b")
_RUB_TOO: Final = re.compile(r"\b(?:rub|crust)\b")
_ON_THE_PLATE: Final = re.compile(  # of what is eaten, and not of the raw meat
    r"\b(?:finished|cooked|sliced|final)\b|\bslice at \d|\bat \d[\d.]* ?(?:%|percent) salt\b"
    r"|\b(?:ham|bacon|pastrami|brisket|beef|mine|it)(?:s| is)(?: at)? \d[\d.]* ?(?:%|percent) salt\b"
    r"|\b(?:raw|uncooked) (?:rashers?|slices?|strips?)\b|\bin the (?:slices?|end|meat i eat)\b|\bon (?:the|my) plate\b"
)
_GRAMS_EACH: Final = re.compile(r"\b(\d{1,3}) ?(?:g|grams?) (?:rashers?|slices?|portions?|plates?|strips?)\b")
_A_DAY: Final = re.compile(
    r"\b\d[\d.,]* ?(?:m?g|grams?|milligrams?) (?:a|per|each) day\b"
)  # what one may have, and no slice
_LABEL: Final = re.compile(  # «1,020 mg sodium per 4 oz», «2.2 g of salt per 100 g»
    r"\b(?:(?P<mg>\d[\d,.]*) ?(?:mg|milligrams?) (?:of )?(?:sodium )?|(?P<g>\d[\d.]*) ?(?:g|grams?) (?:of )?salt )"
    r"(?:per|in|a|each|for) (?:every )?(?P<per>\d[\d.]* ?(?:g|grams?|oz|ounces?))\b"
)
_SLICES: Final = re.compile(r"\b(\d{1,2}) (?:\w+ )?(?:slices|rashers|strips)\b")
MOST_LOST: Final = 0.7  # of its weight that meat loses on the fire; more is a slip


def _shopping(turn: Turn, line: Told) -> Answer:
    if line.people is None and line.each is None and line.meat is not None:
        raw = amounts.raw_of(line.meat, _left(line))
        return sums_plate.raw_for_cooked(line.meat, raw, turn.person), KITCHEN, {"raw_kg": raw.usual}
    if line.people is None and _A_HEAD.search(line.text):
        return sums_plate.a_head(amounts.raw_for(1, _left(line)), turn.person), KITCHEN, {}
    people = int(need(line.people, "people"))
    if _is_whole_bird(line):
        return _birds(turn, line, people)
    if line.each is not None and line.each >= RAW_EACH:
        said = sums_plate.raw_for_each(people, line.each, amounts.cooked(line.each, _left(line)).usual, turn.person)
        return said, KITCHEN, {"raw_kg": people * line.each}
    bone = 1.0 - amounts.BONE if _BONE.search(line.text) else 1.0
    each = _each(line) or (amounts.PORTION[0] if _BUFFET.search(line.text) and line.meat is None else None)
    raw = amounts.raw_for(people, _left(line), each=each).times(1.0 / bone)
    body = {"raw_kg": raw.usual}
    if line.heaviest is not None and _HOW_MANY.search(line.text):
        return sums_plate.so_many(line.heaviest, people, raw, turn.person), KITCHEN, body
    if line.meat is not None and line.each is None:
        trimmed = 1.0 - sum(amounts.PACKER_TRIM) / 2.0 if "packer" in line.text else 1.0
        return sums_plate.enough(line.meat * trimmed, people, raw, turn.person), KITCHEN, body
    said = sums.shopping(people, raw, turn.person)
    if each is not None:
        said = sums.shopping_each(people, each, raw.usual, turn.person)
    if _UNTRIMMED.search(line.text):
        whole = raw.usual / (1.0 - sum(amounts.PACKER_TRIM) / 2.0)
        return f"{sums_plate.untrimmed(whole, turn.person)}\n{said}", KITCHEN, body | {"untrimmed_kg": whole}
    return said, KITCHEN, body


def _is_whole_bird(line: Told) -> bool:
    """A bird that is bought with its bones, and no portion of it that is told."""
    return line.product in WHOLE_BIRDS and line.each is None and not _STARTER.search(line.text)


def _birds(turn: Turn, line: Told, people: int) -> Answer:
    """Whole birds for so many people; where one is told, whether it does, or how many of it."""
    raw = amounts.whole_birds(people)
    body = {"raw_kg": raw.usual}
    if line.heaviest is not None and _HOW_MANY.search(line.text):
        return sums_birds.so_many(line.heaviest, people, raw, turn.person), KITCHEN, body
    said = sums_birds.birds(people, raw, turn.person)
    if line.meat is not None:
        said = f"{sums_birds.does_it(line.meat, people, raw, turn.person)}\n{said}"
    return said, KITCHEN, body


def _each(line: Told) -> Kilograms | None:
    """A portion by its weight, or by what it is served as. [kg]"""
    grams = _GRAMS_EACH.search(line.text)
    told = line.each or (float(grams[1]) / 1000.0 if grams else None)
    return told or (amounts.STARTER if _STARTER.search(line.text) else None)


def _portions(turn: Turn, line: Told) -> Answer:
    if _is_whole_bird(line) and not (_COOKED.search(line.text) or _SLICES_ASKED.search(line.text)):
        few, _, many = (need(line.meat, "meat") / each for each in amounts.WHOLE_BIRD[::-1])
        return sums_birds.feeds(need(line.meat, "meat"), (few, many), turn.person), KITCHEN, {"portions": few}
    mass, whole = need(line.meat, "meat") * _eaten_of(line), "packer" in line.text
    sliced = amounts.SLICE if _SLICES_ASKED.search(line.text) else None
    if each := _each(line) or sliced:
        made = bool(_MADE.search(line.text))
        gone = share_lost(line)
        raw = mass * (1.0 - gone) if gone else amounts.cooked(mass, _left(line), whole).usual
        left = mass if made or _COOKED.search(line.text) else raw
        so_many = left * (1.0 - amounts.SLICED_AWAY) / each
        said = sums_plate.of_a_size(left, each, so_many, turn.person)
        if made:
            said = f"{said} {sums_plate.were_it_raw(raw * (1.0 - amounts.SLICED_AWAY) / each)}"
        return said, KITCHEN, {"portions": so_many}
    if _COOKED.search(line.text):
        return sums_plate.of_cooked(mass, amounts.portions_of(mass), turn.person), KITCHEN, {"portions": mass}
    count = amounts.portions(mass, _left(line), whole)
    left = amounts.cooked(mass, _left(line), whole)
    said = sums.portions(need(line.meat, "meat"), count, left, turn.person)
    if not (line.cut or line.product or line.species or _RAW.search(line.text)):
        said = f"{said}\n{sums_plate.were_it_cooked(amounts.portions_of(mass))}"
    return said, KITCHEN, {"portions": count.usual}


def _yield(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    left = amounts.cooked(mass * _eaten_of(line), _left(line), "packer" in line.text)
    said = sums.yields(mass, left, turn.person)
    if _TRIMMED.search(line.text) and "packer" in line.text:
        said = f"{sums_plate.trimmed(mass, amounts.PACKER_TRIM, turn.person)}\n{said}"
    return said, KITCHEN, {"left_kg": left.usual}


def _price(turn: Turn, line: Told) -> Answer:
    """What the cooked meat comes to by the price of the raw; and all of it, by the head, where that is told."""
    told = price(line.text)
    if told is None:
        each = need(cost_each(line.text, line.people), "meat")
        return sums_plate.each_pays(each, line.people or 1), KITCHEN, {"each": each}
    left = amounts.cooked(1.0, _left(line), "packer" in line.text)
    kept = share_kept(line.text)
    cooked = tuple(told.each / (kept or one) for one in (left.high, left.usual, left.low))
    asked = measures.to_house(told.each, told.unit)  # «8.99 lb» is the price, and no meat
    bought = sum(mass for mass in line.meats if mass >= SMALLEST_PIECE and abs(mass - asked) > 1e-6)
    whole = told.whole or (measures.from_house(bought, told.unit) * told.each if bought else None)
    said = sums_plate.price(cooked, told.unit, whole, line.people)
    small = next((mass for mass in line.meats if mass < SMALLEST_PIECE), None)
    if small is not None and bought:
        cost_of = measures.from_house(small, told.unit) * cooked[1]
        return (
            f"{sums_plate.so_much(cost_of, small)}\n{said}",
            KITCHEN,
            {"cooked": cooked[1], "of": cost_of},
        )
    if by_the_plate(line.text) and line.people is None:
        plate = measures.from_house(line.each or amounts.PORTION[1], told.unit) / (1.0 - amounts.SLICED_AWAY)
        said = f"{sums_plate.by_the_plate(plate * cooked[1], line.each or amounts.PORTION[1], turn.person)}\n{said}"
    return said, KITCHEN, {"cooked": cooked[1]}


def _eaten_of(line: Told) -> float:
    """What of a piece is neither bone nor rind, where it is told that they are on it."""
    return (1.0 - amounts.BONE if _BONE.search(line.text) else 1.0) * skin_free(1.0, bool(SKIN_ON.search(line.text)))


def _loss(turn: Turn, line: Told) -> Answer:
    pair, gone = weights(line), share_lost(line)
    if pair is None and gone is None:
        raise Missing("meat")
    before, after = (max(pair), min(pair)) if pair else (1.0, 1.0 - (gone or 0.0))
    if pair is None and line.meat is not None and _WEIGHS_NOW.search(line.text):
        now = line.meat * after
        return sums_plate.weighs_now(line.meat, now, turn.person), KITCHEN, {"left": after, "left_kg": now}
    if _CURED.search(line.text):
        return sums_plate.drawn(1.0 - after / before, amounts.DRAWN), KITCHEN, {"left": after / before}
    return sums_plate.lost(after / before, _left(line)), KITCHEN, {"left": after / before}


def _left(line: Told) -> amounts.Left:
    tender = line.product in ("", "pastrami", "corned_beef") and line.species in ("", "beef")
    return amounts.left_of(line.product, tender or line.product == "shoulder" or "pulled" in line.text)


def _rub(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    body = {"rub_kg": mass * amounts.RUB[1]}
    if _UNCURED.search(line.text):
        return sums_plate.rub_and_salt(mass, amounts.RUB, amounts.SALT_UNCURED, turn.person), KITCHEN, body
    said = sums_hot.per_kilo(mass, amounts.RUB, False, turn.person)
    if _HALVES.search(line.text):
        said = f"{said}\n{sums_plate.halves(mass * amounts.RUB[1] / 2.0)}"
    return said, KITCHEN, body


def _spice(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    said = sums_hot.per_kilo(mass, amounts.SPICE, True, turn.person)
    if _RUB_TOO.search(line.text):
        said = f"{sums_hot.per_kilo(mass, amounts.RUB, False, turn.person)}\n{said}"
    return said, KITCHEN, {"spice_kg": mass * amounts.SPICE[0]}


def _sodium(turn: Turn, line: Told) -> Answer:
    if label := _by_label(line):
        return label
    slices, text = _SLICES.search(line.text), _A_DAY.sub(" ", line.text)
    of_all = slices is None or _IN_ALL.search(line.text)
    mass = min(masses(text), default=amounts.SLICE) * (1 if slices is None or of_all else int(slices[1]))
    salted = next((f for f in line.fractions if 0.005 <= f <= 0.06), SALTED)
    if _ON_THE_PLATE.search(line.text) and line.fractions:
        salt_there = mass * salted
        body = {"sodium_kg": amounts.sodium(salt_there)}
        said = sums_mixed.sodium_there(mass, (salt_there, amounts.sodium(salt_there)), salted)
        return said, ("ATOMIC_WEIGHTS",), body
    kept = share_kept(line.text)
    lost = share_lost(line) if kept is None else 1.0 - kept
    salt = amounts.salt_in_slice(mass, salted, lost if lost and lost < MOST_LOST else None)
    body = {"sodium_kg": amounts.sodium(salt.usual)}
    said = sums_plate.sodium(mass, salt, amounts.SODIUM_IN_SALT, salted)
    return said, ("ATOMIC_WEIGHTS", "COMMON_PRACTICE"), body


def _by_label(line: Told) -> Answer | None:
    """The sodium of what was eaten, by the sodium that its label tells of another weight."""
    label = _LABEL.search(_A_DAY.sub(" ", line.text))
    eaten = masses(_A_DAY.sub(" ", line.text[: label.start()] + line.text[label.end() :])) if label else []
    if label is None or len(eaten) != 1:
        return None
    (per,), mass = masses(label["per"]), eaten[0]
    told = amounts.sodium(float(label["g"]) / 1e3) if label["g"] else float(label["mg"].replace(",", "")) / 1e6
    sodium = told * mass / per
    salt = sodium / amounts.SODIUM_IN_SALT
    return sums_mixed.sodium_by_label(mass, (salt, sodium)), ("ATOMIC_WEIGHTS",), {"sodium_kg": sodium}


def _steam(turn: Turn, line: Told) -> Answer:
    mass = need(line.meat, "meat")
    found = mixing.steaming(mass)
    return sums_plate.steam(mass, found, turn.person), (*KITCHEN, "FSIS_SAFE_TEMPERATURES"), {"high_h": found.high}


def _keeps(turn: Turn, line: Told) -> Answer:
    kept = days_kept(line)
    made = products().get(line.product)
    cooked = made.storage if made else _OF_SPECIES.get(line.species, "pastrami")
    chart = keeping(*((_RAW_OF.get(line.species, "roast"), "raw") if _RAW.search(line.text) else (cooked, "cooked")))
    body = {"days": chart.days, "longest": chart.longest}
    if kept is None:
        cooked = need(cooked_on(turn, line.text), "hours")
        dates = tuple(noon(turn, cooked + timedelta(days=n)) for n in (0, chart.days, chart.longest))
        return of_dates.use_by(dates, chart, turn.person), (chart.source.key,), body
    return sums_plate.keeps(kept, chart, turn.person), (chart.source.key,), body


SUMS = {
    "shopping": _shopping, "portions": _portions, "yield": _yield, "loss": _loss, "rub": _rub, "spice": _spice,
    "sodium": _sodium, "steam": _steam, "keeps": _keeps, "price": _price,
}  # fmt: skip
