"""Whatever the batch and however far it came, its record can be had in every form."""

import json
import re
from dataclasses import replace
from datetime import timedelta

import pytest

from bot.papers.forms import FORMS
from core.batch.batch_record import BatchRecord, batch_record
from core.batch.events import (
    Assumed,
    Changed,
    Done,
    Event,
    Handed,
    Incident,
    Missed,
    Paused,
    Probe,
    Read,
    Resumed,
    Sliced,
    Started,
    What,
)
from core.meat.cuts import cut
from core.plan.recipe import product, products
from tests.kept_week import MONDAY, NAMES, OWNER

MISHAPS = (
    "fire_out", "power_cut", "warm_fridge", "warm_brine", "left_out", "leaked", "dosed_twice", "cure_as_salt",
    "cure_in_rub", "forgot_cure", "wrong_salt", "flare", "lid", "leak", "doubled_cure", "fridge_door_open",
    "brine_warm", "fridge_warm",
)  # fmt: skip
CURE = {"cure_nitrite_fraction": 0.0625}


def of(setup: dict[str, object], *then: What) -> BatchRecord:
    """A batch of that setup, with an hour between one thing and the next."""
    whats = (Started("it", setup), *then)
    times = [MONDAY + timedelta(hours=n) for n in range(len(whats))]
    log = [Event(n, at, at, "m", f"t{n}", what) for n, (at, what) in enumerate(zip(times, whats, strict=True), 1)]
    return batch_record("b", log, (OWNER, NAMES), MONDAY + timedelta(hours=len(whats) + 1))


def usual(name: str) -> dict[str, object]:
    made = product(name)
    first = made.cuts[0]
    middle = (cut(first).mass_low + cut(first).mass_high) / 2
    return {"product": name, "cut": first, "mass": middle, **CURE}


@pytest.mark.parametrize("name", sorted(products()))
def test_every_product_has_a_record(name: str) -> None:
    """From the plan alone to the cook, with its dose or as plain salt; nothing of it is a code."""
    cured = (Done("brine"), Done("into_cure"), Read(Probe.FRIDGE, 3.0), Done("out"))
    cooked = (*cured, Done("meat_on"), Read(Probe.CORE, 40.0))
    for then in ((), cooked):
        r = of(usual(name), *then)
        page = FORMS["html"](r).decode()
        assert "no licence" in page
        assert not re.search(r">[^<]*(?:None|\bnan\b|[{}]|[a-z]_[a-z])", page.partition("</style>")[2])
        assert json.loads(FORMS["json"](r))["figures"]["product"] == name
        assert FORMS["csv"](r).count(b"\r\n") > 7


@pytest.mark.parametrize(
    ("setup", "says"),
    [
        ({"product": "pastrami", "cut": "brisket_flat", "mass": 3.2}, "No dose was given"),
        ({**usual("pastrami"), "nitrite_target": 190.0}, "= 190 mg/kg"),
        ({**usual("pastrami"), "nitrite_target": 400.0}, "No dose was given"),
        ({**usual("pastrami"), "nitrite_target": 0.0}, "salted, not cured"),
        ({**usual("pastrami"), "method": "dry"}, "green meat = "),
        ({**usual("ham"), "method": "inject"}, "NaNO₂"),
    ],
    ids=["strength unknown", "asked for", "over the limit", "plain salt", "dry", "injected"],
)
def test_every_dose_is_told_or_said_to_be_none(setup: dict[str, object], says: str) -> None:
    """A figure only where there is one."""
    assert says in FORMS["html"](of(setup)).decode()


@pytest.mark.parametrize("kind", MISHAPS)
def test_every_mishap_is_in_words(kind: str) -> None:
    """With the facts that were told; none as its code."""
    told = Incident(kind, {"hours": 2.0, "core_c": 5.5, "room_c": 22.0, "door_shut": True, "more": True})
    page = FORMS["html"](of(usual("pastrami"), Done("brine"), Done("into_cure"), told)).decode()
    assert "trouble: " in page
    assert kind not in page or "_" not in kind
    assert "core 5.5 °C" in page


def test_everything_that_can_be_said_is_in_words() -> None:
    """Pauses, misses, assumptions, hand-overs and a slice that is pink all through."""
    page = FORMS["html"](
        of(
            usual("pastrami"),
            Assumed({"method": "dry"}),
            Changed({"at_risk_eaters": True, "mass": 3.0}),
            Missed(("flip/1", "flip/2")),
            Paused(),
            Resumed(),
            Handed("fire", MONDAY, "", "grandma"),
            Sliced(0.0),
        )
    ).decode()
    said = ("assumed: method", "somebody at risk will eat it", "Flip the bag: missed", "the pause", "pink all through")
    assert [words for words in (*said, "grandma: the fire") if words not in page] == []


def test_a_record_without_a_name_says_the_cook() -> None:
    """In a terminal nobody has a name, and nobody needs one."""
    r = of(usual("pastrami"))
    nameless = replace(r, members=tuple(replace(m, name="\u202e\x00 ") for m in r.members))
    assert "by the cook;" in FORMS["html"](nameless).decode()
