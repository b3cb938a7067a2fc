"""One small change of a module at a time: a comparison, an operator, a number, a word, a condition, a result."""

import ast
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass

ORDER = {ast.Lt: (ast.LtE, ast.GtE), ast.LtE: (ast.Lt, ast.Gt), ast.Gt: (ast.GtE, ast.LtE), ast.GtE: (ast.Gt, ast.Lt)}
COMPARE = {
    **ORDER, ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,), ast.Is: (ast.IsNot,), ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,), ast.NotIn: (ast.In,),
}  # fmt: skip
BINARY = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.Mod: ast.Mult,
    ast.Pow: ast.Mult,
}
NAMES = {"max": "min", "min": "max", "any": "all", "all": "any", "first_at_or_above": "first_at_or_below"}


@dataclass(frozen=True)
class Mutant:
    """A module with one change: its number in the module, the line, what was done, and the changed tree."""

    number: int
    line: int
    change: str
    tree: ast.Module


def mutants(source: str) -> Iterator[Mutant]:
    """Every change of a module, one after the other, in the order of the text."""
    whole = ast.parse(source)
    left_alone = _left_alone(whole)
    number = 0
    for place, node in enumerate(ast.walk(whole)):
        if id(node) in left_alone:
            continue
        for new in _changes(node):
            tree = deepcopy(whole)
            old = next(n for i, n in enumerate(ast.walk(tree)) if i == place)
            made = ast.fix_missing_locations(_Put(old, new).visit(tree))
            number += 1
            yield Mutant(number, getattr(node, "lineno", 0), f"{ast.unparse(node)} -> {ast.unparse(new)}", made)


class _Put(ast.NodeTransformer):
    def __init__(self, old: ast.AST, new: ast.AST) -> None:
        self.old, self.new = old, new

    def visit(self, node: ast.AST) -> ast.AST:
        return ast.copy_location(self.new, node) if node is self.old else super().visit(node)


def _left_alone(whole: ast.Module) -> set[int]:
    """What says nothing at run time: docstrings, annotations, decorators, imports, `__all__`."""
    found: list[ast.AST] = []
    for node in ast.walk(whole):
        match node:
            case ast.Expr(value=ast.Constant()):
                found.append(node)
            case ast.AnnAssign(annotation=note):
                found.append(note)
            case ast.arg(annotation=note) if note is not None:
                found.append(note)
            case ast.FunctionDef(returns=returns, decorator_list=decorators):
                found += [*decorators, *([returns] if returns else [])]
            case ast.ClassDef(decorator_list=decorators):
                found += decorators
            case ast.Assign(targets=[ast.Name(id="__all__" | "Contents")]):
                found.append(node)
            case ast.Raise():
                found.append(node)  # that it is raised is mutated by its condition, not its words
    return {id(child) for node in found for child in ast.walk(node)}


def _changes(node: ast.AST) -> Iterator[ast.AST]:
    match node:
        case ast.Compare(left=left, ops=[op, *more], comparators=others):
            for other in COMPARE.get(type(op), ()):
                yield ast.Compare(left, [other(), *more], others)
            if more:
                for other in COMPARE.get(type(more[0]), ()):
                    yield ast.Compare(left, [op, other(), *more[1:]], others)
        case ast.BoolOp(op=op, values=values):
            yield ast.BoolOp(ast.Or() if isinstance(op, ast.And) else ast.And(), values)
            for i in range(len(values)):
                rest = values[:i] + values[i + 1 :]
                yield rest[0] if len(rest) == 1 else ast.BoolOp(op, rest)
        case ast.UnaryOp(op=ast.Not() | ast.USub(), operand=operand):
            yield operand
        case ast.BinOp(left=left, op=op, right=right) if type(op) in BINARY and not isinstance(left, ast.Constant):
            yield ast.BinOp(left, BINARY[type(op)](), right)
        case ast.IfExp(test=test, body=body, orelse=orelse) if not isinstance(test, ast.Compare | ast.UnaryOp):
            yield ast.IfExp(ast.UnaryOp(ast.Not(), test), body, orelse)
        case ast.Return(value=value) if value is not None and not _is_none(value):
            yield ast.Return(ast.Constant(None))
        case ast.Name(id=name, ctx=ast.Load()) if name in NAMES:
            yield ast.Name(NAMES[name], ast.Load())
        case ast.Constant(value=value):
            yield from _constant(value)


def _is_none(value: ast.AST) -> bool:
    return isinstance(value, ast.Constant) and value.value is None


def _constant(value: object) -> Iterator[ast.AST]:
    match value:
        case bool():
            yield ast.Constant(not value)
        case int() | float():
            yield ast.Constant(value + 1)
        case str() if value:
            yield ast.Constant(f"{value}_")
