"""Asking for a record or for one's data, as people do; and what only sounds like it."""

import pytest

from bot.intents.intents import Ask
from bot.intents.read import read
from tests.talk_lines import context


@pytest.mark.parametrize("phase", ["none", "curing", "cooking", "stored"])
@pytest.mark.parametrize(
    ("said", "form"),
    [
        ("record", ""),
        ("/record", ""),
        ("Records", ""),
        ("the record please", ""),
        ("show me the record", ""),
        ("can i have the record?", ""),
        ("i want the record as a page", "html"),
        ("send me the batch record as csv", "csv"),
        ("record for the batch", ""),
        ("record of the last one", ""),
        ("print the record", ""),
        ("export the batch as csv", "csv"),
        ("log as pdf", ""),
        ("json please", "json"),
        ("pdf", ""),
        ("Bericht", ""),
        ("Protokoll als PDF", ""),
        ("schick mir das Chargenprotokoll", ""),
    ],
)
def test_the_record_is_asked_for(phase: str, said: str, form: str) -> None:
    """Wherever the batch stands, and where there is none."""
    (meant,) = read(said, context(phase))
    assert isinstance(meant, Ask)
    assert (meant.topic, meant.about) == ("record", form)


@pytest.mark.parametrize(
    "said",
    [
        "export", "export my data", "my data", "download my data", "give me all my data", "can you export my data",
        "What do you know about me?", "what data do you have about me", "meine Daten", "please send me my data",
    ],
)  # fmt: skip
def test_ones_own_data_are_asked_for(said: str) -> None:
    """In plain words; «delete my data» is another thing."""
    (meant,) = read(said, context("none"))
    assert isinstance(meant, Ask)
    assert meant.topic == "export"


@pytest.mark.parametrize(
    ("said", "topic"),
    [
        ("delete my data", "forget"),
        ("log", "log"),
        ("protokoll", "log"),
        ("history", "log"),
        ("did i record a flip", "log"),
    ],
)
def test_what_sounds_like_it(said: str, topic: str) -> None:
    """The log in the chat and being forgotten keep their words."""
    (meant,) = read(said, context("curing"))
    assert isinstance(meant, Ask)
    assert meant.topic == topic


@pytest.mark.parametrize(
    "said", ["record 158", "3.2 kg brisket for the record", "my data is 158", "for the record it was 70"]
)
def test_what_is_neither(said: str) -> None:
    """A number beside the word is about the number."""
    assert not any(isinstance(m, Ask) and m.topic in ("record", "export") for m in read(said, context("cooking")))
