"""How big and how deep the code is, measured by its syntax: what the budgets of the house are held against."""

import ast
import tokenize
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import StringIO
from pathlib import Path

TOP = Path(__file__).parents[2]
Def = ast.FunctionDef | ast.AsyncFunctionDef
BLOCKS = (ast.If, ast.For, ast.AsyncFor, ast.While, ast.With, ast.AsyncWith, ast.Try, ast.Match)
# lines on which nothing is said to the machine
SILENT = {tokenize.COMMENT, tokenize.NL, tokenize.NEWLINE, tokenize.INDENT, tokenize.DEDENT, tokenize.ENDMARKER}


@dataclass(frozen=True)
class Function:
    """One function: `body` in lines of code without docstring, comments and blank lines, `depth` in nested blocks."""

    where: str
    body: int
    depth: int
    arguments: int
    typed: bool


def files(*rooms: str) -> list[Path]:
    """Every source file of the rooms; migrations are a record and stay as they were."""
    found = (path for room in rooms for path in sorted((TOP / room).rglob("*.py")))
    return [path for path in found if "versions" not in path.parts]


@cache
def tree(path: Path) -> ast.Module:
    """The syntax of a file, read once for all that look at it."""
    return ast.parse(path.read_text(encoding="utf-8"))


def functions(path: Path) -> Iterator[Function]:
    """Every function and method of a file."""
    spoken = lines_of_code(path.read_text(encoding="utf-8"))
    for node in ast.walk(tree(path)):
        if isinstance(node, Def):
            yield _measured(f"{path.relative_to(TOP)}:{node.lineno} {node.name}", node, spoken)


def undocumented(path: Path) -> Iterator[str]:
    """The module, and every public class and function of a file that says nothing of itself."""
    if ast.get_docstring(tree(path)) is None and tree(path).body:
        yield str(path.relative_to(TOP))
    for node in _public(tree(path)):
        if ast.get_docstring(node) is None:
            yield f"{path.relative_to(TOP)}:{node.lineno} {node.name}"


def lines_of_code(text: str) -> set[int]:
    """The numbers of the lines that hold something other than comment and space."""
    tokens = tokenize.generate_tokens(StringIO(text).readline)
    return {line for t in tokens if t.type not in SILENT for line in range(t.start[0], t.end[0] + 1)}


def _measured(where: str, node: Def, spoken: set[int]) -> Function:
    said = node.body[1:] if ast.get_docstring(node) is not None else node.body
    body = sum(n in spoken for n in range(said[0].lineno, (node.end_lineno or 0) + 1)) if said else 0
    given = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    own = given[1:] if given and given[0].arg in ("self", "cls") else given
    rest = [a for a in (node.args.vararg, node.args.kwarg) if a]
    typed = node.returns is not None and all(a.annotation for a in (*own, *rest))
    return Function(where, body, max((_depth(s) for s in said), default=0), len(own), typed)


def _depth(node: ast.AST) -> int:
    """How deep blocks stand in blocks; an `elif` stands beside its `if`, a function within a function begins anew."""
    if isinstance(node, Def | ast.ClassDef | ast.Lambda):
        return 0
    children = list(ast.iter_child_nodes(node))
    beside = node.orelse if isinstance(node, ast.If) and len(node.orelse) == 1 else []
    chained = [n for n in beside if isinstance(n, ast.If)]
    deeper = max((_depth(child) for child in children if child not in chained), default=0)
    return max([deeper + isinstance(node, BLOCKS), *map(_depth, chained)])


def _public(module: ast.Module) -> Iterator[Def | ast.ClassDef]:
    for node in module.body:
        if isinstance(node, Def | ast.ClassDef) and not node.name.startswith("_"):
            yield node
            if isinstance(node, ast.ClassDef):
                yield from (n for n in node.body if isinstance(n, Def) and not n.name.startswith("_"))
