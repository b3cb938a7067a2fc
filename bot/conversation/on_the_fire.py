"""Questions about a cook under way that bring a figure: a core, a pit, an hour; asked, so that nothing changes."""

import re
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Final

from bot import measures
from bot.conversation.understand import Understood, context_of
from bot.intents import spans, when
from bot.intents.normal import normal
from bot.intents.off_raw import core_to_take_off_at
from bot.intents.sums.done_at import done_at
from bot.wording import chill_asked, cooling, doneness, measured, on_the_fire, yard
from core.batch.assess import Assessment
from core.batch.events import Probe
from core.batch.rise import ready_at
from core.person import Person
from core.service.turn import Turn
from core.units import Celsius

Of = tuple[Assessment, str]
HOTTER_K: Final[Celsius] = 14.0  # 25 °F, where nobody says how much
HOTTEST_CORE: Final[Celsius] = 100.0
HOTTEST_PIT: Final[Celsius] = 205.0
LEAST_PIT: Final[Celsius] = 70.0
_DOWN: Final = re.compile(r"\b(?:down|lower|cooler|drop|less|back off)\b")
_COLD_F: Final = re.compile(r"(?<![\d:.])[3-8]\d(?! ?c\b)(?![\d:.])(?! ?(?:min|h\b|hours?))")
_NUMBER: Final = re.compile(r"(?<![\d:.])\d{2,3}(?![\d:.])")
_PACE: Final = re.compile(
    r"\b(?:up|rose|climbed|gained|risen)(?: by| only| about)* (?P<n>\d{1,2}(?:\.\d)?)\b(?=.*\bh(?:ou)?r\b)"
    r"|(?<![\d.])(?P<m>\d{1,2}(?:\.\d)?) ?(?:degrees?|deg)\b(?=.*\bh(?:ou)?r\b)"
)
_FALLS: Final = re.compile(
    r"\b(?:going out|dying|dropp\w*|falling|falls|losing|sinking|(?:wont|cant|doesnt) (?:hold|stay|keep|come up|get)"
    r"|how (?:do|can|should) (?:i|we) (?:get|bring) \w+(?: \w+)? (?:back )?up)\b"
)
_TURNED: Final = re.compile(
    r"\b(?:can|could|should|shall|may) (?:i|we) (?:turn|crank|bump|bring|push)\b.*\b(?:up|down)\b"
)
_HALF: Final = re.compile(r"\bhalf (?:an |a )?h(?:ou)?r\b")
_IN_HOURS: Final = re.compile(
    r"\bin (?:about |around )?(?P<span>(?:an?|half an|\d{1,2}(?:\.\d)?) ?(?:h|hrs?|hours?|mins?|minutes?))\b"
)
_CORE_AT: Final = re.compile(  # «its at 110»: a core, and no ten past one
    r"\b(?:its|it is|core(?: is)?|meats?(?: is)?) (?:(?:only|just|now|still|already) )*at \d{3}\b(?! ?[ap]m\b)"
)
_HOUR_ASKED: Final = re.compile(r"\b(?:by|at|before|for) (?=\d)")
_MAKES_IT: Final = re.compile(r"\b(?:will|does|would) (?:it|that|this) (?:make it|be (?:done|ready)|reach)\b")
_SPOTS: Final = re.compile(
    r"\b(?:breast|thigh|leg|wing|spots?|places?|thick|thin|point|flat|tail|near the bone|ends?)\b"
)
_PIT_DOUBTED: Final = re.compile(r"(?<!\d)1[0-4]\d (?:ok|okay|fine|good)\b(?! enough)")
_MEAL: Final = re.compile(r"\b(?:eat|meal|dinner|lunch|supper|serve|guests?)\b")


def celsius(text: str, person: Person, hottest: Celsius) -> Celsius | None:
    """A temperature of a line: with its unit, else in the person's, else in the one that it can have."""
    marked = [m.value for m in measures.find(text) if m.kind == "temperature"]
    if marked:
        return marked[-1]
    bare = [float(n) for n in _NUMBER.findall(text)]
    if not bare:
        return None
    both = (person.units.temperature, "c" if person.units.temperature == "f" else "f")
    least = LEAST_PIT if hottest > HOTTEST_CORE else 30.0
    fits = (value for unit in both if least <= (value := measures.to_house(bare[-1], unit)) <= hottest)
    return next(fits, None)


def core_doubted(text: str, person: Person) -> Celsius | None:
    """The core of a plain line that asks whether meat is done at it; «is 120 fine», in Celsius, is asked of the pit."""
    of_the_pit = person.units.temperature == "c" and _PIT_DOUBTED.search(text)
    return celsius(text, person, HOTTEST_CORE) if done_at(text) and not of_the_pit else None


def _rate(turn: Turn, meant: Understood, of: Of) -> str:
    """The pace by the record; where somebody tells one of their own, what that means."""
    a, text = of
    found = _PACE.search(normal(text, turn.person.language))
    degree = (2.0 if _HALF.search(text.lower()) else 1.0) / (1.8 if a.person.units.temperature == "f" else 1.0)
    kelvin = float(found["n"] or found["m"]) * degree if found else None
    return on_the_fire.rate(a, kelvin)


def _reaches(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    if a.batch.off_at is not None:
        cools = "chill" in a.batch.done and a.ledger.cooling is not None
        return chill_asked.asked(a, text) if cools else yard.TOPICS["chill"](a)
    core = celsius(normal(text, turn.person.language), a.person, HOTTEST_CORE)
    return on_the_fire.reaches(a, a.batch.setup.target_c if core is None else core)


def _at_core(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    core = celsius(normal(text, turn.person.language), a.person, HOTTEST_CORE)
    return on_the_fire.at_core(a, a.batch.setup.target_c if core is None else core)


def _pull_at(turn: Turn, meant: Understood, of: Of) -> str:
    """Off at a core that is named, or at the last that was read; no age of who shall eat it is one."""
    a, text = of
    plain = normal(text, turn.person.language)
    core = core_to_take_off_at(plain, a.person.units) or celsius(plain, a.person, HOTTEST_CORE)
    core = core or _coldest_spot(normal(meant.message.text, turn.person.language), a.person)
    last = a.batch.last(Probe.CORE)
    if a.on_at is None or a.batch.off_at is not None or (core is None and last is None):
        return doneness.pull_asked(a)
    return on_the_fire.pull_at(a, core if core is not None or last is None else last.celsius)


def _coldest_spot(plain: str, person: Person) -> Celsius | None:
    """Of several spots that a line tells, «thigh 168, breast 157», the coldest; None where it tells one or none."""
    if not _SPOTS.search(plain):
        return None
    cores = [core for one in _NUMBER.findall(plain) if (core := celsius(one, person, HOTTEST_CORE)) is not None]
    return min(cores) if len(cores) > 1 else None


def _above(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    plain = normal(text, turn.person.language)
    if a.batch.off_at is not None and a.person.units.temperature == "f" and _COLD_F.search(plain):
        return _reaches(turn, meant, of)  # «is it still above 40», of the chill: no 40 °C
    mark = celsius(plain, a.person, HOTTEST_CORE)
    if a.batch.off_at is not None and mark is not None and (fell := measured.fell_to(a, mark)):
        return f"{fell}\n{cooling.stands(a)}".strip()
    return measured.above(a, mark or a.floor_c)


def _hotter(turn: Turn, meant: Understood, of: Of) -> str:
    a, text = of
    plain = normal(text, turn.person.language)
    step = -HOTTER_K if _DOWN.search(plain) else HOTTER_K
    pit = celsius(plain, a.person, HOTTEST_PIT) or a.batch.setup.pit_c + step
    return on_the_fire.hotter(a, pit, ready_at(a, pit))


def _fire(turn: Turn, meant: Understood, of: Of) -> str:
    """The fire as it last read; as it is told, where it falls or shall be turned up or down."""
    a, text = of
    plain = normal(text, turn.person.language)
    if _FALLS.search(plain):
        return on_the_fire.pit_falls(a)
    return _hotter(turn, meant, of) if _TURNED.search(plain) else yard.TOPICS["fire"](a)


def by_hour(turn: Turn, meant: Understood, of: Of) -> str | None:
    """How likely it is ready by an hour without a day, beside the fire; None where the meal is what is asked about."""
    a, text = of
    plain = normal(text, turn.person.language).strip(" ?")
    wanted = _hour(turn, meant, a, plain)
    of_the_meal = _MEAL.search(plain) and not (_IN_HOURS.search(plain) or _MAKES_IT.search(plain))
    if a.ready is None or wanted is None or of_the_meal:
        return None
    return on_the_fire.by_hour(a, wanted)


def _hour(turn: Turn, meant: Understood, a: Assessment, plain: str) -> datetime | None:
    """The next time that the clocks show the hour of a line that names no day."""
    plain = _CORE_AT.sub(" ", plain)
    span = _IN_HOURS.search(plain)
    if span is not None and (by := spans.span(span["span"])):  # «guests in 2 hours will it make it»
        return a.now + by
    said = when.meal(_HOUR_ASKED.sub("at ", plain), context_of(turn, meant.message, None, a))
    if said is None or not said.hour_said:
        return None
    local = said.at.astimezone(a.person.tz)
    if said.day_said and local.date() != a.now.astimezone(a.person.tz).date():
        return None
    today = a.now.astimezone(a.person.tz).replace(hour=local.hour, minute=local.minute, second=0, microsecond=0)
    return today if today > a.now else today + timedelta(days=1)


TOPICS: Final[Mapping[str, Callable[[Turn, Understood, Of], str]]] = {
    "rate": _rate, "fire": _fire,
    "reaches": _reaches, "at_core": _at_core, "hotter": _hotter, "pull_at": _pull_at,
    "pit_falls": lambda turn, meant, of: on_the_fire.pit_falls(of[0]), "above": _above,
    "sure": lambda turn, meant, of: on_the_fire.sure(of[0]),
}  # fmt: skip
