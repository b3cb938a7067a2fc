"""What a question brings along: masses and their parts, times, temperatures, the meat. For the sums of a kitchen."""

from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from typing import Final

from bot import measures
from bot.intents.cures import LEAST_MEAT, OF_SALTS, bare_strength, nitrite_share, poured, pumped_share
from bot.intents.doses import SUGAR, cure_told, small
from bot.intents.lengths import bare_thickness, height
from bot.intents.meats import meat
from bot.intents.pouring import poured_of
from bot.intents.weights import pieces
from core import patterns as re
from core.units import Celsius, Fraction, Hours, Kilograms, Metres

_CLOCK: Final = re.compile(
    r"\b(?:at )?(?P<hour>1[0-2]|0?[1-9])(?:[:.](?P<minute>[0-5]\d))? ?(?P<half>am(?! i\b)|pm)\b"
    r"|\b(?:at )?(?P<h24>2[0-3]|[01]?\d)[:.](?P<m24>[0-5]\d)(?: oclock\b|(?<=:[0-5]\d)\b)|\b(?P<word>noon|midnight)\b"
    r"|\b(?:at|by|till?|until|since|around|dinner|lunch|supper|woke(?: up)?(?: at)?|now its|its now"
    r"|its(?= (?:1[0-2]|[1-9]),? (?:now|already|core|and (?:core|meat|it))\b)|now(?= \d{1,2},? (?:its|it is|core"
    r"|and its|(?:the )?(?:fire|pit"
    r"|coals?|smoker)(?! at)\b)\b)) "
    r"(?P<bare>1[0-2]|[1-9])"
    r"(?!\d|\.\d|[:/%°]| ?(?:to(?! \d{2,3}(?: ?[cf])? at\b)|or|x|a|an|per|percent|pct|degrees?|deg"
    r"|[cf]|k?g|kilos?|lbs?|pounds?|oz|mm|cm|inch\w*|ml"
    r"|l|lit\w+|h|hrs?|hours?|min\w*|days?|weeks?|ppm|tsp|tbsp|cups?|people|ppl|guests)\b(?! (?:eat|meat)\b)| \d/| ?%)"
    r"(?: oclock)?"
)
_BARE: Final = re.compile(
    r"(?<![\w.,/])(?:(?<!~ )\d{2}|\d{3})(?:\.\d)?(?![\w/%]|[.,]\d)(?! ?(?:people|guests|persons|min|h\b|g\b))"
)
_METRIC: Final = frozenset({"kg", "g", "mm", "cm", "l", "ml"})
_FAHRENHEIT_FROM: Final = 105.0  # no core is so hot in °C: a bare number from here on is °F
_WARM, _FREEZES_F = 45.0, 33.0  # of readings in °F none begins so cold and ends as ice
_CAME_OFF: Final = re.compile(  # no meat does so in °F
    r"\b(?:off|pulled|pull) at (?:[6-9]\d)(?![\d:.%]| ?(?:f|am|pm|min\w*)\b)"
)
_HELD_C: Final = (54.0, 68.0)  # a core that somebody times: as °F it is meat from the fridge
_HELD: Final = re.compile(
    r"(?=.*\b(?:min\w*|h|hours?|secs?|seconds?)\b).*\b(?:held|hold\w*|kept|sat|stood|was|been|core|middle|inside|internal"
    r"|probe|reads?|at)\b"
)
_PEOPLE: Final = re.compile(
    r"\b(?P<n>\d{1,3}) ?(?:(?:hungry|big|small|rugby|grown) )?(?:people|peeps|guests?|persons?|eaters|friends|adults"
    r"|pax|sandwiches|slices|of us|ppl|folks?|men|women|lads|blokes|mouths|heads|plates|portions|servings|kids|diners"
    r"|mates|grown ?ups|bodies|eating|coming|guys|dudes|boys|girls|teens|teenagers|relatives|neighbou?rs|colleagues"
    r"|souls|sliders|rolls|buns|wraps|subs|bagels|burgers|baps|tacos)\b"
    r"|\b(?:makes|making|in all|total of) (?:it )?(?P<all>\d{1,3})\b(?! ?(?:kg|g|lb|c|f|h)\b)"
    r"|\b(?P<total>\d{1,3}) (?:in )?(?:total|altogether)\b"
    r"|\b(?:party of|fe(?:d|eds?|eding)|serves?|table of|group of|enough for|do for|for"
    r"|^(?:were|we are|well be|(?:there will|therell) be)(?: now| only| just)?) (?P<party>\d{1,3})(?=[ ?.,]*$"
    r"|[ ?.,]+(?:now|then|not|does|is|do|instead|how|what|at|bone|on|in|with|and|this|to|got|i|we|have|costs?|price"
    r"|enough)\b|, \d)"
)
SALT: Final = re.compile(
    r"^ ?(?:of )?(?:the )?(?:(?:(?:table|sea|kosher|plain|fine|coarse|flake|common|rock|cooking|normal|regular) )?salt"
    r"|kosher|(?:(?:light|dense|coarse|salt) )?flakes?)\b"
)
_SALT_BEFORE: Final = re.compile(  # «salt 180 g»
    r"(?<!curing )(?<!pink )(?<!nitrite )(?<!% )(?<!percent )\bsalt:? (?:is |was |of |at )?$"
)
_WATER: Final = re.compile(  # and no weight of both: «4 kg water and meat together»
    r"^ ?(?:of )?(?:cold )?(?:water|ice)\b(?! (?:and|n|plus) (?:the )?(?:meat|brisket|pork|beef|ham|belly)\b(?! \d))"
)
_VESSEL: Final = re.compile(  # beside meat less goes into it than it holds: its water is never reckoned by its name
    r"^ ?-?(?:sized? |plastic |food |big |zip |brining )*(?:buckets?|tubs?|pots?|bags?|containers?|boxe?s?|coolers?"
    r"|bowls?|pails?)\b"
)
_STRENGTH: Final = re.compile(
    r"\b(?:cure|curing salt|nitrite|british|packet)\b\D{0,14}(?P<n>\d{1,2}\.\d{1,2})\b(?! ?(?:kg|g|lb|oz|l|%|percent))"
)
_OF_STRENGTH: Final = re.compile(r"\d ?g of (?P<n>6\.25|5\.88|0\.[4-6])(?![\d.]| ?(?:kg|g|lb|%|percent))")
_SHARE_OF: Final = re.compile(r"(?:%|percent|pct) of (?:the )?$")  # «3 % of 2.4 kg salt»
_BRINE_ASKED: Final = re.compile(
    r"^(?!.*\b(?:kg|kilos?|lbs?|pounds?|cure|pink)\b)"
    r"(?:.*\bbrine\b.*(?:percent|%|strong|strength)"
    r"|.*\d ?g(?:rams?)? (?:in|to|per) \d[\d.]* ?(?:l|lit\w+|qts?|quarts?|gal\w*)\b.*(?:percent|%))|\bhow salty\b"
)
MOST_BEHIND: Final[Kilograms] = 1.0  # of salt told behind its word; more is meat: «cure and salt 4.5 kg»
MOSTSALT: Final[Kilograms] = 3.0
_KIDS: Final = re.compile(r"\b(\d{1,2}) (?:kids|children|little ones|toddlers)\b")
_HALF_KIDS: Final = re.compile(r"\bhalf (?:of them )?(?:are )?(?:kids|children|little ones|toddlers)\b")
_PLATE: Final = r"(?:person|head|sandwich(?:es)?|portions?|plates?|servings?|slices?|rolls?|buns?|burgers?|tacos?)"
_EACH: Final = re.compile(  # «6 oz of pastrami each», «90g meat each», «2 oz school sandwiches»
    rf"^ ?(?:(?:of )?(?:\w+ ){{1,2}})?(?:each|apiece|a head|a person|per {_PLATE}|for each)\b"
    rf"|^ (?:[a-z]+ ){{0,2}}?{_PLATE}\b"
)
_PLATES_ASKED: Final = re.compile(rf"\bhow many (?:\w+ )?(?:{_PLATE}|people|ppl|sliders|wraps)\b")
_AT: Final = re.compile(r"\b(?:at|of|with|x) (?:about )?$")
_SPECIES: Final = (
    ("turkey", r"\bturkeys?\b"), ("chicken", r"\bchickens?\b"), ("duck", r"\b(?:ducks?|goose|geese|poultry|birds?)\b"),
    ("fish", r"\b(?:fish|salmon|trout)\b"), ("pork", r"\b(?:pork|ham|bacon|belly|loin|gammon)\b"),
    ("beef", r"\b(?:beef|brisket|pastrami|flat|point|packer|round)\b"),
)  # fmt: skip
LARGEST_PLATE: Final[Kilograms] = 1.0
LARGEST_AT: Final[Kilograms] = 0.5  # «for 8 people at 3 kg» is the piece
THINNEST: Final[Metres] = 0.010  # of a piece


@dataclass(frozen=True)
class Told:
    """The figures of one line, in the units of the house; None and empty where it brings none.

    `meats` holds the weights as they are told, pieces that weigh the same together, `heaviest` the one heaviest piece;
    `temperatures` are in °C, a bare number read by what a core can be; `clocks` are hours of a day, `open_halves` says
    of each whether the half of its day is not told.
    """

    text: str
    meats: tuple[Kilograms, ...]
    heaviest: Kilograms | None
    cure: Kilograms | None
    spoons: float | None
    salt: Kilograms | None
    sugar: Kilograms | None
    water: Kilograms | None
    pump: Fraction | None
    nitrite: Fraction | None
    fractions: tuple[Fraction, ...]
    length: Metres | None
    durations: tuple[Hours, ...]
    temperatures: tuple[Celsius, ...]
    reads_f: bool
    clocks: tuple[Hours, ...]
    open_halves: tuple[bool, ...]
    people: int | None
    each: Kilograms | None
    height: Metres | None
    species: str
    cut: str
    product: str

    @property
    def half_told(self) -> bool:
        """Whether of one of the hours the half of its day is not told."""
        return any(self.open_halves)

    @property
    def meat(self) -> Kilograms | None:
        """All the meat, where several pieces are told."""
        return sum(self.meats) or None

    @property
    def hours(self) -> Hours | None:
        """The first time that is told."""
        return next(iter(self.durations), None)

    @property
    def strength(self) -> Fraction | None:
        """The nitrite share of a curing salt, where one is told."""
        found = _OF_STRENGTH.search(self.text) or _STRENGTH.search(self.text)
        told_ = float(found["n"]) / 100.0 if found else None
        beside = None if told_ is not None and OF_SALTS[0] <= told_ <= OF_SALTS[1] else told_
        return self.nitrite or bare_strength(self.text) or beside

    def has(self, *names: str) -> bool:
        """Whether every one of these is told."""
        return all(getattr(self, name) not in (None, "", ()) for name in names)


@lru_cache(maxsize=64)  # every sum asks for the same line
def told(text: str, reads_f: bool = False) -> Told:
    """What a plain line brings, to somebody who reads thermometers in °F or in °C."""
    found = [m for m in measures.find(text) if m.value >= 0 or m.kind == "temperature"]
    cure = cure_told(text, found)
    others = [m for m in found if m is not cure]
    salt = _named(text, others, SALT) or small(text, others, _BRINE_ASKED, MOSTSALT)
    sugar = _named(text, others, SUGAR)
    water = [m for m in others if _is_water(text, m)]
    people = _people(text)
    plates = people is not None and all(m.value <= LARGEST_PLATE for m in others if m.kind == "mass")
    alike = {m: [m.value] if plates else pieces(text, m) for m in others if m.kind == "mass"}
    each = next((m for m in alike if _is_each(text, m, people) and len(alike[m]) == 1), None)
    rest = [m for m in others if m not in (salt, sugar, each, *water[:1])]
    shares = [m for m in found if m.kind == "fraction"]
    pump, nitrite = pumped_share(text, shares), nitrite_share(text, shares)
    named, thick = meat(text), bare_thickness(text, reads_f)
    bodies = [m for m in rest if m in alike and m.value >= LEAST_MEAT]
    return Told(
        text=text,
        meats=tuple(sum(alike[m]) for m in bodies),
        heaviest=max((max(alike[m]) for m in bodies), default=None),
        cure=cure.value if cure and cure.kind == "mass" else None,
        spoons=measures.from_house(cure.value, "tsp") if cure and cure.kind == "volume" else None,
        salt=salt.value if salt else None,
        sugar=sugar.value if sugar else None,
        water=sum(m.value for m in (poured(text, water) if cure is not None and bodies else water[:1])) or None,
        pump=pump.value if pump else None,
        nitrite=nitrite.value if nitrite else None,
        fractions=tuple(m.value for m in shares if m not in (pump, nitrite)),
        length=next((m.value for m in rest if m.kind == "length" and m.value >= THINNEST), thick),
        durations=tuple(m.value / 3600.0 for m in rest if m.kind == "duration"),
        temperatures=_temperatures(text, found, reads_f),
        reads_f=reads_f,
        clocks=_in_order([*_CLOCK.finditer(text)]),
        open_halves=_open_halves([*_CLOCK.finditer(text)]),
        people=people,
        each=each.value if each else None,
        height=height(text, reads_f),
        species=next((name for name, words in _SPECIES if re.search(words, text)), ""),
        cut=named.cut if named else "",
        product=named.product if named else "",
    )


def _named(text: str, found: list[measures.Measure], words: re.Pattern) -> measures.Measure | None:
    """The weight of what the words after it name."""
    named = (m for m in found if m.kind == "mass" and words.match(text[m.end :]))
    little = (m for m in found if words is SALT and m.kind == "mass" and m.value <= MOST_BEHIND)
    before = (m for m in little if _SALT_BEFORE.search(text[: m.start]))
    return next((m for m in (*named, *before) if not _SHARE_OF.search(text[: m.start])), None)


def _people(text: str) -> int | None:
    """How many eat; a child by half, as the trade counts. Common practice"""
    kids, counts = _KIDS.search(text), [*_PEOPLE.finditer(text)]
    if not counts:
        return None
    grown = [one for one in counts if kids is None or one.start() != kids.start()]  # «4 kids and 6 adults»
    found = next((one for one in counts if one["total"]), (grown or counts)[0])
    told_ = int(found["n"] or found["party"] or found["all"] or found["total"])
    more = ceil(int(kids[1]) / 2) if kids and kids.start() != found.start() else 0
    return ceil(told_ * 0.75) if _HALF_KIDS.search(text) else told_ + more


def _is_water(text: str, m: measures.Measure) -> bool:
    """Whatever is poured, but no size of a vessel; and a weight of water or ice."""
    poured = poured_of(text, [m]) and not _VESSEL.match(text[m.end :])
    return bool(poured) or (m.kind == "mass" and bool(_WATER.match(text[m.end :])))


def _temperatures(text: str, found: list[measures.Measure], reads_f: bool) -> tuple[Celsius, ...]:
    """Those with a unit and bare ones, in the order of the line; one unit goes for all that have none.

    Else what no core can be in °C is °F, and so is whatever somebody tells who reads °F and weighs in no kilos.
    """
    marked = [m for m in found if m.kind == "temperature"]
    bare = text
    spans = [(m.start, m.end, "~" if m.kind == "duration" else " ") for m in found]
    for start, end, fill in (*spans, *((*c.span(), " ") for c in _CLOCK.finditer(text))):
        bare = bare[:start] + fill * (end - start) + bare[end:]
    numbers = [(n.start(), float(n[0])) for n in _BARE.finditer(bare)]
    hottest = max((value for _, value in numbers), default=0.0)
    of_f = reads_f and not any(m.unit in _METRIC for m in found) and not _only_celsius(text, [v for _, v in numbers])
    fahrenheit = hottest >= _FAHRENHEIT_FROM or of_f
    unit = marked[0].unit if marked else "f" if fahrenheit else "c"
    all_of_them = [(m.start, m.value) for m in marked]
    all_of_them += [(place, measures.to_house(value, unit)) for place, value in numbers]
    return tuple(value for _, value in sorted(all_of_them))


def _only_celsius(text: str, values: list[float]) -> bool:
    """Whether bare numbers can be no °F of meat: a fall to under freezing, or a hold so cold that it kills nothing."""
    fall = len(values) > 1 and values[0] > max(*values[1:], _WARM) and min(values) < _FREEZES_F
    kill = len(values) == 1 and _HELD_C[0] <= values[0] <= _HELD_C[1] and bool(_HELD.search(text))
    return fall or kill or bool(_CAME_OFF.search(text))


def _in_order(clocks: list[re.Match[str]]) -> tuple[Hours, ...]:
    """«140 at 1pm, 70 at 2:40»: an hour without its half, behind an afternoon's, is of that afternoon."""
    out: list[Hours] = []
    for clock in clocks:
        hour = _hour(clock)
        open_ = not (clock["half"] or clock["word"]) and hour < 12.0
        out.append(hour + 12.0 if open_ and out and out[-1] >= 12.0 and hour + 12.0 > out[-1] else hour)
    return tuple(out)


def _hour(clock: re.Match[str]) -> Hours:
    if clock["word"]:
        return 12.0 if clock["word"] == "noon" else 24.0
    if clock["h24"]:
        return int(clock["h24"]) + int(clock["m24"]) / 60.0
    if clock["bare"]:
        return float(clock["bare"])
    return int(clock["hour"]) % 12 + (12 if clock["half"] == "pm" else 0) + int(clock["minute"] or 0) / 60.0


def _is_each(text: str, m: measures.Measure, people: int | None) -> bool:
    """Whether a weight is that of each portion, and not of each piece of meat: «90 g each», «40 sandwiches at 5 oz»."""
    counted = people is not None or _PLATES_ASKED.search(text)
    at = bool(counted) and m.value <= LARGEST_AT and bool(_AT.search(text[: m.start]))
    return m.value <= LARGEST_PLATE and (at or bool(_EACH.match(text[m.end :])))


def _open_halves(clocks: list[re.Match[str]]) -> tuple[bool, ...]:
    """Of each whether the half of the day is left open: «5», «4:30»; not beside 13:00, nor as 04:30."""
    by_24 = [c["h24"] for c in clocks if c["h24"]]
    open_ = not any(hour.startswith("0") or int(hour) > 12 for hour in by_24)
    return tuple(bool(c["bare"]) or (bool(c["h24"]) and open_) for c in clocks)
