"""Temperatures as people report them: «158», «158/245», «70c pit 120», «was 82f at 9, 44 at 7am», «core 203 soft».

A line is a reading when nothing in it is foreign to one: numbers, units, hours, the words for thermometers,
and small talk. What each number means is settled in `plausible`; what stays open is asked about.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from typing import Final

from bot import measures
from bot.intents import when
from bot.intents.context import Context
from bot.intents.intents import Reading, Snooze, Temperature, Unclear
from bot.intents.plausible import Number, everything, meanings, pair
from core.batch.events import Probe

_PROBE_WORDS: Final = {
    Probe.CORE: "meat meats core internal inside int brisket briskets flat point probe probes middle center centre ham bacon kern "
                "kerntemperatur kerntemp fleisch turkey breast it",
    Probe.PIT: "pit grill smoker cooker dome chamber bbq grate kamado lid garraum grillraum",
    Probe.FRIDGE: "fridge fridges refrigerator refrigeratr frig fridg kühlschrank",
    Probe.BRINE: "brine brines pickle lake bucket liquid",
    Probe.ROOM: "room garage outside ambient outdoors",
}  # fmt: skip
_PROBE: Final = {word: probe for probe, words in _PROBE_WORDS.items() for word in words.split() if word != "it"}
_TENDER: Final = frozenset("soft tender buttery butter jiggly jiggles weich zart".split())
_TOUGH: Final = frozenset("tough hard firm zäh".split())
_SMALL_TALK: Final = frozenset(
    "its it is was at now still says say said saying reads read reading shows showing show temp temps temperature tmp the a an in on of "
    "about around approx roughly just only currently degrees degree deg last past hr hour hours after since from and then so ok okay hi "
    "up down stuck stalled stalling sitting holding steady climbing climbed dropped dropping rose rising fell falling went got gets "
    "to hit hits hitting reached has had have been my our that this here like almost nearly already finally again today yesterday night "
    "morning mornin min mins minutes over h mid noon midnight by im we i got yep yes right ist jetzt noch bei hat grad um im der die "
    "das seit war am gerade for probably maybe think reckon thick end side thin part spot cold coldest slow very too pretty really warm "
    "hot cool thats were".split()
)
# words with which a number is a wish, a rule or a plan: no reading
_WISHES: Final = re.compile(
    r"\b(?:under|below|above|keep|target|until|till|want|should|need|max|min|between|set|if|when|will|aim|pull at|runs?|always|never|not|"
    r"instead|typo|meant|moved?|dinner|lunch|eat|remind|cook at|smoke at|smoke to)\b"
)
_CLOCK: Final = re.compile(r"\d|noon|midnight")
_LOOSE_WORDS: Final = 3  # foreign words that a line with a named thermometer and one number may hold
_TOKEN: Final = re.compile(
    r"(?P<time>(?:[01]?\d|2[0-4]):[0-5]\d(?: ?[ap]\.?m\b\.?)?|(?:1[0-2]|0?\d)(?:\.[0-5]\d)? ?[ap]\.?m\b\.?|\d{1,2} ?(?:oclock|uhr)\b|"
    r"\b(?:noon|midnight|yesterday|last night|this morning|gestern)\b)"
    r"|(?P<span>\b(?:an?|half an|\d{1,3}(?:\.\d)?) ?(?:h|hrs?|hours?|m?mins?|minutes?)\b(?P<ago> ago)?)"
    r"|(?P<over>\b(?:last|past|over the last) (?:(?P<many>\d{1,2}) )?(?:h|hrs?|hours?)\b)"
    r"|(?P<temp>(?<![\w.])-?\d{1,6}(?:\.\d{1,2})?)"
    r"(?: ?(?:°|degrees?|deg|grad)?(?: |(?<=\W)|(?<=\d))\(?°? ?(?P<unit>celsius|centigrade|fahrenheit|[cf])\b\)?|(?: ?(?:°|degrees?|deg|grad))?(?![^\W_]))"
    r"|(?P<word>[^\W\d_]+)|(?P<sep>[,;!])|(?P<other>[^\s./~+&()?:°'-])"
)


@dataclass(frozen=True)
class _Item:
    number: Number
    time: str = ""
    ago: timedelta | None = None


@dataclass
class _Line:
    """A line taken apart: numbers and thermometers in their order, and whatever is foreign to a reading."""

    order: list[_Item | Probe]
    foreign: list[str]
    words: set[str]
    over: timedelta | None = None

    @property
    def items(self) -> list[_Item]:
        return [part for part in self.order if isinstance(part, _Item)]

    @property
    def labels(self) -> list[Probe]:
        return [part for part in self.order if isinstance(part, Probe)]


def read_reading(text: str, context: Context, *, loose: bool = False) -> Reading | Unclear | None:
    """The temperatures of a plain line; Unclear with the readings it may be; None where it is something else.

    With `loose`, one number beside a named thermometer is taken out of a few foreign words too.
    """
    if any(m.kind not in ("temperature", "duration") for m in measures.find(text)):
        return None
    line = _taken_apart(text)
    if not line.items or not (_is_loose(line, text) if loose else _is_strict(line, text)):
        return None
    numbers = _labelled(line)
    found = _settled(numbers, line, context)
    if isinstance(found, Unclear):
        return replace(found, text=text[:60])
    return Reading(_timed(found, line, context), tender=_tender(line))


def hot_words(text: str) -> bool:
    """«its hot», «probe tender»: a temperature without a number."""
    if re.fullmatch(r"(?:(?:its|it is|feels|the|probe|meat|now|nice and|really|probes?) ?)*(?:tender|soft|like butter|jiggly)", text.strip(" !.")):
        return True
    return bool(
        re.fullmatch(
            r"(?:(?:its|it is|the|meat|pit|fridge|very|too|so|really|getting) ?)+(?:hot|warm|cold)", text.strip(" !.")
        )
    )


def _is_strict(line: _Line, text: str) -> bool:
    if line.foreign:
        return False
    lasting = line.words & {"been", "stuck", "stalled", "holding", "sitting"}
    return not re.search(r"\b(?:for|at) \d+ ?(?:min|h)", text) or bool(lasting)


def _is_loose(line: _Line, text: str) -> bool:
    few = len(line.foreign) <= _LOOSE_WORDS and len(line.items) == 1
    return few and bool(line.labels) and not _WISHES.search(text)


def _taken_apart(text: str) -> _Line:
    line = _Line([], [], set())
    waiting = _Waiting()
    for found in _TOKEN.finditer(text):
        _take(found, line, waiting, text)
    return line


@dataclass
class _Waiting:
    """An hour said before its number («at 9 it was 82»), and whether the segment has a number already."""

    time: str = ""
    since_sep: int = 0


def _take(found: re.Match[str], line: _Line, waiting: _Waiting, text: str) -> None:
    match found.lastgroup:
        case "sep":
            waiting.since_sep = 0
        case "word":
            _take_word(found[0], line)
        case "other":
            line.foreign.append(found[0])
        case "many" | "over":
            line.over = timedelta(hours=int(found["many"] or 1))
        case "span" | "ago":
            _take_span(found, line)
        case "time":
            _take_time(found[0], line, waiting)
        case _:
            _take_number(found, line, waiting, text)


def _take_word(word: str, line: _Line) -> None:
    line.words.add(word)
    if probe := _PROBE.get(word):
        line.order.append(probe)
    elif word not in _SMALL_TALK and word not in _TENDER and word not in _TOUGH:
        line.foreign.append(word)


def _take_span(found: re.Match[str], line: _Line) -> None:
    if found["ago"] and line.items:
        _amend(line, ago=when.span(found[0]))


def _take_time(words: str, line: _Line, waiting: _Waiting) -> None:
    has_one = bool(line.items) and bool(_CLOCK.search(line.items[-1].time)) and bool(_CLOCK.search(words))
    if waiting.since_sep and line.items and not has_one:
        _amend(line, time=f"{line.items[-1].time} {words}".strip())
    else:
        waiting.time = f"{waiting.time} {words}".strip()


def _take_number(found: re.Match[str], line: _Line, waiting: _Waiting, text: str) -> None:
    unit = found["unit"][0] if found["unit"] else None
    unit = "c" if unit == "c" else unit
    value = float(found["temp"])
    before = text[: found.start()].rstrip()
    if (
        unit is None
        and 0 < value <= 24
        and re.search(r"\b(?:at|since|from|um|seit)$", before)
        and _other_number(found, text)
    ):
        _take_time(f"at {found[0]}", line, waiting)
        return
    line.order.append(_Item(Number(value, unit), waiting.time))
    waiting.time = ""
    waiting.since_sep += 1


def _other_number(found: re.Match[str], text: str) -> bool:
    segment_start = max(text.rfind(",", 0, found.start()), text.rfind(";", 0, found.start())) + 1
    rest = re.split("[,;]", text[found.end() :])[0]
    return bool(re.search(r"\d", text[segment_start : found.start()] + rest))


def _amend(line: _Line, **changes: object) -> None:
    place = max(i for i, part in enumerate(line.order) if isinstance(part, _Item))
    line.order[place] = replace(line.order[place], **changes)  # type: ignore[type-var,arg-type]


def _labelled(line: _Line) -> list[_Item]:
    """Each number with its thermometer: the word before it, or the word after it where the line ends in one."""
    order: list[_Item | Probe] = list(line.order)
    if order and isinstance(order[0], _Item) and isinstance(order[-1], Probe):
        return list(_claimed(order[::-1]))[::-1]
    out = list(_claimed(order))
    unit = next((i.number.unit for i in out if i.number.unit), None)
    return out if unit is None else [_with_unit(i, unit) for i in out]


def _claimed(order: list[_Item | Probe]) -> Iterator[_Item]:
    label: Probe | None = None
    for part in order:
        if isinstance(part, Probe):
            label = part
        else:
            yield replace(part, number=replace(part.number, probe=label))
            label = None


def _with_unit(item: _Item, unit: str) -> _Item:
    """A unit said once holds for the whole line."""
    return item if item.number.unit else replace(item, number=replace(item.number, unit=unit))


def _settled(items: list[_Item], line: _Line, context: Context) -> list[tuple[_Item, Temperature]] | Unclear:
    numbers = [i.number for i in items]
    labels = [n.probe for n in numbers]
    timed = any(i.time or i.ago for i in items) or line.over
    if len(items) == 2 and not timed and set(labels) <= {None, Probe.CORE, Probe.PIT} and None in labels:
        if labels == [None, None]:
            both = pair(numbers[0], numbers[1], context)
            if len(both) == 1:
                first = [t for t in both[0] if t.value == numbers[0].value][:1]
                return list(zip(items, both[0] if first and first[0] is both[0][0] else both[0][::-1], strict=True))
            if both:
                return Unclear("number", options=tuple(Reading(b) for b in both))
        else:  # «70c pit 120»: the other one is the meat, or the pit
            other = Probe.PIT if Probe.CORE in labels else Probe.CORE
            items = [i if i.number.probe else replace(i, number=replace(i.number, probe=other)) for i in items]
    if len(items) > 2 and not timed and not any(labels):
        return _several(items, context)
    return _one_by_one(items, context)


def _several(items: list[_Item], context: Context) -> list[tuple[_Item, Temperature]] | Unclear:
    """Three bare numbers: a series of the same thermometer, or pit and meat in an order that must be confirmed."""
    values = [i.number.value for i in items]
    if max(values) - min(values) <= 20:
        return _one_by_one(items, context)
    rest = dict.fromkeys(values)
    both = pair(Number(max(rest)), Number(min(rest)), context) if len(rest) == 2 else ()
    return Unclear("number", options=tuple(Reading(b) for b in both))


def _one_by_one(items: list[_Item], context: Context) -> list[tuple[_Item, Temperature]] | Unclear:
    out: list[tuple[_Item, Temperature]] = []
    for item in items:
        found = _next_of_series(item, out) or meanings(item.number, context)
        if len(found) != 1:
            others = tuple(t for _, t in out)
            return Unclear("number", options=_options(found, others, item.number, context))
        out.append((item, found[0]))
    return out


def _next_of_series(item: _Item, before: list[tuple[_Item, Temperature]]) -> tuple[Temperature, ...]:
    """«was 82f at 9, 44 at 7am»: one thermometer at several hours."""
    if not before or not item.time or item.number.probe or not before[-1][0].time:
        return ()
    last = before[-1][1]
    return (Temperature(item.number.value, item.number.unit or last.unit, last.probe),)


def _options(
    found: tuple[Temperature, ...], others: tuple[Temperature, ...], number: Number, context: Context
) -> tuple[Reading | Snooze, ...]:
    found = found or everything(number.value, context, number.unit)
    out: list[Reading | Snooze] = [Reading((*others, t)) for t in found[:4]]
    minutes = number.unit is None and number.probe is None and number.value.is_integer() and 5 <= number.value <= 120
    if minutes and context.due_step:
        out.append(Snooze(by=timedelta(minutes=number.value)))
    return tuple(out)


def _timed(found: list[tuple[_Item, Temperature]], line: _Line, context: Context) -> tuple[Temperature, ...]:
    """Each temperature with its hour; read from the last backwards, so that a series stays in order."""
    if line.over and len(found) > 1:
        step = line.over / (len(found) - 1)
        ago = [step * (len(found) - 1 - i) for i in range(len(found))]
        return tuple(replace(t, at=context.now - back) for (_, t), back in zip(found, ago, strict=True))
    out: list[Temperature] = []
    limit: datetime = context.now
    for item, temperature in reversed(found):
        at = _at(item, context, limit)
        limit = at or limit
        out.append(replace(temperature, at=at))
    return tuple(reversed(out))


def _at(item: _Item, context: Context, limit: datetime) -> datetime | None:
    if item.ago:
        return context.now - item.ago
    if not item.time:
        return None
    said = when.past(item.time, context, limit)
    return said.at if said else None


def _tender(line: _Line) -> bool:
    return bool(line.words & _TENDER) and "not" not in line.words and not line.words & _TOUGH
