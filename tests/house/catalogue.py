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

from bot.wording.language import CATALOGUES, ENTRIES, SENTENCES
from core.answers.entries import entries
from tests.house.measure import TOP

Sentence = str | tuple[str, str]  # as it is said, or for one and for several
ROOM = TOP / "bot"
OF_THE_TOOL = re.compile(r'"(?:Project-Id|Report|POT-|PO-|Last-Tr|Language-Team|Generated)|#, python-brace')
HEADER = "# The {language} of Saltbell. How to bring it up to date: DEVELOPERS.md."
SAID = frozenset({"say", "say_n", "later", "Words"})
SILENT = frozenset(
    {
        "re.compile",
        "re.search",
        "re.fullmatch",
        "re.sub",
        "log.exception",
        "log.error",
        "frozenset",
        "TypeVar",
        "ContextVar",
    }
)
_WORD = re.compile(
    r"(?<![A-Za-z°_])(?!kWh\b|log\b|min\b|NaNO)[A-Za-z]{3,}(?![A-Za-z_]|:\S|:$)"
)  # no unit, no code, no formula
_WORDS = re.compile(r"^[A-Z«][^\[]*[a-z]{2,} [a-z]{2,}|^[A-Z][a-z]{2,}[.?]?$")


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


def unsaid(source: str) -> Iterator[str]:
    """Words of one file that reach people past `say`: joined into a string, or several in a plain one."""
    waiting: list[ast.AST] = [ast.parse(source)]
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.JoinedStr) and _WORD.search("".join(v.value for v in node.values if _is_text(v))):
            yield ast.unparse(node)
        if isinstance(node, ast.Constant) and _is_text(node) and _WORDS.search(node.value):
            yield node.value
        waiting += _below(node)


def _below(node: ast.AST) -> Iterator[ast.AST]:
    """What stands under a node and may be shown: no docstring, no key, no pattern, nothing that goes through `say`."""
    if isinstance(node, ast.Call) and (_name(node.func) in SAID or ast.unparse(node.func) in SILENT):
        yield from (keyword.value for keyword in node.keywords)
    elif isinstance(node, ast.Dict):
        yield from node.values
    elif isinstance(node, ast.JoinedStr):
        yield from (value.value for value in node.values if isinstance(value, ast.FormattedValue))
    elif not (isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)):
        yield from ast.iter_child_nodes(node)


def _is_text(node: ast.expr) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def _name(function: ast.expr) -> str:
    if isinstance(function, ast.Attribute):
        of_language = isinstance(function.value, ast.Name) and function.value.id == "language"
        return function.attr if of_language else ""
    return function.id if isinstance(function, ast.Name) else ""


def entry_texts() -> dict[Sentence, list[str]]:
    """Each text of an entry of the trade with its file."""
    texts = {text: [f"core/answers/entries/{e.id}.md"] for e in entries().values() for text in (e.short, e.more)}
    return {text: places for text, places in texts.items() if text}


def paths(kind: str = SENTENCES) -> dict[str, Path]:
    """Each language with its catalogue of a kind."""
    return {path.parts[-3]: path for path in sorted(CATALOGUES.glob(f"*/LC_MESSAGES/{kind}.po"))}


def read(language: str, kind: str = SENTENCES) -> Catalog:
    """A catalogue as it is kept."""
    with paths(kind)[language].open("rb") as opened:
        return read_po(opened, locale=language)


def gaps(catalogue: Catalog) -> list[Sentence]:
    """The sentences that have no words beside them."""
    return [m.id for m in catalogue if m.id and not (all(m.string) if m.pluralizable else m.string)]


def renewed(old: Catalog, language: str, said: dict[Sentence, list[str]] | None = None) -> str:
    """A catalogue of exactly what is said, with what was beside it before."""
    new = Catalog(language, header_comment=HEADER.format(language=_called(language)))
    new.fuzzy = False
    for sentence, places in (sentences() if said is None else said).items():
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
    for kind, said in ((SENTENCES, sentences()), (ENTRIES, entry_texts())):
        for language, path in paths(kind).items():
            path.write_text(renewed(read(language, kind), language, said), "utf-8")
            print(f"{language}: {len(said)} {kind}, {len(gaps(read(language, kind)))} without words")


if __name__ == "__main__":
    main()
