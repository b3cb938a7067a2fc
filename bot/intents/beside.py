"""What stands beside a reading and is none: since when it has read so, and how cold the water about the meat is."""

from typing import Final

from core import patterns as re

_SO_SINCE: Final = re.compile(  # «150 since 9»: it reads so now
    r"(?<=\d)(?<! at \d)(?<! at \d\d)(?P<unit> ?[cf])? since (?:about |around |like )?"
    r"(?:(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m| oclock)?|(?:1[3-9]|2[0-3])[:.][0-5]\d|noon|midnight|this morning"
    r"|breakfast|lunch)$"
)
_WATER_TOO: Final = re.compile(
    r"(?<=\d)(?P<unit> ?[cf])?,? (?:and |with |in )?(?:the )?(?:ice ?(?:bath|water)|bath(?: ?water)?|water)"
    r"(?: (?:temp|is|at|now|reads))* \d{1,2}(?: ?[cf])?$"
)


_FELL_TO: Final = re.compile(  # «went from 140 to 85 in an hour»: what it reads now
    r"^(?:(?:its|it|core|meat|has|just) )*(?:went|gone|fell|fallen|dropped|cooled|came|come|down)(?: down)? from"
    r" \d{2,3}(?: ?[cf])? (?:down )?to (?P<now>\d{2,3}(?: ?[cf])?)(?: (?:in|within|over|after) .*)?$"
)
_OF_THE_FAT: Final = re.compile(  # «39 in the fat 44 in the middle»: the middle counts
    r"(?:(?:its|it is|core|at) )*\b\d{1,3}(?:\.\d)?(?: ?[cf])? (?:in|on|at) the (?:fat(?: cap)?|skin|outside"
    r"|surface|rind),? (?:and |but )?"
    r"(?=\d{1,3}\b[^\d]*\b(?:middle|core|cent(?:re|er)|inside|meat|thick\w*|lean)\b)"
)
_LEAN: Final = re.compile(r"(?<=\d)(?P<unit> ?[cf])? (?:in|at|on) the lean\b")
_PIT_HOLDS: Final = re.compile(  # «152 pit holding»: the number is the meat's
    r",? ?\b(?:pit|smoker|grill)s?(?: (?:temp|is|are|still|just|nice|all|dead|rock|and))* ?(?:holding|steady|stable"
    r"|solid|fine|good|ok|great|constant|even|unchanged|the same|spot on)(?: (?:steady|fine|well|now|there))*(?=$|,)"
)
_FROM: Final = re.compile(  # «158, dropped from 160»: the first is what it reads now
    r"(?<=\d)(?P<unit> ?[cf])?,? (?:(?:its|and|now|has|just) )*(?:dropped|down|fell|fallen|up|rose|risen|climbed"
    r"|came down|came up|gone up|gone down) from \d{2,3}(?:\.\d)?(?: ?[cf])?(?=[ ,]|$)"
)


def without_beside(text: str, phase: str) -> str:
    """A plain line of temperatures without these."""
    text = _OF_THE_FAT.sub("", text)
    text = _PIT_HOLDS.sub("", text) if re.match(r"\D{0,12}\d{2,3}(?: ?[cf])?\b\D*$", text) else text
    if phase in ("resting", "chilling"):
        text = _FELL_TO.sub(r"\g<now>", text)
    for words in (_LEAN, _FROM):
        text = words.sub(lambda hit: hit["unit"] or "", text)
    text = _SO_SINCE.sub(lambda hit: hit["unit"] or "", text)
    return _WATER_TOO.sub(lambda hit: hit["unit"] or "", text) if phase == "chilling" else text
