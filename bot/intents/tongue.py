"""Other languages: the words that people use most, into the plain words that the readers know; English passes as it is.

A language is a file in `tongues`. Numbers, days and units are read in their own rooms.
"""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

FILES: Final = Path(__file__).parent / "tongues"
_SUNDAY: Final = re.compile(r"\bso\.? (?=\d{1,2}(?::\d\d| uhr))")  # the weekday, not the word
_WORD: Final = re.compile(r"[^\W\d_]+")
_DATE: Final = re.compile(r"\b(\d{1,2})\. ?(?=[^\W\d_]{3,})")  # «13. märz»


@dataclass(frozen=True)
class Tongue:
    """One language: whole lines, phrases, turns of phrase, and the words that give it away."""

    lines: Mapping[str, str]
    patterns: tuple[tuple[re.Pattern[str], str], ...]  # where the order of the words is another
    phrases: Mapping[str, str]
    words: re.Pattern[str]
    tells: re.Pattern[str]


def english(text: str, language: str) -> str:
    """A plain line with its foreign words in English, where it is foreign by its words or by its speaker."""
    for code, tongue in tongues().items():
        if language.startswith(code) or tongue.tells.search(text):
            return _in_english(text, tongue, sure=language.startswith(code))
    return text


def given_away(text: str) -> str:
    """The code of the foreign language that a line is plainly in: by two of its words, or by half of all; else ""."""
    plain = text.lower()
    words = len(_WORD.findall(plain))
    for code, tongue in tongues().items():
        told = len(set(tongue.tells.findall(plain)))
        if words and told and (told >= 2 or 2 * told >= words):
            return code
    return ""


def _in_english(text: str, tongue: Tongue, *, sure: bool) -> str:
    if whole := tongue.lines.get(text.rstrip(" .?")):
        return whole
    for pattern, put in tongue.patterns:
        text = pattern.sub(put, text)
    if sure:
        text = _SUNDAY.sub("sunday ", text)
    return tongue.words.sub(lambda found: tongue.phrases[found[0]], _DATE.sub(r"\1 ", text))


@cache
def tongues() -> dict[str, Tongue]:
    """Every language that is understood beside English."""
    return {path.stem: _tongue(path) for path in sorted(FILES.glob("*.toml"))}


def _tongue(path: Path) -> Tongue:
    file = tomllib.loads(path.read_text("utf-8"))
    words = "|".join(map(re.escape, sorted(file["phrases"], key=len, reverse=True)))
    tells = re.compile(r"[äöüß]|\b(?:" + "|".join(file["tells"]) + r")\b")
    patterns = tuple((re.compile(pattern), put) for pattern, put in file["patterns"].items())
    return Tongue(file["lines"], patterns, file["phrases"], re.compile(rf"\b(?:{words})\b"), tells)
