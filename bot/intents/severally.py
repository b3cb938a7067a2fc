"""Several meats in one line: «3 kg belly and 700 g duck breast for saturday» begins two batches."""

import re
from dataclasses import replace
from typing import Any, Final

from bot.intents import questions, start
from bot.intents.context import SHOWN, Context
from bot.intents.intents import Start, Unclear
from bot.intents.meats import meat
from core.errors import Gone
from core.plan.recipe import product, product_of_cut, products

_PLAN_FOR_ME: Final = re.compile(
    r"^(?:(?:can|could|would|will) (?:you|u|we) (?:please )?|please |i need |need )(?:help (?:me |us |with )?(?:to "
    r"|with )?)?"
    r"(?:plan(?:ning)?|start(?:ing)?|do(?:ing)?|mak(?:e|ing)|cur(?:e|ing)|smok(?:e|ing)|prepare)\b"
)
_BETWEEN: Final = re.compile(r"\s*(?:[,;&+]|\b(?:and|plus|as well as)\b)\s*")
_OF_ALL: Final = frozenset(
    {"deadline", "meals", "cure_nitrite_fraction", "cure_nitrate_fraction", "cooker", "pit_c", "fridge_c"}
)  # the rest is said of the one meat beside which it stands


def read_begun(text: str, context: Context) -> Start | Unclear | None:
    """A start, where a plain text is one and no question; of meat that has its cure already none may begin."""
    if questions.is_question(text) and not _PLAN_FOR_ME.search(text):
        return None
    found = _one_or_several(text, context)
    return Unclear("cured", text[:SHOWN]) if found and start.is_cured(text) else found


def _one_or_several(text: str, context: Context) -> Start | None:
    """The first of several where a line names several meats, with the others behind it.

    What was said of no meat alone, as the meal, holds for all. A weight that stands once is nobody's: it is asked for.
    """
    whole = start.read_start(text, context)
    parts = _by_meat(text) if whole is not None else []
    if whole is None or len(parts) < 2:
        return whole
    afresh = replace(context, phase="none", asked=None, asked_of_start=False)
    each = [start.read_start(part, afresh) or Start() for part in parts]
    if not all({"product", "cut"} & one.said.keys() for one in each):
        return whole
    shared = {key: value for key, value in whole.said.items() if key in _OF_ALL}
    nobodys = {"mass"} if sum("mass" in one.said for one in each) == 1 else set()
    first, *then = [{k: v for k, v in (shared | said_of(one)).items() if k not in nobodys} for one in each]
    return Start(first, each[0].unclear, whole.assumed, then=tuple(then))


def said_of(one: Start) -> dict[str, Any]:
    """What was said of a start. Several pieces in one bag have one dose, and the heaviest sets the days."""
    together = {"pieces": len(one.pieces), "heaviest": max(one.pieces)} if len(one.pieces) > 1 else {}
    return one.said | together


def _by_meat(text: str) -> list[str]:
    """The line cut between its meats; what names none belongs to the meat before it."""
    parts: list[str] = []
    for piece in _BETWEEN.split(text):
        made = _made(piece)
        if parts and (not made or made == _made(parts[-1]) or not _made(parts[-1]) or _is_its_cut(piece, parts[-1])):
            parts[-1] = f"{parts[-1]} , {piece}"
        else:
            parts.append(piece)
    return parts


def _is_its_cut(piece: str, before: str) -> bool:
    """«corned beef, flat cut»: a cut without a product, of which the product before it may be made."""
    named, made = meat(piece), _made(before)
    return not named.product and made in products() and named.cut in product(made).cuts


def _made(text: str) -> str:
    """The product that a piece of a line names, by itself or by its cut; "" where none."""
    named = meat(text)
    if named.product or named.cut in ("", "both", "brisket", "packer"):
        return named.product or ("pastrami" if named.cut else "")
    try:
        return product_of_cut(named.cut).name
    except Gone:
        return ""
