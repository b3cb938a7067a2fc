"""The facts that decide what went wrong, as the answer to the question for them: how long, how warm, the door.

What is said loosely counts as the worst that it can be: «more than four hours» is a time that nobody knows.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from functools import partial
from typing import Any, Final

from bot import measures
from bot.intents import lasting, questions, spans, when
from bot.intents.context import Context, Phase
from bot.intents.incidents import read_happened
from bot.intents.intents import Happened, Intent, Reading, Unclear
from bot.intents.only_answers import off_the_point
from bot.intents.temperatures.bounds import bounded
from bot.intents.temperatures.readings import read_reading
from bot.intents.temperatures.since import COLD, cold_then
from core import patterns as re

SLOT: Final = "happened_"
ASKED: Final = ("power_cut", "left_out", "warm_fridge", "warm_brine", "fire_out", "leaked", "dosed_twice")
_UNTIMED: Final = frozenset(["leaked", "dosed_twice"])  # how many hours it lasted is no fact of these
_ANOTHER_THING: Final = re.compile(  # nor is how warm anything was
    r"\b(?:door|fridge|freezer|core|pit|smoker|grill|brine)\b[^,;]{0,16}(?:\d|\bopen\b)|\b\d{2,3}(?:\.\d)? ?°? ?[cf]\b"
)
_PIT_READ: Final = re.compile(r"\b(?:pit|smoker|grill)\b[^,;]{0,16}\d")  # no fridge and no room was so hot
IN_ONE_LINE: Final = frozenset(ASKED) - {"fire_out"}  # after a fire the readings decide, and are kept as such
_ASKS: Final = re.compile(r"\b(?:can|should|could|may|is it|do) (?:i|we|it|you|safe|ok)\b")
_CORE: Final = re.compile(r"\b(?:core|middle|meat|inside|internal|brisket|cent(?:re|er))\b")
_ROOM: Final = re.compile(r"\b(?:room|counter|kitchen|outside|outdoors|air|garage|table|shade|sun)\b")
_KEPT_IN: Final = re.compile(r"\b(?:fridge|freezer|brine)\b")
_NOW: Final = re.compile(r"\b(?:now|again|back (?:at|to|down)|currently|by now|meanwhile)\b")
_SHUT: Final = re.compile(
    r"\b(?:shut|closed)\b|\b(?:never|not|didnt|nobody|no one|hasnt|wasnt|without) (?:\w+ ){0,2}open(?:ed|ing)?\b"
)
_OPEN: Final = re.compile(
    r"\b(?:not|wasnt|isnt|didnt|never) (?:\w+ ){0,2}(?:shut|closed?)\b"
    r"|(?<!never )(?<!not )(?<!didnt )(?<!nobody )(?<!hasnt )(?<!wasnt )(?<!one )(?<!without )(?<!ever )(?<!been )"
    r"\b(?:open(?:ed)?|ajar)\b"
)
_NO_ICE: Final = re.compile(
    r"\b(?:no|not|without|isnt|nothing) (?:\w+ ){0,2}(?:ice|frozen|crystals)\b|\b(?:thawed|soft)\b"
)
_ICE: Final = re.compile(r"\b(?:ice|icy|crystals|frozen)\b")
_HALF_FULL: Final = re.compile(r"\bhalf (?:full|empty)\b")
_FULL: Final = re.compile(r"\b(?:full|packed)\b")
_UNKNOWN: Final = re.compile(
    r"\b(?:no idea|no clue|havent an? (?:notion|clue)|no notion|god knows"
    r"|idk|dunno|dont know|do not know|unknown|not sure|nobody knows|cant (?:say|tell)|who knows)\b"
)
_HOW_LONG: Final = re.compile(  # «no idea how long»: told with it, and no question
    rf"[,;]? ?(?:and |but |n )?(?:i |we )?(?:have |really )*{_UNKNOWN.pattern}(?: for)? ?"
    r"(?:how (?:long|warm|hot|cold)|since when|when)\b(?: (?:it|its|for|since|ago|was|had|been|got|is|stood|open|out"
    r"|off))*"
)
_OTHER: Final = re.compile(
    r"\?|\b(?:later|snooze|remind|not now|done|flip\w*|forgot|missed|safe|meal|dinner|ready|cancel|undo"
    r"|what|move|serve)\b"
    r"|^in (?:\d|half|an?\b)|^at \d"
)
_SHARES: Final = (
    (
        0.05,
        r"\b(?:few|couple of|some|two|three) drops?\b|\b(?:hardly any|a (?:little|bit|drop|splash|dribble)|barely)\b",
    ),
    (0.9, r"\b(?:most|nearly all|almost all|almost everything)\b"),
    (1.0, r"\b(?:all of|all the|all gone|everything|completely|empty|dry|whole lot|nothing left|none left)\b"),
    (0.0, r"\b(?:nothing|none)\b"),
    (2 / 3, r"\b(?:two|2) thirds?\b"),
    (0.75, r"\b(?:three|3) quarters?\b"),
    (0.5, r"\b(?:half|a lot|much)\b"),
    (1 / 3, r"\bthird\b|\b1/3\b"),
    (0.25, r"\bquarter\b|\b1/4\b"),
)
_TODAY: Final = re.compile(
    r"\b(?:today|this (?:morning|afternoon|evening)|just now|right now|last night|tonight|(?:right|straight) away"
    r"|immediately|just happened)\b"
)
_WAS: Final = re.compile(r"\b(?:got|was|went|up to|reached|rose|at most|max\w*)\b")
_BARE: Final = re.compile(
    r"\b(?:is|its|was|got to|up to|reached|reads?|says?|shows?|at|inside|room|kitchen|outside"
    r"|counter|core|middle|meat) (?:about |only |just )?"
    r"(-?\d{1,3}(?:\.\d)?)(?=$|,| (?!oclock|uhr\b|[ap]m\b))|(-?\d{1,3}(?:\.\d)?)(?= degrees?)"
    r"|(?<![\d.:])(\d{2}(?:\.\d)?)(?= inside(?:$|,)"
    r"| (?:in there |in it |inside )?(?:this morning|when i)\b)"  # «51 in there this am»
)
_COLD_F: Final = re.compile(r"(?:3[3-9]|40)(?:\.\d)?")  # °F of a fridge that is cold again, and no hours either
_LONE_F: Final = re.compile(r"(?:4[1-9]|[5-7]\d)(?:\.\d)?")  # °F of a warm fridge, and no hours that it lasted
_IN_THE_COLD: Final = ("warm_fridge", "power_cut")  # of the fridge, where no meat is named
_INSIDE_IT: Final = re.compile(r"\binside\b(?! (?:the |my )?(?:meat|ham|brisket|flat|belly|bird|bag))")  # the fridge
_AT_AN_HOUR: Final = re.compile(  # «came back at 6»: when, and no degrees
    r"\b(?:back|on|off|out|restored|returned|failed|died|went|eat(?:ing)?|dinner|lunch|supper|meal|home)"
    r"(?: (?:on|up|off|out|again))* (?:at|by|around|about|since) "
    r"\d{1,2}(?:[:.]\d\d)?(?! ?(?:°|deg|[cf]\b))"
)
_NOW_READS: Final = re.compile(
    r"(?:(?:and|its|it is|ok|is|down to) )*(?:now(?: (?:its|at|down to|back to))? (?=[\d.]+(?: degrees)?$)"
    r"|(?=[\d.]+ now$))"
    r"(?P<n>\d{1,2}(?:\.\d)?)(?: now| degrees)?"
)
_COLDEST, _HOTTEST = -2.0, 60.0  # °C; what a kitchen, a fridge without power, or meat in it can read
_PARTS: Final = re.compile(r"[,;]\s*|\s+(?:and|but|then)\s+(?!an? (?:half|quarter)|\d)")
_MENDED: Final = re.compile(  # «put it in a second bag»: seen to, and no fact of the leak
    r"\b(?:second|new|another|fresh|double)[ -]?bag\w*\b|\b(?:mopped|wiped|cleaned)\b"
)
_ON_TOP: Final = re.compile(r"\b(?:more|extra|another|additional|on top)\b")
_TWICE: Final = re.compile(r"\b(?:twice|two times|2 times|each)\b")


def _facts(what: str, text: str, context: Context) -> Intent | None:
    """The facts of a line; None for a line about something else."""
    if _OTHER.search(text) or _ASKS.search(text) or read_happened(text, context):
        return None
    if (what in _UNTIMED and _ANOTHER_THING.search(text)) or (what != "fire_out" and _PIT_READ.search(text)):
        return None
    if off_the_point(text):
        return None
    if what == "warm_fridge" and (colder := _colder_now(text, context)):
        return colder
    if what == "warm_fridge" and context.units.temperature == "f" and _COLD_F.fullmatch(text):
        return read_reading(f"fridge {text}", context)
    if what == "warm_fridge" and context.units.temperature == "f" and _LONE_F.fullmatch(text):
        text = f"it was {text}"
    cold = cold_then(text, context) if what == "warm_fridge" else ()
    unknown = {"unknown": True} if _UNKNOWN.search(text) else {}
    facts = {} if cold else told(what, text, context) | unknown
    began = cold or (lasting.by_clock(text, context) if what not in _UNTIMED and "hours" not in facts else ())
    if len(began) > 1:
        return Unclear("since", text[:60])
    facts |= {"hours": began[0]} if began else {}
    return Happened(what, {**facts, "more": True}) if facts else None


def _colder_now(text: str, context: Context) -> Reading | None:
    """«now 38», said when a fridge was too warm: what it reads by now, where that is cold."""
    found = _NOW_READS.fullmatch(text)
    reading = read_reading(f"fridge {found['n']}", context) if found else None
    t = reading.temperatures[0] if isinstance(reading, Reading) else None
    cold = t is not None and measures.to_house(t.value, t.unit or "") <= COLD
    return reading if cold and isinstance(reading, Reading) else None


def read_told(text: str, context: Context) -> Intent | None:
    """What went wrong with all its facts in one line; None where the line says something else too."""
    of_packet = context.asked == "cure" and "cure" not in text  # «the bag is torn», of which the strength was asked
    unknown = {"unknown": True} if _UNKNOWN.search(text) else {}
    text = _HOW_LONG.sub("", text)
    hit = None if text.endswith("?") or of_packet else read_happened(text, context)
    if hit is None or hit.happened.what not in IN_ONE_LINE or questions.is_question(text) or _ASKS.search(text):
        return None
    what = hit.happened.what
    rest = [part for part in _PARTS.split(text) if read_happened(part, context) is None and not _MENDED.search(part)]
    whole = lasting.OUT_AND_BACK.search(
        text
    )  # «went out at 1 and came back at 5» is one fact, and its end no reading of now
    of_it = (told(what, part, context) or lasting.by_clock(part, context) for part in rest if part)
    beside = not all(of_it) or _NOW.search(lasting.TIL_NOW.sub("", text))
    if _OTHER.search(text) or (beside and not whole):
        return None
    return replace(hit.happened, facts={**hit.happened.facts, **told(what, text, context), **unknown})


def told(what: str, text: str, context: Context) -> dict[str, Any]:
    """The facts of a plain line about what went wrong, by the names of `core.safety.incidents`; none is empty."""
    match what:
        case "leaked":
            return _leak(text, context)
        case "dosed_twice":
            return _grams(text)
    facts = lasting.told(text, context)
    if what == "power_cut":
        facts |= _door(text)
    return facts | _warmth(what, text, context)


def _door(text: str) -> dict[str, Any]:
    facts: dict[str, Any] = {}
    if _OPEN.search(text) or _SHUT.search(text):
        facts["door_shut"] = not _OPEN.search(text)
    if "freezer" in text:
        facts["where"] = "freezer_full" if _FULL.search(text) and not _HALF_FULL.search(text) else "freezer_half"
    if _NO_ICE.search(text) or _ICE.search(text):
        facts["ice_crystals"] = not _NO_ICE.search(text)
    return facts


def _warmth(what: str, text: str, context: Context) -> dict[str, Any]:
    """The same; «over 44» of what has to be cold, or «nearly 140» of what has to be hot, is nothing that is known."""
    found = _degrees(what, text, context)
    phase: Phase = "cooking" if what == "fire_out" else "chilling"
    _, unsure = bounded(text, replace(context, phase=phase))
    return dict.fromkeys(found) if unsure else found


def _degrees(what: str, text: str, context: Context) -> dict[str, Any]:
    """How warm it got, by what was read; what the fridge shows again by now says nothing of what it was."""
    celsius = _celsius(text, context)
    inside = _INSIDE_IT.sub(" ", text) if what in _IN_THE_COLD else text
    core, room, kept = (bool(words.search(each)) for words, each in ((_CORE, inside), (_ROOM, text), (_KEPT_IN, text)))
    if celsius is None:
        return {}
    match what:
        case "power_cut":
            return {} if kept and not core else {"room_c" if room and not core else "core_c": celsius}
        case "fire_out":
            return {"core_c": celsius} if spans.longest(text) else {}  # alone it is a reading, and kept as one
        case "left_out" if core and not room:
            return {"core_c": celsius}
        case "left_out":
            return {"room_c": celsius}
        case _:
            now = _NOW.search(text) or (kept and not _WAS.search(text) and not spans.longest(text))
            cold = celsius <= COLD and not _WAS.search(text)
            return {} if core or now or cold else {"room_c": celsius}


def _celsius(text: str, context: Context) -> float | None:
    """The one temperature of a line; without its unit that of the person, where a kitchen can have it. [°C]"""
    warm = measures.of_kind(text, "temperature")
    if warm:
        return warm[0].value if len(warm) == 1 else None
    bare = [
        float(found[1] or found[2] or found[3])
        for found in _BARE.finditer(spans.without_spans(_AT_AN_HOUR.sub(" ", text)))
    ]
    mine = context.units.temperature
    units = (mine, "c" if mine == "f" else "f")
    found = [c for n in bare[:1] for u in units if _COLDEST <= (c := measures.to_house(n, u)) <= _HOTTEST]
    return found[0] if found and len(bare) == 1 else None


A_FEW: Final = 5  # spoons, at most meant by a few. Judgement


def _leak(text: str, context: Context) -> dict[str, Any]:
    """How much is gone, and for how long nobody can have seen it. [-, d]"""
    facts: dict[str, Any] = {}
    text = re.sub(r"\b(?:an? )?quarter (?:of an? )?(?=cup|pint|lit|quart)", "0.25 ", text)
    text = re.sub(r"\bhalf an? (?=cup|pint|lit|quart)", "0.5 ", text)
    text = re.sub(r"\ban? (?=cup|pint|lit|quart|tbsp|tablespoon|tsp|teaspoon|spoon)", "1 ", text)
    text = re.sub(r"\b(?:a )?(?:few|couple(?: of)?|some) (?=tbsp|tablespoon|tsp|teaspoon|spoon)", f"{A_FEW} ", text)
    volume, share = measures.of_kind(text, "volume"), measures.of_kind(text, "fraction")
    word = next((share for share, words in _SHARES if re.search(words, _without_spans(text))), None)
    if len(share) == 1:
        facts["lost_fraction"] = share[0].value
    elif len(volume) == 1:
        facts["lost_kg"] = volume[0].value  # water and brine: a litre is a kilo within the doubt of the guess
    elif word is not None:
        facts["lost_fraction"] = word
    days = _unnoticed(text, context)
    if days is not None or lasting.longer(text):
        facts["unnoticed_days"] = None if lasting.longer(text) else days
    return facts


def _without_spans(text: str) -> str:
    """«half a day» is no half of the liquid."""
    return re.sub(r"\b(?:half an?|quarter of an?) (?:day|hour)s?\b|\b(?:and a|an?) half days?\b", " ", text)


def _unnoticed(text: str, context: Context) -> float | None:
    """Days since it can have begun, to the end of the day that was named."""
    lasted = spans.longest(text)
    if lasted is not None:
        return round(lasted.total_seconds() / 86400, 4)
    if re.search(r"\byesterday\b", text):
        return 2.0
    if _TODAY.search(text):
        return 1.0
    since = lasting.SINCE.search(text)
    began = when.past(since["when"], context) if since else None
    return None if began is None else (context.now - began.at) / timedelta(days=1) + 1.0


def _grams(text: str) -> dict[str, Any]:
    """The curing salt that is in it in all. [kg]"""
    masses = measures.of_kind(text, "mass")
    if _ON_TOP.search(text):
        return {}  # what went in beside the rest is not all that is in it
    if masses and all(m.value < 1.0 for m in masses):
        total = sum(m.value for m in masses)
        return {"cure_kg": total * (2 if len(masses) == 1 and _TWICE.search(text) else 1)}
    return {}


DEVIATION_READERS: Final[dict[str, Callable[[str, Context], Intent | None]]] = {
    SLOT + what: partial(_facts, what) for what in ASKED
}
