"""German: each line means what its English says, and so does every example that the German catalogue gives."""

import csv
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.intents.context import Context
from bot.intents.intents import (
    Ask,
    Happened,
    Intent,
    MoveDeadline,
    Question,
    Reading,
    StepDone,
    StepMissed,
    StepSkipped,
    Unclear,
)
from bot.intents.read import read
from bot.intents.rewriting.tongue import tongues
from bot.wording.language import ENTRIES
from tests.house.catalogue import paths
from tests.house.catalogue import read as catalogue
from tests.rooms.intents.shorthand import short
from tests.talk_lines import KILOS, context

PHASES = ("none", "waiting", "curing", "drying", "cooking", "resting", "chilling", "stored")
NOW = datetime(2027, 9, 24, 10, tzinfo=UTC)
EXAMPLE = re.compile(r"«([^»{}]*)»")
with (Path(__file__).parent / "german.csv").open(encoding="utf-8", newline="") as file:
    LINES = [tuple(row.values()) for row in csv.DictReader(file, delimiter=";")]


def meant(line: str, language: str, phase: str) -> list[Intent]:
    """What a line means, without the words that it was said in."""
    where = Context(NOW, zone="Europe/Vienna", language=language)
    if phase != "none":
        where = replace(where, phase=phase, batch="b", batches=(("b", "flat"),))
    found = read(line, where)
    return [replace(one, text="") if isinstance(one, Ask | Question | Unclear) else one for one in found]


def examples(language: str) -> Iterator[tuple[str, str]]:
    """Each example of the English sentences with the one that stands in its place."""
    for message in (*catalogue(language), *catalogue(language, ENTRIES)):
        if not message.id:
            continue
        english, other = (t[-1] if isinstance(t, tuple) else t for t in (message.id, message.string))
        yield from zip(EXAMPLE.findall(english), EXAMPLE.findall(other), strict=True)


@pytest.mark.parametrize(("line", "english", "phase"), LINES)
def test_a_line_means_what_its_english_says(line: str, english: str, phase: str) -> None:
    """Said by somebody who is spoken to in German."""
    assert meant(line, "de", phase) == meant(english, "en", phase)
    assert not any(isinstance(one, Question | Unclear) for one in meant(line, "de", phase))


@pytest.mark.parametrize("language", sorted(paths()))
def test_what_is_offered_is_understood(language: str) -> None:
    """Whoever types an example of the bot is understood as in English, wherever their batch stands."""
    wrong = []
    for english, other in sorted(set(examples(language))):
        for phase in PHASES:
            wanted = meant(english, "en", phase)
            understood = not all(isinstance(one, Question | Unclear) for one in wanted)
            wrong += [(english, other, phase)] if understood and meant(other, language, phase) != wanted else []
    assert wrong == []


def test_no_example_is_left_in_english() -> None:
    """What a German text says to type is German: English is understood too, but nobody would think of it."""
    left = {other for english, other in examples("de") if english == other and re.search("[a-z]{3}", other)}
    assert left <= {"30 min", "Chicago", "Corns", "pause", "plan"}  # the same in both, or a name


def test_every_language_that_is_spoken_is_understood() -> None:
    """A catalogue without its words to read would talk and not listen."""
    assert paths().keys() == tongues().keys()


def test_english_passes_as_it_is() -> None:
    """Nobody's English is read as German for a word that both have."""
    for english in ("lake water for the brine?", "the fire is out", "flat is on, pit 120", "bring it to 70"):
        assert meant(english, "en", "cooking") == meant(english, "en-GB", "cooking")


# invented: what is asked, wished, planned or denied with the words of a deed or a mishap
NO_DEEDS = {
    "muss ich schon wenden?": "curing",
    "ist es schon gewendet?": "curing",
    "ist es schon gewendet": "curing",
    "hast du schon gewendet?": "curing",
    "wurde heute schon gewendet?": "curing",
    "ist der beutel gewendet": "curing",
    "soll ich es rausnehmen?": "curing",
    "kann man es schon abspülen": "curing",
    "wer hat das fleisch rausgenommen": "curing",
    "ist das fleisch schon drin": "curing",
    "habt ihr schon gewendet": "curing",
    "was wenn der beutel ausläuft": "curing",
    "kann der beutel auslaufen": "curing",
    "was mach ich wenn der strom ausfällt": "curing",
    "was ist wenn der kühlschrank ausfällt": "curing",
    "wie warm darf der kühlschrank sein, 7 grad?": "curing",
    "ist der kühlschrank mit 5 grad zu warm": "curing",
    "darf der kühlschrank 6 grad haben": "curing",
    "kühlschrank sollte 4 grad haben oder": "curing",
    "morgen wende ich um 8": "curing",
    "werde gleich wenden": "curing",
    "wollte gerade wenden": "curing",
    "nicht vergessen zu wenden": "curing",
    "ich hab nicht vergessen zu wenden": "curing",
    "hab noch nicht gewendet": "curing",
    "hab den kühlschrank noch nicht gemessen": "curing",
    "kühlschrank war nicht offen": "curing",
    "beutel ist nicht undicht": "curing",
    "strom war nicht weg": "curing",
    "hab das pökelsalz nicht vergessen": "curing",
    "darf ich jetzt anzünden?": "cooking",
    "ist der grill an?": "cooking",
    "ist das feuer aus": "cooking",
    "warum geht das feuer aus": "cooking",
    "was wenn das feuer ausgeht": "cooking",
    "soll der kern 70 grad haben": "cooking",
    "muss der kern 63 grad erreichen?": "cooking",
    "ab 65 grad nehm ich ihn runter": "cooking",
    "bei 66 grad wickle ich ein": "cooking",
    "noch nicht eingewickelt": "cooking",
    "feuer ist nicht aus": "cooking",
    "kern sollte bei 60 sein ist aber erst 52": "cooking",
    "ich nehm ihn gleich runter": "cooking",
    "fleisch ist noch nicht drauf": "cooking",
    "in einer stunde lege ich auf": "cooking",
    "kann ich es einen tag früher rausnehmen": "curing",
    "hab ich heute schon gewendet": "curing",
    "wer hat zuletzt gewendet": "curing",
    "hab ich was vergessen": "curing",
    "ich mach es lieber in der lake": "waiting",
}


def test_what_is_asked_wished_or_denied_is_no_deed() -> None:
    """Nothing is marked, measured, moved or judged for a line that tells of nothing."""
    told = StepDone | StepMissed | StepSkipped | Happened | Reading | MoveDeadline
    found = {line: read(line, _week(phase)) for line, phase in NO_DEEDS.items()}
    assert [(line, got) for line, got in found.items() if any(isinstance(one, told) for one in got)] == []


def test_a_list_that_was_written_without_a_look_is_read() -> None:
    """60 lines of a week, asked before anything was mended for them: 42 were read as meant, 3 amiss, 15 not at all.

    By the rules of the day before it was 27, 3 and 30. What is not read is a question: answered or asked back.
    """
    with (Path(__file__).parent / "german_unseen.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file, delimiter=";"))
    read_as = [(row, short(read(row["line"], _week(row["phase"])))) for row in rows]
    amiss = [(row["line"], got) for row, got in read_as if got not in (row["meant"], "question", "ask")]
    assert amiss == []
    assert sum(got == row["meant"] for row, got in read_as) >= 59


def _week(phase: str) -> Context:
    return context(phase, KILOS, language="de")


def test_english_is_read_the_same_whoever_types_it() -> None:
    """Who is spoken to in German may type English: no word of it is mended to a German one, and no sense is lost."""
    rows = [row for path in sorted(Path(__file__).parent.glob("unseen*.csv")) for row in _rows(path)][::10]
    assert len(rows) > 200
    differing = [line for line, phase in rows if meant(line, "en", phase) != meant(line, "de", phase)]
    assert differing == []


def _rows(path: Path) -> Iterator[tuple[str, str]]:
    with path.open(encoding="utf-8", newline="") as unseen:
        yield from ((row["line"], row["phase"]) for row in csv.DictReader(unseen, delimiter=";"))
