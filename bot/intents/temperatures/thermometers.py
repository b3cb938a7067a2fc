"""A line of temperatures taken apart: numbers, units, hours and thermometers in order, and what is foreign to one."""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import timedelta
from typing import Final

from bot.intents import spans
from bot.intents.context import Context
from bot.intents.small import words
from bot.intents.temperatures.plausible import Number, can_be
from core import patterns as re
from core.batch.events import Probe

_PROBE_WORDS: Final = {
    Probe.CORE: """meat meats core internal inside int brisket briskets flat point probe probes middle center centre
    ham bacon
                   kern kerntemperatur kerntemp fleisch turkey breast breasts thigh thighs leg legs drumstick
                   wing brust keule schenkel fish fillet fillets salmon trout side belly loin duck chicken bird beef
                   pork end ends edge edges tail fork skewer toothpick""",
    Probe.PIT: "pit grill smoker cooker dome chamber bbq grate kamado lid garraum grillraum",
    Probe.FRIDGE: "fridge fridges refrigerator refrigeratr frig fridg kühlschrank",
    Probe.BRINE: "brine brines pickle lake bucket liquid",
    Probe.ROOM: "room garage outside ambient outdoors",
}
_PROBE: Final = {word: probe for probe, listed in _PROBE_WORDS.items() for word in listed.split()}
TENDER: Final = frozenset(("soft", "tender", "buttery", "butter", "jiggly", "jiggles", "weich", "zart"))
TOUGH: Final = frozenset(("tough", "hard", "firm", "tight", "zäh"))
_SMALL_TALK: Final = words(
    """
    its it is was at now still says say said saying reads read reading shows showing show temp temps temperature tmp
    the a an in on of about around approx roughly just only currently degrees degree deg last past hr hour hours after
    since from and then so ok okay hi up down to stuck stalled stalling sitting holding steady climbing climbed dropped
    dropping rose rising fell falling went got gets hit hits hitting reached has had have been my our that this here
    like there getting reading readings checked every almost nearly already finally again today yesterday night morning
    mornin door drawer all min mins minutes over h mid noon
    midnight by im we i got yep yes right ist jetzt noch bei hat grad um im der die das seit war am gerade for probably
    maybe think reckon thick side thin part spot cold coldest slow very too pretty really warm hot cool thats were
    slides goes display dial gauge thermometer thermo app screen top bottom shelf back front upper lower says reads but
    come came coming crept inched reached well fine gently standing stands
    rack finally around whole bit gone thickest deepest fattest parts spots end two places
    running cruising hovering
    both easy easily ages forever while lowest bit been day week long time bag bags are
    """
)
_TOKEN: Final = re.compile(
    r"(?P<time>(?:[01]?\d|2[0-4]):[0-5]\d(?: ?[ap]\.?m\b\.?)?|(?:1[0-2]|0?\d)(?:\.[0-5]\d)? ?[ap]\.?m\b\.?"
    r"|\d{1,2}(?:\.[0-5]\d)? ?(?:oclock|uhr)\b|\b(?:noon|midnight|yesterday|last night|this morning|gestern)\b)"
    r"|(?P<span>\b(?:an?|half an|half|\d{1,3}(?:\.\d)?) ?(?:(?:h|hrs?|hours?)"
    r"(?: ?(?:and )?(?:\d{1,2} ?(?:m|mins?|minutes?)|\d{1,2}(?= ago)|an? (?:half|quarter)))?"
    r"|m?mins?|minutes?)\b(?P<ago> ago)?)"
    r"|(?P<over>\b(?:last|past|over the last) (?:(?P<many>\d{1,2}) )?(?:h|hrs?|hours?)\b)"
    r"|(?P<temp>(?<![\w.])-?\d{1,6}(?:\.\d{1,2})?)"
    r"(?: ?(?:°|degrees?|deg|grad)?(?: |(?<=\W)|(?<=\d))\(?°? ?(?P<unit>celsius|centigrade|fahrenheit|[cf])\b\)?"
    r"|(?: ?(?:°|degrees?|deg|grad))?(?![^\W_]))"
    r"|(?P<word>[^\W\d_]+)|(?P<sep>[,;!])|(?P<other>[^\s./~+&()?:°'=@-])"
)
_NOW: Final = frozenset(("now", "jetzt", "nun"))
_CLOCK: Final = re.compile(r"\d|noon|midnight")
# «down 2 degrees», «up 5», «by 10»: a difference, no temperature
_DIFFERENCE: Final = re.compile(r"\b(?:down|up|by|dropped|drop|fell|rose|gained|lost|climbed|another|within|plus)$")
_SLASH: Final = re.compile(r"\d ?°?[cf]? ?/ ?\d")  # «70/120»: meat and pit, never one thermometer twice
_HOUR_ONLY: Final = re.compile(r"\b(?:since|after|until|till?|before|seit|bis)$")  # no temperature comes after these
_AS_AN_HOUR: Final = re.compile(r"(?:1?\d|2[0-3])\.[0-5]\d")
_READ_TOO: Final = re.compile(r"(?<![\d.])\d{2,3}(?:\.\d)?(?![\d.])")  # «12.15 meat 151»
_HOUR_OF: Final = re.compile(r"(?:\b(?:at|since|from|um|seit)|@)$")
_PUT_AT: Final = re.compile(
    r"\b(?:in|on|off|out|up|over)(?: at| around| about| since)?$"
)  # «gone in at 8», «back in 10»


@dataclass(frozen=True)
class Item:
    """One number with the hour that was said of it. `joined` to the one before it: «240-260»."""

    number: Number
    time: str = ""
    ago: timedelta | None = None
    joined: bool = False


@dataclass
class Line:
    """A line taken apart."""

    order: list[Item | Probe] = field(default_factory=list)
    foreign: list[str] = field(default_factory=list)
    words: set[str] = field(default_factory=set)
    over: timedelta | None = None
    slashed: bool = False

    @property
    def items(self) -> list[Item]:
        """The numbers in their order."""
        return [part for part in self.order if isinstance(part, Item)]

    @property
    def labels(self) -> list[Probe]:
        """The thermometers that were named."""
        return [part for part in self.order if isinstance(part, Probe)]


@dataclass
class _Waiting:
    """What was said before its number («at 9 it was 82», «10 minutes ago core 67»), and how many the segment has."""

    time: str = ""
    ago: timedelta | None = None
    since_sep: int = 0
    now: bool = False  # the last number is that of now: an hour behind it is of the next


def taken_apart(text: str) -> Line:
    """A plain line as its numbers, thermometers and foreign words."""
    line, waiting = Line(slashed=bool(_SLASH.search(text))), _Waiting()
    for found in _TOKEN.finditer(text):
        _take(found, line, waiting, text)
    if waiting.now and waiting.time:  # «140 now at 7pm»: no other number came that the hour could be of
        _amend(line, replace(line.items[-1], time=waiting.time))
    return line


def as_of_then(item: Item, context: Context) -> Context:
    """The context for a number with its hour: it comes before what was read last, and is not held against that."""
    told = item.ago or _CLOCK.search(item.time) or item.time in ("yesterday", "last night")
    return replace(context, last_core_c=None, last_pit_c=None) if told else context


def labelled(line: Line) -> list[Item]:
    """Each number with its thermometer: the word before it, or the word after it where the line ends in one."""
    order: list[Item | Probe] = list(line.order)
    if order and isinstance(order[0], Item) and isinstance(order[-1], Probe):
        out = list(_claimed(order[::-1]))[::-1]
    else:
        out = list(_claimed(order))
    unit = next((item.number.unit for item in out if item.number.unit), None)
    return out if unit is None else [_with_unit(item, unit) for item in out]


def _claimed(order: list[Item | Probe]) -> Iterator[Item]:
    label: Probe | None = None
    last: Probe | None = None
    for part in order:
        if isinstance(part, Probe):
            label = part
        else:
            last = label or (last if part.joined else None)
            yield replace(part, number=replace(part.number, probe=last))
            label = None


def _with_unit(item: Item, unit: str) -> Item:
    """A unit said once holds for every number of the line that can be one of that unit."""
    number = item.number
    if number.unit or not can_be(number.probe, unit, number.value):
        return item
    return replace(item, number=replace(number, unit=unit))


def _take(found: re.Match[str], line: Line, waiting: _Waiting, text: str) -> None:
    match found.lastgroup:
        case "sep":
            waiting.ago = None if waiting.since_sep else waiting.ago
            waiting.since_sep = 0
        case "word":
            _take_word(found[0], line, waiting)
        case "other":
            line.foreign.append(found[0])
        case "many" | "over":
            line.over = timedelta(hours=int(found["many"] or 1))
        case "span" | "ago":
            _take_span(found, line, waiting)
        case "time":
            _take_time(found[0], line, waiting)
        case _:
            _take_number(found, line, waiting, text)


def _take_word(word: str, line: Line, waiting: _Waiting) -> None:
    line.words.add(word)
    if word in _NOW and line.items:
        _as_of_now(line, waiting)
    if probe := _PROBE.get(word) or _PROBE.get(word.removesuffix("s")):  # «internal's 171»
        line.order.append(probe)
    elif word not in _SMALL_TALK and word not in TENDER and word not in TOUGH:
        line.foreign.append(word)


def _as_of_now(line: Line, waiting: _Waiting) -> None:
    """«an hour ago 110 now 88», «88 now, an hour ago 110»: what was told of then holds for no number of now."""
    waiting.ago, waiting.time = None, ""
    before = [item.ago for item in line.items]
    if len(before) > 1 and before[-1] and before[-1] == before[-2]:
        _amend(line, replace(line.items[-1], ago=None))
    waiting.now = not line.items[-1].ago


def _take_span(found: re.Match[str], line: Line, waiting: _Waiting) -> None:
    if found["ago"] and line.items and not (waiting.now or line.items[-1].ago):
        _amend(line, replace(line.items[-1], ago=spans.span(found[0])))
    elif found["ago"]:
        waiting.ago = spans.span(found[0])


def _take_time(words: str, line: Line, waiting: _Waiting) -> None:
    last = line.items[-1] if line.items else None
    full = last is not None and bool(_CLOCK.search(last.time)) and bool(_CLOCK.search(words))
    if last is not None and waiting.since_sep and not (full or waiting.now):
        _amend(line, replace(last, time=f"{last.time} {words}".strip()))
    else:
        waiting.time = f"{waiting.time} {words}".strip()


def _take_number(found: re.Match[str], line: Line, waiting: _Waiting, text: str) -> None:
    unit = found["unit"][0] if found["unit"] else None
    value = float(found["temp"])
    before = text[: found.start()].rstrip()
    if _DIFFERENCE.search(before):
        return
    written = bool(_AS_AN_HOUR.fullmatch(found["temp"]))  # «on at 7.10»: nobody reads a thermometer so finely
    named = len(line.order) == 1 and not line.items  # «fridge at 9 at 7»: first how cold, then when
    alone = written and not (line.order and isinstance(line.order[-1], Probe)) and _READ_TOO.search(text)
    hour = (alone or _HOUR_ONLY.search(before) or _PUT_AT.search(before)) or (
        _HOUR_OF.search(before) and (written or (not named and _other_number(found, text)))
    )
    if unit is None and 0 < value <= 24 and hour:
        _take_time(f"at {found[0]}", line, waiting)
        return
    joined = bool(line.order) and bool(re.search(r"\d ?-$", text[: found.start() + 1].rstrip("0123456789 ")))
    number = Number(abs(value) if joined else value, unit)
    line.order.append(Item(number, waiting.time, waiting.ago, joined=joined))
    waiting.time, waiting.now = "", False
    waiting.since_sep += 1


def _other_number(found: re.Match[str], text: str) -> bool:
    """Whether the segment of a number holds another: then a small one after «at» is an hour."""
    segment_start = max(text.rfind(",", 0, found.start()), text.rfind(";", 0, found.start())) + 1
    rest = re.split("[,;]", text[found.end() :])[0]
    return bool(re.search(r"\d", text[segment_start : found.start()] + rest))


def _amend(line: Line, item: Item) -> None:
    place = max(i for i, part in enumerate(line.order) if isinstance(part, Item))
    line.order[place] = item
