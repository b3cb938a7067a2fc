"""A new batch in one line: «3.2 kg brisket flat for saturday 13:00», in any order and any units.

A mass without a unit, a range, a mass that no piece can have, a meat that nobody knows: named as unclear, never
guessed.
"""

from dataclasses import dataclass, field, replace
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.already_in import already_in, without_since
from bot.intents.context import Context
from bot.intents.days import of_the_weekend, open_days
from bot.intents.deeds import DEEDS
from bot.intents.fields import stated
from bot.intents.intents import Start
from bot.intents.meats import OTHER_CUT, SALMON_TROUT, as_meat, besides_a_bone, bone, meat, ranges, without
from bot.intents.off_raw import is_cooked
from bot.intents.small import ASKS, content, words
from bot.intents.temperatures.set_points import of_the_fridge
from bot.intents.thicknesses import thicknesses
from bot.intents.weights import CORE_READ, IN_ALL, MANY, Weighed, shared, weighed
from core import patterns as re

WHOLE_BRISKET_KG: Final = 4.8  # above this a «brisket» alone is rarely a flat; common practice, no source
_TO_CORN: Final = re.compile(r"\b(?:to corn|corn(?:ing)? (?:a|an|the|some|my|this|it|up))\b")
_VERB: Final = re.compile(
    r"\b(?:start(?:ing)?|plan (?:me )?(?:a|an|my|for|\d)|new batch|begin|doing|making|make (?:a|an|me|some|my)"
    r"|cure (?:a|my|some|this|\d)|"
    r"curing (?:a|my|some)|smok(?:e|ing) (?:a|an|my|some)|(?:want|wanna|going|gonna|like) (?:to )?(?:do|make|cure"
    r"|smoke)|"
    r"(?:i|we) (?:have|got|bought)|ive got|got (?:a|me|some)|lets (?:do|make|cure)|bought|neue? (?:charge|batch)"
    r"|beginne?|starte?)\b"
)
_BEGIN: Final = re.compile(
    r"^(?:lets )?(?:start|begin|new|(?:(?:start|begin|make|plan|do) )?(?:a |an |another )?new (?:one"
    r"|batch|cook|cure|plan|meat|piece)|(?:start|begin|plan) (?:the next|another) (?:one|batch)|(?:the )?next batch)"
    r"(?: please| pls| now)?$"
)
_NOT_A_START: Final = re.compile(
    r"^(?:please |pls |can you |could you )?(?:change|correct|update|set) (?:the|my|its|that)\b"
    r"|\bdone (?:too )?(?:early|already|ahead|sooner)\b|\b(?:is|its|was) (?:done|ready|cooked|finished)\b"
    r"|\b(?:flipped|turned|rinsed|wrapped|sliced n|not (?:doing|making)|any ?more|move|moved|push|shift|was for"
    r"|thats for|undo|cancel|skip(?:ped)?"
    r"|forgot|typo|"
    r"meant|after(?! next)|came out|finished|fire|power|left out|counter|sorry|instead of)\b"
    r"|\b(?:stuck|stalled|stalling|hovering|sitting) at \d"
)
_AMENDS: Final = re.compile(r"\b(?:trimmed|actually|weigh(?:s|ed)?|really|i said|its|turned out|only|not \d[\d.]*)\b")
# to a start that is half said a line may add: a strength, a thickness, the meal; a question adds nothing
_MAY_ONE: Final = re.compile(r"^(?:can|could|may) (?:i|we|you|one) (?:make|use|do|cure|smoke)\b(?!.* (?:me|us)\b)")
_EATS: Final = re.compile(
    r"\b(?:eat|eating|meal|dinner|lunch|supper|breakfast|brunch|serve|serving|served|guests|table|party"
    r"|ready (?:by|for)|needed|for (?=\w))\b"
)
_COUNTED: Final = re.compile(
    rf"(?<![\w.])({MANY}) (?:(?:(?:duck|turkey|chicken|pork|ham|smoked) )*(?:breasts?|legs|thighs|drum(?:stick)?s|chops"
    r"|hocks)|trouts?|fish(?:es)?|fillets?|sides|pieces|pcs|slabs|bellies"
    r"|(?:whole |ganze )?(?:chickens?|ducks|hähnchen)|geese|birds|turkeys?|hams|loins|of (?:them|em|those))\b"
)
_TIMES: Final = re.compile(  # «duck breast x4», «2x flat»
    r"\bx ?([2-9])\b(?:(?= [\d.]+ ?\w+ (?:total|in all|all up|all told|together))|(?! ?(?:\d|kg|g\b|lb|kilo|pound)))"
    r"|(?<![\w.])([2-9]) ?x\b(?! ?\d)"
)
_CUT_IN: Final = re.compile(  # one slab in two, whose weight is told in all
    r"\b(?:cut|split|sliced|halved|divided)(?: it| them| the \w+)?(?: up)? in(?:to)? ([2-6]|half|halves"
    r"|thirds)(?! ?(?:in|inch|mm|cm|kg|lb)\b)"
)
_HALF_A_BIRD: Final = re.compile(
    r"\bhalf (?:of )?an? (?:turkey|bird|chicken|duck|goose)\b(?! ?(?:breast|leg|crown|pack))"
)  # no whole bird is planned for it
_GAMMON: Final = re.compile(r"^(?!.*\b(?:raw|fresh|uncured|green)\b).*\bgammon\b")
_SAID_OF_IT: Final = (("gammon", _GAMMON), ("salmon_trout", SALMON_TROUT))
_BY_HAND: Final = re.compile(
    r"\b(?:\w+ )?(?:fingers?|thumbs?|hands?|knuckles?|palms?)(?:s)?(?: width)? (?:thick"
    r"|deep|wide|tall)\b"
)
_BIRD_OR_FISH: Final = re.compile(r"\b(?:turkey|chicken|duck|goose|bird|fish|salmon|trout)\b")
_THICK_BARE: Final = re.compile(rf"(?<![\w./])({measures.NUMBER}) thick\b")  # «2.25 thick», in the person's own unit
_CURED: Final = re.compile(
    r"\b(?:already|ready|pre)[ -]?(?:cured|corned|brined)\b|\b(?:cured|corned|brined) already\b"
    r"|\b(?:shop|store|supermarket)[ -](?:bought )?(?=corned)|\bin (?:the|its) (?:pouch|packet)\b"
    r"|\bcorned(?: beef)? (?:from|out of) (?:the|a) (?:shop|store|supermarket|packet|pouch)\b"
)
# «flat, want to start tomorrow»: the day on which it begins, and no meal
_BEGINS: Final = re.compile(
    r"\b(?:start(?:ing)?|begin(?:ning)?|kick(?:ing)? off|thaw(?:ing|s)?|buy(?:ing)?|collect(?:ing)?"
    r"|pick(?:ing)? (?:it )?up)"
    r"(?: (?:it|this|on|from|curing|the cure))* (?=\w+day\b|mon\b|tues?\b|wed\b|thu(?:rs)?\b|fri\b|sat\b|sun\b"
    r"|to(?:day|morrow|night)\b|the \d)[\w ]{2,24}?(?=$|[,.;!]| (?:for|and|eat\w*|serv\w+|ready)\b)"
    r"|\b(?:brin|cur|salt|rubb?|soak)(?:e|ed|ing)?(?: (?:it|them))? (?:tonight|today|now|this (?:afternoon|evening))\b"
    r"|\b(?:start(?:ing)?|bought|picked up|got)\b(?:[^,.;]|\.\d){0,48}?(?<!for )(?<!by )\b(?:today|tonight)\b"
)
_FROM_THE_FREEZER: Final = re.compile(
    r"\b(?:(?:still|lies|sits|is|been) )?in (?:the|my|our) (?:deep )?freezer\b(?! bag)"
    r"|\b(?:straight|just|right|fresh|hard|solid|stiff) (?:from|out of) (?:the |my )?freezer\b|\bhard as a rock\b"
)
_FOREIGN: Final = 5  # words of another subject that the line of a start may hold
_OF: Final = re.compile(r"\bof (?:the |a |an |some |my )?(?!(?:them|em|those|these|it)\b)([^\W\d_]{2,20})")
_WORD: Final = re.compile(r"[^\W\d_]{3,20}")
_SMALL_WORDS: Final = words(
    """
    the them those these and for with about around some want wanna going gonna like make making start starting doing
    plan new batch begin cure curing cured smoke smoked smoking please pls hey hello got have bought piece pieces
    weight weighs weigh green raw trimmed thick thickness kilo kilos pound pounds gram grams lbs meat cut bone
    boneless whole same bag tub skin hot cold dry wet brine salt sugar pink paper foil fridge saturday sunday dinner
    lunch this that need ready eat serve serving people can you how its slab big small large nice our your fresh
    frozen rub inject just from today tomorrow each both two next week für und mit ein eine
    """
)


@dataclass
class _Draft:
    said: dict[str, Any] = field(default_factory=dict)
    typed: dict[str, str] = field(default_factory=dict)
    assumed: list[str] = field(default_factory=list)
    pieces: tuple[float, ...] = ()


def read_start(text: str, context: Context) -> Start | None:
    """A start, where a plain text is one: a meat with a mass, or a word that begins something."""
    named, weighs = meat(text), measures.of_kind(text, "mass")
    verb = _VERB.search(text)
    if _BEGIN.match(text):
        return Start()
    if asks_whether(text, context):
        return None
    goes_on = context.asked_of_start and not ASKS.search(text)
    no_start = _NOT_A_START.search(text) or (not weighs and is_cooked(text))
    if no_start or not (named or weighs or goes_on or (verb and context.phase == "none")):
        return None
    if context.phase != "none" and _AMENDS.search(text) and not verb and not when.meal(text, _afresh(context)):
        return None
    draft = _Draft()
    told = weighed(text, may_be_bare=bool(named and (verb or context.phase == "none")) and not _COUNTED.search(text))
    _take_mass(draft, shared(told, ranges(named)))
    whole = _is_start(text, context, draft, bool(verb))
    if not (goes_on or whole):
        return None
    if named or whole:
        _take_meat(text, draft)
    _take_pieces(text, draft)
    if goes_on and context.asked == "cut" and (cut := bone(text)):
        draft.said["cut"] = cut
    _take_fields(text, draft, context)
    if named or whole or _EATS.search(text):
        take_deadline(text, context, draft)
    if not draft.said and not draft.typed:
        return None
    open_yet = "mass" not in draft.said and (goes_on or not (verb or draft.typed))
    told = open_yet and (any(DEEDS.hits(as_meat(text))) or bool(CORE_READ.search(text)))
    if told and "deadline" not in draft.said:
        return None  # «in the brine now», «breast 150 thigh 155», of a piece that is half said: told, and no choice
    unclear = tuple(f"{slot}:{words}" for slot, words in draft.typed.items())
    return Start(draft.said, unclear, tuple(draft.assumed), draft.pieces)


def asks_whether(text: str, context: Context) -> bool:
    """«can you make bacon from shoulder», without a weight or a meal: whether it can be done, and no wish."""
    return bool(_MAY_ONE.match(text)) and not (measures.of_kind(text, "mass") or when.meal(text, _afresh(context)))


def is_cured(text: str) -> bool:
    """Whether the meat of a start has its cure already: another would come on top of it."""
    return bool(_CURED.search(text))


_SAME_MEAL: Final = re.compile(r"\b(?:the|that) same (?:day|time|date|meal|dinner|lunch|supper|party)\b")


def take_deadline(text: str, context: Context, draft: _Draft) -> None:
    """The meal, where one was said; what stays open about it is named."""
    if "deadline" in draft.said:
        return
    if already_in(text):
        draft.assumed.append("already_in")
    text = when.hour_for_sure(without_since(text), context)
    if open_words := when.open_hour(text, context) or open_days(text):
        draft.typed["deadline"] = open_words
        days = [said.at for line in of_the_weekend(text) if (said := when.meal(line, _afresh(context)))]
        draft.said |= {"meals": tuple(days)} if len(days) > 1 else {}
        return
    said = when.meal(_BEGINS.sub(" ", text), _afresh(context))
    if said is None:
        draft.said |= {"deadline": context.deadline} if context.deadline and _SAME_MEAL.search(text) else {}
        return
    if said.others:
        draft.typed["deadline"] = said.words
        draft.said["meals"] = (said.at, *said.others)
        return
    draft.said["deadline"] = said.at
    draft.assumed += assumptions(said)


def assumptions(said: when.When) -> list[str]:
    """What was completed or moved in a time that was said."""
    flags = {
        "deadline_hour": not said.hour_said,
        "deadline_next": said.next_said,
        "deadline_shifted": not said.exists,
        "deadline_twice": said.twice,
    }
    return [name for name, true in flags.items() if true]


def _take_mass(draft: _Draft, told: Weighed) -> None:
    if told.slot:
        draft.typed[told.slot] = told.typed
    if told.mass is not None:
        draft.said["mass"] = told.mass
    draft.pieces = told.pieces


def _is_start(text: str, context: Context, draft: _Draft, verb: bool) -> bool:
    named = bool(meat(text))
    has_weight = "mass" in draft.said or bool({"mass", "unit", "share", "each"} & draft.typed.keys())
    if named:
        eaten = context.phase == "none" and when.meal(text, _afresh(context)) is not None
        if len(_unknown_words(text)) > _FOREIGN and not verb and not (has_weight and eaten):
            return False  # a meat, its weight and a meal are a batch, whatever else is told of it
        rest = without(_COUNTED.sub(" ", text))
        alone = context.phase == "none" and not (content(rest) or ASKS.search(text) or re.search(r"\d", rest))
        return has_weight or verb or alone or eaten
    measured = bool(measures.of_kind(text, "length") and when.meal(text, _afresh(context)) and not ASKS.search(text))
    may_be = has_weight and (context.phase == "none" or verb)
    return may_be and (verb or _only_of_something(text) or measured)


def _only_of_something(text: str) -> bool:
    """«2 kg moon», «two kilos of moon», «3 kg for saturday»: a mass, at most one word that may be a meat, no deed."""
    unknown = _unknown_words(text)
    deed = any(word.endswith("ed") for word in unknown)  # «pumped 1.6 lb»
    return len(unknown) <= 1 and not deed and not re.search(r"\b(?:rub|salt|sugar|scale|recipe|cup|brine|wood)\b", text)


def _afresh(context: Context) -> Context:
    return replace(context, deadline=None)


def _take_meat(text: str, draft: _Draft) -> None:
    named = meat(text)
    draft.assumed += [name for name, words in _SAID_OF_IT if words.search(text)]
    if named.product or _TO_CORN.search(text):
        draft.said["product"] = named.product or "corned_beef"
    if named.cut == "both" or (named.cut == "brisket" and draft.said.get("mass", 0.0) > WHOLE_BRISKET_KG):
        draft.typed["cut"] = "flat and point" if named.cut == "both" else "whole brisket"
    elif named.cut == "brisket":
        draft.said["cut"] = "brisket_flat"
        draft.assumed.append("cut")
    elif named.cut == "packer":
        draft.typed["cut"] = "packer"
    elif named.cut:
        draft.said["cut"] = named.cut
    if not named and re.search(r"\bround\b", text) and {"mass", "unit"} & {*draft.said, *draft.typed}:
        draft.said["cut"] = "beef_round"
        return
    half = _HALF_A_BIRD.search(text)
    if half and "cut" not in draft.typed:
        draft.typed["meat"] = half[0]
    other = OTHER_CUT.search(text)
    if other and not named.cut and "cut" not in draft.typed and not _BIRD_OR_FISH.search(text):
        draft.typed["meat"] = other[0]
    if not named and (unknown := besides_a_bone(text, _unknown_words(text))):
        draft.typed["meat"] = unknown[0]


def _take_pieces(text: str, draft: _Draft) -> None:
    if count := _COUNTED.search(text):
        draft.said["pieces"] = int(count[1])
    elif (times := _TIMES.search(text)) and not draft.pieces:  # else each has its weight already
        draft.said["pieces"] = int(times[1] or times[2])
    elif parted := _CUT_IN.search(text):
        draft.said["pieces"] = {"half": 2, "halves": 2, "thirds": 3}.get(parted[1]) or int(parted[1])


def _unknown_words(text: str) -> list[str]:
    """Words that may be meant as a meat: what stands after «of» first."""
    rest = when.without_times(without(IN_ALL.sub(" ", text)))
    after_of = [found[1] for found in _OF.finditer(rest)]
    return after_of + [word for word in _WORD.findall(rest) if word not in _SMALL_WORDS and word not in after_of]


def _take_fields(text: str, draft: _Draft, context: Context) -> None:
    found = stated(text)
    bare = _THICK_BARE.search(text) if "thickness" not in found.fields else None
    if bare and len(metres := thicknesses(measures.number(bare[1]) or 0.0, bare[1], context)) == 1:
        draft.said["thickness"] = metres[0]
    elif bare or (hand := _BY_HAND.search(text)):
        draft.typed["thickness"] = bare[0] if bare else hand[0]
    draft.said.update(of_the_fridge(text) | found.fields)
    draft.typed.update(found.unclear)
    if "frozen" not in draft.said and _FROM_THE_FREEZER.search(text):
        draft.said["frozen"] = True
    if "method" not in draft.said and re.search(r"\bdry\b(?! (?:rub|weather))", text):
        draft.said["method"] = "dry"
    if "method" not in draft.said and re.search(r"\b(?:wet|brined?)\b", text):
        draft.said["method"] = "brine"
