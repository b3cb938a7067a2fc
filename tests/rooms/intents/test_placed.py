"""Hours beside the weight of a start: they are hours, and never pieces of meat that a dose would be weighed for."""

from datetime import time

import pytest

from bot.intents.intents import Settings, Start
from bot.intents.read import read
from core.units import KILOGRAMS_PER_POUND as LB
from tests.talk_lines import KILOS, context

NONE = context("none", KILOS)


@pytest.mark.parametrize(
    ("text", "pounds", "hours"),
    [
        ("flips at 7 and 19 and 7 lb flat pastrami for saturday 1pm", 7.0, (7, 19)),
        ("7 lb flat pastrami for saturday 1pm, flips at 7 and 19", 7.0, (7, 19)),
        ("flip at 7 and 19, 8 lb brisket flat", 8.0, (7, 19)),
        ("flips 7am 7pm 7 lb flat for sat 1pm", 7.0, (7, 19)),
        ("flips at 7 and 19 and 3 bellies 4 4 and 5 lb", 13.0, (7, 19)),
    ],
)
def test_hours_of_flipping_are_no_weights(text: str, pounds: float, hours: tuple[int, ...]) -> None:
    """The hours are kept as hours, and the weight is that of the meat alone."""
    called, begun = read(text, NONE)
    assert called == Settings({"flip_hours": tuple(map(time, hours))})
    assert isinstance(begun, Start)
    assert begun.said["mass"] == pytest.approx(pounds * LB)


@pytest.mark.parametrize("text", ["fed at 5 and 7 and 7 lb flat pastrami", "bellies at 5, 6 and 7 lb"])
def test_a_weight_behind_several_hours_is_asked(text: str) -> None:
    """Where numbers behind «at» may be hours or pieces, nothing is weighed before it was asked."""
    (begun,) = read(text, NONE)
    assert isinstance(begun, Start)
    assert "mass" not in begun.said
    assert "mass:7 lb" in begun.unclear
