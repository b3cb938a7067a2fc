"""Questions about the cure itself: is this mix right, what would one more day do, how long to soak, what the law says.

And the one that is no question: somebody ate curing salt.
"""

from dataclasses import dataclass
from typing import Final

from bot import measures
from bot.intents.context import UNCOOKED, Context
from bot.intents.intents import Ask, Intent
from bot.intents.meats import meat
from bot.intents.pouring import poured_of, pours
from bot.intents.rates import BRINE, OF_NO_MIXTURE, rate, shares
from bot.intents.strengths import stock, swapped
from bot.intents.tastes import taste
from bot.intents.waits import covers
from bot.intents.weights import pieces
from bot.intents.what_if import read_what_if
from core import patterns as re
from core.cure.contents import STRONG_CURES
from core.cure.dose import from_teaspoons
from core.units import Fraction, Kilograms

_OF_WOOD: Final = re.compile(r"\b(?:wood|chips?|chunks?|logs?|spices?|beans?)\b")
_SOAK_ASKED: Final = re.compile(
    r"^(?:(?:should|shall|can|do|must) (?:i|we) )?(?:need to )?soak(?: (?:it|the meat|them))?(?: for)?(?: \d.*)?\?$"
    r"|^(?:(?:ok|ill|i will|gonna|going to|im|lets|then|just) )*soak (?:it|them|the meat)(?: (?:then|now|overnight"
    r"|first))*$|\bsoak(?:ing)?(?: (?:it|them|the meat|then|now|first))*[?,.;]* (?:and |so )*(?:for )?how long\b"
)
_SOAK: Final = re.compile(
    r"\b(?:how long|should i|do i (?:need|have) to|when do i|must i)\b.{0,30}\bsoak\w{0,3}\b|^soak(?:ing)?\??$"
    r"|^(?:(?:its|it is|im|now|ok|meats?|meat is|is) )*soaking(?: it| them| now| the meat| in (?:the |cold |fresh )?"
    r"(?:water|fridge)| since (?:about )?\d{1,2}(?:[:.]\d\d)?(?: ?[ap]m)?)*$"
    r"|\bsoak (?:it )?(?:to|down to|until) \d|\bhow long in (?:fresh|clean|cold) water\b"
)
_TOO_SALTY: Final = re.compile(r"\b(?:too|very|really|a bit|bit too|way too|quite) salty\b|\bover ?salted\b")
_RINSED: Final = re.compile(r"\b(?:rinsed|soaked|washed)\b.{3,}")  # done first; what it tastes like goes with it
_LAW: Final = re.compile(
    r"\bwhat (?:does|do) (?:the )?(?:law|rules?|regulations?)\b"
    r"|\bwhat(?:s| is| are) the (?:legal )?(?:nitrite |nitrate )?limits?\b"
    r"|^(?:the )?(?:law|limits?|nitrite limits?)\??$|\bhow much nitrite is (?:allowed|legal|the limit)\b"
)
_CURING: Final = (
    r"(?:pink(?: curing)? salt|curing salt|cure(?: ?#? ?[12])?|nitrite|saltpet\w{1,3}"
    r"|prague(?: powder)?(?: ?#? ?[12])?)"
)
ATE: Final = re.compile(
    rf"\b(?:ate|eaten|swallowed|drank|licked|tasted|got into|mistook)\b.{{0,30}}\b(?:{_CURING}|pickle|the brine)\b"
    r"|\bblue lips\b|\blips (?:are |went |turned )?blue\b|\bnitrite poison\w{0,3}\b|\bpoison(?:ed|ing)\b"
)
LEAST_PUMP: Final = 0.08  # no curing salt is so strong
_NEAR: Final = 26
_OF_CURE: Final = re.compile(
    rf"^ ?(?:(?:bag|pack(?:et)?|tub|jar|pouch)s? )?(?:of )?(?:level |heaped )?(?:the )?(?:\d[\d.]* ?%? )?"
    rf"(?:(?:{_CURING}|pink(?! (?:himalayan|rock|sea|peppercorns?)))\b|(?:# ?|no\.? ?|number )[12]\b)"
    r"|^ ?of (?:the )?(?:6\.25|5\.88|0\.[4-6]) ?(?:%|percent)"
)
_BARE_STRENGTH: Final = re.compile(  # «cure 6.25», and the two that everybody knows
    rf"\b{_CURING} ?(?:of |with |at )?(?P<n>\d{{1,2}}\.\d{{1,2}})(?![\d.]| ?(?:kg|g|lb|oz|l)\b| ?%| ?percent)"
    r"|(?<![\d.])(?P<usual>6\.25|5\.88)(?![\d.])(?! ?(?:kg|g|lb|oz|in|cm|mm|l|h)\b)"
)
_NITRITE: Final = re.compile(r"\bnitrite\b")
_PACKET: Final = re.compile(r"\b(?:cure|curing salt|packet|label)(?: (?:is|says|has|reads|of|at))?[^,;\w]{0,3}$")
_SALT_ASKED: Final = re.compile(
    r"^(?!.*\b(?:cure|curing|pink|nitrite|prague)\b).*(?:\bhow (?:much|many \w+(?: of)?) (?:\w+ )?salt\b"
    r"|\d ?(?:%|percent),? salt(?: weight| amount)?\W*$)"
)
_PLAIN_SALT_ASKED: Final = re.compile(  # beside curing salt that is weighed already
    r"\bhow (?:much|many g(?:rams?)?(?: of)?) (?:plain |table |kosher |sea |other |normal )?salt\b"
)
_SOLD: Final = ((0.002, 0.0095), (0.055, 0.0665))  # the nitrite in curing salts
OF_SALTS: Final = (0.0095, 0.0545)  # a share that only plain salt and sugar have, unless nitrite stands beside it
_OF_ANOTHER: Final = re.compile(
    r"^ ?(?:of )?(?:(?!curing|nitrite|pink)\w+ )?(?:salt\b(?! with)|brine|sugar|yield|fat|pickle)"
)
_OF_OTHERS: Final = re.compile(  # «sugar 0.5 % cure 0.25 %»: a share stands behind its name
    r"(?<!curing )(?<!pink )(?<!nitrite )(?<!cure )\b(?:salt|sugar|honey):?(?: at| of)? ?$"
)
_SALOMETER: Final = re.compile(r"\bsali?n?ometer\b")
_OF_BRINE: Final = re.compile(r"\bbrine(?: of| at| is)? ?$")
_OF_SALT: Final = re.compile(r"^ ?(?:of )?(?:\w{3,7} )?(?:salt|sugar)\b")
_SPOON: Final = ("tsp", "tbsp")
_POURED_TOO: Final = re.compile(r"\b(?:add\w*|another|more|extra|topped|poured|put in|then)\b")
_WET: Final = re.compile(r"\b(?:water|brine)\b")
_NEEDLE: Final = re.compile(r"\b(?:inject(?:ed|ing?|ion)?|pump(?:ed|ing?)?|pick-?up)\b")
_TWICE: Final = re.compile(
    r"\b(?:so did|as did|and (?:then )?i did too|me too|(?:twice|two times)(?! (?:a|every|each) day| daily)|both of us"
    r"|we both|each of us|did it too|(?:put|added|dosed|went)(?: \w+){0,3} again|(?:the )?same again"
    r"|added (?:it|that) too|doubled (?:it|the dose))\b"
)
_MINCED: Final = re.compile(
    r"\b(?:minced?|ground (?:meat|pork|beef|turkey|chicken|lamb|venison)|(?:meat|pork|beef) ground|sausages?|comminuted"
    r"|burgers?|hackfleisch)\b"
)
_HOW_MUCH: Final = re.compile(
    rf"\b(?:how (?:much|many grams(?: of)?)|what (?:dose|amount)(?: of)?)\b.{{0,16}}\b(?:{_CURING}|dose)\b|^dose\b"
)
_EACH: Final = re.compile(r"\b(?:per|a|an|each|every) (?=(?:kg|kilo|kilogram|lb|pound)\b)")
_WAYS: Final = (
    ("comminuted", _MINCED),
    ("inject", _NEEDLE),
    ("dry", re.compile(r"\bdry\b")),
    ("brine", re.compile(r"\b(?:brine|wet|pickle|water)\b")),
)
_CURE_BEFORE: Final = re.compile(rf"\b{_CURING}:? (?:is |was |weighs |at |of )?$")
_MOST_BEHIND: Final = 0.05  # kg; more behind the word is meat: «cure 300 g of salmon»
_MOST_CURE: Final = 0.4  # kg; «1.8 kg cure total» is of the meat
_MOST_WATER: Final = 100.0  # l
LEAST_MEAT: Final = 0.05  # kg
_RECIPE_FOR: Final = re.compile(  # or the plain salt beside a cure
    rf"\brecipe\b.*\b(?:i (?:only )?(?:have|got)|ive (?:only )?got|mine|to|my)\b.*\d|{OF_NO_MIXTURE}"
)
MOST_MEAT: Final = 30.0  # kg


@dataclass(frozen=True)
class Mixture:
    """A cure as somebody tells it. `cure` is its low and its high mass, alike where it was weighed. [kg]

    `water` is None where there is none (dry), `strength` where the words do not say it. `pump` is the share of the meat
    that is injected, None without a needle and 1 where no share was said: all of the pickle then. `covered`: the rest
    of the pickle lies about it.
    """

    cure: tuple[Kilograms, Kilograms]
    meat: Kilograms
    water: Kilograms | None
    salt: Kilograms
    strength: Fraction | None
    spoons: float | None
    pump: Fraction | None = None
    covered: bool = False
    minced: bool = False

    @property
    def method(self) -> str:
        """How it was cured, as a limit knows it."""
        if self.water is None:
            return "comminuted" if self.minced else "dry"
        return "brine" if self.pump is None else "inject"


def _about_a_soak(text: str, context: Context) -> bool:
    """«soak 30 min?», «should i soak it», and what is too salty once it is out; never the wood."""
    if _OF_WOOD.search(text):
        return False
    at_hand = context.phase in ("curing", "drying") and _SOAK_ASKED.search(text)
    salty = context.phase == "drying" and (_TOO_SALTY.search(text) or taste(text) == "tastes salty")
    return bool(_SOAK.search(text) or at_hand or (salty and not _RINSED.search(text)))


def read_cures(text: str, context: Context) -> Intent | None:
    """A question about the cure, where a plain text is one."""
    if ATE.search(text):
        return Ask("poison", text=text)
    judged = mixture(text) is not None and not _PLAIN_SALT_ASKED.search(text)
    if judged and swapped(text) is None and stock(text) is None:
        return Ask("judge", text=text)
    if _LAW.search(text):
        return Ask("law", text=text)
    if context.phase != "none" and _about_a_soak(text, context):
        return Ask("soak", text=text)
    return read_what_if(text) if context.phase in UNCOOKED else None


def times(text: str) -> int:
    """How many times over a dose went in: «8 g, and so did i» is twice."""
    return 2 if _TWICE.search(text) else 1


def mixture(text: str) -> Mixture | None:
    """«5 tsp in 1 gal water for 5 lb»: cure, water and meat; None where one of them is missing, or how much water."""
    found = [m for m in measures.find(text) if m.low is None and m.value > 0]
    cure = next((m for m in found if is_cure(text, m, found)), None)
    wholes = [m for m in found if m.kind == "mass" and m is not cure and m.value >= LEAST_MEAT]
    whole = next((m for m in wholes if not _of_another(text, m)), None)
    if cure is None or whole is None or len(found) > 6 or _RECIPE_FOR.search(text) or rate(text) is not None:
        return None
    waters = poured(text, poured_of(text, [m for m in found if m is not cure]))
    water = next(iter(waters), None)
    if water is None and _WET.search(text):
        return None
    salt = sum(m.value for m in found if m.kind == "mass" and m not in (cure, whole) and _OF_SALT.match(text[m.end :]))
    pumped = None if water is None else pumped_share(text, found)
    spoons = measures.from_house(cure.value, "tsp") if cure.unit in _SPOON else None
    weighed = (cure.value, cure.value) if spoons is None else from_teaspoons(spoons)
    weighed = (times(text) * weighed[0], times(text) * weighed[1])
    litres = sum(m.value for m in waters) or None  # a litre of cold water is a kilo
    litres = None if litres is None or litres > _MOST_WATER else litres
    strength = strength_told(text, found)
    needled = litres is not None and bool(_NEEDLE.search(text))
    pump = pumped.value if pumped else 1.0 if needled else None
    all_of_it, covered = sum(pieces(text, whole)), needled and covers(text)
    return Mixture(weighed, all_of_it, litres, salt, strength, spoons, pump, covered, bool(_MINCED.search(text)))


def poured(text: str, water: list[measures.Measure]) -> list[measures.Measure]:
    """The water of a mix: all of it where a line tells that more came to it, else the first that is told."""
    return water if _POURED_TOO.search(text) else water[:1]


@dataclass(frozen=True)
class WantedDose:
    """«how much cure for 2 kg minced»: the meat, and what the words say of the way and the strength.

    `method` is "" where they do not say how, `product` where they do not say of what; `water` None where no water is
    said. [kg, -]
    """

    meat: Kilograms
    method: str
    product: str
    strength: Fraction | None
    water: Kilograms | None


def wanted_dose(text: str) -> WantedDose | None:
    """A question for the curing salt of so much meat, where a plain text is one."""
    if not _HOW_MUCH.search(text):
        return None
    text = _EACH.sub("per 1 ", text)
    found = measures.find(text)
    masses = [m for m in found if m.kind == "mass" and m.low is None and 0 < m.value <= MOST_MEAT]
    if len(masses) != 1 or any(m.kind == "ppm" for m in found):  # a level of one's own is a sum, and judged
        return None
    water = next((m.value for m in poured_of(text, found) if 0 < m.value <= _MOST_WATER), None)
    method = next((name for name, words in _WAYS if words.search(text)), "brine" if water else "")
    return WantedDose(sum(pieces(text, masses[0])), method, meat(text).product, strength_told(text, found), water)


def strength_told(text: str, found: list[measures.Measure]) -> Fraction | None:
    """The nitrite share of a curing salt that a line tells, with its sign or without."""
    share = nitrite_share(text, [m for m in found if m.kind == "fraction"])
    return share.value if share else bare_strength(text)


def nitrite_share(text: str, shares: list[measures.Measure]) -> measures.Measure | None:
    """The percentage that is the nitrite of a curing salt, and not salt, sugar, a pickle or what is injected."""
    pump = pumped_share(text, shares)
    return next((m for m in shares if m is not pump and _is_nitrite(text, m)), None)


def _is_nitrite(text: str, m: measures.Measure) -> bool:
    """By the words beside it, else by its size: 5 % is a brine, unless it is said of a curing salt."""
    if not 0.0 < m.value <= 0.1 or _OF_ANOTHER.match(text[m.end :]) or "cure" in shares(text[m.start :].split(",")[0]):
        return False
    before, behind = text[max(0, m.start - _NEAR) : m.start], text[m.end : m.end + _NEAR]
    if not _NITRITE.search(text) and (_OF_BRINE.search(before) or (m.value not in STRONG_CURES and BRINE.search(text))):
        return False
    if _NITRITE.search(before) or re.match(r"^ ?(?:of )?nitrite\b", behind):
        return True
    if _OF_OTHERS.search(before) or _SALOMETER.search(text):
        return False
    named = _PACKET.search(before) or _OF_CURE.match(behind)
    of_salt = OF_SALTS[0] <= m.value <= OF_SALTS[1]  # «2 % pink salt» is what somebody would put in, and no strength
    if _SALT_ASKED.search(text) and not named and m.value not in STRONG_CURES:
        return False
    return bool(named and not of_salt) or any(low <= m.value <= high for low, high in _SOLD)


def bare_strength(text: str) -> Fraction | None:
    """The nitrite share of a curing salt that is told without its sign: «cure 6.25»."""
    found = _BARE_STRENGTH.search(text)
    share = float(found["n"] or found["usual"]) / 100.0 if found else None
    return None if share is not None and OF_SALTS[0] <= share <= OF_SALTS[1] else share


def pumped_share(text: str, found: list[measures.Measure]) -> measures.Measure | None:
    """The share that is injected: the percentage beside the needle's word, else one too large for a curing salt."""
    shares = [m for m in found if m.kind == "fraction" and m.low is None and 0.02 < m.value <= 0.5]
    beside = next((m for m in shares if _NEEDLE.search(_around(text, m))), None)
    large = (m for m in shares if m.value >= LEAST_PUMP and not _OF_ANOTHER.match(text[m.end :]))
    return beside or (next(large, None) if _NEEDLE.search(text) else None)


def _around(text: str, m: measures.Measure) -> str:
    before = re.split(r"[,;]", text[max(0, m.start - 12) : m.start])[-1]
    return before + " " + re.split(r"[,;]", text[m.end : m.end + 12])[0]


def is_cure(text: str, m: measures.Measure, found: list[measures.Measure]) -> bool:
    """Spoons or a weight of cure by its word, or spoons of nothing named beside water."""
    if m.unit in _SPOON or m.kind == "mass":
        if _OF_CURE.match(text[m.end : m.end + _NEAR]):
            return m.value < _MOST_CURE or m.unit in _SPOON or text[m.end :].startswith(" of ")
        if m.unit in ("g", "oz") and m.value <= _MOST_BEHIND and _CURE_BEFORE.search(text[: m.start]):
            return True  # «cure 11 g for 4.1 kg»
        bare = m.unit in _SPOON and not _OF_SALT.match(text[m.end :])
        return bare and any(pours(other) for other in found) and not re.search(r"\b(?:pepper|spice|rub)\b", text)
    return False


def _of_another(text: str, m: measures.Measure) -> bool:
    rest = text[m.end : m.end + _NEAR]
    return bool(_OF_CURE.match(rest) or _OF_SALT.match(rest) or re.match(r"^ ?(?:of )?(?:water|ice|brine)\b", rest))
