"""How salty the finished slice was, as a plain text tells it: bland, right, or too salty; what is denied counts."""

from typing import Final

from core import patterns as re

_NEVER: Final = r"(?:not|isnt|wasnt|werent|arent|hardly|barely|scarcely|never|nowhere near)"
_BIT: Final = r"(?:(?:a|bit|little|touch|tad|some|quite|really|nearly|even|just|slightly|far) )*"
_LEVELS: Final = tuple(
    (level, re.compile(words))
    for level, words in (
        (None, rf"\b{_NEVER} {_BIT}(?:that|as) salty\b"),  # milder than feared, or than wanted
        (0, rf"\b{_NEVER} {_BIT}(?:(?:too|overly|very|over|so|at all) ?)*(?:much )?salt(?:y|ed)\b(?! enough)"
            rf"|\b{_NEVER} too much salt\b"
            r"|\bsalt (?:is|was|level|was just)? ?(?:just |about )?(?:right|perfect|spot on|good|fine|ok)\b"
            r"|\b(?:perfectly salted|just right)\b"),
        (-1, rf"\b(?:bland|{_NEVER} {_BIT}salty enough|under ?salted|{_NEVER} {_BIT}enough salt|too little salt|fad)\b"
             rf"|\b(?:needs?|needed|wants?|wanted|lacks?|lacked|lacking|missing|misses|could (?:use|do with|take)"
             rf"|could have (?:used|done with|taken)) (?:in )?{_BIT}(?:more )?salt\b(?! (?:off|out))"
             rf"|\b(?:could|should|might|wish (?:it|this) (?:was|were|is)|want it)(?: (?:be|have been))? {_BIT}"
             r"salt(?:ier|y)\b"),
        (1, r"\b(?:too|very|way too|bit too|a bit|really|super|quite|zu) (?:much )?(?:salty|salzig|salt)\b"
            r"|\bsalt (?:is |was )?(?:(?:a )?(?:bit|little|touch|tad)|way|too|rather) (?:too )?(?:much|strong|high)\b"
            r"|\bover ?salted\b|\bsalty\b"),
    )
)  # fmt: skip


def saltiness(text: str) -> int | None:
    """-1 bland, 0 right, 1 too salty; None where a text says nothing of it, or leaves it open."""
    return next((level for level, words in _LEVELS if words.search(text)), None)
