"""One thing and one unit a name: the signatures of the core are held to docs/nomenclature.md."""

import ast
from collections.abc import Iterator

from tests.house.measure import TOP, Def, files, tree

UNITS = {
    "Celsius": "°C",
    "Fahrenheit": "°F",
    "Kelvin": "K",
    "Kilograms": "kg",
    "Grams": "g",
    "Metres": "m",
    "Seconds": "s",
    "Hours": "h",
    "Days": "d",
    "Fraction": "kg/kg",
    "MilligramsPerKilogram": "mg/kg",
    "SquareMetresPerSecond": "m²/s",
    "WattsPerSquareMetreKelvin": "W/(m² K)",
    "WattsPerMetreKelvin": "W/(m K)",
    "Pascals": "Pa",
}
# the longest first: what ends in _mg_kg does not end in _kg
ENDINGS = {
    "_mg_kg": "mg/kg",
    "_kg": "kg",
    "_c": "°C",
    "_f": "°F",
    "_m": "m",
    "_s": "s",
    "_h": "h",
    "_days": "d",
    "_fraction": "kg/kg",
}
PAGE = (TOP / "docs/nomenclature.md").read_text("utf-8")
Named = tuple[str, str, set[str]]  # where, the name, the units and plain numbers in its annotation


def section(title: str) -> list[list[str]]:
    """The rows of the table under a heading of the page, without its head."""
    under = PAGE.split(f"\n## {title}\n")[1].split("\n## ")[0]
    rows = [[cell.strip(" `") for cell in line.strip("|").split("|")] for line in under.splitlines() if line[:1] == "|"]
    return rows[2:]


def said(annotation: ast.expr | None) -> set[str]:
    """The units that an annotation names, and "float" where it names a number without one."""
    names = {node.id for node in ast.walk(annotation) if isinstance(node, ast.Name)} if annotation else set()
    return {UNITS.get(name, name) for name in names if name in UNITS or name == "float"}


def parameters() -> Iterator[Named]:
    """Every parameter of every public function of the core."""
    for path in files("core"):
        for node in ast.walk(tree(path)):
            if isinstance(node, Def) and not node.name.startswith("_"):
                for given in (*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs):
                    yield f"{path.relative_to(TOP)}:{node.lineno}", given.arg, said(given.annotation)


def every_name() -> Iterator[Named]:
    """Every parameter, field and annotated variable of the core, the private ones too."""
    for path in files("core"):
        for node in ast.walk(tree(path)):
            where = f"{path.relative_to(TOP)}:{getattr(node, 'lineno', 0)}"
            if isinstance(node, ast.arg):
                yield where, node.arg, said(node.annotation)
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                yield where, node.target.id, said(node.annotation)


def test_the_page_knows_every_unit() -> None:
    """Each alias of core/units.py has its sign here: a new unit cannot come in unseen."""
    aliases = {
        n.target.id
        for n in tree(TOP / "core/units.py").body
        if isinstance(n, ast.AnnAssign) and ast.unparse(n.annotation) == "TypeAlias"
    }  # type: ignore[union-attr]
    assert aliases == set(UNITS)


def test_a_parameter_has_one_unit_and_is_on_the_page() -> None:
    """Whatever a public function takes with a unit stands on the page with that unit, and no other."""
    page = {name: {unit} for name, unit, _ in section("Parameters")}
    used: dict[str, set[str]] = {}
    for _, name, units in parameters():
        if len(units - {"float"}) == 1:
            used.setdefault(name, set()).update(units)
    assert {name: units for name, units in used.items() if page.get(name) != units} == {}


def test_the_page_lists_no_name_that_nobody_takes() -> None:
    """A name that no public function takes any more leaves the page."""
    assert {name for name, *_ in section("Parameters")} - {name for _, name, _ in parameters()} == set()


def test_a_name_of_the_page_is_never_a_bare_number() -> None:
    """Where a name has a unit, no public function takes it as a plain float."""
    listed = {name for name, *_ in section("Parameters")}
    assert [(where, name) for where, name, units in parameters() if name in listed and units == {"float"}] == []


def test_the_endings_of_the_page_are_the_ones_held() -> None:
    """The endings that this test holds to their units are the ones that the page promises."""
    promised = {ending: unit for ending, unit in section("Endings") if not ending.startswith(("_log", "_p10"))}
    assert {
        ending: unit.split(",")[-1 if ending == "_fraction" else 0].strip() for ending, unit in promised.items()
    } == ENDINGS


def test_an_ending_says_the_unit() -> None:
    """A name with a unit in its ending has that unit, in private code and in fields too."""
    wrong = []
    for where, name, units in every_name():
        ending = next((e for e in ENDINGS if name.lower().endswith(e)), None)
        if ending is not None and units - {"float"} and units - {"float"} != {ENDINGS[ending]}:
            wrong.append((where, name, units))
    assert wrong == []
