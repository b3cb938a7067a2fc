"""Figures said in every way and order: each is what was meant or is asked about, and never another."""

import random

import pytest

from bot.intents.intents import Change, Reading, Start
from bot.intents.read import read
from core.batch.events import Probe
from tests.talk_lines import KILOS, POUNDS, context

LB, OZ, INCH = 0.45359237, 0.45359237 / 16, 0.0254
MASSES = (
    (2.75, ("2.75kg", "2.75 kilos", "2,75 kg")), (3.4, ("3.4kg", "3400 grams", "3400 gr")),
    (0.95, ("950g", "950 grams")),
    (6.5 * LB, ("6.5lb", "6.5 lbs", "6.5#", "6 1/2 lb", "6 and a half pounds")), (8 * LB, ("8lb", "8 pounds", "8 lbs")),
    (7 * LB + 4 * OZ, ("7lb 4oz", "7 lb 4 oz", "7 1/4 lb", "7.25 pounds", "7 pounds 4 ounces")),
)  # fmt: skip
THICKNESSES = (
    (None, ("",)), (0.052, ("52mm", "52 mm thick", "5.2 cm")), (2 * INCH, ("2in thick", "2 inches", '2" thick')),
    (1.75 * INCH, ("1.75in thick", "1 3/4 inch", '1 3/4" thick', "1-3/4 inches")),
    (2.25 * INCH, ("2 1/4 in thick", "2.25 inch", "2-1/4 inches")),
)  # fmt: skip
TIMES = (
    "",
    "for saturday",
    "sat 1pm",
    "sunday at 6",
    "for sun dinner",
    "on the 14th",
    "need it thurs 18:00",
    "next sat lunch",
)
CUTS = ("brisket flat", "pork belly", "bacon belly", "brisket point", "pastrami flat", "corned beef round", "pork loin")
BESIDE = (
    "",
    "skin off",
    "dry",
    "wet brine",
    "from the butcher",
    "for 8 people",
    "cure 6.25%",
    "no rush",
    "w 5.88% cure",
    "thawed",
)
VERBS = ("", "starting", "gonna do a", "got a", "doing", "want to make", "hey im starting a")
AT = (
    "",
    " at 7",
    " at 7:40",
    " at 8.15",
    " @ 8",
    " this morning",
    " 10 min ago",
    " an hour ago",
    " since 7",
    " now",
    " as of 8am",
)
BY_THE_FIRE = (
    "core {c} pit {p}", "{c}/{p}", "pit {p} meat {c}", "pit at {p}, core at {c}", "{c} in the meat, {p} at the grate",
    "its {c} inside and the pit says {p}", "internal {c}, smoker {p}", "{c} core {p} pit", "brisket {c} pit {p}",
)  # fmt: skip
AS_IT_COOLS = ("core {c}", "core is {c}", "its {c} inside", "meat {c}", "{c} in the middle", "core at {c}")
IN_THE_COLD = (
    "{w} {c}",
    "{w} is {c}",
    "{w} at {c}",
    "{w} says {c}",
    "{c} in the {w}",
    "checked the {w} {c}",
    "the {w} reads {c}",
)

CHANGES = [
    *(("mass", 6.4 * LB, way) for way in (
        "its 6.4 lb", "trimmed its 6.4lb", "6.4lb not 6.5", "i said 6.5 but its 6.4 lb", "no 6.4 lb",
        "weight is 6.4 lb",
        "i meant 6.4lb", "change it to 6.4 lb", "6.5 was wrong its 6.4lb", "the flat is 6.4 lb after trimming",
    )),
    *(("thickness", 0.048, way) for way in (
        "its 48 mm thick", "thickness is 48 mm not 52", "i said 52 but its 48 mm thick", "thickest part 48 mm",
        "its 48mm not 52mm", "it is 48 mm at the thickest", "measured again 48 mm", "actually 48 mm thick",
    )),
    *(("cure_nitrite_fraction", 0.0588, way) for way in (
        "cure is 5.88%", "its 5.88 % nitrite", "packet says 5.88%", "the label says 5.88 percent",
        "using 5.88% pink salt",
    )),
    *(("put_in_cure", 0.008, way) for way in (
        "i put 8 g of cure in", "only 8g cure went in", "i put in 8 grams not 18", "put 8 g in", "8g of cure is in",
        "used 8 g of pink salt", "added 8 g cure not 18 g",
    )),
]  # fmt: skip


def wrong_start(chance: random.Random) -> str:
    """A start of which a figure is taken for another, with what was taken; "" where none is."""
    mass, masses = chance.choice(MASSES)
    thickness, lengths = chance.choice(THICKNESSES)
    parts = [chance.choice(p) for p in (CUTS, masses, lengths, TIMES, BESIDE)]
    if chance.random() < 0.5:
        chance.shuffle(parts)
    line = f"{chance.choice(VERBS)} {chance.choice((' ', ', ')).join(filter(None, parts))}".strip()
    start = read(line, context("none", chance.choice((POUNDS, KILOS))))[0]
    said = start.said if isinstance(start, Start) else {}
    heavy, thick = said.get("mass", mass), said.get("thickness", thickness)
    same = abs(heavy - mass) < 1e-3 and (thick is None) == (thickness is None)
    return "" if same and (thick is None or abs(thick - thickness) < 1e-4) else f"{line}: {said}"


def wrong_reading(chance: random.Random) -> str:
    """A line with temperatures of which one is read otherwise, with what was read; "" where none is."""
    fahrenheit = chance.random() < 0.5
    phase = chance.choice(("cooking", "chilling", "curing", "waiting"))
    figures = {
        "cooking": ((152, 171), (225, 275)) if fahrenheit else ((66, 74), (107, 130)),
        "chilling": ((48, 79), (0, 0)) if fahrenheit else ((9, 24), (0, 0)),
    }.get(phase, ((36, 52), (0, 0)) if fahrenheit else ((2, 9), (0, 0)))
    value, pit = (chance.randint(*pair) for pair in figures)
    where = {"curing": Probe.FRIDGE, "waiting": Probe.BRINE}.get(phase, Probe.CORE)
    ways = {"cooking": BY_THE_FIRE, "chilling": AS_IT_COOLS}.get(phase, IN_THE_COLD)
    line = chance.choice(ways).format(c=value, p=pit, w=where.value) + chance.choice(AT)
    last = {"cooking": 65.0, "chilling": 30.0}.get(phase)
    found = read(line, context(phase, POUNDS if fahrenheit else KILOS, last_core_c=last, last_pit_c=121.0))
    read_off = [t for one in found if isinstance(one, Reading) for t in one.temperatures]
    told, unit = {where: value, Probe.PIT: pit}, "f" if fahrenheit else "c"
    same = all(t.probe and t.value == told.get(t.probe) and t.unit in (None, unit) for t in read_off)
    return "" if same else f"{line} ({phase}, {unit}): {read_off}"


def wrong_change(chance: random.Random) -> str:
    """A figure of the piece put right of which another is taken, with what was taken; "" where none is."""
    name, true, text = chance.choice(CHANGES)
    phase = chance.choice(("waiting", "curing"))
    found = read(
        text, context(phase, chance.choice((POUNDS, KILOS)), mass=3.3, due_step=chance.choice((None, "flip/2")))
    )
    said = {field: value for one in found if isinstance(one, Change) for field, value in one.changes.items()}
    read_off = any(isinstance(one, Reading | Start) for one in found)
    same = not read_off and set(said) <= {name} and abs(said.get(name, true) - true) < 1e-6
    return "" if same else f"{text} ({phase}): {said or found}"


WRONG = [wrong_start, wrong_reading, wrong_change]


@pytest.mark.parametrize("wrong", WRONG)
def test_no_figure_is_taken_for_another(wrong: object) -> None:
    """A few hundred lines of each kind, the same every time."""
    chance = random.Random(20271003)
    assert callable(wrong)
    assert [line for _ in range(300) if (line := wrong(chance))] == []


@pytest.mark.slow
@pytest.mark.parametrize("wrong", WRONG)
def test_no_figure_of_ten_thousand_lines_is(wrong: object) -> None:
    """Ten thousand lines of each kind."""
    chance = random.Random(20271004)
    assert callable(wrong)
    assert [line for _ in range(10_000) if (line := wrong(chance))] == []
