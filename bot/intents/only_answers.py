"""Whether a line that tells a time answers how long it went wrong: every word of it is one that such an answer has.

«out of the soak 20 min ago» or «fried a bit for 5 min» tells of something else. Taken for the answer it made twenty
minutes of a fridge that stood open all night, and let the meat go on.
"""

from typing import Final

from bot.intents import lasting, spans
from bot.intents.small import words
from core import patterns as re

_PARTS: Final = re.compile(r"[,;:.!]\s+|[,;]|\s+(?:but|then|so)\s+|\s+and\s+(?=[a-z])(?!an? )")
_WORD: Final = re.compile(r"[a-zäöüß']+")
_MEASURES: Final = words(
    """
    h hr hrs hour hours min mins minute minutes m d day days s w wk wks week weeks am pm c f degree degrees o clock
    half quarter couple few several an one two three four five six seven eight nine ten
    """
)
_TIMES: Final = words(
    """
    since from to til till until untill up by between at around about roughly approx approximately circa near nearly
    almost last this night nite tonight evening morning noon midday midnight afternoon lunch lunchtime breakfast
    dinner supper yesterday today now just ago before after earlier later monday tuesday wednesday thursday friday
    saturday sunday mon tue tues wed thu thur thurs fri sat sun january february march april may june july august
    september october november december jan feb mar apr jun jul aug sep sept oct nov dec overnight all whole entire
    day ages weekend during the past each twice times time on off and or
    """
)
_FILLERS: Final = words(
    """
    a i we it he she they you that this thats its ive im id there in of for was were is are be been being had has
    have having would could must might may can cant no not never maybe perhaps probably possibly likely guess think
    reckon suppose say said assume believe bet only like so some something somewhere somebody someone nobody most
    max maximum tops top least min minimum more less than under over longer shorter long short as if ish or sure
    certain pretty quite really actually honestly well ok okay oh um hm hmm sorry know dont didnt do does did idea
    clue dunno how much when what still again even bit little lot too very any what worst case best my our your the
    kids wife husband partner son daughter mum mom dad neighbour with without total altogether every take took
    lasted went gone going yes yeah yep yup nope right happened started began begin begins start starts stopped
    """
)
_PLACES: Final = words(
    """
    fridge fridges freezer door power current electricity mains breaker fuse brine tub bucket bag meat core middle
    inside outside room kitchen counter garage cellar basement shed hall car table sink side porch fire flame coals
    coal charcoal pit smoker grill gas lid bacon belly ham brisket flat point pork beef chicken turkey duck fish
    loin piece pieces thermometer display out open opened ajar shut closed close left forgot forgotten cold warm
    warmer hot hotter fine good cool cooled colder failed died dead back returned restored came come home lost ice
    icy crystals frozen thawed soft full got get reached rose climbed read reads reading showed shows sat sitting
    stood standing stayed lay lying relit lit burning leak leaking leaked leaks noticed seen saw unnoticed unplugged
    plugged switched turned tripped cut above below warmest hottest highest set
    """
)
_SAID: Final = _MEASURES | _TIMES | _FILLERS | _PLACES
_AGO: Final = re.compile(r"\bago\b")
_BEGAN: Final = re.compile(  # what tells since when it can have been so; «shut it an hour ago» tells its end
    r"\b(?:since|start\w*|began|begins?|happened|fine|ok|okay|cold|cool|good|open\w*|left|forgot|went|failed|died"
    r"|out|off|cut|tripped|lost|unplugged|colder|leak\w*)\b"
)
_ENDED: Final = re.compile(r"\b(?:shut|closed?|back|plugged|restored|returned|relit|out of|turned|switched|set|took)\b")


def off_the_point(text: str) -> bool:
    """Whether a line tells a time of something else than how long it went wrong."""
    return any(map(_foreign, _PARTS.split(text)))


def _foreign(part: str) -> bool:
    if not (spans.SPAN.search(part) or lasting.SINCE.search(part)):
        return False
    if _AGO.search(part) and (_ENDED.search(part) or not (_BEGAN.search(part) or _alone(part))):
        return True
    return any(word not in _SAID for word in _WORD.findall(part.replace("'", "")) if word != "ago")


def _alone(part: str) -> bool:
    """«about an hour ago, i think»: nothing but the time."""
    return all(word in _MEASURES | _TIMES | _FILLERS for word in _WORD.findall(part))
