"""Everything that the core can refuse, find or beware of has words at the rim; nothing falls through to a code."""

import re
from datetime import UTC, datetime
from pathlib import Path
from typing import get_args

import pytest

from bot.wording import asking, cautions, incidents, meat_names, meats, plans, refusals, safety, steps, values
from core import errors
from core.heat.doubt import Reason
from core.person import Person
from core.plan.recipe import products
from core.plan.steps import Kind
from core.safety.cautions import every_caution
from core.safety.findings import Outcome, Rule, Status

ROOT = Path(__file__).parents[2]
IDA = Person("ida", "Ida", zone="Europe/Vienna")
WHEN = datetime(2027, 3, 1, 12, tzinfo=UTC)
LEAVES = (
    errors.OutOfRange("mass", 900.0, 0.3, 9.0, "kg"),
    errors.OutOfRange("nitrite in the curing salt", 9.0, 0.003, 0.08, "-"),
    errors.OutOfRange("thickness", 1.0, 0.005, 0.25, "m"),
    errors.OutOfRange("pit", 500.0, 60.0, 200.0, "°C"),
    errors.Missing("thickness"),
    errors.OverLimit("nitrite", 250.0, 200.0, "US", "21 CFR 172.175", "CONFIRMED", 0.012),
    errors.UnknownCure("pink salt"),
    errors.TooLong(24.0, 21.0),
    errors.RawTooLong(15.0, 3.0),
    errors.RawTooLong(4.0, 2.0, fish=True),
    errors.TooLong(float("inf"), 21.0),
    errors.TooLate("method"),
    errors.TooMany(40),
    errors.ByTheClock(0.10),
    errors.OtherWay("ham_bone_in", "brine", ("inject",)),
    errors.Gone("purpose pulled"),
    errors.Gone("nitrite limit EU fish dry"),
    errors.Gone("bacon from brisket flat"),
    errors.Gone("product jerky"),
    errors.TooSoon(WHEN, WHEN, 6.5),
    errors.Gone("batch"),
    errors.Gone("event"),
    errors.Gone("cut moon"),
    errors.Unreadable("cuts.toml", "brisket", "no mass"),
    errors.NotKept("disk full"),
    errors.NotDelivered(None),
)


def leaves(kind: type) -> set[type]:
    """The classes of a tree that nothing derives from."""
    below = kind.__subclasses__()
    return {kind} if not below else set().union(*(leaves(k) for k in below))


def test_every_refusal_has_words() -> None:
    """Each leaf of the tree of errors is told in one sentence or two, with what to do instead."""
    told = {type(e) for e in LEAVES}
    ours = {leaf for leaf in leaves(errors.SaltbellError) if leaf.__module__ == "core.errors"}
    assert ours <= told

    for error in LEAVES:
        said = refusals.say(error, IDA)
        assert said.endswith((".", "?"))
        assert said != "I cannot do that."
        assert not re.search(r"[{}]|None|nan|inf\b", said)


def test_every_caution_has_words() -> None:
    """Those of the register, and those that a dose or a judgement makes by name."""
    in_code = set()
    for path in (ROOT / "core" / "cure").glob("*.py"):
        in_code |= set(re.findall(r'(?:Caution|caution)\(\s*"([a-z_0-9]+)"', path.read_text("utf-8")))
    keys = {c.key for c in every_caution()} | in_code
    assert keys - cautions.WORDS.keys() == set()


@pytest.mark.parametrize(
    ("known", "words"),
    [
        (set(Rule), safety.RULES.keys()),
        (set(Status), safety.STATES.keys()),
        (set(Outcome), safety.VERDICTS.keys()),
        (set(Kind), steps.NAMES.keys()),
    ],
    ids=["rules", "states", "verdicts", "steps"],
)
def test_every_finding_has_words(known: set[str], words: set[str]) -> None:
    """Rules, states, verdicts and steps are each named."""
    assert known - set(words) == set()


def test_every_advice_and_every_missing_fact_has_words() -> None:
    """What the ledger advises and what it still wants to know is never shown as a code."""
    source = "\n".join(p.read_text("utf-8") for p in (ROOT / "core" / "safety").glob("*.py"))
    missing = set(re.findall(r'missing="([a-z_0-9]+)"', source)) | set(re.findall(r'else "([a-z]+_reading)"', source))
    advice = set(re.findall(r'advice="([a-z_0-9]+)"', source))
    assert missing - safety.MISSING.keys() == set()
    assert advice - incidents.ADVICE.keys() == set()


def test_every_doubt_has_words() -> None:
    """Each reason for which the solver doubts a reading is a sentence."""
    from core.batch.doubts import REASONS

    assert set(get_args(Reason)) == REASONS.keys()
    for why in {*REASONS.values(), "off_the_fire"}:
        text, rows = asking.doubted("518 °F", why, "158 °F", "abc")
        assert "518 °F" in text
        assert rows


def test_every_choice_of_a_product_has_words() -> None:
    """Methods, purposes, wraps and chills of every product are named in a plan."""
    for product in products().values():
        assert {p.name for p in product.purposes} <= meats.PURPOSES.keys()
        assert dict(product.defaults).get("method", "brine") in plans.METHODS
        assert product.name in meat_names.PRODUCTS
        assert set(product.cuts) <= meat_names.CUTS.keys()
    assert plans.WRAPS.keys() == {"none", "paper", "foil"}
    assert "cure_nitrite_fraction" in values.FIELDS
