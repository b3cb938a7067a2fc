"""Words that carry nothing, so that what is left tells whether a line is about what a reader looks for."""

from typing import Final

from core import patterns as re

_WAKES: Final = re.compile(
    r"\b(?:stop|quit|dont|never|no more) (?:buzz|ping|wak|r[iu]ng|messag|bother|call|text)\w* (?:me |us )?(?:up )?"
    r"(?:so |this |that )?(?:at|before|in the|during|early|late)\b"
)


def words(listed: str) -> frozenset[str]:
    """A list of words written as words."""
    return frozenset(listed.split())


SMALL: Final = words(
    """
    the and for with about around some want wanna going gonna like make making start starting doing plan new batch
    begin please pls hello hey got have has had bought need ready its this that these those them they then than there
    here now just only also too both each all one you your our ours his her was were are been being will would can
    could should may might must did does dont not but from into onto out off over under again still yet already back
    after before when while until till since really very bit little lot more less much many how what why who him she
    himself myself yes yeah yep okay sure thanks thank nice good great fine right well maybe actually probably think
    guess today tomorrow yesterday tonight morning evening night noon lunch dinner supper breakfast meal saturday
    sunday monday tuesday wednesday thursday friday week weekend next last first hour hours min mins minute minutes day
    days lets let use using used swap switch change set put instead rather also mine ive weve theyre thats ill were im
    go get meat piece pieces brisket flat point pastrami bag tub whole thing stuff it is in on at of to a an my me i we
    us so as or if no looks look looking seems feels feel smells smell tastes taste fresh nicely finally properly again
    quite pretty kind sort said say says degrees degree temp temps temperature celsius fahrenheit kilos kilo pounds
    pound grams gram inches inch thick thickness weight weighs cure curing cured brine salt sugar pink percent strength
    comes came exactly contains sodium
    cant tell unsure dunno know packet label fridge pit smoker cooker grill fire meal eat eating guests family
    """
)
_WORD: Final = re.compile(r"[^\W\d_]{3,30}")
IF: Final = re.compile(r"\bif\b")
ASKS: Final = re.compile(  # a line that asks by its mark or its first word, whatever it asks
    r"\?|^(?:(?:what|why|how|when|where|who|which)s?|can|could|may|should|shall|do|does|did|is|are|will|would)\b"
)
_GOT_TO: Final = (
    r"(?: (?:gone|got|gotten|been|come|climbed|still|already|even|ever|get|go|hit|reach(?:ed)?|passed|past|up|down|to"
    r"|above|over|under|below|at|close))*"
)
IS_IT: Final = re.compile(  # «is 149 safe to eat», «is it above 140 yet» were read nowhere
    r"(?:(?:so|and|ok) )*(?:(?:is|are|was|would|can|does) (?:an? )?\d"
    rf"|(?:is|has|was|did|does|will|are) (?:it|that|this|they|(?:the |my )?(?:core|meat|middle|inside)){_GOT_TO} \d)"
)


def content(text: str) -> list[str]:
    """The words of a plain text that carry something, in order."""
    return [word for word in _WORD.findall(text) if word not in SMALL]


def wakes(text: str) -> bool:
    """Whether a line complains of the hour at which it was called, and asks for no pause till then."""
    return bool(_WAKES.search(text))
