"""Short remarks that lean on what was said or done before: «and last night too», «fire is back», «it stayed cold»."""

from typing import Final

from bot.intents import when
from bot.intents.context import RAW, SHOWN, Context
from bot.intents.feels import is_spoiled
from bot.intents.intents import Ask, Choose, Intent, Reading, StepDone, Unclear
from bot.intents.temperatures.plausible import Number, meanings
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_TOO: Final = re.compile(
    r"^(?:and |also |plus |flipped |(?:i )?did )*(?:the )?(?P<when>last night|this morning"
    r"|yesterday(?: (?:morning|evening|night))?"
    r"|(?:one )?before|previous one|one before that)(?:s)?(?: one| flip| ones)?(?: too| also| as well)$"
    r"|^(?:and|also) (?:the )?(?P<bare>last night|this morning|yesterday (?:morning|evening))(?:s)?(?: one| flip)?$"
)
_HOURS: Final = {"yesterday": "yesterday evening", "last night": "last night", "this morning": "this morning"}
_STAYED_COLD: Final = re.compile(
    r"^(?:(?:but|and|it|the|fridge|meat|its|has|have|all|always|brine|bag|they) )*(?:stayed|kept|been|remained"
    r"|was always) "
    r"(?:cold|cool|at temp|under 40|below 40|under 4|below 4)(?: (?:all|the|whole|time|week|night|day|through"
    r"|throughout|c|f))*$"
)
_FIRE_BACK: Final = re.compile(
    r"^(?:(?:it|its|it is|is|now|ok) )*(?:lit|burning) again(?: now)?$"
    r"|^(?:the )?(?:fire|coals?|charcoal|pit|smoker|grill|flame|burner|gas|feuer)(?:s| is| are| ist)? "
    r"(?:(?:now|already|burning|on|up|going|lit) )*(?:back(?: on| up| to life)?|again|going again|lit again"
    r"|burning again"
    r"|on again|relit|wieder an)(?: now)?$|^(?:(?:i|we|ive|have|just|ok) )*"
    r"(?:relit|re-lit|restarted|lit again|lit (?:it|the fire) (?:up )?again|(?:got|have) (?:it|the fire) (?:going|lit"
    r"|burning|back) again)(?: (?:it|the fire|the grill|the smoker))?(?: (?:now"
    r"|at \d{1,2}(?:[:.]\d\d)? ?(?:am|pm)?|(?:\d{1,2}|a few|ten) min(?:utes?|s)? ago|after [\w ]{1,16}))?$"
    r"|^(?:got|have) (?:the )?fire (?:back|going again)$"
)
_A_WHILE: Final = r"(?:half an|an?|\d{1,3}(?:\.\d)?|a couple of) ?(?:h|hrs?|hours?|m?mins?|minutes?)"
SO_MUCH_LATER: Final = re.compile(  # «relit 20 min later», «an hour later still 150»: told of what was, and no meal
    r"\b(?:relit|lit|burning|going again|stuck|still|back (?:on|up|at|to|in)|reads?|showed)\b.*"
    rf"\b{_A_WHILE} later\b"
    rf"|\b(?:(?:closed|shut)(?: it| the (?:door|lid))?|degrees?|fridge|brine|pit|core)\b[^,;.]*\b{_A_WHILE} later$"
    rf"|\b{_A_WHILE} later,? (?:and |it |its |was |the )*(?:relit|lit|burning|going again|stuck|still|back|at|reads?"
    r"|showed|fire|pit|core|fridge|brine)\b"
)
_CHECKED_AT: Final = re.compile(
    r"^(?:(?:i|we|have|just|ive) )*(?:read|checked|measured|looked at) (?:the )?(?P<what>brine|fridge|pickle)"
    r" (?:at|@) (?P<value>\d{1,2})(?: (?:today|this morning|already))?$"
)
_CHECKS: Final = {Probe.BRINE: Kind.BRINE_CHECK, Probe.FRIDGE: Kind.FRIDGE_CHECK}


def read_aside(text: str, context: Context) -> Intent | None:
    """A remark of this kind, where a plain text is one and a batch is under way."""
    if context.phase == "none":
        return None
    if is_spoiled(text):  # never lost over what was read or done beside it
        return Unclear("spoiled", text[:SHOWN])
    for reader in (_too, _checked_at):
        if found := reader(text, context):
            return found
    if _STAYED_COLD.match(text):
        return Choose("vouch", "fridge")
    return Ask("relit", text=text) if _FIRE_BACK.match(text) else None


def _too(text: str, context: Context) -> StepDone | None:
    """«and last night too»: the flip of then; no other step comes twice."""
    found = _TOO.match(text)
    if found is None or context.phase not in RAW:
        return None
    said = when.past(_HOURS.get(words := (found["when"] or found["bare"]), words), context)
    return StepDone(str(Kind.FLIP), said.at if said else None, also_previous=said is None)


def _checked_at(text: str, context: Context) -> Unclear | None:
    """«read the brine at 9»: at nine o'clock, or at nine degrees."""
    found = _CHECKED_AT.match(text)
    if found is None or float(found["value"]) > 24:
        return None
    probe = Probe.FRIDGE if found["what"] == "fridge" else Probe.BRINE
    said = when.past(f"at {found['value']}", context)
    readings = tuple(Reading((t,)) for t in meanings(Number(float(found["value"]), None, probe), context))
    return Unclear("at", text[:60], (*readings, StepDone(str(_CHECKS[probe]), said.at if said else None)))
