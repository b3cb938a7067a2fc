"""Parts of a number and of a unit, and what stands beside them as another quantity."""

import pytest

from bot.measures import find, plain


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("inch and a half thick", [(1.5, "in")]),
        ("two and 1/4 in thick", [(2.25, "in")]),
        ("1 and 3/4 inches", [(1.75, "in")]),
        ("2 and three eighths of an inch", [(2.375, "in")]),
        ("3/4 of an inch", [(0.75, "in")]),
        ("half an inch", [(0.5, "in")]),
        ("two inches and a quarter", [(2.25, "in")]),
        ("2 and a third cups", [(2 + 1 / 3, "cup")]),
        ("two pounds and a half of salmon", [(2.5, "lb")]),
        ("a kilo of belly, an inch thick", [(1.0, "kg"), (1.0, "in")]),
        ("2 n a half kilos", [(2.5, "kg")]),
        ("3 lb 2 oz, inch thick", [(3.125, "lb"), (1.0, "in")]),
        ("25 g a kilo", [(25.0, "g")]),
        ("7 days an inch", [(7.0, "d")]),
        ("2 lb and 1/2 oz", [(2.03125, "lb")]),
        ("2 kg and half a cup of sugar", [(2.0, "kg"), (0.5, "cup")]),
        ("2 kg and half of it went", [(2.0, "kg")]),
    ],
)
def test_a_part_never_stands_without_its_whole(typed: str, said: list[tuple[float, str]]) -> None:
    """Common practice, no source: how people say a half; a part taken alone would be a thickness too small."""
    found = find(plain(typed))
    assert [m.typed for m in found] == pytest.approx([value for value, _ in said])
    assert [m.unit for m in found] == [unit for _, unit in said]
