"""Every message that was said in every talk: short enough, plain, and the action first."""

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.talks.conftest import FOLDER
from tests.talks.performance import Performance

TALKS = (*sorted(FOLDER.glob("*.chat")), FOLDER.parents[1] / "docs" / "week.chat")
LONGEST = 4096  # Bot API, sendMessage
FIRST_LINE = 140  # what a lock screen shows of a message, more or less: our own measure
LOCK_SCREEN = 90  # DESIGN: the first 90 characters say what to do now
CODES = re.compile(
    r"None|\bnan\b|\binf\b|[{}_|<>]|\d\d:\d\d:\d\d|\d{4}-\d\d-\d\d|\d\.\d{5,}|°[CF]°|\.\.|[ ,;]\.(?!\d)|\s$"
)
LOUD = re.compile(r"!|[\U0001f000-\U0001faff\u2600-\u27bf]")
TO_DO = {
    "thaw": "haw",
    "brine": "Make the (brine|pickle)|Weigh the (cure|salt)",
    "brine_check": "Read the brine",
    "into_cure": "eat into the bag|Inject ",
    "flip": "Flip the bag",
    "fridge_check": "Read the fridge",
    "mid_check": "Look at the bag",
    "out": "Take the meat out",
    "rinse": "Rinse it",
    "soak": "Soak it",
    "even": "seal it in a bag",
    "dry": "Pat it dry",
    "rub": "Rub it",
    "light": "Light the fire|Heat a pot",
    "meat_on": "Meat on|Meat into the simmering",
    "reading": "Read core and pit|Read the core",
    "wrap": "Wrap it",
    "off": "Probe |Try it with a fork",
    "chill": "Start the chill",
    "chill_check": "Read the core",
    "slice": "Slice it|Joint it|Lift the flakes",
    "use_by": "Today is the last day",
    "debrief": "How was it",
}

AT_TABLE = ("slice", "serve", "use_by")  # who cuts or eats what the record does not show safe hears that first
NOT_SAFE = "please do not serve it|throw it away|servier es bitte nicht|wirf es weg"
IN_GERMAN = {
    "thaw": "auftauen",
    "brine": "[Ll]ake ansetzen|(Pökelmischung|Salz) abwiegen",
    "brine_check": "Miss die Lake",
    "into_cure": "leisch mit|Spritz",
    "flip": "Wende den Beutel",
    "fridge_check": "Miss den Kühlschrank",
    "mid_check": "Sieh den Beutel an",
    "out": "Nimm das Fleisch heraus",
    "rinse": "Spül es",
    "soak": "wässern",
    "dry": "Tupf es trocken",
    "even": "verschließ es im Beutel",
    "rub": "Würz es",
    "light": "Zünde das Feuer an|Erhitze einen Topf",
    "meat_on": "Leg das Fleisch auf|Fleisch in das",
    "reading": "Miss Kern und Garraum|Miss den Kern",
    "wrap": "Wickle es",
    "off": "Prüf |Miss ",
    "chill": "Beginn mit dem Abkühlen",
    "chill_check": "Miss den Kern",
    "slice": "Schneid es|Zerleg es|Heb die Flocken|Serve them|Serve the|Simmer|Bring sie|Bring die|Lass sie sieden",
    "use_by": "Heute ist der letzte Tag",
    "debrief": "Wie war es",
}


@pytest.fixture(params=TALKS, ids=lambda path: path.stem)
def said(request: pytest.FixtureRequest, played: Callable[[Path], Performance]) -> list[dict[str, Any]]:
    """Everything that the bot said in one talk."""
    return played(request.param).said


def those(said: list[dict[str, Any]], wrong: Callable[[str], object]) -> list[str]:
    """The texts of which something wrong is true, each once."""
    return list(dict.fromkeys(one["text"] for one in said if wrong(one["text"])))


def test_it_fits(said: list[dict[str, Any]]) -> None:
    """No text is longer than a message may be, and a first line is read at a glance."""
    assert those(said, lambda text: not 0 < len(text) <= LONGEST) == []
    assert those(said, lambda text: len(text.splitlines()[0]) > FIRST_LINE) == []


def test_it_is_plain_and_calm(said: list[dict[str, Any]]) -> None:
    """No codes, no raw times, nothing that a formatter left behind, no exclamation marks, no emoji."""
    assert those(said, CODES.search) == []
    assert those(said, LOUD.search) == []


def test_it_is_whole_sentences(said: list[dict[str, Any]]) -> None:
    """A text begins with a capital, a figure or what was typed, and ends as a sentence or a list does."""
    assert those(said, lambda text: not re.match(r"[A-Z0-9«]", text)) == []
    assert those(said, lambda text: not re.search(r"[.?)\d]$", text)) == []


def test_a_reminder_says_first_what_to_do(said: list[dict[str, Any]]) -> None:
    """On a lock screen, the first 90 characters of a reminder or an alert are the thing to do, or the warning."""
    for one in said:
        if one["kind"] != "reply":
            first = one["facts"].get("step") or one["facts"]["steps"][0]  # several said in one begin with the first
            kind = first.split("/")[0]
            todo = f"{TO_DO[kind]}|{IN_GERMAN[kind]}" + (f"|{NOT_SAFE}" if kind in AT_TABLE else "")
            assert re.search(todo, one["text"][:LOCK_SCREEN]), one["text"]


def test_nothing_broke(said: list[dict[str, Any]]) -> None:
    """Nobody was ever told that something went wrong on our side."""
    assert those(said, lambda text: "on my side" in text) == []


def test_buttons_can_be_told_apart(said: list[dict[str, Any]]) -> None:
    """A label is short, says something, and is on a message once."""
    for one in said:
        labels = one["buttons"]
        assert len(set(labels)) == len(labels), labels
        for label in labels:
            assert re.fullmatch(r"[A-Z0-9][^_{}!]{0,39}", label), label


def test_facts_are_plain_data(said: list[dict[str, Any]]) -> None:
    """The facts of every message are numbers, words and lists of them, none of them infinite or nameless."""
    for one in said:
        assert json.loads(json.dumps(one["facts"], allow_nan=False)) == one["facts"]
        assert None not in one["facts"].values(), [key for key, value in one["facts"].items() if value is None]
