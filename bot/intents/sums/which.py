"""Questions that bring figures of their own: which sum they ask for. What is missing for it is asked by the talk.

The words of a line say what is wanted, by their likeness to the ways in which each sum is asked for
(`core/answers/asks/sums.toml`); its figures say which sums can be meant at all: no held temperature without a
temperature, no portions without people or meat. Between entries and sums the likelier one answers.
"""

from functools import lru_cache
from typing import Final

from bot import measures
from bot.intents import brinings
from bot.intents.context import COOKED, HOT, RAW, Context
from bot.intents.cures import wanted_dose
from bot.intents.intents import Ask, Intent, Question
from bot.intents.meats import meat
from bot.intents.pouring import spoonful
from bot.intents.questions import is_question
from bot.intents.rates import PLAIN_ASKED, SIZED, at_rate, cure_beside, of_a_packet, shares
from bot.intents.strengths import blended, stock, swapped
from bot.intents.sums.asked_for import OF_CURE, asked_for
from bot.intents.sums.conversions import compared, converted, in_pounds_and_ounces, per_kilo, share_of
from bot.intents.sums.elsewhere import gas_mark, rise, volume, water
from bot.intents.sums.figured import figured
from bot.intents.sums.fitting import FITS, is_curing, salt_share
from bot.intents.sums.mixtures import brine_for, burns, in_water_alone, of_pickle, soaked, thinned
from bot.intents.sums.of_days import START_ASKED, days_kept, use_by_asked
from bot.intents.sums.of_heat import beside_a_cold_pit, cold_by, drops
from bot.intents.sums.told import Told, told
from bot.intents.sums.wanted import by_the_plate, by_unit, cost_each, meat_asked, of_the_table, price, whole_mix
from bot.intents.sums.words import NOT_OURS, WANTS
from bot.intents.when import meal
from core import patterns as re
from core.answers.find import sum_meant

_OF_THE_FIRE: Final = frozenset({"cooling", "fire_out"})
_FINAL: Final = re.compile(r"\b(?:final|finished|cooked)\b")
_OF_ANY_FIRE: Final = frozenset(
    {"lethality", "climb", "cold_by", *_OF_THE_FIRE}
)  # while ours is not lit they are about another
_OF_ITSELF: Final = frozenset({"convert", "swap", "stock"})  # says of no batch anything, however it is told
_MIXTURES: Final = (
    ("in_pickle", of_pickle), ("ppm", in_water_alone), ("soaked", soaked), ("thinned_to", thinned), ("burns", burns),
    ("blend", blended), ("brine", brine_for),
)  # fmt: skip
_READ_AND_ASKED: Final = re.compile(
    r"\d{2,3}(?:\.\d)?(?: ?[cf])?,? (?:and )?how (?:much )?long(?:er)?(?: (?:now|left|still|to go))?\s*\?*"
)
_READ_THEN_ASKED: Final = re.compile(  # «its 40! can i slice»: read, and asked of this batch
    r"^(?:(?:its|it is|core|meat|now|at|ok|hit) )*\d{2,3}(?: ?°? ?[cf])?\b\W*(?:so |and |now |then )*"
    r"(?:can|may|should|shall) (?:i|we) (?:now )?(?:slice|cut|carve|eat|serve|pack|wrap|freeze|take|pull|stop)\b"
)
_GONE_BY: Final = (None, "answered", "sum")  # what is open and lets a new question pass
_OF_NO_RECORD: Final = frozenset(
    {"days", "dose", "spice", "rub", "cook", "salt_for", "sugar"}
)  # no batch is told of so
SHORT: Final = 6  # words of a line that is all figures
SHORTEST: Final = 4  # words of a line that asks for a sum without a word of asking
_OF_HEAT: Final = ("eta", "climb", "lethality", "cooling", "fire_out")  # no batch begins with a core
_OF_A_BATCH: Final = frozenset(
    {"keeps", "hold_for", "start_by", "light_by", "eta", "thaw"}
)  # of ours, where one is under way
_OF_OUR_PIECE: Final = frozenset({"shopping", "portions", "yield"})  # «14 people now, is it enough»
_TO_BUY: Final = re.compile(r"\b(?:buy\w*|get|order\w*|shop\w*|need|raw|how (?:much|big)|per (?:person|head))\b")
_FOR_A_UNIT: Final = re.compile(  # «cure #1 per pound», «pink salt per kilo in grams»
    r"(?:how much |grams of )?(?:the )?(?:cure|curing salt|pink(?: salt)?)(?: ?(?:#|no |number )?1)? (?:per|a|for a) "
    r"(?:kilo|kg|pound|lb)(?: of meat)?(?: in (?:grams|g))?\W*"
)
_CHECKED: Final = re.compile(r"\b(?:ok|okay|enough|too (?:much|little|strong|weak)|right|fine|good|safe|legal|cured)\b")
_MIXED: Final = re.compile(r"\b(?:mix\w*|add(?:ed|ing)?|thin\w*|dilut\w*|top\w*|pour\w*)\b")
_HOW_SALTY: Final = re.compile(
    r"\bsalinity\b|\bhow (?:salty|strong)\b|\bwhat (?:percent\w*|strength|%|pct)|\btoo salty\b"
)
_HOW_MUCH: Final = re.compile(r"\b(?:how (?:much|many)|what|grams?|dose)\b")
_OF_A_CHECK: Final = frozenset({"ppm", "mix", "recipe", "nitrite_in"})
_KEEPS_ASKED: Final = re.compile(  # «2 pounds left, how long is that good»: what the chart says, and no sum
    r"\bhow (?:long|many days) (?:is|are|will|does|do|can|would) (?:\w+ ){1,5}(?:good|keep|last|edible|ok|okay|safe)\b"
    r"(?=(?: for| in| now| then| to eat| left| at all| cold|\W)*(?: the (?:fridge|freezer))?\W*$)"
)
_OFTEN_BARE: Final = frozenset({"dose", "shopping", "portions", "days", "fuel", "thaw"})  # asked for without any figure
_SHARES_FIRST: Final = re.compile(r"(?:\w+ )?(?:salt|sugar|cure)\b[^,;]{0,12}\d")
_LATER: Final = re.compile(
    r"\bfor (?:the |next )?(?:\w{3,6}day|tomorrow|tonight|\d{1,2}(?:th|st|nd|rd)\b|xmas|christmas|easter|thanksgiving"
    r"|\d{1,2} (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)"
    r"|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]* \d{1,2}\b)"
)
_RAW_TOLD: Final = re.compile(r"\b(?:fridge|flip\w*|turned|brine)\b")  # of meat that lies in its cure


def read_sum(text: str, context: Context) -> Intent | None:
    """A question that a sum answers, where a plain text is one."""
    if context.phase in HOT and (_READ_AND_ASKED.fullmatch(text) or _READ_THEN_ASKED.match(text)):
        return None  # «71 how long»: what was read, and the question when it will be ready
    if context.phase == "none" and context.free and _planned(text, context):
        return None
    reads_f = context.units.temperature == "f"
    beside = context.phase != "none"
    kind = _beside_a_batch(text, context.phase in HOT, reads_f) if beside else _elsewhere(text, reads_f)
    if kind == "cooling" and context.phase in RAW and _RAW_TOLD.search(text):
        return None  # «flipped at 7, fridge 36 and can we eat at noon»
    kind = _by_the_law(text, kind)
    return Ask("sum", kind, text) if kind else None


def _elsewhere(text: str, reads_f: bool) -> str | None:
    asked = sum_of(text, reads_f=reads_f)
    return asked or (sum_of(text, unread=True, reads_f=reads_f) if len(text.split()) >= SHORTEST else None)


def _beside_a_batch(text: str, hot: bool, reads_f: bool) -> str | None:
    """A sum where a batch is under way: what is told without asking is about another only while ours is not lit."""
    tells = not is_question(text)
    if text.startswith("why ") or (tells and (hot or _IN_THE_COLD.search(text))):
        return None
    kind = sum_of(text, elsewhere=False, reads_f=reads_f)
    if tells and kind not in _OF_ANY_FIRE and kind not in _OF_ITSELF:
        return None
    recorded = kind == "fire_out" or (kind == "cooling" and len(told(text).clocks) > 1)  # with its hours
    of_ours = (
        kind in ("climb", "lethality", "cold_by") and not told(text).species
    )  # the one reading is of the meat on the fire
    return None if hot and (recorded or of_ours) else kind


def sum_left(text: str, reads_f: bool) -> str | None:
    """The sum of a line that no reader took beside a batch; never one that may be about the batch's own heat."""
    kind = sum_of(text, elsewhere=False, reads_f=reads_f)
    return None if kind in _OF_ANY_FIRE else kind


def read_sum_first(text: str, context: Context) -> Intent | None:
    """A sum whose masses and percentages would else be taken for those of a new batch, or for a change of the one."""
    if context.phase in HOT and _READ_THEN_ASKED.match(text):
        return None
    later = _LATER.search(text) and not re.search(r"\bwhen\b", text)  # «take it out when for thursday»
    if context.asked not in _GONE_BY or later or _planned(text, context):
        return None
    if _THAWED.search(text) and not is_question(text):
        return None
    if context.phase in COOKED and _FINAL.search(text) and not is_question(text):
        return None  # what it weighs now
    reads_f = context.units.temperature == "f"
    kind = sum_of(text, reads_f=reads_f) if context.phase == "none" else _of_another(text, reads_f)
    if kind == "dose" and wanted_dose(text) is not None:  # answered by the law of the place
        return Question(text)
    return Ask("sum", kind, text) if kind else None


def _planned(text: str, context: Context) -> bool:
    """Whether a line tells a meat, its weight and the meal, and asks nothing: a batch begins."""
    if not meat(text) or is_question(text) or not told(text).has("meat"):
        return False
    _, rest = brinings.stated(text, text)  # «15 % brine for 3 hours» wants no number of hours
    return not WANTS.search(_THAWING.sub("", rest)) and meal(text, context) is not None


def _of_another(text: str, reads_f: bool) -> str | None:
    """A sum of a piece that is told anew, beside a batch: no change of that."""
    kind = sum_of(text, elsewhere=False, reads_f=reads_f)
    asks = is_question(text) or (kind in _OF_NO_RECORD and WANTS.search(text))
    return kind if kind in _OF_ITSELF or (asks and (told(text).has("meat") or told(text).has("length"))) else None


def _by_the_law(text: str, kind: str | None) -> str | None:
    """Nothing for a dose that names its own way, which is answered by the law of the place."""
    return None if kind == "dose" and wanted_dose(text) is not None else kind


_THAWING: Final = re.compile(
    r"\b(?:is |its |still )?thawing(?: out)?(?: now| in the fridge)?\b(?! (?:time|take|how"
    r"|long))"
)
_IN_THE_COLD: Final = re.compile(r"\b(?:fridge|brine)\b")  # «fridge 52 an hour ago» is read, and asks nothing
_DOSED: Final = re.compile(r"\b(?:cure|curing|pink|salt|dose|grams?|ppm|nitrite)\b")
_THAWED: Final = re.compile(
    r"(?<!it )(?<!them )(?<!be )\b(?:thawed|defrosted)\b(?! (?:by|for)\b)|\bsame as last\b"
)  # asks for no sum


@lru_cache(maxsize=64)  # the readers of one line ask again
def sum_of(text: str, elsewhere: bool = True, unread: bool = False, reads_f: bool = False) -> str | None:
    """The sum that a plain text asks for.

    `elsewhere` says that no batch is under way that the line may be about, `unread` that it begins none either, and
    `reads_f` that its thermometers show °F.
    """
    text = figured(text)
    if (at_once := _by_its_figures(text)) is not None:
        return at_once
    line, asks = told(text, reads_f), is_question(text) or _shared_out(text, reads_f)
    if _is_bare_mix(line):
        return "dose"
    if cold_by(line):
        return "cold_by"
    if drops(line) is not None:
        return "cooling"
    if beside_a_cold_pit(line) is not None:
        return "fire_out"
    dated = use_by_asked(text)
    bare = not (re.search(r"\d", text) or dated) and days_kept(line) is None
    if bare and not (asks and elsewhere):
        return None
    if NOT_OURS.search(text) and price(text) is None:
        return "price" if cost_each(text, told(text, reads_f).people) is not None else None
    wants = dated or WANTS.search(text) or START_ASKED.search(text)
    wanted = FITS if asks or unread or wants else _OF_HEAT
    possible = [kind for kind in wanted if (kind in _OFTEN_BARE if bare else FITS[kind](line))]
    if not line.has("meat") and (unread or not (elsewhere or _DOSED.search(text))):
        possible = [kind for kind in possible if kind != "dose"]  # «cure has 0.5 %» tells its strength
    if not (elsewhere or line.has("meat")):
        ours = _OF_A_BATCH if _TO_BUY.search(text) else _OF_A_BATCH | _OF_OUR_PIECE
        possible = [kind for kind in possible if kind not in ours]
    if line.cure is not None and "ppm" in possible and not _DOSED.search(text):
        return "ppm"  # grams of nothing named, asked about beside the meat
    if not bare:
        possible = [] if _KEEPS_ASKED.search(text) and not (line.temperatures or dated) else _narrowed(line, possible)
    found = sum_meant(text, possible, asks, surely=bare) if possible else None
    if found is None and elsewhere and line.species and "lethality" in possible and len(text.split()) <= SHORT:
        return "lethality"  # «trout 150 half hour»: a meat, a core, a time
    return found or ("dose" if _is_dose(line, possible) else None)


def _by_its_figures(text: str) -> str | None:
    """What the figures of a line and the words between them are enough for: a unit, another strength, a rate."""
    of_meat = meat_asked(text) and is_curing(text)
    others = (volume, water, gas_mark, rise, in_pounds_and_ounces, compared, share_of, per_kilo)
    if (converted(text) is not None and not of_meat) or any(find(text) for find in others):
        return "convert"
    if _FOR_A_UNIT.fullmatch(text):
        return "dose"
    ways = (("stock", stock), ("swap", swapped), ("by_packet", of_a_packet), ("at_rate", at_rate), *_MIXTURES)
    return next((kind for kind, find in ways if find(text) is not None), None)


def _shared_out(text: str, reads_f: bool) -> bool:
    """Whether a line names shares of several things for a weight, «salt 3% sugar 1% for 2 kg»; of a cut, at first."""
    line = told(text, reads_f)
    told_ = len(shares(text))
    named = (line.cut or line.product) and not (_SHARES_FIRST.match(text) or told_ > 2)
    return told_ > 1 and line.has("meat") and not named


def _is_bare_mix(line: Told) -> bool:
    """Whether a line is a strength, a weight and water, and of no meat that it names: «6.25 cure 2.5 kg in 1.2 l»."""
    named = line.cut or line.product or line.species or line.has("cure") or line.has("salt") or line.people
    return not named and is_curing(line.text) and line.strength is not None and line.has("meat", "water")


def _is_dose(line: Told, possible: list[str]) -> bool:
    """Whether curing salt for so much meat is asked for by its noun, whatever entry the meat is like."""
    of_meat = line.has("meat") or (line.nitrite is not None and by_unit(line.text) is not None)
    return of_meat and "dose" in possible and OF_CURE.issuperset(possible)


def _narrowed(line: Told, possible: list[str]) -> list[str]:
    """Of the sums that the figures allow those for what is asked: by its noun, as a check of a dose, share by share."""
    if len(shares(line.text)) > 1 and "mix" in possible:
        return ["mix"]
    if "price" in possible and (by_the_plate(line.text) or "price" in line.text):
        return ["price"]
    if (named := of_the_table(line)) in possible:
        return [named]
    if _plain_wanted(line):
        return ["salt_for"]
    if "dose" in possible and whole_mix(line):
        return ["dose"]
    if "recipe" in possible and len(line.meats) == 2 and line.cure is not None and SIZED.search(line.text):
        return ["recipe"]
    if "equilibrium" in possible and (line.salt is not None or by_unit(line.text)) and _HOW_SALTY.search(line.text):
        return ["equilibrium"]
    if line.cure is not None and "ppm" in possible and _CHECKED.search(line.text) and "how " not in line.text:
        return [kind for kind in possible if kind in _OF_A_CHECK]
    if "dilute" in possible and _MIXED.search(line.text) and len(line.fractions) == 1 and not line.has("meat"):
        return ["dilute"]
    if "dilute" in possible and len(line.fractions) == 2 and not line.has("meat") and line.water is not None:
        return ["dilute"]
    if (
        "dose" in possible
        and line.has("meat")
        and spoonful(line.text) is None
        and any(m.kind == "ppm" for m in measures.find(line.text))
    ):
        return ["dose"]
    if "cooling" in possible and re.search(r"\bcool(?:ing|ed)\b", line.text):
        possible = [kind for kind in possible if kind != "fire_out"]
    named = asked_for(line.text, possible)
    of_a_strength = line.nitrite and "dose" in named and (line.has("meat") or by_unit(line.text))
    return ["dose"] if of_a_strength and _HOW_MUCH.search(line.text) else named


def _plain_wanted(line: Told) -> bool:
    """Whether the plain salt of a share is asked for, beside curing salt that is weighed already or spoken of."""
    weighed = cure_beside(line.text) is not None and not _CHECKED.search(line.text)
    return (
        line.has("meat")
        and salt_share(line) is not None
        and "salt" in line.text
        and (weighed or bool(PLAIN_ASKED.search(line.text)))
    )
