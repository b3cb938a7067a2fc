"""What stands beside a reading and is none: since when it has read so, and how cold the water about the meat is."""

from typing import Final

from bot.intents.context import FALLING
from bot.intents.feels import UNMOVED
from core import patterns as re

_SO_SINCE: Final = re.compile(  # «150 since 9»: it reads so now
    r"(?<=\d)(?<! at \d)(?<! at \d\d)(?P<unit> ?[cf])? since (?:about |around |like )?"
    r"(?:(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?(?: ?[ap]m| oclock)?|(?:1[3-9]|2[0-3])[:.][0-5]\d|noon|midnight|this morning"
    r"|breakfast|lunch)$"
)
_WATER: Final = r"(?:the )?(?:ice ?(?:bath|water)|bath(?: ?water)?|water)"
_WATER_TOO: Final = re.compile(  # «core 95 bath 45», «96 in the thick bit, 41 water»
    rf",? (?:and |with |in )?(?:{_WATER}(?: (?:temp|is|at|now|reads))* \d{{1,2}}(?: ?[cf])?"
    rf"|\d{{1,2}}(?: ?[cf])?(?: (?:in|for|is))? {_WATER})$"
    rf"|^(?:{_WATER}(?: (?:temp|is|at|now|reads))* \d{{1,2}}(?: ?[cf])?|\d{{1,2}}(?: ?[cf])? {_WATER}),? (?:and "
    rf"|but )?(?=\d|(?:the )?(?:core|meat"
    rf"|middle)\b)"
)


_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?")
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
_BARK: Final = re.compile(  # «bark is set at 161»: how it looks beside what it reads
    r",? ?\b(?:the )?(?:bark|crust|colou?r)s?(?: (?:is|has|looks?|looking|all|nicely|well|really|now|already))*"
    r" ?(?:set|nice|good|great|dark|formed|black|firm|brown|mahogany|done)\b(?: (?:now|already|and))*"
)
_AS_BEFORE: Final = re.compile(
    rf",? ?\b{UNMOVED}\b(?: yet)?"
    r"(?: (?:in|for|since) (?:an?|half an|\d{1,2}(?:\.\d)?|the last) ?(?:h|hrs?|hours?|m?mins?|minutes?)\b)?,? ?"
)
_PIT_THEN: Final = re.compile(  # «pit at 245 now, was 280», «pit 300 for a bit, now 260»: what it reads now
    r"(?<=\d)(?P<one> ?[cf])? now,? (?:(?:but|it|and) )*was \d{3}(?: ?[cf])?$"
    r"|\b(?:was |at )?\d{3}(?: ?[cf])? (?:for a (?:bit|while|minute|sec|moment)|earlier|before),? (?:(?:but|its"
    r"|and|back"
    r"|is) )*now (?:(?:its|at|to|back|down|up) )*(?=\d{3})"
)
_AT_THE_RIM: Final = re.compile(  # «core 70 surface 45»: the middle counts
    r",? ?\b(?:the )?(?:surface|outside|skin|edges?|rim)(?: (?:is|at|reads|of it))* \d{2,3}(?: ?[cf])?\b"
)
_SIDE: Final = re.compile(r"\b(?:left|right|thick|thin)(?: (?:probe|one|side|end|part|bit|thermometer))?\b")
_FROM: Final = re.compile(  # «158, dropped from 160»: the first is what it reads now
    r"(?<=\d)(?P<unit> ?[cf])?,? (?:(?:its|and|now|has|just) )*(?:dropped|down|fell|fallen|up|rose|risen|climbed"
    r"|came down|came up|gone up|gone down) from \d{2,3}(?:\.\d)?(?: ?[cf])?(?=[ ,]|$)"
)


def without_beside(text: str, phase: str) -> str:
    """A plain line of temperatures without these."""
    text = _OF_THE_FAT.sub("", text)
    if re.match(r"(?:its )?(?:the )?(?:pit|smoker|grill)\b", text):
        text = _PIT_THEN.sub(lambda hit: hit["one"] or "", text)
    if phase in FALLING and re.search(r"\b(?:core|middle|inside|cent(?:er|re))\b", text):
        text = _AT_THE_RIM.sub("", text)
    told = {*text.replace(",", " ").split()}
    if {"left", "right"} <= told or (phase == "cooking" and {"thick", "thin"} <= told):  # and none is left to go
        text = _SIDE.sub("probe", text)
    if phase == "cooking":
        text = _AS_BEFORE.sub(" ", _BARK.sub("", text)).strip(" ,")
    text = _PIT_HOLDS.sub("", text) if re.match(r"\D{0,12}\d{2,3}(?: ?[cf])?\b\D*$", text) else text
    if phase in FALLING:
        text = _FELL_TO.sub(r"\g<now>", text)
    for words in (_LEAN, _FROM):
        text = words.sub(lambda hit: hit["unit"] or "", text)
    text = _SO_SINCE.sub(lambda hit: hit["unit"] or "", text)
    return _WATER_TOO.sub("", text) if phase == "chilling" and len(_NUMBER.findall(text)) > 1 else text
