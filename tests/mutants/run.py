"""Change the safety room and the nitrite formulas one place at a time, and see that a test notices each change.

`python -m tests.mutants.run [modules]` prints each module's count and the survivors; results are kept in `--log` (one
JSON line a mutant) and not tried again. An hour on one core. Each mutant is tried in a process of its own, after the
unchanged module has passed there: a run in which everything fails proves nothing. What survives the tests of the room
is tried by the laws too with `--survivors --laws`.
"""

import argparse
import ast
import importlib
import importlib.abc
import importlib.util
import json
import os
import signal
import sys
from collections.abc import Sequence
from pathlib import Path
from types import CodeType, ModuleType

import pytest

from tests.mutants.mutate import Mutant, mutants

ROOT = Path(__file__).parents[2]
WHOLE = (*sorted((ROOT / "core" / "safety").glob("*.py")), ROOT / "core" / "cure" / "nitrite.py")
SAFETY = ("tests/rooms/safety", "tests/published/safety")
LAWS = "tests/laws/safety"
NITRITE = (
    "tests/published/cure/test_nitrite.py",
    "tests/rooms/cure/test_dose.py",
    "tests/rooms/cure/test_judgement.py",
)
NEAREST = dict.fromkeys(("fire_out", "heat_shown", "left_out", "told", "warm"), "incidents")
LONGEST = 180  # seconds; what never ends is noticed
KILLED, SURVIVED = "killed", "survived"
NOTICED = (pytest.ExitCode.TESTS_FAILED, pytest.ExitCode.INTERRUPTED)  # a test failed, or the module cannot be imported


class _Changed(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Gives the changed module to whoever imports it."""

    def __init__(self, name: str, code: CodeType, path: Path) -> None:
        self.name, self.code, self.path = name, code, path

    def find_spec(self, fullname, path=None, target=None):  # type: ignore[no-untyped-def]
        """The changed module's own spec; nothing for any other."""
        return importlib.util.spec_from_loader(fullname, self, origin=str(self.path)) if fullname == self.name else None

    def exec_module(self, module: ModuleType) -> None:
        """Run the changed code as the module."""
        module.__file__ = str(self.path)
        exec(self.code, module.__dict__)  # noqa: S102  # our own source, with one place changed


def main() -> None:
    """Try every mutant of the modules that are named, or of all."""
    args = _arguments()
    log = Path(args.log)
    known = _known(log)
    paths = [p for p in WHOLE if p.name != "__init__.py" and (not args.modules or p.stem in args.modules)]
    for path in paths:
        places = _tests(path, laws=args.laws)
        if _try(path, Mutant(0, 0, "nothing", ast.parse(path.read_text(encoding="utf-8"))), places) != SURVIVED:
            sys.exit(f"{path.stem}: the tests fail as it is")
        _module(path, known, log, places, again=args.survivors)


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("modules", nargs="*", help="names like «fridge»; all where none is named")
    parser.add_argument("--log", default="mutants.jsonl")
    parser.add_argument("--laws", action="store_true", help="with the laws, which are slow")
    parser.add_argument("--survivors", action="store_true", help="try those again that survived")
    return parser.parse_args()


def _known(log: Path) -> dict[tuple[str, str], str]:
    if not log.exists():
        return {}
    rows = [json.loads(line) for line in log.read_text(encoding="utf-8").splitlines()]
    return {(row["module"], row["key"]): row["found"] for row in rows}


def _module(path: Path, known: dict[tuple[str, str], str], log: Path, places: Sequence[str], *, again: bool) -> None:
    source = path.read_text(encoding="utf-8")
    counts = {KILLED: 0, SURVIVED: 0}
    seen: dict[str, int] = {}
    for mutant in mutants(source):
        line = source.splitlines()[mutant.line - 1].strip()
        place = f"{line} :: {mutant.change}"
        seen[place] = seen.get(place, 0) + 1
        key = f"{place} :: {seen[place]}"
        found = known.get((path.stem, key))
        if found is None or (again and found == SURVIVED):
            near = _nearest(path)
            found = _try(path, mutant, near) if near else SURVIVED
            found = _try(path, mutant, places) if found == SURVIVED else found
            row = {"module": path.stem, "key": key, "line": mutant.line, "found": found}
            with log.open("a", encoding="utf-8") as out:
                out.write(json.dumps(row) + "\n")
        counts[found] += 1
        if found == SURVIVED:
            print(f"{path.stem}:{mutant.line}: {mutant.change}", flush=True)
    print(f"{path.stem}: {counts[KILLED]} of {sum(counts.values())} killed", flush=True)


def _try(path: Path, mutant: Mutant, places: Sequence[str]) -> str:
    """Whether a test notices: in a child that ends for good, whatever the change did to it."""
    child = os.fork()
    if child == 0:
        _in_child(path, mutant, places)
    _, status = os.waitpid(child, 0)
    if os.WIFSIGNALED(status) or os.WEXITSTATUS(status) in NOTICED:
        return KILLED
    if os.WEXITSTATUS(status) == pytest.ExitCode.OK:
        return SURVIVED
    sys.exit(f"{path.stem}: pytest did not run ({status})")


def _in_child(path: Path, mutant: Mutant, places: Sequence[str]) -> None:
    signal.alarm(LONGEST)
    null = os.open(os.devnull, os.O_WRONLY)
    os.dup2(null, 1)
    os.dup2(null, 2)
    name = ".".join(path.relative_to(ROOT).with_suffix("").parts)
    sys.meta_path.insert(0, _Changed(name, compile(mutant.tree, str(path), "exec"), path))
    quick = (
        "-x",
        "-q",
        "-p",
        "no:cacheprovider",
        "-p",
        "no:logging",
        "-W",
        "ignore::pytest.PytestAssertRewriteWarning",
    )
    os._exit(int(pytest.main([*quick, *places])))


def _tests(path: Path, *, laws: bool) -> Sequence[str]:
    """The tests of the room."""
    return NITRITE if path.stem == "nitrite" else (*SAFETY, *((LAWS,) if laws else ()))


def _nearest(path: Path) -> Sequence[str]:
    """The tests that are about the module, which notice most: tried first, since they are gathered soonest."""
    names = (f"test_{NEAREST.get(path.stem, path.stem)}.py", "test_findings.py")
    found = [ROOT / "tests" / "rooms" / "safety" / name for name in names]
    return [str(p.relative_to(ROOT)) for p in found if p.exists() and path.stem != "nitrite"]


if __name__ == "__main__":
    for early in ("hypothesis", "core.sources", "core.units"):  # once here, and not in every child
        importlib.import_module(early)
    main()
