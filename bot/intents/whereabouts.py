"""Where the meat is now: from the ice into the fridge, off the fire into the oven, in the freezer, out of the cure.

A place that it only changed is no step done; what decides it and was not said is asked for.
"""

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.intents import spans
from bot.intents.context import FALLING, RAW, Context
from bot.intents.intents import Ask, Change, Happened, Intent, Reading, StepDone, Unclear
from bot.intents.small import ASKS
from bot.intents.temperatures.plausible import Number, may_be, meanings, set_point
from bot.measures import to_house
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_FRIDGE: Final = r"(?:in|into|to) (?:the |my )?(?:\w+ )?fridge\b"
_OUT_OF_ICE: Final = re.compile(
    r"\b(?:out of|off|from|done with) (?:the |its |that )?(?:ice(?: ?bath| ?water)?|bath|water|sink)\b"
)
_TO_FRIDGE: Final = re.compile(
    rf"\b(?:mov(?:ed|ing)|transferr(?:ed|ing)|now|back|put(?:ting)?|popp(?:ed|ing)|went|going|goes|gone|straight|so"
    rf"|leav(?:e|ing)|left|stays?)\b.{{0,16}}\b{_FRIDGE}|^\W*fridge (?:now|next|time)$"
    rf"|^(?:(?:its|it is|meats?|all"
    rf"|now) )*{_FRIDGE}(?! (?:was|is|reads|at|temp))"
)
_RACK: Final = re.compile(
    r"\b(?:on|onto) (?:a |the |its |my )?(?:wire |cooling )?rack\b|\b(?:unwrapped|uncovered"
    r"|naked)\b"
)
_WRAPPED: Final = re.compile(r"\b(?:in (?:its|the|their) (?:bags?|foil|paper|wrap)|wrapped|bagged|covered)\b")
_OVEN: Final = re.compile(
    r"\b(?:mov(?:ed?|ing)|put(?:ting)?|went|gone?|going|transferr?(?:ed|ing)?|finish(?:ed|ing)?|stuck|threw"
    r"|chuck(?:ed|ing)?"
    r"|switch(?:ed|ing)?|its|is|got)\b.{0,24}\b(?:in|into|to|inside) (?:the |my |an? )?(?:kitchen )?oven\b"
    r"(?:,? (?:now |set )?(?:at|to|@)? ?(?P<pit>\d{2,3})(?: ?°? ?(?P<unit>[cf])\b)?)?"
)
_IF_OR_RESTS: Final = re.compile(r"\bif\b|\brest")
_INTO_FRIDGE: Final = re.compile(
    rf"^(?:so |and )?(?:(?:can|may|could|should|shall) (?:it|i|we|this|they)"
    rf"|(?:is it )?ok(?:ay)? to)\b.{{0,24}}\b{_FRIDGE}"
    r"(?: (?:yet|now|already|like this|as it is|so warm))*\W*$"
)
_SINCE: Final = re.compile(  # an hour, and no degrees
    r"\bsince (?:about |around )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?\b"
    r"|\b(?:at|around|about) (?:1[0-2]|[1-9])(?:[:.]\d\d)?(?: ?[ap]m)?\b(?! ?[cf]\b)(?!\d)"
)
_AT_CORE: Final = re.compile(
    r"\b(?:at|core|meat|reads|says|its|(?:got|its|is|it) (?:it )?(?:down )?to|hit|reached) (?P<n>\d{2,3})"
    r"(?: ?°? ?(?P<unit>[cf])\b)?(?! ?(?:am|pm|min|oclock)|[:.]\d)"
    r"|(?P<n2>\d{2,3})(?: ?°? ?(?P<unit2>[cf])\b)? now\b"
    r"|^(?:(?:now|still|down to) )*(?P<n3>\d{2,3})(?: ?°? ?(?P<unit3>[cf]))?,?"
    rf"(?= (?:(?:now|so|and|then|im|ill|it|its|goes|going|moving|putting|popping|straight|back) )*{_FRIDGE}"
    r"| fridge (?:now|next|time)$)"
)
_MELTED: Final = re.compile(
    r"\bice\b(?: \w+){0,3} (?:melted|gone|thawed|used up|finished|water now|melting)\b"
    r"|\bno (?:more )?ice(?: left)?\b|^(?:(?:im|we are|were|now|all|we|ran|just|ive|run) )*out of ice$|\b(?:water"
    r"|bath) (?:is |has |gone |got |getting |gets |went "
    r"|too |all |quite |a bit )*"
    r"(?:warm|lukewarm|tepid)\b"
)
_ICED: Final = re.compile(
    r"\biced (?:it|them|again|the \w+)\b|^iced$"
    r"|\b(?:changed|swapped|renewed|topped up|refreshed|added|put)\b(?: (?:in|the|more|some|fresh|new|another|bag"
    r"|of|lot))* (?:ice|water|bath)\b"
    r"(?! (?:at|is|reads))"
)
_SURFACE: Final = re.compile(
    r"\b(?:on|at) the (?:outside|surface|skin|edges?|outer)\b|\b(?:surface|outside"
    r"|skin) (?:is|temp|reads|at)\b|^(?:the )?(?:surface|outside|skin|edges?|rim) \d{2,3}(?: ?[cf])?$"
    r"|^\d{2,3}(?: ?[cf])? (?:surface|outside|skin|edges?|rim)$"
)
_TASTED: Final = re.compile(
    r"\b(?:tried|tasted|tasting|had|ate(?: about| like)?|nibbled|(?:cut|sliced|carved)(?: off)?) (?:just "
    r"|only )?(?:a|an|one|1|two"
    r"|2|three|3|a few|a bit of|the end|half|some|most)"
    r"(?: (?:small|thin|wee|little|end|first|of|it|corner))* ?(?:slices?|bits?|pieces?|corner|nibble|edge|it"
    r"|third|quarter|warm|hot|cold)\b|\bate (?:about |like )?(?:half|some|most|a third|a quarter)$"
)
_OUT_FOR: Final = re.compile(
    r"\b(?:took|taken|had|got) (?:it|them|the (?:bags?|meat|tub)) out\b(?! of (?:the )?(?:brine|cure|bag|tub|pickle)\b)"
    r"[^,;]*?\bfor (?:about |like |maybe |only |just )*(?P<lasted>\d.*|an? .*|half .*)$"
)
_FREEZER: Final = re.compile(r"\b(?:in|into|to) (?:the |my )?(?:deep ?)?freezer\b")
_FROZE_IN_PART: Final = re.compile(
    r"\b(?:froze|frozen|icy|ice)\b.{0,16}\b(?:corner|edge|end|side|bit|part|spot|back)\b"
    r"|\b(?:corner|edge|end|side|bit|part|back)s?\b.{0,16}\b(?:froze|frozen|icy)\b"
)
_TOOK_OUT: Final = re.compile(
    r"^(?:(?:i|we|just|ive|ok|now|so) )*(?:(?:took|taken|got|pulled|lifted|fished) (?:it|them|the meat) out"
    r"(?: of the (?:water|bath|ice))?"
    r"|(?:its|meats?|meat is|they are|it is) out|out)"
    r"(?: (?:now|just now|already|to (?:look|check|see|weigh)(?: (?:at |on )?it)?|for a (?:look|sec|minute|bit)))?$"
)
_PULLED: Final = re.compile(
    r"^(?:(?:i|we|just|ive|ok|now|so) )*pulled (?:it|them|the meat)(?: (?:now|just now|already))?$"
)
_LIES_COLD: Final = re.compile(
    r"(?:(?:its|it|is|put|now|ok|and|has|gone|went|cooling|chilling|i|ive) )*(?:in|into) the fridge(?: now)?"
)  # made and not yet read: the brine cools, or the meat is in it
_COLD_C: Final = 5.0  # 41 °F: cold in the middle, the last mark of the chill and what a thermometer is out
_NEARLY_K: Final = 8.0  # a core may climb so far between two readings; common practice, no source
_SOON: Final = timedelta(days=1)  # before it comes out by the plan nobody who says «took it out» need mean for good
_WHERE: Final = ("waiting", "curing", "cooking", "resting", "chilling", "stored")


def read_may_cool(text: str, context: Context) -> Ask | None:
    """«can it go in the fridge yet», asked of cooked meat: how each way of chilling would do."""
    return Ask("chill", text=text) if context.phase in FALLING and _INTO_FRIDGE.match(text) else None


def read_whereabouts(text: str, context: Context) -> Intent | None:
    """A change of place, where a plain text tells one; asked about where it can be two things."""
    if context.phase not in _WHERE or ASKS.search(text) or _IF_OR_RESTS.search(text):
        return None
    put_there = "fridge" in text and "forgot" not in text
    moved = put_there and (_TO_FRIDGE.search(_SINCE.sub("", text)) or _OUT_OF_ICE.search(text))
    if context.phase == "chilling" and moved and not re.search(r"\d", _SINCE.sub("", text)):
        return _in_the_fridge(text)
    called = (context.due_step or "").startswith("into_cure")
    if context.phase == "waiting" and context.brine_made and not called and _LIES_COLD.fullmatch(text):
        return Unclear("in_the_fridge", text[:60], (StepDone(str(Kind.INTO_CURE)),))
    if context.phase == "chilling" and _MELTED.search(text):
        return Unclear("melted", text[:60])
    if context.phase == "chilling" and _ICED.search(text):
        return Unclear("iced", text[:60])
    if context.phase in FALLING and _SURFACE.search(text) and re.search(r"\d", text):
        return Unclear("surface", text[:60])
    if context.phase in FALLING and _TASTED.search(text):
        return Unclear("tasted", text[:60])
    if context.phase == "curing" and (_FREEZER.search(text) or _FROZE_IN_PART.search(text)):
        return Unclear("froze", text[:60])
    out = _OUT_FOR.search(text) if context.phase in RAW else None
    if out and (lasted := spans.span(out["lasted"])):
        return Happened("left_out", {"hours": round(lasted.total_seconds() / 3600, 4)})
    if context.phase in FALLING and _FREEZER.search(text):
        return Unclear("freezer", text[:60])
    if context.phase == "cooking" and (oven := _OVEN.search(text)):
        return _in_the_oven(oven)
    return _taken_out(text, context) if "out" in text or "pulled" in text else None


def _taken_out(text: str, context: Context) -> Unclear | None:
    """«took it out», long before it is to come out: from where, and whether for good."""
    if context.phase == "curing":
        ahead = context.out_due - context.now if context.out_due else timedelta(0)
        early = ahead > _SOON and (_TOOK_OUT.match(text) or _PULLED.match(text))
        return Unclear("took_out", text[:60], (StepDone(str(Kind.OUT)),)) if early else None
    if not _TOOK_OUT.match(text) or text.startswith("its"):
        return None
    cold = context.phase == "stored" or (context.last_core_c is not None and context.last_core_c < _COLD_C)
    if context.phase in ("chilling", "stored") and cold:
        return Unclear("out_to_eat", text[:60], (StepDone(str(Kind.SLICE)), StepDone(str(Kind.SERVE))))
    if context.phase == "chilling":
        return Unclear("out_of_ice", text[:60], (Change({"chill": "rack"}), Change({"chill": "foil"})))
    last, target = context.last_core_c, context.target_c
    short = context.phase == "cooking" and last is not None and target is not None and target - last > _NEARLY_K
    return Unclear("off_early", text[:60], (StepDone(str(Kind.OFF)),)) if short else None


def read_moved(text: str, context: Context) -> list[Intent]:
    """A change of place with the core at which it was: «moved it out of the ice at 60 to the fridge»."""
    at = _AT_CORE.search(text) if context.phase == "chilling" and not _SURFACE.search(text) else None
    number = Number(float(at["n"] or at["n2"] or at["n3"]), at["unit"] or at["unit2"] or at["unit3"]) if at else None
    if at and ((at["n2"] and not _OUT_OF_ICE.search(text)) or (at["n3"] and may_be(number, Probe.FRIDGE, context))):
        at = None
    moved = read_whereabouts(" ".join((text[: at.start()] + text[at.end() :]).split()) if at else text, context)
    if at is None or moved is None or number is None:
        return [moved] if moved else []
    core = meanings(replace(number, probe=Probe.CORE), context)
    asked = Unclear("number", at[0], tuple(Reading((t,)) for t in core))
    return [moved, Reading(core) if len(core) == 1 else asked]


def _in_the_fridge(text: str) -> Intent:
    """How it lies there decides how fast it cools on."""
    bare, wrapped = _RACK.search(text), _WRAPPED.search(text)
    if bool(bare) != bool(wrapped):
        return Change({"chill": "rack" if bare else "foil"})
    return Unclear("chilled_on", text[:60], (Change({"chill": "rack"}), Change({"chill": "foil"})))


def _in_the_oven(found: re.Match[str]) -> Intent:
    """An oven is an electric cooker; its heat is what it was set to, in the unit that alone fits."""
    changes: dict[str, object] = {"cooker": "electric"}
    value = float(found["pit"]) if found["pit"] else None
    units = (found["unit"],) if found["unit"] else set_point(Probe.PIT, value) if value else ()
    if value is not None and len(units) == 1:
        changes["pit_c"] = to_house(value, units[0])
    return Change(changes)
