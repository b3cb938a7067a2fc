"""What is asked of the plan by the name of a step or of a day, and of a deed at another hour than planned."""

import re
from collections.abc import Mapping
from typing import Final

from bot.conversation import of_a_day
from bot.conversation.around import Answer, Of, step_named
from bot.conversation.understand import Understood
from bot.intents.normal import normal
from bot.wording import ahead, fuel, standing
from core.batch.batch import Phase
from core.plan.steps import Kind
from core.service.turn import Turn

_WHEN: Final = re.compile(
    r"^(?:(?:so|and|ok|but|well),? )*(?:when|what time|(?:what|which) day|how (?:soon|early)|how long (?:un)?til+)\b"
    r"(?!.*\b(?:did|was|were|went|long ago)\b)"
)
_MUST: Final = re.compile(  # asked of a step of the plan, whether and when
    r"^(?:(?:so|and|ok|but|well),? )*(?:does (?:it|the \w+)|do (?:i|we|they)) (?:even |still )?(?:need|have) to\b"
)
NO_TOPIC: Final = frozenset(
    {Kind.INTO_CURE, Kind.RINSE, Kind.DRY, Kind.RUB, Kind.BRINE}
)  # steps that no topic is made for
OF_THE_PLAN: Final = frozenset({Kind.RINSE, Kind.DRY})
_DUTY: Final = re.compile(
    r"^(?:(?:so|and|ok|but|well),? )*(?:what|anything|something|how much time|how busy|when do (?:i|we) have to be"
    r"|do (?:i|we) (?:need|have)|am i|are we|will i)\b(?=.*\b(?:do|due|happen\w*|home|busy|free|needed|on|list|have to"
    r"|need to be|time|coming up|planned|steps?|up)\b)"
)
_HOW: Final = re.compile(  # the cook of this batch, and no word of how long
    r"^(?:(?:so|and|ok|but|well|then),? )*(?:how|whats the (?:best )?way)(?: (?:do|should|shall|must|would|will|can|to"
    r"|does))*(?: (?:i|we|you|one))? (?:cook|smoke|simmer|roast|finish) (?:it|this|that|mine|ours|them|the (?:meat|beef"
    r"|brisket|flat|belly|piece|bird|joint))(?: (?:then|after|afterwards|now|later|properly|on the day))*[ ?]*$"
)
_OF_A_DEED: Final = re.compile(  # asked of that, and not of the whole day
    r"\b(?:eat|ready|done|finish\w*|smok\w*|cook\w*|leave|safe|move|flip\w*|turn|slic\w+|take|put|pull|wrap|guests?"
    r"|serve|late|weather|buy|far|light|lit|start|begin|need(?:ed)? for|(?:un)?till?|temp\w*|core|pit|if|get up"
    r"|meat (?:is )?on|(?:is|goes) the meat|before|(?:re)?heat\w*|warm\w*|steam\w*|brine|salt|rinse|rub)\b"
)
_MEANT_LATER: Final = re.compile(
    r"\b(?:went|put|got|came|took|taken|goes|lit|rinsed|started)\b.*\b(?:late|later|early|earlier|sooner|behind)\b"
    r"|^(?:can|could|may) (?:i|we) light (?:it|the \w+) .{0,20}\b(?:later|earlier|sooner)\b"
)
_MATTERS: Final = re.compile(
    r"^(?:can|could|may) (?:i|we) light\b"
    r"|\b(?:matters?|bad|problem|issue|hurts?|harm|ok|okay|fine|big deal|change (?:anything|much)|worse|safe|ruin\w*"
    r"|wrong)\b"
)
_DEEDS: Final = (
    (Kind.INTO_CURE, re.compile(r"\b(?:went|goes|put (?:it|them|the \w+)|got (?:it|them)) in\b")),
    (Kind.MEAT_ON, re.compile(r"\b(?:went|goes|put (?:it|them|the \w+)|got (?:it|them)) on\b")),
    (Kind.LIGHT, re.compile(r"\blit\b|\blight (?:it|the)\b")),
    (Kind.OUT, re.compile(r"\b(?:came|took (?:it|them|the \w+)|got (?:it|them)) out\b")),
    (Kind.RINSE, re.compile(r"\brinsed\b")),
)
_AFTER: Final = re.compile(
    r"^(?:(?:so|and|ok|but|well),? )*what(?:s| is| happens| comes| do i do| do we do| then| next)* (?:after|once|when) "
    r"(?=(?:(?:its?|the|i|we|it|is|comes?|meat|that|you) )*"
    r"(?:off|out|on|rins\w*|dried|slic\w*|rub\w*|wrap\w*|cured?|chill\w*)\b)"
)
_OFF: Final = re.compile(r"\boff\b")
_WOOD: Final = re.compile(
    r"\b(?:chunks?|chips|logs?|splits?|(?:more|extra|another (?:bit|piece|handful) of|some) (?:smoke|wood))\b"
)
_MORE: Final = re.compile(r"\b(?:another|more|again|extra|throw|chuck|toss|add|put|stick|top up)\b")
_HOW_MANY: Final = re.compile(r"\b(?:how (?:much|many)|which|what|charcoal|coals?)\b")
_IN: Final = re.compile(r"\bin\b(?! (?:the )?(?:smoker|pit|oven|grill|smoke|cooker)\b)")
_INTO_ICE: Final = re.compile(r"\b(?:in|into|on) (?:the |its )?(?:ice\b|chill\b)|\bstart (?:the |to )?chill\w*")
AGENDA: Final = "agenda"


def topic(turn: Turn, text: str, phase: str) -> str | None:
    """The topic of this room that a line asks for by its words; None where it asks for none."""
    plain = normal(text, turn.person.language)
    if _MEANT_LATER.search(plain) and _MATTERS.search(plain) and _deed(plain):
        return "as_planned"
    if phase == "resting" and _WHEN.search(plain) and _INTO_ICE.search(plain):
        return "when_chill"
    if _WHEN.search(plain) and step_named(plain) in NO_TOPIC:
        return "when_step"
    if _MUST.match(plain) and step_named(plain) in OF_THE_PLAN:
        return "when_step"
    if _HOW.match(plain):
        return "how_cook"
    if _AFTER.search(plain) and _after(plain):
        return "after_step"
    if phase == "cooking" and _WOOD.search(plain) and _MORE.search(plain) and not _HOW_MANY.search(plain):
        return "more_wood"
    return AGENDA if _DUTY.search(plain) and not _OF_A_DEED.search(plain) and of_a_day.named(turn, text) else None


def _after(plain: str) -> Kind | None:
    """The step that is named as the one before what is asked for."""
    return (
        Kind.OFF if _OFF.search(plain) else Kind.OUT if re.search(r"\b(?:out|cured?)\b", plain) else step_named(plain)
    )


def _deed(plain: str) -> Kind | None:
    return next((kind for kind, words in _DEEDS if words.search(plain)), None)


def _when_step(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    return standing.of_step(step_named(normal(text, turn.person.language)) or Kind.INTO_CURE, a)


def _meat_on(turn: Turn, meant: Understood, of: Of) -> str:
    """When it goes on the fire; «when do i put it in» of what lies in no cure yet is asked of that."""
    a, text = of
    into_cure = a.batch.phase is Phase.WAITING and _IN.search(normal(text, turn.person.language))
    return standing.begin(a) if into_cure else standing.of_step(Kind.MEAT_ON, a)


def _after_step(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    return ahead.after(a, _after(normal(text, turn.person.language)) or Kind.OUT)


def _as_planned(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    return ahead.as_planned(a, _deed(normal(text, turn.person.language)) or Kind.INTO_CURE)


TOPICS: Final[Mapping[str, Answer]] = {
    "meat_on": _meat_on,
    "when_chill": lambda turn, meant, of: standing.of_step(Kind.CHILL, of[0]),
    "when_step": _when_step,
    "after_step": _after_step,
    "as_planned": _as_planned,
    "how_cook": lambda turn, meant, of: ahead.how_cooked(of[0]),
    "more_wood": lambda turn, meant, of: fuel.another_chunk(of[0]),
}
