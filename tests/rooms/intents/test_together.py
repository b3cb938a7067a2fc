"""Several batches named in one breath: what is said is said of each of them, and of no other."""

import pytest

from bot.intents.together import each

THREE = ("flat", "ham", "flat 2")


@pytest.mark.parametrize(
    ("line", "lines"),
    [
        ("ham and flat flipped", ("ham flipped", "flat flipped")),
        ("flipped the ham and the flat 2", ("flipped the ham", "flipped the flat 2")),
        ("flat, ham and flat 2: fridge 3 c", ("flat: fridge 3 c", "ham: fridge 3 c", "flat 2: fridge 3 c")),
        ("ham flipped, flat too", ("ham flipped", "flat flipped")),
        ("ham: fridge 3 c, flat 2 as well", ("ham: fridge 3 c", "flat 2: fridge 3 c")),
        ("fridge 3 c for the ham, flat flipped", ("fridge 3 c for the ham, flat flipped",)),  # two things, one of each
        ("ham and flat", ("ham and flat",)),  # nothing is said of them: an answer
        ("2 kg ham and flat for saturday", ("2 kg ham and flat for saturday",)),
        ("flipped, fridge 3 c", ("flipped, fridge 3 c",)),
    ],
)
def test_a_line_for_each(line: str, lines: tuple[str, ...]) -> None:
    """The line once for each batch of a list that ends with «and», or of a name with «too»."""
    assert each(line, THREE) == lines


def test_one_batch_is_no_list() -> None:
    """With one batch a line stays as it is."""
    assert each("ham and flat flipped", ("ham",)) == ("ham and flat flipped",)
