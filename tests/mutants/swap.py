"""A change put into modules that are imported already: the code of a function, or a constant wherever it is known."""

import ast
import functools
import sys
from collections.abc import Iterator
from types import CodeType, FunctionType, ModuleType

PLAIN = (int, float, str, tuple, frozenset, dict)


def enclosing(tree: ast.Module, line: int) -> bool | None:
    """Whether a line lies in the body of a function; None where it lies in a class, which is made but once."""
    for node in tree.body:
        if not node.lineno <= line <= (node.end_lineno or node.lineno):
            continue
        if isinstance(node, ast.ClassDef):
            inside = [f for f in node.body if isinstance(f, ast.FunctionDef) and _in_body(f, line)]
            return True if inside else None
        if isinstance(node, ast.FunctionDef):
            return True if _in_body(node, line) else None
    return False


def put_in(module: ModuleType, tree: ast.Module, *, in_function: bool) -> None:
    """The change of a module, seen by everybody who imported it."""
    code = compile(tree, module.__file__ or "", "exec")
    if in_function:
        for changed in _codes(code):
            _swap(module, changed)
    else:
        _constants(module, code)
    for other in _ours():
        for value in vars(other).values():
            if isinstance(value, functools._lru_cache_wrapper):
                value.cache_clear()


def _in_body(function: ast.FunctionDef, line: int) -> bool:
    return function.body[0].lineno <= line <= (function.end_lineno or line)


def _codes(code: CodeType) -> Iterator[CodeType]:
    for const in code.co_consts:
        if isinstance(const, CodeType):
            yield const
            yield from _codes(const)


def _swap(module: ModuleType, changed: CodeType) -> None:
    if "<" in changed.co_qualname:
        return  # within another function, whose code holds it
    found: object = module
    for part in changed.co_qualname.split("."):
        found = vars(found).get(part)
        if found is None:
            return
    while not isinstance(found, FunctionType):
        found = getattr(found, "fget", None) or getattr(found, "__func__", None) or getattr(found, "__wrapped__", None)
        if found is None:
            return
    found.__code__ = changed


def _constants(module: ModuleType, code: CodeType) -> None:
    fresh = {"__name__": module.__name__, "__file__": module.__file__}
    scratch = ModuleType(module.__name__)
    scratch.__dict__.update(fresh)
    real, sys.modules[module.__name__] = sys.modules[module.__name__], scratch
    try:
        exec(code, scratch.__dict__)  # noqa: S102  # our own source, with one place changed
    finally:
        sys.modules[module.__name__] = real
    for name, value in vars(scratch).items():
        old = vars(module).get(name)
        if name.startswith("__") or not isinstance(old, PLAIN) or old == value:
            continue
        for other in _ours():
            if vars(other).get(name) is old:
                setattr(other, name, value)


def _ours() -> list[ModuleType]:
    return [m for name, m in list(sys.modules.items()) if name.startswith(("core.", "tests.")) and m is not None]
