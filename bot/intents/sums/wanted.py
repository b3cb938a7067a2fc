"""What a question wants by its words where its figures do not say it: meat for a cure, a price, a height, a kilo."""

from dataclasses import dataclass
from typing import Final

from bot import measures
from bot.intents.rates import shares
from bot.intents.sums.told import Told
from core import patterns as re
from core.units import Fraction, Kilograms

_RAW_FOR: Final = re.compile(  # «how much raw belly to end up with 3 lb», «need 3 kg cooked what do i buy»
    r"\b(?:for|to get|to have) \d[\d.]* ?(?:kg|kilos?|lbs?|pounds?) (?:of )?(?:cooked|finished|done|sliced)\b.*\braw\b|"
    r"\bhow (?:much|many \w+) raw\b.*\bfor \d[\d.]* ?(?:kg|kilos?|lbs?|pounds?)\b|"
    r"\b(?:how much|how many|what)\b.*\b(?:to|for|so i|that) (?:end up with|get|make|have|yield|give(?: me)?) "
    r"(?:about |me )?\d[\d.]* ?(?:kg|kilos?|lbs?|pounds?)\b(?! of (?:meat|salt|brine|water))"
    r"|\b(?:need|want) \d[\d.]* ?(?:kg|kilos?|lbs?|pounds?) (?:of )?(?:cooked|finished|done|sliced)\b"
    r".*\b(?:buy|raw|get|how (?:much|many|big))\b"
)
_FEEDS_THEM: Final = re.compile(  # «will 9 lb feed 14»: yes or no
    r"^(?:will|does|do|is|are|can|would)\b.*\b(?:feed|serve|do for|stretch|enough)\b"
)
_RASHERS: Final = re.compile(r"\bhow many (?:\d+ ?(?:g|grams?) )?(?:\w+ )?(?:rashers|strips|slices)\b")
_FEEDS: Final = re.compile(
    r"\b(?:feeds?|serves?|portions|servings)\W*$|\bhow many (?:people|ppl|guests|heads|mouths|eaters)\b"
)
_MEAT_ASKED: Final = re.compile(
    r"\b(?:how (?:much|many (?:kg|kilos?|lbs?|pounds?)(?: of)?)|what weight of) (?:meat|brisket|pork|beef|belly)\b"
    r"|\bcures? how (?:much|many)\b"
    r"|\bcure\b.*\bhow many (?:kg|kilos?|lbs?|pounds?)\W*$"
    r"|\bhow many (?:kg|kilos?|lbs?|pounds?) (?:will|does|do|can|would) (?!i get\b)(?=.*\b(?:do|cure|cover|make)\b)"
)
_PRICE: Final = re.compile(
    r"(?<![\d.])(?P<n>\d{1,3}(?:\.\d{1,2})?) ?(?:[$€£]|euros?|eur|dollars?|usd|bucks|quid)? ?(?:a|an|per|/|each) ?"
    r"(?P<unit>kg|kilo|kilogram|lb|pound)\b"
)
_PRICED: Final = re.compile(r"\b(?:cooked|costs?|come (?:out )?at|prices?|pay|cheap\w*|finished|head|each|total)\b")
_A_KILO: Final = re.compile(r"\b(?:per|a|each|every|for 1) (?:kg|kilo)\b|\bg/kg\b")
_BEFORE_AFTER: Final = re.compile(
    r"\b(?:went (?:on|in)|started|raw|before|was)\b[a-z ]{0,8}(?P<before>\d[\d.]*\d|\d)[^\d]{1,24}"
    r"\b(?:came (?:off|out)|took (?:it|them) (?:off|out)|ended|cooked|after|finished|now)\b[a-z ]{0,8}"
    r"(?P<after>\d[\d.]*\d|\d)"
)
_BEFORE_THEN_AFTER: Final = re.compile(  # «3.63 kg before i injected and 3.92 after»
    r"(?P<before>\d[\d.]*\d|\d) ?(?:kg|kilos?|lbs?|pounds?)? before\b[^\d]{0,24}?(?P<after>\d[\d.]*\d|\d)"
    r" ?(?:kg|kilos?|lbs?|pounds?)? after(?:wards?)?\b"
)
_OUT_OF: Final = re.compile(  # «1.8 kg cooked out of 3.3», «2.9 kg left from 3.3»
    r"(?P<after>\d[\d.]*\d|\d) ?(?:kg|kilos?|lbs?|pounds?)? (?:cooked|left|finished|sliced|remain\w*) "
    r"(?:out of|from|of) (?:an? |the |my )?(?P<before>\d[\d.]*\d|\d)"
)
_AFTER_BEFORE: Final = re.compile(  # «came off at 2.3 kg was 3.9 raw»
    r"\b(?:came (?:off|out)|took (?:it|them) (?:off|out)|ended|weighs?|now|is|cooked|after)\b[a-z ]{0,8}"
    r"(?P<after>\d[\d.]*\d|\d)[^\d]{1,20}"
    r"\b(?:was|from|went (?:on|in)|started|before|raw)\b[a-z ]{0,8}(?P<before>\d[\d.]*\d|\d)"
)


_WENT_FROM: Final = re.compile(  # «went from 2.2 to 1.98 kg», «3.4 kg raw came out 1.95»
    r"(?:\b(?:went|go|gone|down) from |^)(?P<before>\d[\d.]*\d|\d) ?(?:kg|kilos?|lbs?|pounds?)?"
    r"(?: (?:raw|green|before),?(?: (?:it )?(?:came (?:off|out)|ended|cooked))?(?: at)?| to) "
    r"(?P<after>\d[\d.]*\d|\d)(?! ?(?:c|f|in|mm|h|min|days?)\b)"
)
_IN_OUT: Final = re.compile(  # «4.1 kg in 2.3 out»
    r"(?P<before>\d[\d.]*\d|\d) ?(?:kg|kilos?|lbs?|pounds?)? (?:went |raw |going )?in\b[^\d]{0,12}"
    r"(?P<after>\d[\d.]*\d|\d) ?(?:kg|kilos?|lbs?|pounds?)? (?:came |cooked )?(?:out|off)\b"
)
_LOST_MASS: Final = re.compile(
    r"\b(?:lost|loses?|shrank by|dropped|down)(?: about| only| some| by)* \d[\d.]* ?(?:kg|g|grams?|lbs?|pounds?|oz)\b"
    r"(?=.*\b(?:from|of|out of|was|raw|began|started)\b)"
)
NEEDLED: Final = re.compile(r"\b(?:inject|pump|pick-?up)\w*\b")
_INTO_THE_MEAT: Final = re.compile(  # «injected 380 g into 4 kg», «5.0 kg, now 5.4 after pumping», «weighs after»
    r"\bhow much (?:brine|pickle|liquid)\b|\d ?(?:g|grams?|oz|ounces?) (?:in|into|to|on)\b"
    r"|\b(?:now|after|before)\b|\bpickle (?:weight|and)\b"
)
_BOTH_ENDS: Final = re.compile(
    r"\b(?:in|out|off|raw|green|cooked|start(?:ed|ing)?|began|finish(?:ed)?|ended|came|comes|went|was|were|now"
    r"|before|after"
    r"|from|down to|left|yield|weighed|weighs)\b"
)
_A_POUND: Final = re.compile(r"\b(?:per|a|each|every|for 1) (?:lb|pound)\b")
_LOST: Final = re.compile(
    r"\b(?:lost|loses?|losing|loss(?: of| is| was)?|shr[aiu]nk|shrinkage(?: of| is| was)?|dropped|shed)"
    r"(?: by| about| only| its| some)* "
    r"(?P<n>\d{1,2}(?:\.\d)?) ?(?:%|percent|pct)|(?<![\d.])(?P<m>\d{1,2}(?:\.\d)?) ?(?:%|percent|pct)"
    r" (?:weight |of its weight )?(?:loss|lost|shrinkage|lighter|gone|down|off|drop)\b"
)
_MONEY: Final = re.compile(
    r"[$€£] ?(?P<n>\d{1,4}(?:\.\d{1,2})?)|(?<![\d.])(?P<m>\d{1,4}(?:\.\d{1,2})?) ?(?:[$€£]|dollars?|bucks|euros?|quid)"
)
_BY_HEADS: Final = re.compile(
    r"\b(?:a head|each|(?:per|a|each|by the) (?:plate|portion|serving|head|person|sandwich|guest|mouth))\b"
)
_PRICE_BARE: Final = re.compile(r"(?<![\d.])(?P<n>\d{1,2}\.\d\d) ?(?P<unit>kg|kilo|lb|pound)\b")  # «brisket 5.99 lb»
_PAID: Final = re.compile(
    r"(?:\b(?:paid|spent|costs?(?: me)?|priced? at|was|for) ?[$€£]?|^[$€£] ?)"
    r"(?P<n>\d{1,3}(?:\.\d{1,2})?) ?(?:[$€£]|euros?|dollars?"
    r"|bucks|quid|pounds sterling)? (?:for|on) (?:an? |the |my )?(?P<mass>\d{1,2}(?:\.\d{1,2})?) ?"
    r"(?P<unit>kg|kilos?|lbs?)\b"
)
_COST: Final = re.compile(
    r"(?<![\d.])(?P<mass>\d{1,2}(?:\.\d{1,2})?) ?(?P<unit>kg|kilos?|lbs?|pounds?)\b[a-z ]{0,16}\b(?:costs?|was|for|at)"
    r"(?: me)? ?[$€£]?(?P<n>\d{1,3}(?:\.\d{1,2})?) ?(?:[$€£]|euros?|dollars?|bucks|quid)"
)
_BY_THE_PLATE: Final = re.compile(
    r"\b(?:per|a|each|every|by the) (?:plate|portion|serving|head|person|sandwich|guest)\b"
)

_SALT_TOO: Final = re.compile(
    r"(?<!curing )(?<!pink )(?<!nitrite )(?<!prague )(?<!cure )(?<!no )\bsalt\b"
    r"|\bcure salt(?=,? (?:and|n|&|plus|sugar)\b)|\bkosher\b"
)
_SUGAR_TOO: Final = re.compile(r"(?<!no )(?<!without )\b(?:sugar|honey|syrup)\b")
_CURE_TOO: Final = re.compile(  # by its own noun: «salt for a 2 kg dry cure» wants none of it
    r"(?<!\w)# ?1\b|\b(?:pink|nitrite|curing salt|prague)\b"
    r"|\bcure,? (?:and|n|&|plus) |(?:\b(?:and|n|plus)|&),? (?:the )?cure\b"
    r"|\bcure,? salt,? (?:and |n |& )?sugar\b|\b(?:salt|sugar),? cure\b|\bcure \+"
)


WISHED: Final = (0.01, 0.04)  # of salt in meat: saltier nobody eats it, and a packet is as strong. Common practice


def beside_the_cure(text: str) -> frozenset[str]:
    """The plain salt and the sugar that a line names beside its curing salt."""
    wanted = (("salt", _SALT_TOO), ("sugar", _SUGAR_TOO))
    return frozenset(name for name, words in wanted if words.search(text))


def salt_wished(line: Told) -> Fraction | None:
    """The share of salt that is wished beside a dose, where plain salt is named; no packet's strength."""
    named = "salt" in beside_the_cure(line.text)
    own = (f for f in line.fractions if WISHED[0] <= f <= WISHED[1] and f != line.strength)
    return next(own, None) if named else None


def whole_mix(line: Told) -> bool:
    """Whether curing salt is asked for together with plain salt or sugar, and nothing of them is weighed."""
    weighed = line.salt or line.sugar or line.cure or shares(line.text)
    return line.has("meat") and not weighed and bool(_CURE_TOO.search(line.text)) and bool(beside_the_cure(line.text))


def bare_grams(text: str) -> float | None:
    """A dose without its unit, as «need 4.3». [g]"""
    found = re.search(r"\b(?:need|dose(?: is| of|:)?|weigh(?: out)?) (\d{1,3}(?:\.\d{1,2})?)(?![\d ]*(?:kg|lb))", text)
    return float(found[1]) if found else None


_GRAMS: Final = r"(\d{1,3}(?:\.\d{1,2})?)(?! ?(?:k|lb|oz|%|percent|t)|[\d.])"
_SHOULD_BE: Final = re.compile(
    rf"\b(?:need\w*|dose(?: is| of| says)?|should(?:ve| have)?(?: be(?:en)?)?|supposed to be|meant to be|instead of"
    rf"|not|wanted"
    rf"|calls? for|says to put|target(?: is)?) {_GRAMS}"
)
_WEIGHED: Final = re.compile(
    rf"\b(?:scales? (?:says?|shows?|reads?)|weighed(?: out| in)?|got(?: to)?|came to|comes to|put(?: in)?|used|have"
    rf"|went in)"
    rf"(?: only| about| just)? {_GRAMS}|{_GRAMS} ?(?:g|grams?)?(?: of)?(?: the)?(?: cure| pink"
    rf"| curing salt)? (?:instead of|not)\b"
)
_ALIKE: Final = (0.5, 2.0)  # times the dose; further off it is the step of a scale, or of something else


def weighed_instead(text: str) -> tuple[Kilograms, Kilograms] | None:
    """A dose, and what was weighed in its place: «need 9.0 cure, scale says 8.7»."""
    dose, got = _SHOULD_BE.search(text), _WEIGHED.search(text)
    if dose is None or got is None or re.search(r"\b(?:steps?|jumps?|increments?|rounds?|whole)\b", text):
        return None
    wanted, weighed = float(dose[1]), float(got[1] or got[2])
    near = wanted and _ALIKE[0] <= weighed / wanted <= _ALIKE[1] and weighed != wanted
    return (wanted / 1000.0, weighed / 1000.0) if near else None


_KEPT: Final = re.compile(
    r"\b(?:get|yield\w*|keeps?|left with|ends? up (?:at|with)|comes? out(?: at)?)\D{0,10}(?P<n>[3-9]\d(?:\.\d)?)"
    r" ?(?:%|percent)|\byield(?:s|ed|ing)?(?: is| of| was)? (?P<m>[3-9]\d)(?!\d|\.\d|%| ?(?:percent|kg|lbs?|g|f|c)\b)"
)


def by_unit(text: str) -> Kilograms | None:
    """The kilo or the pound of meat that something is asked for; None where it is for none of them."""
    if by_the_kilo(text):
        return 1.0
    return measures.to_house(1.0, "lb") if _A_POUND.search(text) else None


def meat_asked(text: str) -> bool:
    """Whether the meat is what is asked for."""
    return bool(_MEAT_ASKED.search(text))


@dataclass(frozen=True)
class Price:
    """What a kilo or a pound costs, and all of it where that was told, in whatever money."""

    each: float
    unit: str
    whole: float | None = None


def price(text: str) -> Price | None:
    """What a kilo or a pound costs: «9.99 a lb», «18 euros per kilo», «paid 48 for 4 kg»."""
    paid = (_PAID.search(text) or _COST.search(text)) if _PRICED.search(text) or _BY_THE_PLATE.search(text) else None
    if paid:
        whole = float(paid["n"])
        return Price(whole / float(paid["mass"]), _unit(paid), whole)
    found = _PRICE.search(text) if _PRICED.search(text) or _BY_THE_PLATE.search(text) else None
    if found is None and ("cost" in text or "price" in text):
        found = _PRICE_BARE.search(text)
    return Price(float(found["n"]), _unit(found)) if found else None


def _unit(found: re.Match[str]) -> str:
    return "kg" if found["unit"].startswith("k") else "lb"


def by_the_plate(text: str) -> bool:
    """Whether a price is asked for by the plate."""
    return bool(_BY_THE_PLATE.search(text))


def share_kept(text: str) -> Fraction | None:
    """The share of its weight that somebody has left, «if i get 55 %»."""
    found = _KEPT.search(text) if "%" in text or "percent" in text else None
    return float(found["n"] or found["m"]) / 100.0 if found else None


def share_lost(line: Told) -> Fraction | None:
    """The share that a cook or a cure took, «lost 45 percent»."""
    found = _LOST.search(line.text)
    return float(found["n"] or found["m"]) / 100.0 if found else None


def cost_each(text: str, people: int | None) -> float | None:
    """What each pays, where the money and the mouths or portions are told, and no weight is."""
    found = _MONEY.search(text) if people and _BY_HEADS.search(text) else None
    return float(found["n"] or found["m"]) / people if found and people else None


def height_asked(line: Told) -> bool:
    """Whether the height of a place is asked for by what water boils at there."""
    boils = len(line.temperatures) == 1 and 80.0 <= line.temperatures[0] <= 100.5 and "boil" in line.text
    words = r"\b(?:how high|height|altitude|elevation)\b|\b(?:my|our) water boils\b|\bboils at \d+ here\b"
    return boils and bool(re.search(words, line.text))


def kilos_asked(text: str) -> bool:
    """Whether a weight is wanted in kilos, whatever somebody else reads."""
    return bool(re.search(r"\b(?:in|how many) (?:kg|kilos?|kilograms?)\b", text))


def by_the_kilo(text: str) -> bool:
    """Whether something is told for a kilo of meat."""
    return bool(_A_KILO.search(text))


def of_the_table(line: Told) -> str:
    """The sum of the table that the words of a line ask for, whatever else its weights allow; "" where none is.

    The raw weight by what it shall be cooked, what two weights of one piece come to, or how many a piece feeds.
    """
    feeds = line.people is not None and line.has("meat") and _FEEDS_THEM.search(line.text)
    if feeds or _RAW_FOR.search(line.text):
        return "shopping"
    if NEEDLED.search(line.text) and _INTO_THE_MEAT.search(line.text):
        return "inject"
    pair = weights(line) if len(_BOTH_ENDS.findall(line.text)) > 1 else None
    if pair is not None and 0.3 * max(pair) <= min(pair) < max(pair) and "recipe" not in line.text:
        return "loss"
    if _RASHERS.search(line.text) and line.has("meat") and line.people is None:
        return "portions"
    return "portions" if line.people is None and _FEEDS.search(line.text) else ""


def weights(line: Told) -> tuple[float, float] | None:
    """Before and after, in one unit whichever: «went on at 4.1 came off 2.4», «lost 350 g from 2.9 kg»."""
    if len(line.meats) == 2 and _LOST_MASS.search(line.text):
        return max(line.meats), max(line.meats) - min(line.meats)
    if len(line.meats) == 2:
        return line.meats[0], line.meats[1]
    ways = (_BEFORE_THEN_AFTER, _OUT_OF, _IN_OUT, _WENT_FROM, _BEFORE_AFTER, _AFTER_BEFORE)
    found = next((found for words in ways if (found := words.search(line.text))), None)
    return (float(found["before"]), float(found["after"])) if found else None
