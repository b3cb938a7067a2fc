"""Change the safety room and the nitrite formulas one place at a time, and see that a test notices each change.

`python -m tests.mutants.run [modules]` prints each module's count and the survivors. Results are kept in `--log`, one
JSON line a mutant, and not tried again, but for `--survivors`; the laws try them too with `--laws`.

The tests are gathered once a module and must pass as it is: a run in which everything fails proves nothing. Then each
change is tried in a process of its own that ends for good. What is made but once, when it is imported, keeps what it
was made with; so what survives, and what stands in a class, is tried by a whole run of pytest.

`explained.toml` says of a survivor why it cannot be told apart; it counts as a survivor still.
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
import tomllib
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from types import CodeType, ModuleType

import pytest
from _pytest.main import pytest_runtestloop

from tests.mutants.mutate import Mutant, mutants
from tests.mutants.swap import enclosing, put_in

ROOT = Path(__file__).parents[2]
WHOLE = (*sorted((ROOT / "core" / "safety").glob("*.py")), ROOT / "core" / "cure" / "nitrite.py")
ROOMS = "tests/rooms/safety"
SAFETY = (ROOMS, "tests/published/safety")
LAWS = "tests/laws/safety"
NITRITE = (
    "tests/published/cure/test_nitrite.py",
    "tests/rooms/cure/test_nitrite.py",
    "tests/rooms/cure/test_dose.py",
    "tests/rooms/cure/test_judgement.py",
)
NEAREST = dict.fromkeys(("fire_out", "left_out", "told", "warm"), "incidents")
EXPLAINED = Path(__file__).with_name("explained.toml")
LONGEST = 180  # seconds; what never ends is noticed
KILLED, SURVIVED = "killed", "survived"
NOTICED = (pytest.ExitCode.TESTS_FAILED, pytest.ExitCode.INTERRUPTED)  # a test failed, or the module cannot be imported
QUICK = ("-x", "-q", "-p", "no:cacheprovider", "-p", "no:logging", "-W", "ignore::pytest.PytestAssertRewriteWarning")
Note = Callable[[str, Mutant, str], None]


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


class _Gathered:
    """In place of the run of the tests that were gathered: one run a mutant, each in a child."""

    def __init__(
        self, path: Path, tries: Sequence[tuple[str, Mutant]], note: Callable[[str, Mutant, str], None]
    ) -> None:
        self.path, self.tries, self.note = path, tries, note

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Every mutant of the module."""
        if _child(lambda: _run(session)) != SURVIVED:
            raise pytest.UsageError(f"{self.path.stem}: the tests fail as it is")
        module = importlib.import_module(_name(self.path))
        whole = ast.parse(self.path.read_text(encoding="utf-8"))
        for key, mutant in self.tries:
            where = enclosing(whole, mutant.line)
            found = SURVIVED if where is None else _child(_changed(session, module, mutant, in_function=where))
            if found == SURVIVED:
                found = _child(partial(_anew, self.path, mutant, [str(a) for a in session.config.args]))
            self.note(key, mutant, found)
        return True


def _changed(session: pytest.Session, module: ModuleType, mutant: Mutant, *, in_function: bool) -> Callable[[], int]:
    def changed() -> int:
        put_in(module, mutant.tree, in_function=in_function)
        return _run(session)

    return changed


def main() -> None:
    """Try every mutant of the modules that are named, or of all."""
    args = _arguments()
    log = Path(args.log)
    for path in (p for p in WHOLE if p.name != "__init__.py" and (not args.modules or p.stem in args.modules)):
        known = {} if not log.exists() else {tuple(row["key"]): row["found"] for row in map(json.loads, log.open())}
        child = os.fork()  # a module of its own process: what it imported is not the next one's
        if child == 0:
            os._exit(_module(path, known, log, args))
        os.waitpid(child, 0)


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("modules", nargs="*", help="names like «fridge»; all where none is named")
    parser.add_argument("--log", default="mutants.jsonl")
    parser.add_argument("--laws", action="store_true", help="with the laws, which are slow")
    parser.add_argument("--survivors", action="store_true", help="try those again that survived")
    return parser.parse_args()


def _module(path: Path, known: dict[tuple[str, ...], str], log: Path, args: argparse.Namespace) -> int:
    listed = _keyed(path)
    found = {key: known[path.stem, key] for key, _ in listed if (path.stem, key) in known}
    tries = [(k, m) for k, m in listed if k not in found or (args.survivors and found[k] == SURVIVED)]

    def note(key: str, mutant: Mutant, result: str) -> None:
        found[key] = result
        with log.open("a", encoding="utf-8") as out:
            out.write(json.dumps({"key": [path.stem, key], "line": mutant.line, "found": result}) + "\n")
        if result == SURVIVED and key not in explained(path.stem):
            sys.stderr.write(f"{path.stem}:{mutant.line}: {mutant.change}\n")

    code = pytest.main([*QUICK, *_tests(path, laws=args.laws)], [_Gathered(path, tries, note)]) if tries else 0
    survivors = [key for key, result in found.items() if result == SURVIVED]
    unexplained = [key for key in survivors if key not in explained(path.stem)]
    told = f"{len(survivors) - len(unexplained)} of {len(survivors)} survivors explained"
    sys.stderr.write(f"{path.stem}: {len(found) - len(survivors)} of {len(listed)} killed, {told}\n")
    return int(code)


def explained(module: str) -> dict[str, str]:
    """Survivors of a module that cannot be told apart, by their key, with the reason."""
    found = tomllib.loads(EXPLAINED.read_text(encoding="utf-8")).get(module, ())
    return {one["place"]: one["why"] for one in found}


def _keyed(path: Path) -> list[tuple[str, Mutant]]:
    """The mutants by the words of their line, which stay when lines move."""
    source = path.read_text(encoding="utf-8")
    seen: dict[str, int] = {}
    found = []
    for mutant in mutants(source):
        place = f"{source.splitlines()[mutant.line - 1].strip()} :: {mutant.change}"
        seen[place] = seen.get(place, 0) + 1
        found.append((f"{place} :: {seen[place]}", mutant))
    return found


def _child(work: Callable[[], int]) -> str:
    """Whether a test notices, in a child that says nothing and ends for good, whatever the change did to it."""
    child = os.fork()
    if child == 0:
        signal.alarm(LONGEST)
        null = os.open(os.devnull, os.O_WRONLY)
        os.dup2(null, 1)
        os.dup2(null, 2)
        try:
            os._exit(work())
        finally:
            os._exit(int(pytest.ExitCode.TESTS_FAILED))  # the change broke the house itself
    _, status = os.waitpid(child, 0)
    if os.WIFSIGNALED(status) or os.WEXITSTATUS(status) in NOTICED:
        return KILLED
    if os.WEXITSTATUS(status) == pytest.ExitCode.OK:
        return SURVIVED
    raise pytest.UsageError(f"pytest did not run ({status})")


def _run(session: pytest.Session) -> int:
    """The gathered tests, up to the first that fails."""
    try:
        pytest_runtestloop(session)
    except (session.Failed, session.Interrupted):
        return int(pytest.ExitCode.TESTS_FAILED)
    return int(pytest.ExitCode.TESTS_FAILED if session.testsfailed else pytest.ExitCode.OK)


def _anew(path: Path, mutant: Mutant, places: Sequence[str]) -> int:
    """A whole run in an interpreter that has imported nothing of ours yet."""
    for name in [n for n in sys.modules if n.startswith(("core.", "tests.rooms", "tests.published", "tests.laws"))]:
        del sys.modules[name]
    sys.modules.pop("tests.records", None)
    sys.meta_path.insert(0, _Changed(_name(path), compile(mutant.tree, str(path), "exec"), path))
    return int(pytest.main([*QUICK, *places]))


def _name(path: Path) -> str:
    return ".".join(path.relative_to(ROOT).with_suffix("").parts)


def _tests(path: Path, *, laws: bool) -> Sequence[str]:
    """The tests of the room, first those that are about the module, which notice most."""
    if path.stem == "nitrite":
        return NITRITE
    near = (f"{ROOMS}/test_{NEAREST.get(path.stem, path.stem)}.py", f"{ROOMS}/test_findings.py")
    return (*(p for p in near if (ROOT / p).exists()), *SAFETY, *((LAWS,) if laws else ()))


if __name__ == "__main__":
    main()
