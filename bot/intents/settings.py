"""What holds for a person: units, zone, hours, cooker, jurisdiction, language; and a talk that is paused."""

from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents.called_at import read_called_at, read_quiet
from bot.intents.context import COOKED, Context
from bot.intents.deeds import LIT
from bot.intents.fields import stated
from bot.intents.intents import Intent, Settings
from bot.intents.small import words
from bot.intents.supposed import SUPPOSED
from bot.intents.temperatures.plausible import set_point
from bot.intents.zones import city, jurisdiction_of, named, zone_of
from core import patterns as re
from core.batch.events import Probe
from core.units import METRES_PER_FOOT

_UNIT_WORDS: Final = (
    ("mass", "kg", r"\b(?:kg|kilos?|kilograms?|grams?|metric)\b"),
    ("mass", "lb", r"\b(?:lbs?|pounds?|oz|ounces?|imperial|us units|american units)\b"),
    ("length", "mm", r"\b(?:mm|millimet(?:er|re)s?|cm|metric)\b"),
    ("length", "in", r"\b(?:inch(?:es)?|imperial|us units|american units)\b"),
    ("temperature", "c", r"\b(?:c|celsius|centigrade|metric)\b|°c"),
    ("temperature", "f", r"\b(?:f|fahrenheit|imperial|us units|american units)\b|°f"),
)
_UNITS: Final = re.Rules((re.compile(listed), (name, unit)) for name, unit, listed in _UNIT_WORDS)
_WANT_UNITS: Final = re.compile(
    r"\b(?:only )?(?:use|using|want|prefer|speak|(?:switch|change|back)(?: me| us| it| everything)?(?: back)? to"
    r"|gimme|^(?:only|just)|set (?:units? )?to|show|give me"
    r"|talk|units?|(?:weights?|temps?|temperatures?|lengths?|sizes?|thickness(?:es)?) in|for (?:the |my )?(?:weights?"
    r"|temps?|temperatures?|lengths?|sizes?|thickness(?:es)?)"
    r"|einheiten|bitte)\b|^(?:metric|imperial"
    r"|celsius|fahrenheit|in (?:celsius|fahrenheit|kilos|pounds)|kilos|pounds)(?: (?:please|pls|only))*$"
    r"|^(?:in )?(?:inch(?:es)?|cm|mm|millimet(?:er|re)s?|lbs?|kgs?)(?: (?:please|pls|only|from now on))+$"
)
_NOT_THOSE: Final = re.compile(
    r",? (?:and )?(?:not|instead of) (?:in )?(?:mm|cm|inch(?:es)?|kgs?|kilos|lbs?|pounds|[cf])$"
)
_UNIT_SMALL: Final = words(
    """
    send message messages write answer here so therefore ounce
    just grams gram g only use using want prefer to in and & pls please units unit switch change set show speak the me
    i we give temps temp weights weight temperature temperatures it all everything with for of ok hey from now on
    always kg kilo kilos kilogram kilograms metric lb lbs pound pounds imperial us american mm millimeters millimetres
    cm inch inches oz ounces but im am ill id else rest oven smoker like lets read think c celsius
    can could have get see that this n whole plan numbers those both values
    gimme back again us
    centigrade f fahrenheit degrees talk bitte einheiten nur und my a lengths length sizes size thickness thicknesses
    """
)
_ZONE: Final = tuple(
    re.compile(words)
    for words in (
        r"\b(?:time ?zone|tz|zone|zeitzone)(?: (?:is|to|=|:|ist|now|should be))* (?P<place>[^\W\d_][\w/ .+-]{1,39})$",
        r"\b(?:we are|im|i am|we re|were|were now|i live|we live|living|based|we live|travelling to"
        r"|flying to|now) (?:now |back |home |back home )?(?:in |on |at |near |close to |just outside |outside )"
        r"(?P<place>[^\W\d_][\w/ ]{1,39}?)(?: (?:time|now|this week|(?:until|till?) [\w ]{2,24}))*$",
        r"\b(?:moved|moving|travelled|flew|flying|travelling|travel) to "
        r"(?P<place>[^\W\d_][\w/ ]{1,39}?)(?: (?:now|today|this week|(?:until|till?) [\w ]{2,24}))*$",
        r"^(?:use |set |its |on )?(?P<place>[^\W\d_][\w/ ]{1,29}) (?:time(?: ?zone)?|tz|zone)(?: (?:please|pls))?$",
        r"^(?P<place>(?:europe|america|asia|africa|australia|pacific|atlantic|indian)/[a-z_/]{2,30}|[ecmp][sd]t|gmt)$",
    )
)
_REGION: Final = re.compile(r"(?=.{4})\S+(?: \S+){0,2}")  # alone: «et» is another thing, so is «cheap flights to spain»
_NO_REGION: Final = ("central", "mountain", "cork")
_NO_TOWN: Final = ("easter", "central", "mountain", "cork", "bath", "turkey")
_FOR_GOOD: Final = re.compile(r"\b(?:moved to|moving to|live|living|based)\b")  # no journey
_BACK_IN: Final = re.compile(
    r"^(?:(?:ok|so|and|now|finally|safely|im|i am|were|we are) )*(?:back|home)(?: home| again)? (?:in|to) "
    r"(?P<place>[^\W\d_][\w/ ]{1,29}?)(?: (?:again|now|today|safely))*$"
)
_THERE: Final = re.compile(  # «in new york now», «landed in denver»: where it can be nothing but a place
    r"^(?:(?:ok|so|just|now|finally|we|i|have|are|am|im|ive|weve|were|safely) )*"
    r"(?:(?P<came>landed|arrived|got) (?:in|at|to)|in)"
    r" (?P<place>[^\W\d_][\w/ ]{2,29}?)(?P<now> (?:now|today|safely|already))*$"
    r"|^(?P<of>[^\W\d_][\w/ ]{2,29}?)(?P<here> here)$"
)
_HOME: Final = re.compile(
    r"^(?:(?:ok|hey|hi|we|i|were|im|are|am|is|finally|now|just|got|at last) )*(?:(?:back|arrived|landed|safely) )*"
    r"(?:at )?home(?: (?:again|now|safely|from \w+))*$|\bback (?:at |from (?:the |our |my )?)?(?:home|holidays?"
    r"|vacation|trip"
    r"|journey|travels)\b"
)
_WRONG_ZONE: Final = re.compile(
    r"\b(?:wrong (?:time ?zone|time|hour|clock)|(?:time ?zone|clock|time) is (?:(?:an?|\d) hours? )?(?:wrong|off"
    r"|slow|fast|behind)|change (?:my )?time ?zone"
    r"|set (?:my )?time ?zone)\b|\b(?:it|clock|phone|bot) (?:says|shows) \d{1,2}(?: ?[ap]m)?,? (?:but|and) its \d{1,2}"
    r"(?: ?[ap]m)? here\b|^its \d{1,2}(?: ?[ap]m)? here,? not \d{1,2}\b"
)
_SAYS_ZONE: Final = re.compile(r"\b(?:time ?zone|zone|tz|zeitzone)\b")
_ALTITUDE: Final = re.compile(
    r"^(?:(?:we|i|im|were|the yard|my yard|are|am|re|m|live|is|cook|smoke|altitude|elevation|of|up|at|here) ?)*"
    r"\b(?P<number>\d{2,5}) ?(?P<unit>m|metres?|meters?|ft|foot|feet)"
    r"(?: (?:up|high|here|above (?:the )?sea(?: level)?|altitude|elevation))*$"
)
_OF_A_YARD: Final = re.compile(r"\b(?:we|i|im|were|yard|live|altitude|elevation|up|high|here|sea)\b")
_CUTS: Final = (re.compile(r",? (?:so|but) |, "), re.compile(r" (?:and|&) "), re.compile(r" (?=us(?:e|ing) )"))
MOST_WORDS: Final = 12  # of a line that tells nothing but settings
HIGHEST_M: Final = 4500.0
_NO_SCALE: Final = re.compile(
    r"^(?:(?:but|sorry|i|we|ive|have|got|dont|do|not|own|only|just|theres|there is) )*(?:no|without an?"
    r"|a) ?(?:kitchen |digital |good )?scales?"
    r"(?: (?:here|at home|that small))?$|^(?:(?:i|we|ive|have|got|only|just|use|with|measure|in) )+(?:tea|table)?spoons"
    r"(?: (?:no|and no|not a) scales?| only)?$"
    r"|^no scales? (?:(?:only|just|but|have|got) )+(?:tea|table|measuring )?spoons$"
)
_HAS_NO: Final = re.compile(r"\b(?:no|dont|not|without)\b|spoons")
_SCALE: Final = re.compile(
    r"^(?:(?:ok|i|we|ive|have|got|bought|found|borrowed|now|a|my|the|use|weigh|on|with|new|digital|good|kitchen|pocket"
    r"|jewell?ers?|\d?\.?\d{1,2} ?g(?:rams?)?) )+scales?(?: (?:now|again|here|is back|works again"
    r"|(?:that )?(?:shows|reads|weighs|goes to|only shows"
    r"|only reads)(?: only)? (?:whole |single |full |to )*(?:\d{1,2}(?:\.\d+)? ?)?(?:g|grams?)))*$"
)
_SCALE_GONE: Final = re.compile(
    r"^(?:(?:my|the|our|kitchen|digital) )*scales? (?:(?:is|has|are|just) )*(?:broke|broken|died|dead|gone|kaputt?)"
    r"(?: now)?$"
)
_PLAIN_SALT: Final = re.compile(
    r"^(?=.*\bsalt\b)(?:(?:i|we|use|using|my|salt|is|have|only|just|always|set|to) )*(?:(?P<fine>fine|table"
    r"|iodi[sz]ed table)"
    r"|kosher|coarse|flak(?:y|ed)|sea)"
    r"(?: (?:sea|salt|flakes|here|only|at home))*$"
)
_FRIDGE_RUNS: Final = re.compile(
    r"^(?=.*\b(?:runs|sits|stands|set|kept|is at|always|usually|normally|mostly)\b)(?:(?:my|our"
    r"|the) )?fridge(?: (?:is|runs|sits|stands|set|kept|at|to|always|usually|normally|mostly|about|around"
    r"|steady|a))+ (?P<n>-?\d{1,2}(?:\.\d)?)(?: ?°? ?(?P<unit>[cf])\b)?(?: (?:always|usually|normally|mostly|here))*$"
)
_LANGUAGES: Final = (
    (
        "de",
        re.compile(
            r"\b(?:auf deutsch|deutsch bitte|speak german|in german|german (?:please|pls))\b|^deutsch$|^german$"
        ),
    ),
    (
        "en",
        re.compile(
            r"\b(?:in english|english (?:please|pls)|speak english|auf englisch"
            r"|(?:sprich|rede|red|schreib) (?:bitte )?englisch)\b|^(?:english|englisch)(?: bitte)?$"
        ),
    ),
)


def read_settings(text: str, context: Context) -> Intent | None:
    """A setting of the person, where a plain text is one."""
    readers = (_language, _units, read_called_at, _zone, _cooker, _scale, _salt, _fridge)
    return next((found for reader in readers if (found := reader(text, context))), None) or _each_of(text, context)


def _each_of(text: str, context: Context) -> Settings | None:
    """«im in sweden so use celsius»: several at once, where each part of the line is one."""
    cut = next((cut for cut in _CUTS if cut.search(text)), None) if len(text.split()) <= MOST_WORDS else None
    changes: dict[str, Any] = {}
    for part in cut.split(text) if cut else ():
        told = read_settings(part, replace(context, units=changes.get("units", context.units)))
        if not isinstance(told, Settings) or not told.changes:
            return None
        changes |= told.changes
    return Settings(changes) if changes else None


def is_off(context: Context) -> bool:
    """Whether the meat is off the fire: «resting in the oven» is no other cooker then."""
    return context.phase in COOKED


def wrong_clock(text: str) -> bool:
    """«wrong time zone, it says 9 but it's 6»."""
    return bool(_WRONG_ZONE.search(text))


def _language(text: str, context: Context) -> Settings | None:
    return next((Settings({"language": code}) for code, words in _LANGUAGES if words.search(text)), None)


def read_units(text: str, context: Context) -> Settings | None:
    """Units alone, with commas between them or without."""
    return _units(text, context)


def _units(text: str, context: Context) -> Settings | None:
    said, text = text, _NOT_THOSE.sub("", text)
    if re.search(r"\d", text) or not _UNIT_SMALL.issuperset(re.findall(r"[^\W\d_]+|&", text)):
        return None
    wanted = dict(named for _, named in _UNITS.hits(text))
    if not wanted or not (len(wanted) > 1 or said != text or _WANT_UNITS.search(text)):
        return None
    return Settings({"units": replace(context.units, **wanted)})


def _zone(text: str, context: Context) -> Settings | None:
    if context.home_zone and _HOME.search(text):
        return Settings({"zone": context.home_zone})
    if (back := _BACK_IN.match(text)) and (zone := city(back["place"])):
        return Settings({"zone": zone})
    there = _THERE.match(text)
    at = there and (there["place"] or there["of"])
    first = context.phase == "none" and at not in _NO_TOWN  # «in berlin», where nothing is under way
    if there and (there["now"] or there["came"] or there["here"] or first) and named(at):
        return _placed(at, text)
    places = [_placed(found["place"], text) for pattern in _ZONE if (found := pattern.search(text))]
    placed = next((one for one in places if one and one.changes), next(iter(places), None))
    if _WRONG_ZONE.search(text):
        return placed if placed and placed.changes else Settings({})
    if placed:
        return placed
    law = re.search(
        r"\b(?P<place>[a-z]{2,14}) (?:rules|law|limits)\b|^(?:my |our |the )?(?:country|rules|law)(?: is|:"
        r"| of)* (?P<land>[a-z ]{2,20})$",
        text,
    )
    code = jurisdiction_of(law["place"] or law["land"]) if law else None
    return Settings({"jurisdiction": code}) if code else None


def _placed(place: str, text: str) -> Settings | None:
    changes: dict[str, Any] = {}
    if zone := zone_of(place):
        changes["zone"] = zone
    if zone and _FOR_GOOD.search(text):
        changes["home_zone"] = ""
    if law := jurisdiction_of(place):
        changes["jurisdiction"] = law
    if changes:
        return Settings(changes)
    return Settings({}, unclear=place) if _SAYS_ZONE.search(text) else None


def read_city(text: str, context: Context) -> Settings | None:
    """A city or a country and nothing else, exactly as it is named: «vienna», «usa»."""
    zone, law = city(text), jurisdiction_of(text)
    zone = zone or (named(text) if _REGION.fullmatch(text) and text not in _NO_REGION else None)
    changes = {"zone": zone} if zone else {"jurisdiction": law} if law else {}
    return Settings(changes) if changes else None


def _altitude(text: str) -> Settings | None:
    """«we are at 1500 m», «altitude 5000 ft»: how high the yard lies."""
    found = _ALTITUDE.match(text)
    if not found or not _OF_A_YARD.search(text):
        return None
    metres = float(found["number"]) * (METRES_PER_FOOT if found["unit"].startswith("f") else 1.0)
    return Settings({"altitude_m": metres}) if metres <= HIGHEST_M else None


def read_plainly_set(text: str, context: Context) -> Settings | None:
    """What is no sum for all its numbers: how high the yard lies, a scale, hours at which nobody is called."""
    return _altitude(text) or _scale(text, context) or read_quiet(text, context)


def _scale(text: str, context: Context) -> Settings | None:
    """«i have no scale», «only teaspoons», «i got a scale»."""
    if _SCALE_GONE.match(text) or (_NO_SCALE.search(text) and _HAS_NO.search(text)):
        return Settings({"scale": False})
    return Settings({"scale": True}) if _SCALE.search(text) else None


def _salt(text: str, context: Context) -> Settings | None:
    """«i use kosher salt»: of the plain salt, not of the curing salt."""
    found = _PLAIN_SALT.search(text)
    return Settings({"salt": "fine" if found["fine"] else "coarse"}) if found else None


def _fridge(text: str, context: Context) -> Settings | None:
    """«my fridge runs at 4 c», where there is no batch that it would be about."""
    found = _FRIDGE_RUNS.match(text) if context.phase == "none" else None
    units = (found["unit"],) if found and found["unit"] else set_point(Probe.FRIDGE, float(found["n"])) if found else ()
    celsius = measures.to_house(float(found["n"]), units[0]) if found and len(units) == 1 else None
    return None if celsius is None or not -2 <= celsius <= 10 else Settings({"fridge_c": celsius})


# «how much propane», «what if i use a kettle», «pellet grill lost power»
_NO_TELLING: Final = re.compile(
    rf"{SUPPOSED.pattern}|\bhow\b|\b(?:rest\w*|hold\w*|keep\w*|power|lost|died|dead|broke\w*|stopped|tripped"
    rf"|quit|out|off|cut)\b"
)


def _cooker(text: str, context: Context) -> Settings | None:
    if is_off(context) or len(text.split()) > 7 or LIT.search(text) or _NO_TELLING.search(text):
        return None  # «lit the kettle» is a deed
    told = stated(text)
    return Settings({"cooker": told.fields["cooker"]}) if set(told.fields) == {"cooker"} else None
