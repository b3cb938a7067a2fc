"""A question that a sum answers: computed by the core, or the one thing asked that it still needs."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Final

from bot import measures
from bot.conversation import (
    answered,
    sums_climb,
    sums_cold,
    sums_dates,
    sums_falling,
    sums_fish,
    sums_hot,
    sums_mix,
    sums_packet,
    sums_plate,
    sums_pumped,
    sums_salt,
    sums_start,
    sums_strengths,
    sums_time,
    sums_told,
    sums_units,
)
from bot.conversation.in_units import used_in
from bot.intents.asked_cure import FIRST_OR_SECOND
from bot.intents.half_hours import half_past_there
from bot.intents.intents import Ask, Choose
from bot.intents.normal import normal
from bot.intents.sums.figured import figured
from bot.intents.sums.told import Told, told
from bot.reply import Reply
from bot.wording import sums_asked, sums_mixed, sums_why, trade
from bot.wording.asking import Rows, button
from bot.wording.language import say
from bot.wording.sums_packet import at_rate as by_rate
from core.errors import Missing
from core.service.turn import Turn
from core.units import Kilograms

OF_MEAT: Final = frozenset({"inject", "dose", "ppm", "salt_for", "brine_amount"})
MOST_ASKED: Final = 400  # characters of a question that grows with its answers


def answer(turn: Turn, intent: Ask) -> Sequence[Reply]:
    """The sum; where a figure is missing, the question for it, and the rest is kept."""
    return (_answer(turn, intent.about, _of_the_half(turn, intent)),)


def _of_the_half(turn: Turn, intent: Ask) -> str:
    """A sum that is asked while a start is half said: of its meat, where the line tells none."""
    mass = ((turn.open_question() or {}).get("said") or {}).get("mass")
    if mass is None or intent.about not in OF_MEAT or _told(turn, intent.text).has("meat"):
        return intent.text
    unit = turn.person.units.mass
    return f"{intent.text} ; {measures.from_house(mass, unit):.5g} {unit}"


def ask_strength(turn: Turn, kind: str, text: str) -> Reply:
    """The strength of the curing salt, asked with what the usual ones would take."""
    return _asked(turn, kind, text, _told(turn, text), "strength")


def beside_dose(turn: Turn, text: str, cure: Kilograms) -> str:
    """What goes with a dose that is worked out by the law of the place: in ounces, and sugar, where asked for."""
    line = _told(turn, text)
    more = (sums_cold.for_each(line, [cure]), sums_cold.in_ounces(text, [cure]), sums_salt.beside(line, None))
    return "\n".join(filter(None, more))


def grown(turn: Turn, value: str) -> tuple[str, str]:
    """The open sum, and what was said for it with what was missing; nothing where none is open."""
    open_ = turn.open_question() or {}
    if open_.get("slot") != "sum":
        return "", ""
    turn.ask(None)
    if open_["wanted"] == "strength" and FIRST_OR_SECOND.search(value.strip().lower()):  # the kind, and no 1 %
        return open_["sum"], open_["text"]
    return open_["sum"], f"{open_['text']} ; {_phrase(turn, open_['wanted'], value)}"


def over() -> Sequence[Reply]:
    """A tap on a sum that is no longer open."""
    return (Reply(sums_asked.over(), facts={"answer_kind": "asked_back"}),)


def why(kind: str) -> Sequence[Reply]:
    """The rule of a sum with its sources."""
    return (Reply(sums_why.why(kind), facts={"answer_kind": "computed", "sum": kind, "topic": "why"}),)


def _phrase(turn: Turn, wanted: str, value: str) -> str:
    """The answer as the reader of figures wants it: with its unit, and with its word."""
    units = turn.person.units
    bare = value.strip().replace(".", "").isdigit()
    unit = {
        "meat": units.mass,
        "body": units.length,
        "hours": "h",
        "days": "days",
        "people": "people",
        "water": "l",
    }.get(wanted, "%")
    said = f"{value} {unit}" if bare and wanted != "species" else value
    named = {"strength": ("nitrite", said), "body": (said, "thick")}  # as the readers want it; nobody is told this
    return " ".join(named.get(wanted, (said,)))


def _told(turn: Turn, text: str) -> Told:
    person = turn.person
    plain = half_past_there(normal(text, person.language), person.language, person.zone)
    return told(figured(plain), person.units.temperature == "f")


def _answer(turn: Turn, kind: str, text: str) -> Reply:
    line = _told(turn, text[-MOST_ASKED:])
    turn = replace(turn, person=replace(turn.person, units=used_in(line.text, turn.person.units)))
    try:
        said, keys, body = _SUMS[kind](turn, line)
    except Missing as missing:
        return _asked(turn, kind, text, line, missing.quantity)
    answered.remember(turn, f"sum:{kind}", text)
    return Reply(said, buttons=_why(kind), facts={"answer_kind": "computed", "sum": kind, "sources": list(keys)} | body)


def _asked(turn: Turn, kind: str, text: str, line: Told, wanted: str) -> Reply:
    if kind == "dose" and wanted == "strength":  # no packet makes a level over the limit lawful
        sums_cold.within_the_law(turn, line)
    turn.ask({"slot": "sum", "sum": kind, "text": text, "wanted": wanted})
    said, rows = (_by_strength(turn, kind, line) if wanted == "strength" else None) or sums_asked.missing(wanted)
    return Reply(said, buttons=rows, facts={"answer_kind": "asked_back", "asked": wanted, "sum": kind})


def _by_strength(turn: Turn, kind: str, line: Told) -> tuple[str, Rows] | None:
    """The strength, asked with what the usual ones would take or make; None where nothing can be said before."""
    if kind == "ppm" and len(sums_cold.spoonfuls(line)) > 1 and line.meat is not None:
        strong = sums_cold.APART[0]
        return sums_mixed.ask_with(strong, sums_cold.of_recipes(turn, line, strong)), sums_asked.rows("strength")
    if kind in ("ppm", "mix") and (made := sums_cold.usual_levels(turn, line)):
        least = sums_cold.judged(turn, line, made[0][0])[0].ingoing.nitrite
        said, rows = sums_asked.by_level(made, sums_cold.right_dose(turn, line, made[0][0]), least)
        more = (sums_cold.topped_up(turn, line, made[0]), sums_cold.thinned(turn, line, made[0]))
        return "\n".join(filter(None, (said, *more))), rows
    if kind == "in_pickle":
        return sums_asked.by_level(sums_told.usual_levels(turn, line))
    if kind == "by_packet" and (found := sums_packet.usual_levels(turn, line)):
        said, rows = sums_asked.by_level(found[1])
        return f"{by_rate(found[0].high * found[0].mine, found[0].mine, turn.person)}\n{said}", rows
    if kind == "meat_for" and line.has("cure"):
        return sums_asked.by_meat(line.cure or 0.0, sums_cold.usual_meats(turn, line), turn.person)
    if kind == "nitrite_in" and line.cure is not None:
        return sums_asked.by_nitrite(line.cure, sums_cold.APART)
    doses = sums_cold.usual_doses(turn, line) if kind == "dose" else None
    if not doses:
        return None
    said, rows = sums_asked.by_strength(doses)
    said = sums_cold.of_its_rind(line, said)
    cures = [cure for _, cure in doses]
    more = (
        sums_cold.for_each(line, cures),
        sums_cold.in_ounces(line.text, cures),
        sums_cold.salt_and_sugar(turn, line),
    )
    return "\n".join(filter(None, (said, *more))), rows


def _why(kind: str) -> Rows:
    return ((button(say("Why"), Choose("sum_why", kind)), trade.wrong(f"sum:{kind}")),)


_SUMS: Final[Mapping[str, Callable[[Turn, Told], sums_hot.Answer]]] = {
    **sums_climb.SUMS, **sums_cold.SUMS, **sums_dates.SUMS, **sums_falling.SUMS, **sums_fish.SUMS, **sums_hot.SUMS,
    **sums_plate.SUMS, **sums_pumped.SUMS, **sums_mix.SUMS, **sums_packet.SUMS, **sums_salt.SUMS, **sums_strengths.SUMS,
    **sums_start.SUMS, **sums_told.SUMS,
    **sums_time.SUMS, **sums_units.SUMS,
}  # fmt: skip
