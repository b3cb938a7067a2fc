"""What is asked while it chills, first with its yes or no: whether it may go into the fridge, and whether it is in time."""

import re

from bot.wording import chilling, cooling, numbers
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase, Reading
from core.batch.cold import CHILL_CLOCK_C
from core.batch.events import Probe
from core.heat.ways import passes
from core.safety.findings import Outcome
from core.units import Celsius, celsius_from_fahrenheit

FIRST: Celsius = celsius_from_fahrenheit(80.0)  # the first corner of FSIS Appendix B: from there a fridge cools it
COLD: Celsius = celsius_from_fahrenheit(40.0)
OF_THE_FRIDGE = re.compile(r"\bfridge\b|\bout of the (?:ice|bath|water)\b|\b(?:out|off) (?:of )?(?:the )?ice\b")
OF_THE_COLD = re.compile(
    r"^(?:is|are|has|so|did)\b.*\b(?:cold|cooled|chilled)\b|^(?:is it |all )?(?:cold|chilled|cool) yet\b"
)
OF_THE_PACE = re.compile(r"\b(?:fast|quick\w*|slow\w*|in time|on time|enough|how am i|hows|going|ok|okay|good)\b")


def lead(a: Assessment, text: str) -> str:
    """The yes or no to what a line asks of a chill that runs; "" where it asks for neither."""
    core = a.batch.last(Probe.CORE)
    if a.batch.phase is not Phase.CHILLING or core is None or a.batch.off_at is None or core.at < a.batch.off_at:
        return ""
    if OF_THE_FRIDGE.search(text.lower()):
        return _fridge(a, core)
    if OF_THE_COLD.search(text.lower()) and core.celsius > COLD:
        read, at = numbers.temperature(core.celsius, a.person), numbers.clock(core.at, a.person)
        return say("Not yet: the core read {read} at {at}.", read=read, at=at)
    return _pace(a) if OF_THE_PACE.search(text.lower()) else ""


def _fridge(a: Assessment, core: Reading) -> str:
    read, at = numbers.temperature(core.celsius, a.person), numbers.clock(core.at, a.person)
    if core.celsius > FIRST:
        return say(
            "Not yet: the core read {read} at {at}. From {first} down it may lie unwrapped on a rack in the fridge; until then ice.",
            read=read,
            at=at,
            first=numbers.at_most(FIRST, a.person),
        )
    if core.celsius > COLD:
        return say(
            "Yes, unwrapped on a rack: the core read {read} at {at}. Read it on until it is at {cold}.",
            read=read,
            at=at,
            cold=numbers.at_most(COLD, a.person),
        )
    return say("Yes: the core read {read} at {at}.", read=read, at=at)


def _pace(a: Assessment) -> str:
    """Whether it will be in time, while the clock of the rule has not begun; after that the chill says so itself."""
    found, forecast = a.ledger.cooling, a.cooling.forecast
    last = a.cooling.readings[-1].celsius if a.cooling.readings else None
    early = found is not None and found.kind is Outcome.NOT_YET and last is not None and last >= CHILL_CLOCK_C
    kept = early and forecast is not None and passes(forecast)
    return say("Yes, as it cools now it keeps the rule.") if kept else ""


def asked(a: Assessment, text: str) -> str:
    """The yes or no, how the chill stands, and when it is cold."""
    return "\n".join(filter(None, (lead(a, text), cooling.stands(a), chilling.ahead(a))))
