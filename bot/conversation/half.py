"""What waits for an answer, as plain data: the open question with the half intent that it belongs to.

It is kept with the person, so that a restart between question and answer forgets nothing.
"""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from bot import measures
from bot.intents.intents import Start
from bot.intents.meats import Meat, ranges
from bot.intents.weights import IN_ALL, Weighed, shared
from core.plan.recipe import called_by_weight, product

BONE_IN = "_bone_in"  # ends the name of a cut that has its bone
TOLD = "told"  # lines that wait for the piece to be begun, each with when it was said
NO_CUT = "no_cut"  # what was typed for a cut and is none: no other is taken for it, whatever is said meanwhile


def pack(value: Any) -> Any:
    """Plain data for what an intent holds: times become text that can be told apart."""
    match value:
        case datetime():
            return {"$at": value.isoformat()}
        case dict():
            return {key: pack(v) for key, v in value.items()}
        case list() | tuple():
            return [pack(v) for v in value]
        case frozenset() | set():
            return sorted(value)
        case _:
            return value


def unpack(value: Any) -> Any:
    """The inverse of `pack`."""
    match value:
        case {"$at": str(text)}:
            return datetime.fromisoformat(text)
        case dict():
            return {key: unpack(v) for key, v in value.items()}
        case list():
            return [unpack(v) for v in value]
        case _:
            return value


def adds_to(intent: Start, asked: dict[str, Any] | None) -> bool:
    """Whether a start adds to a half one: asked for the cut, a meat that is named answers and begins nothing new."""
    half = (asked or {}).get("said") or {}
    answers = (asked or {}).get("slot") == "cut" and not _another_piece(half, intent.said)
    return bool(half) and (answers or of_the_same(half, intent.said))


def _another_piece(half: Mapping[str, Any], said: Mapping[str, Any]) -> bool:
    """«5 lb pork belly bacon», asked for the cut of a corned beef: another product with a weight of its own."""
    return "mass" in said and "product" in said and not _may_be(half, said)


def of_the_same(half: Mapping[str, Any], said: Mapping[str, Any]) -> bool:
    """Whether what is said of a start may be of the meat of a half one: «bacon for saturday», then «belly 3 kg»."""
    if not {"cut", "product"} & said.keys():
        return True
    both = {**half, **said}
    same = all(half.get(key, value) == value for key, value in said.items() if key in ("cut", "mass"))
    return same and _may_be(half, said) and both.get("cut", "") in ("", *product(both["product"]).cuts)


def _may_be(half: Mapping[str, Any], said: Mapping[str, Any]) -> bool:
    """Whether one product is meant by both: «duck for saturday», then «two whole ducks»."""
    was, now = half.get("product"), said.get("product")
    return bool(was or now) and (None in (was, now) or was == now or product(was).heavier == now)


def _of_that(cut: str, cuts: tuple[str, ...]) -> str:
    """«bone in» is read as of a ham: of the shoulder that is asked about it is that one's cut."""
    with_bone = cut.endswith(BONE_IN)
    if cut in cuts or not (with_bone or cut.endswith("_boned")):
        return cut
    return next((one for one in cuts if one.endswith(BONE_IN) is with_bone), cut)


def of_each(said: dict[str, Any], unclear: Mapping[str, str]) -> Mapping[str, str]:
    """What stays unclear: «4 lb each» is a weight where the pieces were counted, and none where they were not."""
    each = measures.sole(unclear.get("each", ""), "mass")
    if each is None:
        return unclear
    rest = {slot: typed for slot, typed in unclear.items() if slot != "each"}
    if said.get("pieces", 1) < 2:
        return rest | {"mass": unclear["each"]}
    said["mass"] = each.value * said["pieces"]
    return rest


def share_open(asked: Mapping[str, Any], mass: float, text: str) -> Mapping[str, str]:
    """«4 lb» of two birds that were counted: of each or of all stays open, unless only one of them can be."""
    said = asked.get("said") or {}
    count = said.get("pieces", 1) if asked.get("slot") == "mass" else 1
    if count < 2 or IN_ALL.search(text.lower()):
        return {}
    told = shared(
        Weighed(slot="share", typed=f"{count} {mass:.6g}"), ranges(Meat(said.get("product", ""), said.get("cut", "")))
    )
    return {"share": told.typed} if told.slot else {}


def take_cut(said: dict[str, Any]) -> bool:
    """Whether the cut is known: named, or the only one that there is; of some it is the weight that tells.

    Raises Gone for a product that is not planned.
    """
    if "product" not in said:
        return "cut" in said
    named = product(said["product"])
    if "cut" in said:
        said["cut"] = _of_that(said["cut"], named.cuts)
    if "cut" in said or (named.heavier and "mass" not in said):
        return True
    if named.heavier:
        each = said.get("heaviest") or said["mass"] / said.get("pieces", 1)
        named = product(called_by_weight(named.name, each))
        said["product"] = named.name
    if len(named.cuts) == 1:
        said["cut"] = named.cuts[0]
    return "cut" in said
