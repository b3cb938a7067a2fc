"""What another way of curing would buy: a day more, a needle or none, holes, two halves; what is faster."""

from typing import Final

from bot.intents.intents import Ask
from core import patterns as re

_WHAT_IF: Final = (
    ("day", r"\b(?:one|1|an?|another|a few|two|2)? ?(?:more|extra|longer|additional|other) days?\b|\banother day\b"
            r"|\b(?:a )?day (?:longer|more)\b|\bleave it (?:in )?longer\b"),
    ("immerse", r"\b(?:without|no|not|dont (?:have|own|want|need)|havent got|skip|have to|need to) "
                r"(?:an? |the |any |to )?(?:(?:meat |brine )?inject\w*|needles?|syringes?|pump\w*)\b"),
    ("inject", r"\binject\w{0,3}\b|\bpump\w{0,3}\b"),
    ("pierce", r"\b(?:pierc\w{1,3}|prick\w{0,3}|poke\w{0,3}|jaccard\w{0,3}|needl\w{1,3}|tenderi[sz]\w{1,3})\b"),
    ("split", r"\b(?:split\w{0,4}|halv\w{1,3}|(?:cut|slice) it (?:in|into) (?:two|2|half|halves)|cut it in half"
              r"|butterfl\w{1,3})\b"),
)  # fmt: skip
_WHAT_IF_WORDS: Final = tuple((about, re.compile(words)) for about, words in _WHAT_IF)
_SUPPOSED: Final = re.compile(
    r"^(?:i|we) (?:dont (?:have|own)|havent got|have no) (?:an? |the |any )?(?:meat |brine )?"
    r"(?:inject|needle|syringe|pump)"
    r"|\b(?:how long|can i (?:do|make|cure) it|what) without\b|\b(?:can|may|could) i skip\b"
    r"|\bdo i (?:have|need) to inject\b"
    r"|\bwhat (?:would|does|will|if|happens if|about|do i (?:gain|get))\b|\bwhat difference\b|\bshould i\b"
    r"|\b(?:would|does|will) (?:it|one|a|an|another|injecting|piercing|splitting)\b.{0,30}\b(?:help|do|change|faster"
    r"|quicker|better|matter)\b|\bis (?:one|another) (?:more )?day\b"
    r"|^(?:(?:just|lets|ill|we could) )*(?:(?:one|1|another) (?:more )?day(?: more| longer)?"
    r"|split it|pierce it|prick it)$"
)
_A_SECOND_TIME: Final = re.compile(
    r"\b(?:inject\w*|pump\w*) (?:it |them |the \w+ )?(?:again|twice|a second time|once more)\b"
)
_FASTER: Final = re.compile(
    r"\b(?:how can i|can i|what would) (?:make it |cure it |get it cured )(?:faster|quicker|sooner)"
    r"|^(?!.*\b(?:brine|freezer|thaw|chill|cool)).*\bspeed (?:it|this|the cure) up\b|\bspeed up the cure\b"
    r"|\bwhat are my options\b"
)


def read_what_if(text: str) -> Ask | None:
    """The way that a plain text supposes, or that it asks for all that is faster; None for any other line."""
    if _A_SECOND_TIME.search(text):
        return None
    if _FASTER.search(text):
        return Ask("what_if", "", text)
    if not _SUPPOSED.search(text):
        return None
    about = next((name for name, words in _WHAT_IF_WORDS if words.search(text)), None)
    return None if about is None else Ask("what_if", about, text)
