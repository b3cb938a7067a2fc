"""Every sentence that the house says, gathered from its source, and the catalogues that it is held against.

`python -m tests.house.catalogue` brings each catalogue up to date: new sentences come in with nothing beside them, what
is said no more goes. Then write what is missing.
"""

import ast
import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

from babel.core import Locale
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from bot.wording.language import CATALOGUES
from tests.house.measure import TOP

Sentence = str | tuple[str, str]  # as it is said, or for one and for several
ROOM = TOP / "bot"
OF_THE_TOOL = re.compile(r'"(?:Project-Id|Report|POT-|PO-|Last-Tr|Language-Team|Generated)|#, python-brace')
HEADER = "# The {language} of Saltbell. How to bring it up to date: DEVELOPERS.md."


def sentences() -> dict[Sentence, list[str]]:
    """Each sentence with the files that say it, in the order of the source."""
    found: dict[Sentence, list[str]] = {}
    for path in sorted(ROOM.rglob("*.py")):
        for sentence in of(path.read_text("utf-8")):
            places = found.setdefault(sentence, [])
            places += [name] if (name := str(path.relative_to(TOP))) not in places else []
    return found


def of(source: str) -> Iterator[Sentence]:
    """The sentences of one file: what stands in `say`, `say_n` and `later`, and the values of `Words`."""
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call):
            continue
        texts = [argument.value for argument in node.args if _is_text(argument)]
        match _name(node.func):
            case "say" | "later" if texts:
                yield texts[0]
            case "say_n":
                yield texts[0], texts[1]
            case "Words" if isinstance(node.args[0], ast.Dict):
                yield from (value.value for value in node.args[0].values if _is_text(value) and value.value)


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _name(function: ast.expr) -> str:
    if isinstance(function, ast.Attribute):
        of_language = isinstance(function.value, ast.Name) and function.value.id == "language"
        return function.attr if of_language else ""
    return function.id if isinstance(function, ast.Name) else ""


def paths() -> dict[str, Path]:
    """Each language with its catalogue."""
    return {path.parts[-3]: path for path in sorted(CATALOGUES.glob("*/LC_MESSAGES/saltbell.po"))}


def read(language: str) -> Catalog:
    """A catalogue as it is kept."""
    with paths()[language].open("rb") as opened:
        return read_po(opened, locale=language)


def renewed(old: Catalog, language: str) -> str:
    """A catalogue of exactly what is said, with what was beside it before."""
    new = Catalog(language, header_comment=HEADER.format(language=_called(language)))
    new.fuzzy = False
    for sentence, places in sentences().items():
        known = old.get(sentence)
        new.add(sentence, known.string if known else None, locations=[(places[0], None)])
    written = BytesIO()
    write_po(written, new, width=0, sort_output=False, include_lineno=False, omit_header=False)
    text = written.getvalue().decode()
    return "\n".join(line for line in text.splitlines() if not OF_THE_TOOL.match(line)) + "\n"


def _called(language: str) -> str:
    return Locale(language).english_name or language


def main() -> None:
    """Bring every catalogue up to date, and count what is missing."""
    for language, path in paths().items():
        path.write_text(renewed(read(language), language), "utf-8")
        gaps = [m.id for m in read(language) if m.id and not (all(m.string) if m.pluralizable else m.string)]
        print(f"{language}: {len(sentences())} sentences, {len(gaps)} without words")


if __name__ == "__main__":
    main()
