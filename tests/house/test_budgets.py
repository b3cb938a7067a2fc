"""The budgets: a function is one thought, a file is one subject, and everything says what it takes."""

from functools import cache
from pathlib import Path

import pytest

from tests.house.measure import TOP, Function, files, functions, lines_of_code, undocumented

LONGEST_FILE = 300  # lines
LONGEST_BODY, USUAL_BODY, MIDDLE_BODY = 40, 20, 6  # lines of code: worst, 95 in 100, middle
USUAL_ARGUMENTS, USUAL_DEPTH, DEEPEST = 4, 2, 4
ROOMS = ("core", "bot")
FORBIDDEN_NAMES = {"utils", "helpers", "common", "manager", "base", "handler", "data", "info"}


@cache
def of(room: str) -> list[Function]:
    return [f for path in files(room) for f in functions(path)]


def share(values: list[int], percent: int) -> int:
    """The value that so many in a hundred do not pass."""
    return sorted(values)[min(len(values) * percent // 100, len(values) - 1)]


@pytest.mark.parametrize("room", [*ROOMS, "deploy"])
def test_no_file_is_too_long(room: str) -> None:
    """A file that passes 300 lines has two subjects, and splits along them."""
    long = {str(p.relative_to(TOP)): n for p in files(room) if (n := len(p.read_text().splitlines())) > LONGEST_FILE}
    assert long == {}


@pytest.mark.parametrize("room", [*ROOMS, "deploy"])
def test_no_function_is_too_long(room: str) -> None:
    """No body is longer than 40 lines of code, whatever its docstring weighs."""
    assert {f.where: f.body for f in of(room) if f.body > LONGEST_BODY} == {}


@pytest.mark.parametrize("room", ROOMS)
def test_most_functions_are_short(room: str) -> None:
    """The middle body has 6 lines at most, and 95 in 100 have no more than 20."""
    bodies = [f.body for f in of(room)]
    assert share(bodies, 50) <= MIDDLE_BODY
    assert share(bodies, 95) <= USUAL_BODY


@pytest.mark.parametrize("room", ROOMS)
def test_most_functions_take_few_things(room: str) -> None:
    """95 functions in 100 take at most four arguments: beyond that, pass a noun."""
    assert share([f.arguments for f in of(room)], 95) <= USUAL_ARGUMENTS


@pytest.mark.parametrize("room", ROOMS)
def test_blocks_hardly_stand_in_blocks(room: str) -> None:
    """95 functions in 100 nest two blocks at most, and none more than four."""
    assert share([f.depth for f in of(room)], 95) <= USUAL_DEPTH
    assert {f.where: f.depth for f in of(room) if f.depth > DEEPEST} == {}


@pytest.mark.parametrize("room", [*ROOMS, "deploy"])
def test_every_function_says_its_types(room: str) -> None:
    """Every argument and every result is annotated."""
    assert [f.where for f in of(room) if not f.typed] == []


@pytest.mark.parametrize("room", [*ROOMS, "deploy"])
def test_everything_public_says_what_it_is(room: str) -> None:
    """Every module, public class and public function has a docstring."""
    assert [where for path in files(room) for where in undocumented(path)] == []


@pytest.mark.parametrize("room", ROOMS)
def test_files_are_named_for_the_trade(room: str) -> None:
    """No file is called for being a drawer."""
    assert [str(p) for p in files(room) if p.stem in FORBIDDEN_NAMES] == []


def test_the_measure_measures(tmp_path: Path) -> None:
    """The counter itself: docstring, comments and blank lines are not counted, an elif is beside its if."""
    path = tmp_path / "sample.py"
    text = '''
def f(a: int, *, b: str = "x") -> int:
    """Says so.

    At length."""
    # a comment

    if a:
        for _ in range(a):
            with open(b):
                a += 1  # and one beside code
    elif b:
        return (
            2
        )
    return a

def g(a): return a
'''
    path.write_text(text)
    assert len(lines_of_code(text)) == 14
    f, g = _measured_in(path)
    assert (f.body, f.depth, f.arguments, f.typed) == (9, 3, 2, True)
    assert (g.body, g.depth, g.arguments, g.typed) == (1, 0, 1, False)


def _measured_in(path: Path) -> list[Function]:
    import tests.house.measure as measure

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(measure, "TOP", path.parent)
        return list(functions(path))
