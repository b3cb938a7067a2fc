"""A question with a weight or a thickness of its own is a sum beside a batch too, and changes nothing of it."""

import pytest

from bot.intents.intents import Ask
from bot.intents.read import read
from tests.talk_lines import context


@pytest.mark.parametrize("phase", ["none", "curing"])
@pytest.mark.parametrize("asked", [None, "answered"])
@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("3 in thick point cure time", "days"),
        ("pickling spice for 3.4 kilo brisket", "spice"),
        ("want to eat 6pm sat brisket 8 lb when do i light it", "light_by"),
        ("cold water thaw 7.5 lb brisket how long", "thaw"),
        ("121c in f for the pit", "convert"),
        ("7 lb 6 oz in kg", "convert"),
        ("recipe says 30 g of 0.5% nitrite salt i only have the 6.25 stuff", "swap"),
        ("mixed 10g cure w 90g water need 6 g cure how much of it", "stock"),
    ],
)
def test_a_sum_beside_a_batch(line: str, kind: str, asked: str | None, phase: str) -> None:
    """No start, no change, no reading; after another answer as well (invented lines, no source)."""
    where = context(phase, asked=asked)
    assert read(line, where) == [Ask("sum", kind, line)]
