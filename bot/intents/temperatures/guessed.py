"""A temperature that nobody read, or that is not the middle: «core is probably 165», «outside of the meat is 165».

It is asked whether it was read, or for the middle; a guess is not kept. Nor is one of how strong a curing salt is,
or of what was done.
"""

from dataclasses import replace
from typing import Final

from bot.intents.context import SHOWN
from bot.intents.deeds import DEEDS
from bot.intents.intents import Change, Correct, Intent, Reading, Start, StepDone, Temperature, Unclear
from bot.intents.temperatures.bounds import readings_in
from core import patterns as re
from core.batch.events import Probe
from core.units import Fraction

_UNREAD: Final = re.compile(  # of the whole line
    r"\b(?:no|without (?:an?|the|my)|lost (?:the|my)|(?:dont|do not) have an?) thermometer\b"
    r"|\b(?:didnt|did not|havent|have not|not|couldnt|cant) (?:actually |really )?(?:check|measure|read|look|probe"
    r"|test)\w*\b|\bby (?:feel|guess|now)\b"
    r"|\b(?:reads?|shows?|is|its|thats|runs?|about) \d{1,2} (?:degrees? |deg )?(?:too )?(?:high|low|off)\b"
)
_GUESS: Final = re.compile(  # of the part that holds the number
    r"\b(?:probably|prob(?:s|ly)?|maybe|perhaps|presumably|i (?:think|guess|reckon|suppose|assume|bet|imagine)"
    r"|id (?:say|guess)|guess(?:ing|ed)?|my guess|feels? (?:like|about)|(?:must|should|ought to)"
    r" (?:have (?:been|hit) |be )|usually|normally|most likely|if i had to|most of the time|mostly|sometimes"
    r"|(?:on )?average|goes (?:down |up )?to|as low as)\b"
)
_DOUBTED: Final = re.compile(  # before or behind all of what was done
    r"^(?:i (?:think|guess|reckon|suppose)|think|maybe|probably|perhaps) |\b(?:i (?:think|guess|reckon|suppose)"
    r"|maybe|probably|prob|perhaps|not sure(?: though)?)$"
)
_RULE: Final = re.compile(  # «fridge should be 37» tells a rule as well as what was meant
    r"\b(?:fridge|brine|core|meat|middle|pit) (?:should|ought to) be\b|\bis (?:supposed|meant) to be\b"
)
_AT_THE_BONE: Final = re.compile(
    r"\b(?:touch\w+|near|on|at|by|against|hit\w*|next to|close to|along) (?:the |a )?bone\b"
)
_AT_THE_SURFACE: Final = re.compile(
    r"\b(?:outside|surface|skin|crust)(?: of (?:the |it)?(?:meat|bird|fish|brisket|ham|bacon)?)?(?: (?:is|was|at"
    r"|reads?|says|now|temp))* \d|\d[^,;]*\b(?:on|at) the (?:outside|surface|skin)\b"
    r"|\b(?:ir|infra ?red|laser) (?:gun|thermometer)"
)
WEAK: Final[Fraction] = 0.02  # nitrite of a curing salt; between the continental ones (1 %) and the strong ones (5 %)
_LOOSE: Final = re.compile(rf"{_GUESS.pattern}|\b(?:about|around|roughly|or so|something like|\d ?ish|should be)\b")
_A_SHARE: Final = re.compile(r"\d ?(?:%|percent|pct)|\.\d")
_THE_MIDDLE: Final = re.compile(r"\b(?:core|middle|inside|internal|cent(?:re|er))\b")
_PARTS: Final = re.compile(  # «fridge 44!! door was ajar i think»: the doubt is of the door
    r"[,;!]| (?:and|but) (?!maybe|probably|i )| (?=(?:the )?(?:door|lid|power|kids?|somebody|someone)\b)"
)
_NUMBER: Final = re.compile(r"(?<![\w.])-?\d{1,3}(?:\.\d+)?")


def guessed(intent: Intent, text: str) -> Intent:
    """The intent; of a temperature that was guessed, the question whether it was read."""
    if isinstance(intent, Change | Start):
        return _of_strength(intent, text)
    if isinstance(intent, StepDone):
        return _of_deed(intent, text)
    if isinstance(intent, Correct):
        of_a_rule = intent.value is not None and intent.probe is not Probe.PIT and _is_a_rule(text)
        return _asked(Temperature(intent.value or 0.0, intent.unit, intent.probe), text) if of_a_rule else intent
    told = [t for t in readings_in(intent) if t.probe is not Probe.PIT]
    if not told:
        return intent
    elsewhere = _AT_THE_BONE.search(text) or (_AT_THE_SURFACE.search(text) and not _THE_MIDDLE.search(text))
    if elsewhere and any(t.probe is Probe.CORE for t in told):
        return Unclear("not_core", text[:SHOWN])
    unread = bool(_UNREAD.search(text))
    loose = [part for part in _PARTS.split(text) if unread or _GUESS.search(part)]
    values = {float(n) for part in loose for n in _NUMBER.findall(part)}
    is_loose = isinstance(intent, Reading) and any(t.value in values for t in told)
    return Unclear("guessed", text[:SHOWN], (intent,)) if is_loose else intent


def _of_strength(intent: Change | Start, text: str) -> Change | Start | Unclear:
    """A weak curing salt by a guess is not dosed: of the strong one it would be ten times too much."""
    fields = intent.changes if isinstance(intent, Change) else intent.said
    share = fields.get("cure_nitrite_fraction")
    if share is None or share > WEAK:
        return intent
    if not any(_LOOSE.search(part) for part in _PARTS.split(text) if _A_SHARE.search(part)):
        return intent
    if isinstance(intent, Start):  # asked of every start that does not tell it
        return replace(intent, said={name: value for name, value in fields.items() if name != "cure_nitrite_fraction"})
    return Unclear("strength", f"{100 * share:g} %", (intent,))


def _of_deed(done: StepDone, text: str) -> Intent:
    """«flipped it i think»: what nobody is sure to have done is no deed yet; an hour that is told loosely is one."""
    if done.step is None or done.at is not None:
        return done
    doubted = (part for part in _PARTS.split(text) if _DOUBTED.search(part))
    kinds = {str(kind) for part in doubted for _, kind in DEEDS.hits(part)}
    return Unclear("doubted", text[:SHOWN], (done,)) if done.step.partition("/")[0] in kinds else done


def _asked(told: Temperature, text: str) -> Unclear:
    return Unclear("guessed", text[:SHOWN], (Reading((told,)),))


def _is_a_rule(text: str) -> bool:
    return bool(_RULE.search(text)) or "by now" in text
