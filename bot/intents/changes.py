"""What is wanted otherwise: the meal moved, the method swapped, a field of the setup stated or changed."""

from dataclasses import replace
from typing import Any, Final

from bot import measures
from bot.intents import when
from bot.intents.context import FALLING, RAW, UNCOOKED, Context
from bot.intents.fields import stated
from bot.intents.intents import Change, Debrief, Intent, MoveDeadline, Settings, Start, Unclear
from bot.intents.meats import meat, without
from bot.intents.percents import odd_strength, open_strength, shared, usual_cure
from bot.intents.pumped import read_pumped
from bot.intents.settings import is_off
from bot.intents.small import content, words
from bot.intents.temperatures.plausible import set_point
from bot.intents.thicknesses import read_thickness
from bot.intents.watered import read_water
from bot.intents.weights import HEAVIEST_KG, counted, weighed
from core import patterns as re
from core.batch.events import Probe

_OF_A_THERMOMETER: Final = re.compile(r"\b(?:fridge|thermometer|display|probe|brine|pit|core|meat|gauge)\b")
_NOT_THAT: Final = re.compile(r",? (?:and )?(?:not|instead of|rather than) (?:the )?\d.*$")
_STRENGTH_BARE: Final = re.compile(
    r"\b(?:cure|curing salt|pink salt|strength|packet|label)(?: (?:is|says|at|strength|="
    r"|:))* ?(?P<value>(?![12]$)\d{1,2}(?:\.\d{1,4})?)$"
    r"|\b(?:says|label|bag|packet|pack|jar|tin)\b[^\d]{0,16}(?P<on>\d{1,2}\.\d{1,2})(?: nitrite| on the (?:bag|packet"
    r"|pack"
    r"|label|jar|tin))?$"
    r"|^(?:(?:its|it is|the|a|my|i have|ive got|using|use) )*(?P<before>\d{1,2}\.\d{1,4}) (?:cure|curing salt"
    r"|pink salt)$"
)
_WANTED: Final = re.compile(
    r"^(?:(?:lets|please|pls|we|ill|i|will|to|want|can|you) )*(?:(?:pull|take|bring) (?:it|the meat) (?:off )?(?:at"
    r"|to)|cook (?:it|the meat) to|(?:it comes )?off at|(?:(?:change|set|make|move|put) (?:the )?)?(?:pull target|pull"
    r"|target|finish|final)(?: is| temp\w*)*(?: (?:to|at|is))?) (?P<target>[4-9]\d|[12]\d\d)"
    r"(?: degrees)?(?: (?:this time|instead|then|please|now))*$"
    r"|^(?:(?:lets|please|pls|we|ill|i|will|to|want|can|you) )*(?:(?:smoke|cook|run)(?: it| the pit)? at|(?:set|run"
    r"|keep) (?:the )?(?:pit|smoker|grill) (?:to|at)) (?P<pit>\d{2,3})$"
)
_LISTS: Final = re.compile(r"\d(?: ?(?:kg|lbs?|g|oz))?,? ?(?:and|&|\+|plus|,) ?\d|\d.*\beach\b")
_MEANT_AS_MASS: Final = re.compile(
    r"\b(?:trimm(?:ed|ing)|actually|weighs?|weight|mass|weighed|its|it is|is|really|now"
    r"|only|meat)\b"
)
_WITH_BRINE: Final = re.compile(  # of more than the meat
    r"\b(?:bags?|tub|bucket|pot|box|brine|pickle|liquid|total|in all|altogether|all together|everything|the lot"
    r"|scales?)\b"
)
_BY_THE_WAY: Final = re.compile(
    r"^(?:(?:wait|no|oops|sorry|actually|hang on|hold on|correction|hmm|ok|it|its|was|is|that|thats|the|piece|meat"
    r"|weighs|weighed|weight|(?:pork )?belly|ham|brisket|flat|point|loin|bird)[, ]+)+"
)
_AFTER: Final = re.compile(r"\b(?:after(?!(?: \w+){0,2} trim)|cooked|finished|in the end|came out|final|yield)\b")
_CURE_STRENGTH: Final = (
    0.055,
    0.065,
)  # a bare percentage in here is no salt, sugar or pump: cure #1 and its British kin
_OF_A_PIT: Final = "set|run|keep|want|turn|hold|target|aim|smoke|cook|go|raise|lower|drop|bring"
_WISHED: Final = re.compile(rf"\b(?:{_OF_A_PIT}|at|to)\b")
_AIMS: Final = re.compile(  # «going to add coal» wishes for no temperature
    rf"\b(?:going|about|have|need|got|had|time|off|trying) to (?!(?:{_OF_A_PIT})\b)\w+"
)
LIGHTEST_KG: Final = 0.1  # no piece of meat weighs less: «12 g» may be the cure. The lightest cut in cuts.toml
_NO_NUMBER: Final = re.compile(
    r"\b(?:no (?:number|figure|percent\w*|strength|label)|(?:doesnt|does not|dont) say|not on (?:it|the))\b"
)
_READ_OFF: Final = re.compile(r"\b(?:pit|grill|smoker)s? (?:is |now |running |sitting )*at \d")
_FOREIGN: Final = 2  # words of another subject that a statement about a batch may hold
_EATS: Final = re.compile(r"\b(?:eat|eating|serve|serving|have it|having it)\b")
HOW_EATEN: Final = re.compile(r"\b(?:eat|eating|serv(?:e|ed|ing)|slic(?:e|ed|ing)) (?:it )?(?:hot|warm|cold)\b")
_HEDGED: Final = re.compile(
    r"\b(?:i (?:think|guess|believe|reckon)|maybe|probably|not sure|perhaps|might be"
    r"|or so|something like)\b"
)


AT_RISK: Final = re.compile(r"\b(?<!if )(?:is|are) (?:a )?(?:elderly|toddlers?)\b")  # by an age that was told
_NONE_OF_A_KIND: Final = re.compile(
    r"^(?:(?:theres|there are|there is|we have|ive got|i have|its|just us|and|ok|nope|nah)[, ]+)*(?:(?:no|nobody|no one"
    r"|not|without|neither|nor|or|any|is|and|eating|here|old|over 65|the)[, ]+)+(?:kids?|children|babies|toddlers?"
    r"|pregnant(?: women| ladies)?|elderly|old (?:people|folks?)|over 65s?)(?:[, ]+(?:or|and|no|nor|here|kids|children"
    r"|elderly|old people|pregnant(?: women)?|babies|eating|this time|at the table))*$"
)
_HELD: Final = re.compile(r"\b(?:rest|hold|keep)(?:ing|s)?\b.*\b(?:oven|cooler)\b")


def read_change(text: str, context: Context) -> list[Intent]:
    """Fields of the setup that a plain text states; Unclear where something in it may mean several."""
    text = _NOT_THAT.sub("", text)
    if first := _by_its_words(text, context):
        return [first]
    if pieces := _in_pieces(text, context) or counted(text):
        return [Change(pieces)]
    alone = (
        read_thickness(text, context)
        or _strength_without_percent(text)
        or _lone_percent(text)
        or _lone_mass(text, context)
    )
    if (words := open_strength(text)) and _NO_NUMBER.search(text):
        return [Unclear("unit", words)]
    water = read_water(text, context)
    if found := alone or wanted_temperature(text) or (Change(water) if water else None):
        return [found]
    told = stated(text)
    if len(content(told.rest)) > _FOREIGN:
        return []
    fields: dict[str, Any] = dict(told.fields)
    _without_what_is_read(fields, text, context)
    open_ones: list[Intent] = [open_field(slot, words) for slot, words in told.unclear.items()]
    if "thickness" in fields and _may_be_grey(text, context):
        options = (Debrief(grey=fields["thickness"]), Change({"thickness": fields["thickness"]}))
        return [Unclear("number", text[:60], options)]
    if fields.get("wrap") == "none" and context.phase in FALLING:
        fields = {**{k: v for k, v in fields.items() if k != "wrap"}, "chill": "rack"}  # out of its foil to cool
    fields.update({} if "heaviest" in fields else _mass(text, context))
    named = meat(text)
    if (
        named.cut in ("brisket_flat", "brisket_point")
        and context.phase != "none"
        and set(re.findall(r"\w+", without(text))) <= _SAYS_THE_CUT
    ):
        fields["cut"] = named.cut
    if not fields and len(content(told.rest)) > 1:
        return []
    if set(fields) == {"purpose"} and (moved := _eaten_then(text, context)):
        return [replace(moved, eaten=fields["purpose"])]
    return [_kept(fields, text, context), *open_ones] if fields else open_ones


def _by_its_words(text: str, context: Context) -> Intent | None:
    """What the needle put in; «no kids»: of one kind of those at risk alone, so the others are asked after."""
    if context.phase in UNCOOKED and (told := read_pumped(text, context)):
        return Change(told)
    return Change({"at_risk_eaters": None}) if _NONE_OF_A_KIND.match(text) else None


def who_eats(text: str, context: Context) -> list[Intent]:
    """«nan is 84 is it ok for her»: who is at risk, told beside a question."""
    return [Change({"at_risk_eaters": True})] if context.phase != "none" and AT_RISK.search(text) else []


def _in_pieces(text: str, context: Context) -> dict[str, Any]:
    """«cut it in half, 3.5 and 4 lb», «2 sides 600 g each»: each weight before the cure is that of a piece."""
    if context.phase != "waiting" or not _LISTS.search(text) or _WITH_BRINE.search(text):
        return {}
    told = weighed(text, may_be_bare=False)
    if len(told.pieces) < 2 or min(told.pieces) < LIGHTEST_KG or sum(told.pieces) > HEAVIEST_KG:
        return {}
    return {"mass": sum(told.pieces), "pieces": len(told.pieces), "heaviest": max(told.pieces)}


def how_eaten(text: str) -> str:
    """«eat it hot at 6»: how, beside the meal that is moved; "" where that is not told."""
    return str(stated(text).fields.get("purpose") or "") if HOW_EATEN.search(text) else ""


def _eaten_then(text: str, context: Context) -> MoveDeadline | None:
    """«gonna eat it hot tonight»: how it is eaten, and when."""
    eats = _EATS.search(text) or HOW_EATEN.search(text)
    said = when.meal(text, context) if eats and context.deadline else None
    moves = (
        said is not None and (said.day_said or said.hour_said) and said.at > context.now and said.at != context.deadline
    )
    return MoveDeadline(to=said.at) if moves and said else None


def _without_what_is_read(fields: dict[str, Any], text: str, context: Context) -> None:
    """Takes out what is told as it stands, and is no wish: a pit that was read, the ice around a brine, a warm oven."""
    if _HELD.search(text):  # «rest it in the oven at 170»: where it is kept, and not what it is cooked with
        fields.pop("cooker", None)
    if context.phase == "cooking" and (
        _READ_OFF.search(text) or not _WISHED.search(_AIMS.sub("", text))
    ):  # «161 pit 255 windy»
        fields.pop("pit_c", None)
    if context.phase in RAW and re.search(r"\d", text):  # «its down to 90 in an ice bath»: the brine
        fields.pop("chill", None)
    if is_off(context):  # «rests in the oven»: kept warm, and on no other cooker
        fields.pop("cooker", None)


def _kept(fields: dict[str, Any], text: str, context: Context) -> Change | Settings | Unclear:
    """A cooker that is told before there is a batch is the person's own; a strength that is guessed at is asked."""
    if "cure_nitrite_fraction" in fields and _HEDGED.search(text):
        share = fields["cure_nitrite_fraction"]
        return Unclear("unit", f"{100 * share:g} %", (Change({"cure_nitrite_fraction": share}),))
    return Settings(fields) if context.phase == "none" and set(fields) == {"cooker"} else Change(fields)


# «oh, it is the point»: the cut and nothing else; «the dog ate the point» changes none
_SAYS_THE_CUT: Final = words(
    "no nope sorry oops oh ah actually wait well i we its it is this that thats they theyre was meant mean have had got"
    " bought a an the use using make change swap to set only just brisket beef cut one piece and not but really instead"
    " of then my please turns out be took chose went with rather than cooking curing doing for now yes in fact"
)


def open_field(slot: str, typed: str) -> Unclear:
    """A field that was typed and not taken."""
    share = measures.sole(typed, "fraction")
    lengths = measures.of_kind(typed, "length") if slot == "thickness" else ()
    if len(lengths) == 1 and lengths[0].low:  # «50 or 55 mm»
        return Unclear("unit", typed, (Change({"thickness": lengths[0].value}), Change({"thickness": lengths[0].low})))
    if slot == "strength" and share:
        return odd_strength(share.value)
    if slot == "method":
        return Unclear("word", typed, (Change({"method": "brine"}), Change({"method": "dry"})))
    if slot == "percent" and share:
        return shared(share.value)
    bare = _strength_without_percent(typed) if slot == "strength" else None
    return bare or Unclear("unit" if slot in ("percent", "strength") else "word", typed)


def _strength_without_percent(text: str) -> Unclear | None:
    """«cure is 6.25»: a strength is never taken without its percent sign, but it can be offered."""
    found = _STRENGTH_BARE.search(text)
    if not found or _OF_A_THERMOMETER.search(text):
        return None
    value = float(next(filter(None, found.groups()))) / 100
    if not usual_cure(value):
        return odd_strength(value)
    return Unclear("unit", text[:60], (Change({"cure_nitrite_fraction": value}),))


def wanted_temperature(text: str) -> Intent | None:
    """«smoke at 225», «pull it at 195»: in the unit that alone fits, else asked about."""
    found = _WANTED.search(text)
    if not found:
        return None
    name, probe = ("target_c", Probe.CORE) if found["target"] else ("pit_c", Probe.PIT)
    value = float(found["target"] or found["pit"])
    options = tuple(Change({name: measures.to_house(value, unit)}) for unit in set_point(probe, value))
    return options[0] if len(options) == 1 else Unclear("unit", text[:60], options)


def _lone_percent(text: str) -> Intent | None:
    share = measures.sole(text, "fraction")
    if share is None:
        return None
    if _CURE_STRENGTH[0] <= share.value <= _CURE_STRENGTH[1]:
        return Change({"cure_nitrite_fraction": share.value})
    options = [Change({"cure_nitrite_fraction": share.value})] if 0 < share.value <= 0.1 else []
    options += [Change({"salt_fraction": share.value})] if 0.01 <= share.value <= 0.05 else []
    return Unclear("number", text[:60], tuple(options))


def _lone_mass(text: str, context: Context) -> Intent | None:
    """A mass alone: of the piece before it is in the cure, of the finished piece once it is cooked, else asked."""
    if _WITH_BRINE.search(text):
        return None
    mass = measures.sole(_BY_THE_WAY.sub("", text) if context.phase == "waiting" else text, "mass")
    if mass is None:
        return None
    if not 0 < mass.value <= HEAVIEST_KG:
        return Start(unclear=(f"mass:{text}",)) if context.phase == "none" else Unclear("number", text[:60])
    match context.phase:
        case "none":
            return Start({"mass": mass.value})
        case "waiting" if mass.value >= LIGHTEST_KG:
            return Change({"mass": mass.value})
        case "resting" | "chilling" | "stored":
            return Debrief(mass=mass.value)
        case _ if mass.value < LIGHTEST_KG:
            return Unclear("number", text[:60])
        case _:
            return Unclear("number", text[:60], (Change({"mass": mass.value}), Debrief(mass=mass.value)))


def _mass(text: str, context: Context) -> dict[str, Any]:
    masses = measures.of_kind(text, "mass")
    if (
        len(masses) != 1
        or context.phase not in UNCOOKED
        or _AFTER.search(text)
        or not _MEANT_AS_MASS.search(text)
        or _WITH_BRINE.search(text)
    ):
        return {}
    if re.match(
        r"^(?:i|he|she|they|my \w+|the (?:dog|cat|kid|baby)) weighs? \d", text
    ):  # who says it, not what lies in the cure
        return {}
    mass = masses[0]
    salts = re.search(r"\b(?:salt|cure|sugar|pink|water|charcoal|rub)\b", text)
    fits = mass.low is None and 0.1 <= mass.value <= HEAVIEST_KG
    return {"mass": mass.value} if fits and not salts else {}


def _may_be_grey(text: str, context: Context) -> bool:
    """A length alone after the slice may be the width of the grey."""
    return context.phase == "stored" and measures.sole(text, "length") is not None
