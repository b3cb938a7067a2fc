"""The language of whoever is spoken to: sentences by gettext, days and decimals by the Unicode CLDR through Babel.

A sentence is written in English where it is said, and looked up in the catalogue of the language of the turn; what a
catalogue does not hold is said in English. Another language is another file beside `locale/de`.
"""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from datetime import date, datetime
from functools import cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from math import ceil
from pathlib import Path
from typing import Any, Final, TypeVar

from babel.core import Locale
from babel.dates import format_date, get_timezone_location
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po
from babel.numbers import get_decimal_symbol

ENGLISH: Final = "en"
OFFERED: Final = frozenset({ENGLISH, "de"})  # spoken with people: those whose catalogue is whole
SENTENCES, ENTRIES = "saltbell", "entries"  # what the house says, and what it knows of the trade
CATALOGUES: Final = Path(__file__).parent / "locale"
Key = TypeVar("Key")

_language: ContextVar[str] = ContextVar("language", default=ENGLISH)


def spoken() -> str:
    """The code of the language that is spoken now: «en», «de»."""
    return _language.get()


def speak(code: str) -> None:
    """From here on in this turn a person's language, «de» or «de-AT»; English where it is not offered."""
    plain = code.lower().replace("_", "-").partition("-")[0]
    _language.set(plain if plain in OFFERED else ENGLISH)


@contextmanager
def speaking(code: str) -> Iterator[None]:
    """A turn or a reminder in a person's language; afterwards it is as before."""
    before = _language.get()
    speak(code)
    try:
        yield
    finally:
        _language.set(before)


def say(sentence: str, **fields: Any) -> str:
    """A sentence in the language of the turn, with its {fields} filled in."""
    said = _catalogue(_language.get()).gettext(sentence) if sentence else ""  # gettext keeps its header under ""
    return said.format(**fields) if fields else said


def say_n(one: str, many: str, count: float, **fields: Any) -> str:
    """A sentence that depends on a count, in the form that the language has for it; half a one takes the form of several."""
    whole = ceil(count) if count == ceil(count) else ceil(count) + 1
    return _catalogue(_language.get()).ngettext(one, many, whole).format(**fields)


def later(sentence: str) -> str:
    """A sentence that is kept in English here, and put into the language of the turn by `say` when it is said."""
    return sentence


def entry(text: str) -> str:
    """A text of an entry, which is data and no sentence of ours; in English, and said so, where it is not translated."""
    if _language.get() == ENGLISH or not text:
        return text
    translated = _catalogue(_language.get(), ENTRIES).gettext(text)
    return say("{text}\n(This answer I have in English only.)", text=text) if translated == text else translated


class Words(Mapping[Key, str]):
    """Words by their key, each in the language of the turn when it is looked up."""

    def __init__(self, english: Mapping[Key, str]) -> None:
        self._english = dict(english)

    def __getitem__(self, key: Key) -> str:
        return say(self._english[key])

    def __iter__(self) -> Iterator[Key]:
        return iter(self._english)

    def __len__(self) -> int:
        return len(self._english)

    def __or__(self, other: "Words[Key]") -> "Words[Key]":
        return Words(self._english | other._english)


def name(code: str) -> str:
    """What a language is called in the language of the turn: «German», «Deutsch»."""
    return Locale.parse(code, sep="-" if "-" in code else "_").get_display_name(_language.get()) or code


def place(zone: str) -> str:
    """The city of a time zone: «Vienna», «Wien»."""
    return str(get_timezone_location(zone, locale=_language.get(), return_city=True))


def decimal(value: float, digits: int) -> str:
    """A figure with the decimal sign of the language; the same digits in each, so that no rounding differs."""
    return point(f"{value:.{digits}f}")


def point(shown: str) -> str:
    """A figure that is written out with a point, with the decimal sign of the language."""
    return shown.replace(".", _sign(_language.get()))


def day(moment: date | datetime) -> str:
    """«Sat 13 Mar»."""
    return format_date(moment, say("EEE d MMM"), locale=_language.get())


def weekday(moment: date | datetime) -> str:
    """«Sat»."""
    return format_date(moment, say("EEE"), locale=_language.get())


@cache
def _sign(code: str) -> str:
    return str(get_decimal_symbol(Locale(code)))


@cache
def _catalogue(code: str, kind: str = SENTENCES) -> NullTranslations:
    path = CATALOGUES / code / "LC_MESSAGES" / f"{kind}.po"
    if not path.exists():
        return NullTranslations()
    compiled = BytesIO()
    with path.open("rb") as opened:
        write_mo(compiled, read_po(opened, locale=code))
    compiled.seek(0)
    return GNUTranslations(compiled)
