"""What is taken back by its name, «scrap that flip», and readings that were of something else.

«78 was the water not the meat», «that 148 was the probe slipping, really 141».

What was read off the water or a slipped probe is taken out of the record, or the true number takes its place; a
number that stands for no reading is found by what it was, so that no true one is lost.
"""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Correct, Undo
from core import patterns as re
from core.batch.events import Probe
from core.plan.steps import Kind

_NUMBER: Final = r"-?\d{1,3}(?:\.\d{1,2})?"
_FIRST: Final = r"^(?:(?:wait|no|oops|sorry|ah|oh|so|ok|actually|the|that|my|last|reading|number|of|one)[, ]+)*"
_OF: Final = (
    rf"(?P<was>{_NUMBER})(?: ?°? ?[cf])?(?: (?:i|we) (?:sent|gave|said|typed|wrote))?(?: (?:just|a minute ago|earlier"
    r"|before))? (?:was|were) (?:only |just |actually |really )?"
)
_THAT_WAS: Final = (
    r"^(?:(?:wait|no|oops|sorry|ah|oh|ok|actually)[, ]+)*"
    r"(?:that|it|(?:(?:the|my) )?(?:last|previous)(?: one| reading| number)?) was (?:only |just |actually )?"
)
_OF_A_PROBE: Final = {
    **dict.fromkeys(("pit", "grill", "grate", "smoker", "lid", "dome"), Probe.PIT),
    **dict.fromkeys(("meat", "core", "brisket", "flat"), Probe.CORE),
    "fridge": Probe.FRIDGE, "brine": Probe.BRINE,
}  # fmt: skip
_PROBED: Final = rf"(?:the |in the |for the |from the )?(?P<probe>{'|'.join(_OF_A_PROBE)})s?\b(?: air| temp| one)?"
_NO_MEAT: Final = (  # what a thermometer shows that is not in the middle of the meat
    r"(?P<what>(?:(?:the|my|a|in|of|from|on|at|an) )*(?:(?:ice |bath |tap )*(?:water|bath|ice)|air|room|kitchen|outside"
    r"|surface|skin|bone|fat|edge|end|probe|thermometer|sensor|counter|table|oven|display|battery"
    r"|garage|basement|cellar|shed|other fridge|spare fridge|typo|mistake|slip|nonsense|rubbish|wrong|misread\w*"
    r"|bogus|other (?:one|piece|probe|meat))\b[^\d,;.]{0,30}?)"
)
_REALLY: Final = (
    r"(?:[,;.]| but| and)? ?(?:(?:really|actually|its|it is|it was|should be|now|the|real|true|ones?|this|ours|mine"
    r"|right|is|was"
    r"|meat|core"
    rf"|says|reads|number)[, ]+)*(?P<value>{_NUMBER})(?: ?°? ?(?P<unit>[cf])\b)?"
)
_NOT_IT: Final = r"(?:,? (?:and )?not (?:of |in |from )?(?:the |my )?\w{2,8}(?: temp| probe| one)?)?"
_WITHDRAWN: Final = tuple(
    re.compile(f"{first}{of}{_NOT_IT}(?:{_REALLY})?$")
    for first in (_FIRST + _OF, _THAT_WAS)
    for of in (_PROBED, _NO_MEAT)
)
_NAMED: Final = re.compile(
    r"^(?:(?:please|pls|can you|oops|no|sorry|ok)[, ]+)*(?:(?:take back|undo|delete|remove) |(?:strike|cancel|scrap"
    r"|scratch|scrub|ignore|disregard|forget|bin) (?=the|that|my|this|last|latest|first|morning|evening|previous))"
    r"(?:(?:the|that|my|this|last|latest|first|morning|evening|previous) )*"
    r"(?P<what>flip|turn|rinse|wrap|soak|reading|number|temp(?:erature)?|one|1)(?P<why>\b(?!s\b).*)?$"
)
_BINNED: Final = re.compile(
    rf"^(?:(?:please|no|oops|sorry|ok)[, ]+)*(?:bin|scrap|scratch|delete|remove|forget|ignore|drop|lose|undo|strike)"
    rf" (?:the|that|my) (?P<was>{_NUMBER})(?: ?°? ?[cf])?(?: (?:one|reading|please|pls))*$"
)
_WHAT: Final = {
    "flip": Kind.FLIP, "turn": Kind.FLIP, "rinse": Kind.RINSE, "wrap": Kind.WRAP, "soak": Kind.SOAK,
}  # fmt: skip
READING: Final = "reading"
_NOT_WHY: Final = re.compile(r"\?|\d|\b(?:reminders?|pings?|tonight|tomorrow|today|salt|cure)\b")
_NO_READING: Final = re.compile(r"\b(?:hours?|min\w*|ago|day|days|lbs?|kg|grams?|g|ppm|%|percent|people)\b")


def read_taken_back(text: str, context: Context) -> Undo | None:
    """«take back the last flip, that never happened»: one thing that was said, by its name, and perhaps why."""
    found = _NAMED.match(text.strip(" .!")) if context.phase != "none" else None
    if found is None or _NOT_WHY.search(found["why"] or ""):
        return None
    if found["what"] in ("one", "1"):  # «cancel this one» is about the batch
        return Undo() if re.search(r"\b(?:last|latest)\b", text) else None
    kind = _WHAT.get(found["what"])
    return Undo(step=READING if kind is None else str(kind))


def _binned(text: str) -> Correct | None:
    """«bin the 78»: a reading that was none, by its number."""
    found = _BINNED.match(text)
    return Correct(was=float(found["was"]), gone=True) if found else None


def read_withdrawn(text: str, context: Context) -> Correct | None:
    """A reading that was another's, or of nothing, where a plain text takes it back; with the true one if told."""
    if context.phase == "none" or _NO_READING.search(text):
        return None
    if binned := _binned(text):
        return binned
    found = next((hit for words in _WITHDRAWN if (hit := words.match(text))), None)
    if found is None:
        return None
    told = found.groupdict()
    was = float(told["was"]) if told.get("was") else None
    if told["value"]:
        return Correct(value=float(told["value"]), unit=told["unit"], was=was)
    if told.get("probe"):
        return Correct(probe=_OF_A_PROBE[told["probe"]], was=was) if was is not None else None
    return Correct(was=was, gone=True)
