"""What is known of the trade, one Markdown file an entry under `entries/`: a short answer, a longer one, sources.

A file begins with TOML between two lines of `+++`; the short answer follows, and behind a line of `---` the longer one.
A cook can add or mend one; a test holds every file to the schema and every number of its text to a source.
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import resources
from importlib.resources.abc import Traversable
from typing import Final, Literal

from core.errors import Gone, Unreadable
from core.sources import Source, every_source

Sort = Literal["entry", "refused", "off_topic"]
ENGLISH: Final = "en"
SUM: Final = "sum:"  # before the name of a sum, which is asked for as an entry is
OF_BATCH: Final = "batch:"  # before that of a topic of the batch in hand
FENCE: Final = "+++"
MORE: Final = "\n---\n"
KEYS: Final = frozenset({"subject", "asks", "sources", "cautions", "never", "kind", "figures"})


@dataclass(frozen=True)
class Entry:
    """One answer.

    `asks` are ways to ask for it; `figures` names the source of every number as it is printed in the text. `kind` says
    whether it answers, refuses a dangerous wish with the rule and a safe way, or declines what is not of the trade.
    """

    id: str
    subject: str
    kind: Sort
    asks: tuple[str, ...]
    short: str
    more: str
    sources: tuple[Source, ...]
    cautions: tuple[str, ...]
    never: tuple[str, ...]
    figures: Mapping[str, Source]


@cache
def entries() -> Mapping[str, Entry]:
    """Every entry by its id, in the order of the ids; read at the first question. Raises Unreadable."""
    return {path.name.removesuffix(".md"): read(path) for path in _files()}


def entry(name: str) -> Entry:
    """One entry by its id; raises Gone where there is none."""
    found = entries().get(name)
    if found is None:
        raise Gone(f"entry {name}")
    return found


def is_entry(name: str) -> bool:
    """Whether a name is that of an entry, and not of a sum or a topic of a batch."""
    return ":" not in name


@cache
def sums_asked() -> Mapping[str, tuple[str, ...]]:
    """How each sum is asked for in English, with `SUM` before its name; and what has figures and is none."""
    return _named(SUM, "sums")


@cache
def asked_of_batch() -> Mapping[str, tuple[str, ...]]:
    """How each topic of a batch in hand is asked for in English, with `OF_BATCH` before its name."""
    return _named(OF_BATCH, "batch")


def asked_beside() -> Mapping[str, tuple[str, ...]]:
    """How all is asked for that is no entry."""
    return {**sums_asked(), **asked_of_batch()}


def _named(kind: str, file: str) -> Mapping[str, tuple[str, ...]]:
    path = resources.files("core.answers") / "asks" / f"{file}.toml"
    return {f"{kind}{name}": tuple(asks) for name, asks in tomllib.loads(path.read_text("utf-8")).items()}


@cache
def asked_in(language: str) -> Mapping[str, tuple[str, ...]]:
    """How each entry is asked for in a language: by its file in `asks`, in English by the entry itself before that."""
    path = resources.files("core.answers") / "asks" / f"{language}.toml"
    told = tomllib.loads(path.read_text("utf-8")) if path.is_file() else {}
    if language == ENGLISH:
        return {name: (*e.asks, *told.get(name, ())) for name, e in entries().items()}
    return {name: tuple(asks) for name, asks in told.items() if name in entries()}


def ways(name: str, language: str) -> tuple[str, ...]:
    """How one entry is asked for in a language, in English where that language has no words for it."""
    return asked_in(language).get(name) or entry(name).asks


def _files() -> Iterator[Traversable]:
    folder = resources.files("core.answers") / "entries"
    return iter(sorted((p for p in folder.iterdir() if p.name.endswith(".md")), key=lambda p: p.name))


def read(path: Traversable) -> Entry:
    """An entry from its file; raises Unreadable with the name of the file and what is wrong in it."""
    try:
        _, front, text = path.read_text("utf-8").split(FENCE + "\n", 2)
        told = tomllib.loads(front)
        unknown = told.keys() - KEYS
        if unknown:
            raise KeyError(*sorted(unknown))
        short, _, more = text.partition(MORE)
        return Entry(
            path.name.removesuffix(".md"),
            told["subject"],
            told.get("kind", "entry"),
            tuple(told["asks"]),
            short.strip(),
            more.strip(),
            tuple(every_source()[key] for key in told.get("sources", ())),
            tuple(told.get("cautions", ())),
            tuple(told.get("never", ())),
            {printed: every_source()[key] for printed, key in told.get("figures", {}).items()},
        )
    except (KeyError, ValueError, AttributeError, TypeError) as wrong:
        raise Unreadable(path.name, "front matter", str(wrong)) from wrong
