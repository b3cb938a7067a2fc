"""Second thoughts inside one line: «155 no wait 153» is 153, «7 lb 2 inches thick, no wait 8 lb» weighs 8 lb.

What was said first is taken out where the second is a number of the same kind; otherwise the line stays as it is, so
that no number is lost.
"""

from typing import Final

from bot import measures
from bot.intents.days import DAY_PATTERNS
from bot.intents.meats import meat
from core import patterns as re

_STRONG: Final = (
    r"(?:no,? wait|wait,? no|no,? no|no,? sorry|sorry,? no|oops,? no|no,? i mean|i mean|i meant|scratch that|make that"
    r"|no,? actually|no,? make (?:it|that)|or rather|correction|no,? its)"
)
_LEAD: Final = r"(?:(?:its|it is|it was|more like|i meant|i mean|really|actually|at|about|for)[, ]+)*"
_TURN: Final = re.compile(rf"[,. ]*\b{_STRONG}\b[,:.]* {_LEAD}(?=(?:whole )?\d)")
_WEAK: Final = re.compile(
    rf"(?:,|\.{{2,}}) ?(?:no|sorry|oops|actually|er+m?|um)\b[,:.]* {_LEAD}(?=\d)"
)  # of one kind only
_NUMBER: Final = r"\d{1,3}(?:[.:]\d{1,2})?(?: ?(?:°? ?[cf]|[ap]m)\b)?(?![\w%/])"
_BARE: Final = re.compile(rf"(?<![\w./:-]){_NUMBER}(?= *$)")
_NEXT: Final = re.compile(rf"^{_NUMBER}")
_BARE_NO: Final = re.compile(  # «156 no 153», «155 wait 153»: two of the same make, and nothing else it may be
    r"(?<![\w./:-])\d{2,3}(?: ?°?[cf])?,? (?:no|nope|wait|er+|um|uh|sorry|oops"
    r"|typo)[, ]+(?=\d{2,3}(?: ?°?[cf])?(?![\w:./%]| ?(?:min|m\b|h\b|hour|day|sec|people|lb|kg|g\b|%)))"
)

_JUST_NOW: Final = re.compile(  # «since 8 last night... i mean since just now 8»
    r"\b(?:since|at) (?:about )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?"
    rf"(?: (?:last night|yesterday|this morning|tonight|today))*[,. ]*\b{_STRONG}\b[,:.]*"
    r" (?:since |at )?(?:just |right )?now(?: (?:at )?\d{1,2}(?:[:.]\d\d)?)?(?= |$|[,.;])"
)


def rethought(text: str) -> str:
    """A plain line with what was said first and put right in the same breath taken out of it."""
    text = _JUST_NOW.sub("just now", text)
    turn = _TURN.search(text)
    if turn is None:
        weak = _WEAK.search(text)
        return (weak and _of_a_kind(*_halves(text, weak))) or _BARE_NO.sub("", text)
    before, after = _halves(text, turn)
    return _of_a_piece(before, after) or _of_a_kind(before, after) or _of_a_number(before, after) or text


def _halves(text: str, turn: re.Match[str]) -> tuple[str, str]:
    return text[: turn.start()].rstrip(" ,."), text[turn.end() :]


def _of_a_piece(before: str, after: str) -> str | None:
    """«2 trout fillets» and then «4 trout, 300 g each»: the piece told anew, with all that was told of the first."""
    kinds = [{m.kind for m in measures.find(half)} for half in (before, after)]
    anew = all(map(meat, (before, after))) and kinds[0] <= kinds[1] and "mass" in kinds[1]
    return after if anew and not any(day.search(before) for day in DAY_PATTERNS) else None


def _of_a_kind(before: str, after: str) -> str | None:
    """«7 lb 2 inches thick» and then «8 lb»: the weight that was said first makes room."""
    said = next((m for m in measures.find(after) if m.start == 0), None)
    same = [m for m in measures.find(before) if said and m.kind == said.kind]
    if said is None or not same:
        return None
    old = same[-1]
    return f"{before[: old.start]}{after[: said.end]}{before[old.end :]}{after[said.end :]}"


def _of_a_number(before: str, after: str) -> str | None:
    """«core 155» and then «153»: the number right before it."""
    old, new = _BARE.search(before), _NEXT.match(after)
    if old is None or new is None or any(m.start == 0 and m.kind != "temperature" for m in measures.find(after)):
        return None
    return f"{before[: old.start()]}{after}"
