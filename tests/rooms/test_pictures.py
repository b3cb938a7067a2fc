"""What is drawn is what is told: an hour to wrap by stands in a picture only where it would be late bare."""

from datetime import UTC, datetime, timedelta

import pytest

from bot import pictures
from bot.wording import wraps
from core.batch.assess import Assessment, assess
from core.batch.batch import fold
from core.batch.events import Done, Event, Probe, Read, Started
from core.person import Person

ON = datetime(2027, 10, 1, 6, tzinfo=UTC)
HEDDA = Person("hedda", zone="UTC", zone_known=True, cure_nitrite_fraction=0.0625)
WEEK = (("brine", -240.0), ("into_cure", -239.0), ("out", -12.0), ("light", -1.0), ("meat_on", 0.0))
READ = ((1.0, 28.0), (2.0, 45.0), (3.0, 57.0), (5.0, 64.0))


def on_the_fire(meal_h: float) -> Assessment:
    """A flat in its stall five hours after it went on, eaten hot so long after that. [h]"""
    setup = {"product": "pastrami", "cut": "brisket_flat", "mass": 3.2, "thickness": 0.05, "purpose": "hot"}
    setup |= {"cure_nitrite_fraction": 0.0625, "deadline": ON + timedelta(hours=meal_h)}
    said = [(-241.0, Started("flat", setup)), *((h, Done(key)) for key, h in WEEK)]
    said += [(h, Read(Probe.CORE, c)) for h, c in READ]
    at = [(ON + timedelta(hours=h), what) for h, what in said]
    events = [Event(n, when, when, "hedda", f"m{n}", what) for n, (when, what) in enumerate(at, 1)]
    return assess(fold("b", events), HEDDA, ON + timedelta(hours=5))


@pytest.mark.parametrize("meal_h", [9.0, 12.0, 30.0])
def test_wrap_by_is_drawn_where_it_is_told(meal_h: float, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the picture stands an hour to wrap by exactly where the words name one."""
    drawn = []
    monkeypatch.setattr(pictures, "apart", lambda _, shown, *__: drawn.append(shown) or b"")
    a = on_the_fire(meal_h)
    pictures.drawn(a, "cook")
    assert (drawn[0].wrap_by is not None) == ("wrap in foil by" in wraps.deadline(a))


def test_a_meal_a_day_away_wants_no_wrap() -> None:
    """A wrap is named for the one meal, and not for the other."""
    assert "wrap in foil" in wraps.deadline(on_the_fire(12.0))
    assert wraps.deadline(on_the_fire(30.0)) == ""
