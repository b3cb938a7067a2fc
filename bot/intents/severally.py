"""Several meats in one line: «3 kg belly and 700 g duck breast for saturday» begins two batches."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents import questions, start
from bot.intents.context import SHOWN, Context
from bot.intents.flat_and_point import parted
from bot.intents.intents import Start, Unclear
from bot.intents.meats import Meat, meat, without
from bot.intents.small import content, words
from bot.intents.when import meal
from core import patterns as re
from core.errors import Gone
from core.plan.recipe import product, product_of_cut, products

_PLEASE: Final = r"(?:(?:can|could|would|will) (?:you|u|we) (?:please )?|please |i need |need )"
_PLAN_FOR_ME: Final = re.compile(
    rf"^(?:{_PLEASE}?help (?:me |us |with )(?:to |with )?|{_PLEASE})(?:(?=(?:an?|my|our|this) )"
    r"|(?:plan(?:ning)?|start(?:ing)?|do(?:ing)?|mak(?:e|ing)|cur(?:e|ing)|smok(?:e|ing)|prepare)\b)"
)
_WHAT_ABOUT: Final = re.compile(  # «ok what about a ham then, 10 lb for easter»
    r"^(?:(?:ok(?:ay)?|so|well|and|right|hm+),? )*(?:what|how) about"
    r" (?=(?:an?|some|my|our|the|this|\d)\b)(?:(?:the|this) )?"
)
_AND_HOW: Final = re.compile(  # «got a 3 lb flat, where do i start»: begun, that is the answer
    r"[ ,.;!]*\b(?:so |and |but )?(?:what (?:do|should|must) (?:i|we) do(?: (?:now|first|next))?|what now|what next"
    r"|where (?:do|should) (?:i|we) (?:start|begin)|how do (?:i|we) (?:start|begin|go about (?:it|this|that))"
    r"|(?:can|could) (?:you|u) help(?: me)?|(?:please )?help(?: me)?|any tips)\W*$"
)
_HOW_TO_GET_THERE: Final = re.compile(  # «6 lb flat in the freezer, how do i get to pastrami by the 14th»
    r"\b(?:so )?how (?:do|can|could|would|should|will) (?:i|we) (?:get (?:it )?to|get|make"
    r"|turn (?:it|this|that|them) into)\b"
)
_BETWEEN: Final = re.compile(r"\s*(?:[,;&+]|\b(?:and|plus|as well as)\b)\s*")
_OWN_BAGS: Final = re.compile(
    r"\b(?:separate|different|two|2|3|4|own|individual) (?:bags?|tubs?|brines?|buckets?)\b|\bseparately\b"
    r"|\b(?:a|one) (?:bag|tub) each\b|\beach in (?:its|a|their) (?:own )?(?:bag|tub)\b"
)
_NO_CURE_LAST: Final = re.compile(
    r",(?: both| all)? (?:no|without|neither with) (?:any )?(?:cure|curing salt|pink salt|pink stuff|nitrite)[ .!]*$"
)
_EATEN_UNCURED: Final = frozenset({"chicken", "turkey", "turkey_breast", "duck", "smoked_duck", "salmon", "trout"})
_SHORT: Final = 5  # words
_PARTS: Final = words("side sides fillet fillets breast breasts slab half whole")
_OF_BEEF: Final = ("both", "brisket", "packer")  # of a brisket, whatever is made of it
OF_ALL: Final = frozenset(
    {"deadline", "meals", "cure_nitrite_fraction", "cure_nitrate_fraction", "cooker", "pit_c", "fridge_c"}
)  # the rest is said of the one meat beside which it stands


def read_begun(text: str, context: Context) -> Start | Unclear | None:
    """A start, where a plain text is one and no question; of meat that has its cure already none may begin."""
    text = _AND_HOW.sub("", text) if meat(text) else text
    weighed = bool(measures.of_kind(text, "mass") and meat(text))
    if weighed and (context.phase == "none" or meal(text, context)) and (wished := _WHAT_ABOUT.match(text)):
        text = text[wished.end() :].rstrip(" ?")
    if measures.of_kind(text, "mass") and meal(text, context):
        text = _HOW_TO_GET_THERE.sub("make", text)
    if (wished := _PLAN_FOR_ME.search(text)) and not start.asks_whether(text, context):
        text = f"start {text[wished.end() :].rstrip(' ?')}"
    elif questions.is_question(text):
        return None
    found = _one_or_several(text, context)
    return Unclear("cured", text[:SHOWN]) if found and start.is_cured(text) else found


def _one_or_several(text: str, context: Context) -> Start | None:
    """The first of several where a line names several meats, with the others behind it.

    What was said of no meat alone, as the meal, holds for all. A weight that stands at the end alone is nobody's.
    """
    whole = start.read_start(text, context)
    if of_a_brisket := parted(text, whole):
        return of_a_brisket
    parts = _by_meat(text) if whole is not None else []
    if whole is None or len(parts) < 2:
        return _bag_by_bag(whole, text) if whole else None
    afresh = replace(context, phase="none", asked=None, asked_of_start=False)
    each = [start.read_start(part, afresh) or Start(_named_alone(part)) for part in parts]
    if not all({"product", "cut"} & one.said.keys() for one in each):
        return whole
    shared = {key: value for key, value in whole.said.items() if key in OF_ALL}
    weighed = [n for n, one in enumerate(each) if "mass" in one.said]
    nobodys = {"mass"} if weighed == [len(each) - 1] else set()  # «pastrami and corned beef from a 6 kg brisket»
    shared |= _uncured(text, each)
    first, *then = [{k: v for k, v in (shared | said_of(one)).items() if k not in nobodys} for one in each]
    return Start(first, each[0].unclear, whole.assumed, then=tuple(then))


def _uncured(text: str, each: Sequence[Start]) -> dict[str, float]:
    """«a chicken and a salmon for saturday, no pink salt»: of all of them, where none is what its cure makes it."""
    plain = all(_made(Meat(one.said.get("product", ""), one.said.get("cut", ""))) in _EATEN_UNCURED for one in each)
    return {"nitrite_target": 0.0} if plain and _NO_CURE_LAST.search(text) else {}


def _named_alone(part: str) -> dict[str, Any]:
    """«and a salmon side»: a meat by its name and no more; its weight is asked for."""
    named = meat(part)
    if not named.product or {*content(without(part))} - _PARTS or len(part.split()) > _SHORT:
        return {}
    return {"product": named.product} | ({"cut": named.cut} if named.cut else {})


def _bag_by_bag(whole: Start, text: str) -> Start:
    """«two bellies 4.4 and 5.1 lb, separate bags»: each bag wants its own dose, so each piece is a batch."""
    if len(whole.pieces) < 2 or not _OWN_BAGS.search(text):
        return whole
    said = {name: value for name, value in whole.said.items() if name not in ("pieces", "heaviest")}
    first, *then = [said | {"mass": mass} for mass in whole.pieces]
    return Start(first, whole.unclear, whole.assumed, then=tuple(then))


def said_of(one: Start) -> dict[str, Any]:
    """What was said of a start. Several pieces in one bag have one dose, and the heaviest sets the days."""
    together = {"pieces": len(one.pieces), "heaviest": max(one.pieces)} if len(one.pieces) > 1 else {}
    return one.said | together


def _by_meat(text: str) -> list[str]:
    """The line cut between its meats; what names none, or another word for the same, belongs to the one before it."""
    parts: list[str] = []
    for piece in _BETWEEN.split(text):
        if parts and _may_be_one(meat(parts[-1]), meat(piece)):
            parts[-1] = f"{parts[-1]} , {piece}"
        else:
            parts.append(piece)
    return _with_their_cuts(parts)


def _with_their_cuts(parts: list[str]) -> list[str]:
    """«pastrami and bacon, 7 lb flat and 5 lb belly»: each product with the one cut that it is made from."""
    named = [part for part in parts if not re.search(r"\d", part) and _named_alone(part)]
    pieces = [part for part in parts if part not in named]
    cuts = [next((one for one in pieces if _may_be_one(meat(name), meat(one))), "") for name in named]
    if not named or "" in cuts or len(set(cuts)) < len(cuts) or len(cuts) < len(pieces):
        return parts
    return [f"{cut} {name}" for name, cut in zip(named, cuts, strict=True)]


def _may_be_one(one: Meat, other: Meat) -> bool:
    """Whether two names may be of the same meat: one product, a cut that it is made from, two cuts of one product."""
    made = {_made(one), _made(other)}
    if not all(made) or len(made) == 1:
        return True
    return _is_of(one, _made(other)) or _is_of(other, _made(one))


def _is_of(named: Meat, made: str) -> bool:
    """Whether a cut that stands alone is one that a product is made from: «corned beef, flat cut»."""
    cut = "brisket_flat" if named.cut in _OF_BEEF else named.cut
    return not named.product and made in products() and cut in product(made).cuts


def _made(named: Meat) -> str:
    """The product that is named, by itself or by its cut; "" where none."""
    if named.product or named.cut in ("", *_OF_BEEF):
        return named.product or ("pastrami" if named.cut else "")
    try:
        return product_of_cut(named.cut).name
    except Gone:
        return ""
