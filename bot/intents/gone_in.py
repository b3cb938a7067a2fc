"""What a line tells as put in: curing salt, salt, sugar and water by their weights, beside whatever else it tells.

The amounts are taken out of the line, and the rest of it is read as if it stood alone.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Final

from bot.intents.clause import about, named_batch, to_batch
from bot.intents.composed import TOLD
from bot.intents.context import UNCOOKED, Context
from bot.intents.cures import is_cure
from bot.intents.doses import SUGAR
from bot.intents.intents import Change, Intent, StepDone, Unclear
from bot.intents.small import words
from bot.intents.sums.figured import figured
from bot.intents.sums.told import SALT
from bot.measures import Measure, find
from core import patterns as re
from core.plan.steps import Kind
from core.units import Kilograms

_SUBSTANCE: Final = re.compile(r"\b(?:cure|curing|pink|prague|salt|sugar|honey|syrup)\b")
_CURE: Final = re.compile(
    r"^ ?(?:of )?(?:the )?(?:\d[\d.]* ?% )?(?:curing salt|pink(?: curing)?(?: salt)?|prague(?: powder)?|cure)"
    r"(?: ?#? ?[12]\b(?! ?g))?"
)
_WATER: Final = re.compile(r"^ ?(?:of )?(?:(?:cold|ice|tap|fresh) )?water\b")
_IN_FRONT: Final = re.compile(
    r"\b(?:(?P<cure>cure|curing salt|pink salt)|(?P<sugar>sugar|honey|syrup)|(?P<salt>salt))"
    r"(?: (?:was|is|were))?[:=]? ?$"
)
_BARE: Final = re.compile(r"(?<![\d.,/#])(\d{1,3}(?:\.\d{1,2})?) (?=(?:salt|(?:brown )?sugar|cure)\b)")
_GRAMS: Final = re.compile(r"\d ?(?:g|gr|grams?)\b")
_PUT_IN: Final = re.compile(
    r"\b(?:put|puts|added|used|weighed|dosed|measured|dumped|tipped|poured|threw|chucked|dropped|stirred|mixed|shook"
    r"|went|did|taken|took|rubbed|massaged|sprinkled|salted|coated|covered|dissolved|made)\b"
    r"|\b(?:found|got|borrowed|bought|have|fixed) (?:(?:the|a|my|our|another|new|kitchen|proper) )*scales?\b"
)
_NOT_PUT_IN: Final = re.compile(  # asked or wished for, guessed, on top of what is in, or not done
    r"\?|\b(?:should|shall|can|could|may|might|how|if|when|would|will|going to|gonna|lets|need|want|must|have to"
    r"|more|another|extra|again|twice|second|too (?:much|little)|on top|short|missing|left|(?<!all )over|out of"
    r"|didnt|did not|havent|have not|never|without|forgot|ate|per|think|maybe|perhaps|guess"
    r"|sure|last (?:time|year|one|batch)|usually|normally|always|recipe|says)\b"
)
_DENIED: Final = re.compile(r",? (?:and |but )?(?:not|instead of|rather than) (?:what|as|like|the|\d)[^,;]*")
_EACH: Final = re.compile(r"\b(?:each|apiece)\b")
_PART: Final = re.compile(r"[,;] |\. ")
_LOOSE: Final = re.compile(r"(?: (?:with|of|and|plus|using|n|then|in total)|[,:&+ ])+(?=[.,;]|$)|^[ ,.;:&+]+")
_OF_THE_MIX: Final = words(
    "i we ive weve just only ok so oops put added used weighed dosed measured in into it to the a with and of all went"
    " mix mixed tipped poured stirred threw dropped dumped chucked shook bag tub brine water pot bucket up total out"
)
_VESSELS: Final = words("bag tub brine")
_THE_MEAT: Final = re.compile(r"\b(?:it|them|meat)\b")
_DOSED: Final = frozenset({Kind.BRINE, Kind.INTO_CURE})
_MOST: Final = 8  # measures of a line


@dataclass(frozen=True)
class _Amount:
    """So much of something, and where it stands in its line with its name."""

    of: str
    measure: Measure
    start: int
    end: int


def gone_in(text: str, context: Context, read: Callable[[str], list[Intent]]) -> list[Intent]:
    """What went in by its weights, behind the deeds of the line; nothing where no weight is told as put in.

    `put_in_cure` is None where plain salt is told and of the curing salt not a word: nobody knows that it is in.
    """
    if context.phase not in UNCOOKED or not _SUBSTANCE.search(text):
        return []
    named, line = named_batch(_DENIED.sub("", figured(text)), context)
    line = _in_grams(line)
    amounts = list(_amounts(line, dry=context.dry))
    if not amounts or len({one.of for one in amounts}) < len(amounts) or _guessed(line, amounts):
        return []
    rest = _without(line, amounts)
    beside = [one for one in read(rest) if isinstance(one, TOLD)] if rest else []
    steps = {one.step for one in beside if isinstance(one, StepDone)}
    called = (context.due_step or "").partition("/")[0] in _DOSED and (None in steps or not rest)  # «done, 6 g cure»
    if not (_PUT_IN.search(line) or steps & _DOSED or called):
        return []
    told = _told(text, amounts, steps)
    return [to_batch(one, named) for one in (*beside, *told)] if about(named, context).phase in UNCOOKED else []


def of_each(text: str) -> dict[str, Kilograms]:
    """What went into each of several pieces, by the fields of all of them; empty where a line tells of no such."""
    line = _in_grams(figured(text))
    told = _amounts(line, dry=True) if _EACH.search(line) else ()
    return {f"put_in_{one.of}": one.measure.value for one in told if one.of != "spoons"}


def _in_grams(line: str) -> str:
    """A list of weights of which one has its unit: the bare ones are in the same."""
    return _BARE.sub(r"\1 g ", line) if _GRAMS.search(line) else line


def _amounts(line: str, *, dry: bool) -> Iterator[_Amount]:
    """Each weight of a line with what it is of, named behind it or, throughout a list, before it."""
    found = [m for m in find(line) if m.low is None and m.value > 0.0]
    weights = [m for m in found if m.kind == "mass"][:_MOST]
    before = bool(weights) and bool(_IN_FRONT.search(line[: weights[0].start])) and not _behind(line, weights[-1])
    for m in weights:
        name = _IN_FRONT.search(line[: m.start]) if before else None
        if name is not None:
            yield _Amount(str(name.lastgroup), m, name.start(), m.end)
        elif (hit := _behind(line, m)) is not None:
            yield _Amount("sugar" if SUGAR.match(line[m.end :]) else "salt", m, m.start, m.end + hit.end())
        elif is_cure(line, m, found):
            hit = _CURE.match(line[m.end :])
            yield _Amount("cure", m, m.start, m.end + (hit.end() if hit else 0))
    for m in found:
        if m.unit in ("tsp", "tbsp") and (hit := _CURE.match(line[m.end :])) is not None:
            yield _Amount("spoons", m, m.start, m.end + hit.end())
        elif not dry and m.kind == "volume" and (hit := _WATER.match(line[m.end :])) is not None:
            yield _Amount("water", m, m.start, m.end + hit.end())


def _behind(line: str, m: Measure) -> re.Match[str] | None:
    return SUGAR.match(line[m.end :]) or SALT.match(line[m.end :])


def _guessed(line: str, amounts: list[_Amount]) -> bool:
    """Whether the amounts are asked about, wished or guessed, or a weight beside them is of something else."""
    if all(one.of == "water" for one in amounts) or any(
        m.kind == "mass" and all(one.measure is not m for one in amounts) for m in find(line)
    ):
        return True
    place, told = 0, []
    for part in _PART.split(line):
        end = place + len(part)
        if _PUT_IN.search(part) or any(place <= one.start < end for one in amounts):
            told.append(part)
        place = end + 2
    return bool(_NOT_PUT_IN.search(", ".join(told)))


def _without(line: str, amounts: list[_Amount]) -> str:
    """The line without its amounts, and without what says no more than that they were put in."""
    for one in sorted(amounts, key=lambda one: -one.start):
        line = f"{line[: one.start]} {line[one.end :]}"
    parts = (_LOOSE.sub("", " ".join(part.split())) for part in _PART.split(line))
    return ", ".join(part for part in parts if part and not _of_the_mix(part))


def _of_the_mix(part: str) -> bool:
    said = set(re.findall(r"\w+", part))
    lies = bool(said & _VESSELS) and (bool(_THE_MEAT.search(part)) or not _PUT_IN.search(part))
    return said <= _OF_THE_MIX and not lies


def _told(text: str, amounts: list[_Amount], steps: set[str | None]) -> list[Intent]:
    """What went in as a change; of spoons, and of so much on each of several pieces, the question."""
    if _EACH.search(text):
        return [Unclear("grams", text)]
    changes: dict[str, Any] = {f"put_in_{one.of}": one.measure.value for one in amounts if one.of != "spoons"}
    spoons = [Unclear("spoons", text)] if len(changes) < len(amounts) else []
    unsaid = "put_in_salt" in changes and "put_in_cure" not in changes and Kind.BRINE not in steps
    changes |= {"put_in_cure": None} if unsaid and not spoons else {}
    return [*([Change(changes)] if changes else []), *spoons]
