"""core.safety.cautions and stops: every caution has a place, a source and a line in docs/cautions.md."""

import re
from pathlib import Path

import pytest

from core.errors import Gone, Unreadable
from core.plan.steps import Kind
from core.safety import cautions, stops
from core.safety.cautions import Severity, caution, every_caution, for_step, register
from core.safety.stops import every_stop, stop
from core.sources import every_source

ROOT = Path(__file__).parents[3]
PLACES = {"start", "dose", "inject", "poultry", "fish", "ham", "record", "trouble"}
STEPS = {kind.value for kind in Kind}


def _lines_of_the_page():
    text = (ROOT / "docs" / "cautions.md").read_text(encoding="utf-8")
    return [tuple(cell.strip() for cell in line.strip("|").split("|")) for line in text.splitlines() if "|" in line]


def _printed(entry):
    told = entry.caution
    when = " and ".join(
        w for w in ("when found" if entry.found else "always", "again when it matters" * entry.again) if w
    )
    return (
        f"`{told.key}`",
        told.severity.value,
        ", ".join(entry.at),
        when,
        f"{told.source.title} ({told.source.status})",
    )


def test_the_page_is_the_register():
    """docs/cautions.md lists every caution, where it appears, when, and its source; no more and no less."""
    cells = [line for line in _lines_of_the_page() if line[0].startswith("`")]
    page = [line for line in cells if len(line) == 5]
    assert page == [_printed(entry) for entry in register().values()]


def test_the_page_lists_every_stop():
    """docs/cautions.md lists every stop with its source and what can be done instead."""
    page = [line for line in _lines_of_the_page() if line[0].startswith("`") and len(line) == 4]
    expected = [
        (f"`{s.key}`", f"`{s.caution.key}`", s.instead.replace("_", " "), f"{s.source.title} ({s.source.status})")
        for s in every_stop().values()
    ]
    assert page == expected


def test_every_caution_belongs_somewhere():
    """Each place is a kind of step or one of the named places; sources are in the bibliography."""
    for entry in register().values():
        assert entry.at
        assert set(entry.at) <= STEPS | PLACES
        assert entry.caution.source in every_source().values()


def test_every_caution_is_reached_from_its_place():
    """for_step gives what always belongs to a place, the gravest first; what is found is left to who finds it."""
    for place in STEPS | PLACES:
        told = for_step(place)
        assert {c.key for c in told} == {k for k, e in register().items() if place in e.at and not e.found}
        gravity = [list(Severity).index(c.severity) for c in told]
        assert gravity == sorted(gravity, reverse=True)
    assert for_step("no_such_step") == ()


@pytest.mark.parametrize(
    ("place", "key"),
    [
        ("dose", "nitrite_weigh_exactly"),
        ("dose", "nitrite_away_from_children"),
        ("start", "pink_rock_salt_is_no_cure"),
        ("light", "charcoal_outdoors_only"),
        ("off", "hot_ash"),
        ("chill", "chill_clock"),
        ("poultry", "poultry_own_table"),
        ("fish", "vacuum_fish_38f"),
        ("slice", "at_risk_reheat"),
        ("record", "record_is_no_licence"),
        ("record", "local_code"),
        ("start", "for_sale"),
    ],
)
def test_the_places_that_matter(place, key):
    """The cautions that may not be missing where they are needed."""
    assert key in [c.key for c in for_step(place)]


def test_a_caution_carries_its_numbers():
    """The numbers that its words need go with it; an unknown key is an error."""
    assert caution("nitrite_weigh_exactly", cure_g=7.2).facts == (("cure_g", 7.2),)
    assert len(every_caution()) == len(register())
    with pytest.raises(Gone):
        caution("no_such_caution")


def test_every_caution_in_the_code_is_in_the_register():
    """Whatever room makes a caution by its key, the register and the page know it."""
    made = re.compile(r"\b[Cc]aution\(\s*\"([a-z0-9_]+)\"")
    used = {key for path in (ROOT / "core").rglob("*.py") for key in made.findall(path.read_text(encoding="utf-8"))}
    assert used
    assert used <= register().keys()


def test_a_broken_line_says_where():
    """A severity or source that there is not is an error that names the line."""
    with pytest.raises(Unreadable) as wrong:
        cautions._entry("bad", {"severity": "loud", "source": "CDC_LISTERIA", "at": ["slice"]})
    assert wrong.value.where == "bad"
    for line in ({"source": "X", "caution": "hot_ash", "instead": "y"}, {"source": "CDC_LISTERIA", "caution": "z"}):
        with pytest.raises(Unreadable):
            stops._stop("bad", line)


STOPS_OF_THE_BRIEF = [
    "over_nitrite_limit", "partial_smoke_and_hold", "cold_smoke_without_cure", "room_temperature_cure",
    "room_temperature_dry", "frozen_core_on_smoker", "poultry_on_beef_table", "recook_for_toxin",
    "charcoal_indoors", "hot_ash_in_paper",
]  # fmt: skip


@pytest.mark.parametrize("key", STOPS_OF_THE_BRIEF)
def test_the_stops(key):
    """Each is there with source, caution and something to do instead."""
    found = stop(key)
    assert found.source in every_source().values()
    assert found.caution.key in register()
    assert found.instead


def test_stops_are_deaf():
    """A stop takes nothing but its key: nobody's word changes its figures. Emergencies carry no figure at all."""
    assert stop("over_nitrite_limit") is stop("over_nitrite_limit")
    assert dict(stop("over_nitrite_limit").figures) == {"limit_mg_kg": 200.0, "out_of_question_mg_kg": 400.0}
    assert all(not s.figures for s in every_stop().values() if s.emergency)
    assert {s.key for s in every_stop().values() if s.emergency} == {
        "ate_curing_salt", "signs_of_botulism", "signs_of_carbon_monoxide",
    }  # fmt: skip
    with pytest.raises(Gone):
        stop("no_such_stop")
