"""Freezing as it is told: fish that was frozen before it is smoked, and finished meat that goes into the freezer."""

from dataclasses import dataclass
from typing import Final

from bot import measures
from bot.intents import when
from bot.intents.context import COOKED, SHOWN, Context
from bot.intents.intents import Ask, Change, Happened, Intent, Unclear
from bot.intents.meats import meat
from bot.intents.questions import is_question
from core import patterns as re
from core.units import Hours

_FREEZE: Final = re.compile(r"\b(?:fro(?:ze|zen)|freez(?:e|ing|er)|deep ?froz\w*|(?:ein)?gefroren|tiefgekühlt)\b")
_FISH: Final = re.compile(
    r"\b(?:fish|fische?|fillets?|filets?|salmon|lachs|trout|forellen?|char|mackerel|makrelen?|cod|herring|eel|tuna|halibut|pollock"
    r"|worms?|parasites?|anisakis|nematodes?|würmer)\b"
)
_OTHER_MEAT: Final = re.compile(
    r"\b(?:beef|brisket|pork|ham|bacon|belly|loin|turkey|chicken|duck|goose|venison|boar)\b"
)
_COLD: Final = re.compile(
    r"(?:(?<![\w.])(?:-|minus )(?P<n>\d{1,2}(?:\.\d)?)|(?<![\w.-])(?P<zero>0)(?= ?(?:°|deg|f\b|c\b)))"
    r" ?(?:°|degrees?|deg)? ?(?P<u>c|f|celsius|fahrenheit)?(?![\w])"
)
_SPAN: Final = re.compile(
    rf"\b(?P<n>{measures.NUMBER}|an?)(?: ?(?:to|-|or) ?\d{{1,3}})? ?-?"
    r"(?P<u>h|hrs?|hours?|d|days?|nights?|wks?|weeks?|wochen?|tage?|stunden|months?)\b"
)
_HOURS: Final = {"h": 1.0, "s": 1.0, "d": 24.0, "n": 24.0, "t": 24.0, "w": 168.0, "m": 720.0}
_OVERNIGHT: Final = re.compile(r"\bovernight\b|\büber nacht\b")
_NIGHT: Final[Hours] = 8.0  # of a night at least
_DID: Final = re.compile(
    r"\bfreezing (?:half|some|most|the rest|part|a (?:half|third|bit|part|few))\b|\b(?:froze|frozen|(?:ein)?gefroren)\b"
)
_PUT: Final = re.compile(
    r"^(?:all|everything|half|the rest|rest)(?: is| of it)?(?: is)? in the freezer\b"
    r"|\b(?:put|popped|stuck|chucked|moved|went|gone|goes|is|are|its|half|rest|some|them|it)\b.{0,30}"
    r"\b(?:in|into|to) (?:the |my )?(?:deep )?freezer\b"
)
_AHEAD: Final = re.compile(
    r"\b(?:will|shall|want|going to|gonna|plan|should|tomorrow|later|if i|when i|before|not|dont|cant)\b"
)
_PART: Final = re.compile(
    r"\b(?:half|some|rest|others?|third|quarter|few|couple|bit|most|part|hälfte|teil|one|two|three|four|five|six"
    r"|\d+ ?(?:kg|g|lbs?|packs?|bags?|packets?|slices|pieces|portions|fillets?|fish|sides?))\b"
)
_OUT_AGAIN: Final = re.compile(
    r"\b(?:thawed|defrosted|aufgetaut)\b|\b(?:took|taken|got|is|its|are)\b.{0,20}\bout of (?:the )?freezer\b"
)
_TO_COOL: Final = re.compile(r"\bto (?:cool|chill|firm)|\bcool\w*\b|\bfor (?:an?|half an|\d+) ?(?:h|hr|hour|min)")
_SO: Final = (
    r"(?:(?:it|its|it is|meat|the|middle|inside|cent(?:er|re)|is|are|they|still|too|bit|pretty|very"
    r"|quite|feels?|seems?|nice and|all|getting|really|now|gone) )*"
)
_WHERE: Final = (
    r"(?: (?:still|now|inside|all (?:through|over|the way(?: through)?)|in the (?:middle|cent(?:re|er))|yet))*$"
)
_HARD: Final = re.compile(  # of raw meat that was never cooked: ice
    rf"^{_SO}(?:(?:rock |stone )?hard(?: as (?:an? )?(?:rock|brick|stone|wood|ice|iron|board|plank))?|like (?:an? )?"
    rf"(?:rock|brick|stone|wood)|(?:frozen |rock )?solid(?: as (?:an? )?(?:rock|brick))?"
    rf"|(?<=still )(?:froze|icy|ice)|stiff(?: as (?:an? )?board)?)"
    rf"{_WHERE}"
)
_IN_THE_FREEZER: Final = re.compile(
    r"^(?:(?:its|it is|meat is|the|meat|still|just|is|all|now|straight) )*(?:in|out of|from) (?:the |my )?(?:deep )?"
    r"freezer(?: (?:still|now|today|atm))*$"
)
_HALF_THAWED: Final = re.compile(
    rf"^{_SO}(?:not (?:yet )?(?:quite |fully |all )?(?:thawed|defrosted)(?: (?:yet|through|out|all the way))*"
    rf"|still thawing"
    r"|(?:half|partly|partially|nearly|almost|mostly|semi)[ -]?(?:thawed|defrosted|frozen))$"
)
_SOFT: Final = re.compile(
    rf"^{_SO}(?:soft|bends?|bendy|flexible|squishy|pliable|gives?|no (?:more )?ice(?: (?:left|in it))?){_WHERE}"
)


@dataclass(frozen=True)
class Frost:
    """How cold fish was kept frozen, and for how long, as far as it was told. [as typed, h]

    `unit` is "c", "f", or "" where nobody said.
    """

    degrees: float | None
    unit: str
    hours: Hours | None


def read_frozen(text: str, context: Context) -> Intent | None:
    """What a line tells of freezing, where a plain text does."""
    if is_question(text) or _begins(text):
        return None
    if thaws := _of_the_thaw(text.strip(" .!"), context):
        return thaws
    told = frost(text)
    known = told.degrees is not None and told.hours is not None
    fish = _FREEZE.search(text) and not _OTHER_MEAT.search(text) and _of_fish(text, context, known)
    if fish and (known or (context.phase not in COOKED and (told.degrees is not None or told.hours is not None))):
        return Ask("sum", "frozen_fish", text)
    return _of_the_finished(text, context) if context.phase in COOKED else None


def _of_the_thaw(text: str, context: Context) -> Intent | None:
    """Before it is cured: «still hard as a rock» is ice, «feels soft now» may be thawed through."""
    if context.phase != "waiting" or context.brine_made or not (context.free or context.asked in ("cure", "thickness")):
        return None
    if _HARD.match(text) or _HALF_THAWED.match(text) or _IN_THE_FREEZER.match(text):
        return Change({"frozen": True})
    return Unclear("thawed_through", text[:SHOWN], (Change({"frozen": False}),)) if _SOFT.match(text) else None


def frost(text: str) -> Frost:
    """How cold and how long; of two spans the shorter, of a range its lower end."""
    cold = _COLD.search(text)
    spans = [_hours(found) for found in _SPAN.finditer(text)]
    spans += [_NIGHT] if _OVERNIGHT.search(text) else []
    degrees = None if cold is None else -float(cold["n"] or 0.0)
    unit = (cold["u"] or "")[:1] if cold else ""
    return Frost(degrees, unit, min(spans, default=None))


def _hours(found: re.Match[str]) -> Hours:
    many = 1.0 if found["n"] in ("a", "an") else measures.number(found["n"]) or 0.0
    return many * _HOURS[found["u"][0]]


def _of_fish(text: str, context: Context, known: bool) -> bool:
    """By its name, or that of the one batch; who tells how cold and how long while there is none means fish."""
    named = [name for _, name in context.batches]
    of_batch = len(named) == 1 and bool(_FISH.search(named[0]))
    return bool(_FISH.search(text)) or of_batch or (known and context.phase == "none")


def _begins(text: str) -> bool:
    """Whether a weight and a meat are told: a batch begins, and thaws first."""
    named = meat(text)
    return bool(named.product or named.cut) and bool(measures.of_kind(text, "mass"))


def _of_the_finished(text: str, context: Context) -> Intent | None:
    """«froze half of it», «all in the freezer»; while it still cools, only what says that it was frozen."""
    again = _OUT_AGAIN.search(text)
    stored = context.phase == "stored" or bool(_PART.search(text))
    told = _DID.search(text) or (stored and _PUT.search(text))
    if not again and (not told or _AHEAD.search(text) or _TO_COOL.search(text)):
        return None
    said = when.past(text, context)
    at = said.at if said else None
    return Happened("thawed", at=at) if again else Happened("frozen", {"all": not _PART.search(text)}, at)
