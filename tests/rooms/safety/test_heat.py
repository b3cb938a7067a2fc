"""core.safety.heat: what the record says of the cook, and which clock runs until when."""

from core.safety.findings import Rule
from core.safety.heat import heat_findings
from tests.records import at, brisket, history

ON_FIRE = {"off_at": None, "chill_started_at": None}


def _only(rule, record):
    (found,) = (f for f in heat_findings(record) if f.rule is rule)
    return found


def test_a_core_reading_is_a_cook():
    """Nobody said when it went on, but the core was read: it is not raw."""
    read = _only(Rule.DONENESS, brisket(((3.0, 120.0),), now=at(3.1), meat_on_at=None, **ON_FIRE))
    assert (read.missing, read.readings) == ("core_reading", history((3.0, 120.0)))
    raw = _only(Rule.DONENESS, brisket((), now=at(3.1), meat_on_at=None, **ON_FIRE))
    assert raw.missing == "cook_it"


def test_the_way_up_ends_when_it_comes_off():
    """Off after 4 h at 120 °F: four hours of the way up, however much later it is asked."""
    core = ((0.0, 39.0), (4.0, 120.0))
    assert _only(Rule.COME_UP, brisket(core, now=at(9.0), off_at=at(4.0), chill_started_at=None)).value == 4.0
    assert _only(Rule.COME_UP, brisket(core, now=at(5.0), **ON_FIRE)).value == 5.0
    assert _only(Rule.COME_UP, brisket(core, now=at(5.0), off_at=at(6.0), chill_started_at=None)).value == 5.0


def test_a_fall_shows_both_its_ends():
    """The last reading at 140 °F and the first at 140 °F again; while it is down, the lowest."""
    core = ((0.0, 39.0), (2.0, 135.0), (4.0, 151.0), (5.0, 120.0))
    down = _only(Rule.HELD_140, brisket(core, now=at(5.1), **ON_FIRE))
    assert down.readings == history((4.0, 151.0), (5.0, 120.0))
    back = _only(Rule.HELD_140, brisket((*core, (5.5, 142.0)), now=at(5.6), **ON_FIRE))
    assert back.readings == history((4.0, 151.0), (5.5, 142.0))
