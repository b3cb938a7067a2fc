"""Words for several batches at once: which is meant, its name before what is said, and the list of all."""

import re
from collections.abc import Mapping, Sequence

from bot.intents.intents import Ask, Choose
from bot.measures import from_house
from bot.wording import asking, plans, recalled, reckoned
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.events import Probe

HALF_A_DEGREE = 0.5  # as a number is typed
_NUMBER = re.compile(r"\d{1,3}(?:[.,]\d)?")
SHOWN = 40  # characters of a line that a question repeats


def which(line: str, those: tuple[tuple[str, str], ...], meat: str = "") -> tuple[str, asking.Rows]:
    """Which of several batches a line is about; `meat` was named, and is none of them."""
    shown = line if len(line) <= SHOWN else f"{line[:SHOWN]}…"
    rows = tuple((asking.button(_capital(name), Choose("batch", key, key)),) for key, name in those)
    every = (asking.button(say("Both") if len(those) == 2 else say("All of them"), Choose("batch", "all")),)
    names = ", ".join(name for _, name in those[:-1]) + say(" or {those}", those=those[-1][1])
    if meat:
        return say(
            "I have no «{meat}» under way here. «{shown}»: is that {names}?", meat=meat, shown=shown, names=names
        ), rows
    if _NUMBER.fullmatch(line.strip()):
        text = say(
            "What is «{shown}», and of which: {names}? Tap it, or type it whole, with its place.",
            shown=shown,
            names=names,
        )
        return text, (*rows, every)
    return say("«{shown}»: is that {names}? Tap it; next time put the name before it.", shown=shown, names=names), (
        *rows,
        every,
    )


def go_by(names: Sequence[str]) -> str:
    """Batches keep the names that they were given."""
    if not names:
        return say("I name each batch by its cut when it begins, and number a second one.")
    return say(
        "Batches go by the names that I give them: {names}. Put it before what you say, like «{one}: flipped».",
        names=", ".join(names),
        one=names[-1],
    )


def with_name(name: str, text: str) -> str:
    """A message with the name of its batch before it, where its first line does not say it."""
    first = text.split("\n", 1)[0]
    return text if f"«{name}»" in first or first.startswith(f"{_capital(name)}: ") else f"{_capital(name)}: {text}"


def one_by_one(question: str, names: Sequence[str]) -> str:
    """What is asked of the first of several meats, with those that come after it."""
    return "\n".join((question, say("One after the other. After this one: {names}.", names=", ".join(names))))


def say_which(question: str, those: Mapping[str, str]) -> tuple[str, asking.Rows]:
    """A question that is of no batch more than of another: its answer names one, a tap shows how that one stands."""
    names = [*those.values()]
    listed = ", ".join(names[:-1]) + say(" or {those}", those=names[-1])
    rows = tuple((asking.button(_capital(name), Ask("now", batch=key)),) for key, name in those.items())
    return "\n".join((question, say("Put the name before it: {names}.", names=listed))), rows


def not_that_one(wrong: str, others: tuple[tuple[str, str], ...]) -> asking.Rows:
    """The tap that moves what was just said to the batch that was meant."""
    row = tuple(asking.button(say("No, {name}", name=name), Choose("moved", key, wrong)) for key, name in others[:3])
    return (row,) if row else ()


def has_it(name: str) -> str:
    """What was said last is with the batch that is named already."""
    return say("That is noted with «{name}» already. For another piece put its name before what you say.", name=name)


def nothing_to_move(name: str) -> str:
    """«i mean the ham», and of the last hours nothing was noted elsewhere."""
    return say("Nothing that you told lately is noted elsewhere. Say it again with «{name}» before it.", name=name)


def wrong_one(name: str, wrong: str, others: tuple[tuple[str, str], ...]) -> tuple[str, asking.Rows]:
    """«wrong batch»: to which it belongs."""
    return say("Then it was not «{name}». Which one was it? Tap it and I move it over.", name=name), not_that_one(
        wrong, others
    )


def in_the_fridge(found: Sequence[Assessment]) -> str:
    """Which of several batches lie in the cold by the step that they are at."""
    return say("By its step {names} is in the fridge.", names=", ".join(_capital(a.batch.name) for a in found))


def no_tubs() -> str:
    """Nothing is known of vessels and places."""
    return say("I have no tubs, bags or shelves on record: write these names onto yours.")


def due(a: Assessment) -> tuple[bool, float]:
    """When it wants something next; of batches the one that does soonest comes first."""
    found = plans.waiting(a.plan) if a.plan else []
    return not found, found[0].due.timestamp() if found else 0.0


def turned(a: Assessment) -> str:
    """The one batch whose bag is turned."""
    return say("{name} is the one that is flipped.", name=_capital(a.batch.name))


def first(a: Assessment) -> str:
    """The batch whose next step comes before that of the others."""
    return say("{name} comes first.", name=_capital(a.batch.name))


def read_as(a: Assessment, numbers_: Sequence[float]) -> str:
    """The batch whose last core or pit read one of these numbers, in the person's unit; "" where none did."""
    last = (a.batch.last(probe) for probe in (Probe.CORE, Probe.PIT))
    for reading in filter(None, last):
        shown = from_house(reading.celsius, a.person.units.temperature)
        if any(abs(shown - one) < HALF_A_DEGREE for one in numbers_):
            return say(
                "That is {name}: {last}",
                name=_capital(a.batch.name),
                last=_first(recalled.last_reading(a, reading.probe)),
            )
    return ""


def listed(found: tuple[Assessment, ...]) -> str:
    """Every batch that is under way, what comes and where it stands, one paragraph each."""
    told = ("\n".join(filter(None, (_first(plans.now(a)), reckoned.where(a)))) for a in found)
    return "\n".join(f"{_capital(a.batch.name)}: {said}" for a, said in zip(found, told, strict=True))


def _capital(name: str) -> str:
    return name[:1].upper() + name[1:]


def _first(text: str) -> str:
    return text.split("\n", 1)[0]
