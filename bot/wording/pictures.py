"""What is written on pictures."""

from bot.labels import ChillWords, CookWords, CureWords
from bot.wording.language import say
from core.batch.assess import Assessment

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
NOTHING = "Nothing to show yet"
COOK = CookWords(
    temperature="Temperature",
    core="core, read",
    pit="pit, read",
    expected="core, expected",
    band="8 of 10 cooks",
    pit_set="pit as set",
    target="off at",
    ready="ready",
    stall="stall",
    wrap="wrapped",
    now="now",
    deadline="meal",
)
CURE = CureWords(
    now="Slice now",
    end="Slice when it comes out",
    now_mark="now",
    end_mark="out",
    pink="pink",
    perhaps="perhaps",
    grey="grey",
    all_pink="pink all through",
    fat="fat or skin",
    nitrite="Nitrite in the middle",
    salt="Salt in the middle",
    days="Days in the cure",
    pink_from="pink from",
    salt_wanted="wanted",
    expected="expected",
    band="8 of 10 pieces",
)
CHILL = ChillWords(
    temperature="Temperature",
    core="core, read",
    expected="core, expected",
    band="8 of 10",
    too_warm="too warm",
    now="now",
)
# (hours since it fell below the first corner, °F): FSIS Appendix B option 1, and the Food Code
RULES = (
    ("130-80-40 °F in 1.5 + 5 h", ((0.0, 130.0), (1.5, 80.0), (6.5, 40.0))),
    ("135-70-41 °F in 2 + 4 h", ((0.0, 135.0), (2.0, 70.0), (6.0, 41.0))),
)


def cook_title(a: Assessment) -> str:
    """The title of a cook."""
    return say("«{name}»: the cook so far and ahead", name=a.batch.name)


def chill_title(a: Assessment) -> str:
    """The title of a chill."""
    return say("«{name}»: the chill against the rule", name=a.batch.name)


def cure_title(a: Assessment) -> str:
    """The title of a cure."""
    return say("«{name}»: how far the cure has come", name=a.batch.name)
