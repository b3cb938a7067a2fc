"""Other languages: the words that people use most, into the plain words that the readers know; English passes as it is.

A language is a file in `tongues`. Numbers, days and units are read in their own rooms.
"""

import tomllib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

from bot.intents.rewriting.foreign_spelling import Spelling, spelling
from bot.intents.rewriting.spoken_german import in_digits
from bot.intents.rewriting.words import rewritten
from core import patterns as re

FILES: Final = Path(__file__).parent / "tongues"
_SUNDAY: Final = re.compile(r"\bso\.? (?=\d{1,2}(?::\d\d| uhr))")  # the weekday, not the word
_WORD: Final = re.compile(r"[^\W\d_]+")
_DATE: Final = re.compile(r"\b(\d{1,2})\. ?(?=[^\W\d_]{3,})")  # «13. märz»
_CLAUSES: Final = re.compile(r"(, | und |; |(?<!\d)[.!] (?=[^\W\d]))")
_END: Final = re.compile(r"(?<=[^\W\d])[.!? ]+$|[!? ]+$")  # «am 16.» keeps its point
_ENGLISH: Final = re.compile(
    r"\b(?:the|is|its|it|this|that|what|whats|when|how|why|where|which|can|could|should|shall|my|your|for|to|of|and|with"
    r"|i|im|ive|we|you|they|them|do|does|did|done|have|has|been|are|were|long|much|many|now|just|only|actually|two|out"
    r"|one|some|no|not|yes|please|thanks|put|took|went|keep|day|days|hour|hours|morning|evening|tomorrow|today)\b"
)
_SPOKEN: Final[Mapping[str, Callable[[str], str]]] = {"de": in_digits}  # how a language says its numbers and hours


@dataclass(frozen=True)
class Tongue:
    """One language: its words as they are spelled, whole lines, phrases, turns of phrase, and what gives it away."""

    spelling: Spelling
    spoken: Callable[[str], str]
    lines: Mapping[str, str]
    patterns: re.Rules[str]  # where the order of the words is another
    phrases: Mapping[str, str]
    words: re.Pattern
    tells: re.Pattern
    degree: re.Pattern


def english(text: str, language: str, celsius: bool = False) -> str:
    """A plain line with its foreign words in English, where it is foreign by its words or by its speaker.

    A degree of somebody who reads in °C, and is spoken to in that language, is one of Celsius.
    """
    for code, tongue in tongues().items():
        if language.startswith(code) or tongue.tells.search(text):
            return _in_english(text, tongue, language.startswith(code), celsius)
    return text


def given_away(text: str) -> str:
    """The code of the language that a line is plainly in: by two of its words, or by half of all; else "".

    English, which has more words in common with the others, wants three, or two that are half of all.
    """
    plain = text.lower()
    words = len(_WORD.findall(plain))
    ours = len(set(_ENGLISH.findall(plain)))
    if ours >= 2 and (ours >= 3 or 2 * ours >= words) and not any(t.tells.search(plain) for t in tongues().values()):
        return "en"
    for code, tongue in tongues().items():
        told = len(set(tongue.tells.findall(plain)))
        if words and told and (told >= 2 or 2 * told >= words):
            return code
    return ""


def _in_english(text: str, tongue: Tongue, sure: bool, celsius: bool) -> str:
    text = tongue.spoken(tongue.spelling.mended(text))
    if whole := tongue.lines.get(text.rstrip(" .?!")):
        return whole
    text = _turned(text, tongue)
    text = "".join(_clause(part, tongue) for part in _CLAUSES.split(text))
    if sure:
        text = _SUNDAY.sub("sunday ", text)
    if sure and celsius:
        text = tongue.degree.sub(" c", text)
    return tongue.words.sub(lambda found: tongue.phrases[found[0]], _DATE.sub(r"\1 ", text))


def _turned(text: str, tongue: Tongue) -> str:
    """A line, or a clause of one, with its turns of phrase in the order of English."""
    return rewritten(text, tongue.patterns)


def _clause(part: str, tongue: Tongue) -> str:
    """A clause turned without the marks at its end, which come back behind it."""
    end = _END.search(part)
    cut = end.start() if end else len(part)
    return _turned(part[:cut], tongue) + part[cut:]


@cache
def tongues() -> dict[str, Tongue]:
    """Every language that is understood beside English."""
    return {path.stem: _tongue(path) for path in sorted(FILES.glob("*.toml"))}


def _tongue(path: Path) -> Tongue:
    file = tomllib.loads(path.read_text("utf-8"))
    phrases = dict(_of_verbs(file["verbs"])) | file["phrases"]
    words = "|".join(map(re.escape, sorted(phrases, key=len, reverse=True)))
    tells = re.compile(r"[äöüß]|\b(?:" + "|".join(file["tells"]) + r")\b")
    stands = tuple(_stand_ins(file))
    patterns = re.Rules((re.compile(_filled(one, stands)), put) for one, put in file["patterns"].items())
    keys = spelling((*phrases, *file["lines"]), file["known"].split())
    spoken = _SPOKEN.get(path.stem, str)
    degree = re.compile(rf"(?<=\d) ?{file['degree']}\b(?! ?(?:c|f|celsius|fahrenheit)\b)")
    return Tongue(keys, spoken, file["lines"], patterns, phrases, re.compile(rf"\b(?:{words})\b"), tells, degree)


def _of_verbs(verbs: list[dict[str, str]]) -> Iterator[tuple[str, str]]:
    """The words of each verb with their English."""
    for verb in verbs:
        yield from ((word, verb["past"]) for word in verb["participles"].split())
        yield from ((word, verb["base"]) for word in verb["infinitives"].split())
        yield from ((f"nicht {word}", f"did not {verb['base']}") for word in verb["participles"].split())


def _stand_ins(file: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """What «<name>» stands for in a pattern: all the words of that kind."""
    for kind in ("participles", "infinitives"):
        yield f"<{kind[:-1]}>", "|".join(word for verb in file["verbs"] for word in verb[kind].split())
    yield from ((f"<{name}>", words) for name, words in file["kinds"].items())


def _filled(pattern: str, stands: Iterable[tuple[str, str]]) -> str:
    for name, words in stands:
        pattern = pattern.replace(name, f"(?:{words})")
    return pattern
