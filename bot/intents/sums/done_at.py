"""Whether a line asks if the meat over the fire is done at a core that it names, whoever waits for it."""

from typing import Final

from core import patterns as re

_BESIDE_GUESTS: Final = re.compile(
    r"(?<=\?) |, |(?<=\w)(?<!enough) (?=(?:the |my |our |as |cos |because )*"
    r"(?:guests?|people|ppl|famil\w+|everyone|everybody|kids)\b)"
)
_DONE_AT: Final = (  # «is 158 enough», «150 in the breast, is that done», «is it safe at 160»
    re.compile(
        r"^(?:(?:so|ok|and|but|hey|is|are|will|would|does|it|its|they|that|this|be|core|breast|thigh|middle|the|a|at"
        r"|only|just),? )*(?<![\d.])\d{2,3}(?:\.\d)? ?°?[cf]?(?: (?:degrees?|inside|internal|core"
        r"|in (?:the )?(?:middle|breast|thigh|core|thickest \w+)))*,?"
        r"(?: (?:is|would|will|be|it|that|they|already|really|high|hot|good))*"
        r" (?:enough|done|cooked|safe|ok(?:ay)?|good|fine|do|too (?:low|cold|little|early))"
        r"(?: (?:now|yet|already|inside|for (?:it|them|me|us)"
        r"|to (?:eat|pull|serve|stop|(?:take|pull) (?:it|them) off)))*$"
    ),
    re.compile(
        r"^(?:(?:so|ok|and|but),? )*(?:(?:is|are|will|would|can) (?:it|that|this|they|the \w+)(?: be)? |(?=[^?]*\?))"
        r"(?:enough|done|cooked|safe|ready|finished|ok(?:ay)?|good|fine)(?: to \w+)?"
        r"(?:\?| (?:at|with)(?: (?:a|core|of))*)"
        r" \d{2,3}(?:\.\d)? ?°?[cf]?(?: (?:degrees?|inside|internal|core|in the \w+))*\??$"
    ),
)


def done_at(text: str) -> bool:
    """Whether a plain line asks if meat is done at a core that it names, and names no meat."""
    parts = (text, *_BESIDE_GUESTS.split(text))  # «is it done at 120? guests are there at 6»
    return any(words.match(one) for words in _DONE_AT for p in parts for one in (p.strip(" ?!."), p.strip(" !.")))
