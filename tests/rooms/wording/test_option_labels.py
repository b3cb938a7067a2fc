"""What a button says that offers one of the things that were perhaps meant: in the person's words and language."""

import pytest

from bot.intents.intents import Change
from bot.wording import language, options
from core.person import Person


@pytest.mark.parametrize(
    ("field", "value", "english", "german"),
    [
        ("chill", "rack", "Rack", "Rost"),
        ("chill", "foil", "In foil", "In Folie"),
        ("wrap", "foil", "Foil", "Folie"),
        ("method", "dry", "Dry in a bag", "Trocken im Beutel"),
        ("purpose", "pulled", "Pulled", "Gezupft"),
        ("cut", "pork_loin", "Pork loin", "Schweinelachs"),
    ],
)
def test_a_choice_is_called_as_its_question_calls_it(field: str, value: str, english: str, german: str) -> None:
    """«Rack» stood on a German button."""
    person = Person(id="ida")
    assert options.label(Change({field: value}), person) == english
    with language.speaking("de"):
        assert options.label(Change({field: value}), person) == german
