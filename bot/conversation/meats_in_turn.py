"""Several meats of one line: begun one after the other, each when the one before it has its plan."""

import re
from collections.abc import Mapping
from typing import Any, Final

from bot.conversation.half import pack, unpack
from bot.intents.severally import OF_ALL
from bot.wording import batches as several
from bot.wording import meat_names
from core.plan.recipe import product_of_cut
from core.service import batches
from core.service.turn import Turn

AND_THEN: Final = "and_then"  # what was said of the other meats, in a half start or beside a question
_INSTEAD: Final = re.compile(r"\b(?:instead|rather|actually|scratch that|forget)\b|^no\b")


def made(said: Mapping[str, Any]) -> str:
    """The product that a start names, by itself or by its cut; "" where none."""
    return said.get("product") or (product_of_cut(said["cut"]).name if "cut" in said else "")


def beside(said: dict[str, Any], half: dict[str, Any], text: str) -> dict[str, Any]:
    """Another meat while one is half said: it comes first, the half one after it."""
    if _INSTEAD.search(text.lower()):
        return said
    waiting = [{k: v for k, v in half.items() if k != AND_THEN}, *half.get(AND_THEN, [])]
    own = [one for one in waiting if said.get("product") and one.get("product") == said.get("product")]
    then = [*said.get(AND_THEN, []), *(one for one in waiting if one not in own)]
    return {**(own[0] if own else {}), **said, AND_THEN: then}


def its_turn(turn: Turn, said: dict[str, Any]) -> dict[str, Any]:
    """What is said of a meat, with what was said of it while it waited; the others that waited go with it."""
    then = waiting(turn)
    own = next((one for one in then if made(said) and made(one) == made(said)), None)
    others = [one for one in then if one is not own]
    return {**(own or {}), **said, AND_THEN: [*said.get(AND_THEN, []), *others]} if then else said


def told_on(half: Mapping[str, Any], then: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What is said of those that wait, with what was said of each before; one that is not named waits on.

    Two pieces of the meat that is half said have its meal.
    """
    waits: list[dict[str, Any]] = half.get(AND_THEN, [])
    of_both = {key: value for key, value in half.items() if key in OF_ALL}
    then = [{**of_both, **one} if made(one) == made(half) else one for one in then]
    before = {made(one): one for one in waits if made(one)}
    now = [{**before.get(made(one), {}), **one} for one in then]
    return [*now, *(one for one in waits if made(one) not in set(map(made, then)))]


def named(said: Mapping[str, Any], question: str) -> str:
    """A question about one meat of several, with its name before it."""
    return several.with_name(_name(said), question) if AND_THEN in said else question


def names(then: list[dict[str, Any]]) -> list[str]:
    """What those that wait are called."""
    return [_name(one) for one in then]


def _name(said: Mapping[str, Any]) -> str:
    return meat_names.short_name(batches.short_name(made(said), said.get("cut", "")))


def waiting(turn: Turn) -> list[dict[str, Any]]:
    """The meats that wait beside a question about the one before them."""
    return list((unpack(turn.open_question()) or {}).get(AND_THEN, []))


def wait(turn: Turn, then: list[dict[str, Any]]) -> bool:
    """Keep those that wait with the question that is open, if there is one; False where nothing holds them up."""
    question = unpack(turn.open_question())
    if question is None:
        return False
    if (half := question.get("said")) is not None:
        own = [one for one in then if made(one) != made(half)]
        question["said"] = {**half, AND_THEN: [*half.get(AND_THEN, []), *own]}
    else:
        question[AND_THEN] = then
    turn.ask(pack(question))
    return True
