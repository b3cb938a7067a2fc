"""So much water as the cook has or took: the dose goes by it until it is weighed, and is judged by it afterwards."""

import re
from typing import Any, Final

from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.intents import Change
from bot.intents.normal import normal
from bot.intents.pouring import poured_of
from bot.reply import Reply
from bot.wording import asking, brines, unkept
from core.batch.assess import Assessment
from core.cure.nitrite import skin_free
from core.plan.setup import by_the_clock
from core.service.turn import Turn
from core.units import Kilograms

_IN_ALL: Final = re.compile(r"\b(?:instead|in (?:all|total)|altogether)\b")  # the water of the brine, and none on top
Said = tuple[str, asking.Rows]
SAID = ("put_in_water", "water_kg")


def no_bath(a: Assessment, changes: dict[str, Any]) -> Reply | None:
    """What is said of water for meat that lies in none: it is injected, or cured dry."""
    if a.batch.setup.method == "brine" or not changes.keys() & set(SAID):
        return None
    if _thins(a):
        said, rows = thinned(a, _kilos(changes))
        return Reply(said, buttons=rows, facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id)
    return Reply(brines.no_bath(a, _kilos(changes)), facts=facts(a) | {"answer_kind": "asked_back"}, about=a.batch.id)


def settled(a: Assessment, changes: dict[str, Any]) -> dict[str, Any]:
    """The fields of the setup, or of what went in, that so much water makes."""
    if "water_share" in changes and _thins(a):  # the tap of `thinned`: it lies in that water
        return {"method": "brine", "put_in_water": round(changes["water_share"] * a.batch.setup.mass, 3)}
    if not changes.keys() & set(SAID):
        return changes
    kg, others = _kilos(changes), {name: value for name, value in changes.items() if name not in SAID}
    mixed = a.batch.dosed is not None
    told = changes.get("put_in_salt")
    if (mixed or told) and by_the_clock(a.batch.setup) and a.dose is not None:
        salt = float(told or a.dose.all_salt_kg)  # what went in, where that was told with its water
        beside = {"put_in_water": kg} if told else {}
        return {**others, **beside, "brine_strength": round(salt / (salt + kg), 3)}
    if mixed or "put_in_water" in changes:
        return {**others, "put_in_water": kg}
    return {**others, "water_share": kg / skin_free(a.batch.setup.mass, a.batch.setup.skin_on)}


def _kilos(changes: dict[str, Any]) -> Kilograms:
    return float(next(changes[name] for name in SAID if name in changes))


def of_more(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> Said:
    """What nitrite and salt come to with the water that a line puts on top of that of the brine, or in its place."""
    a, plain = of[0], normal(of[1], turn.person.language)
    poured = _poured(plain)
    if not poured or _thins(a) or a.dose is None or not a.dose.water_kg:
        return of_less(turn, meant, of)
    more = poured[0] - (a.dose.water_kg if _IN_ALL.search(plain) else 0.0)
    return (unkept.more_water(a, more) if more > 0.0 else unkept.water(a)), ()


def of_less(turn: Turn, meant: Understood, of: tuple[Assessment, str]) -> Said:
    """Another water than was planned: how much it is by now; of a dry cure what so much makes of it."""
    poured = _poured(normal(of[1], turn.person.language))
    return thinned(of[0], poured[0]) if poured and _thins(of[0]) else (unkept.water(of[0]), ())


def _poured(plain: str) -> list[Kilograms]:
    return [m.value for m in poured_of(plain)]


def _thins(a: Assessment) -> bool:
    """Whether a dry cure is weighed and out of its packet: water that is told of is in it, or about to be."""
    return a.batch.setup.method == "dry" and a.batch.dosed is not None and a.dose is not None


def thinned(a: Assessment, kg: Kilograms) -> Said:
    """What a dry cure comes to in so much water, and the tap that says that it lies in it."""
    lies = Change({"water_share": kg / a.batch.setup.mass}, batch=a.batch.id)
    return unkept.thinned(a, kg), ((asking.button(unkept.lies_in(kg), lies),),)
