"""No invented figure in an answer: what its sentences print stands beside its source, and all the rest is computed.

Sums here, what is said of a batch in `figures_of_words`; the entries have theirs in front matter (`rooms/answers`).
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from core.sources import every_source
from tests.house.figures_of_words import DERIVED, EXAMPLE, OF_A_BATCH, PARTS

WORDING = Path(__file__).parents[2] / "bot" / "wording"
FILES = tuple(sorted(path.stem for path in WORDING.glob("*.py")))
NUMBER = re.compile(
    r"\d+(?:\.\d+)?|\b(?:two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|hundred|half|third|quarter|seventh"
    r"|twice|double|\w+fold)\b",
    re.IGNORECASE,
)
PRINTED = {
    "100 degrees": "SALOMETER", "60 °F": "SALOMETER", "a seventh of the water": "HOT_SMOKED_FISH",
    "An hour or two in the fridge": "HOT_SMOKED_FISH",
    "One part of salt to seven of water": "HOT_SMOKED_FISH",
    "9 in 10": "JUDGEMENT", "Half as much again": "COMMON_PRACTICE",
    "at 150 g cooked each": "COMMON_PRACTICE",
    "portions of 150 g": "COMMON_PRACTICE", "100 to 200 g": "COMMON_PRACTICE",
    "every 30 min": "USDA_THAWING", "half an hour a pound": "USDA_THAWING", "24 h in the fridge": "USDA_THAWING",
    "4 to 5 lb": "USDA_THAWING", "1.5 h to the first, 5 h more to the second": "FSIS_COOLING_1999",
    "From 130 to 80 °F in 1.5 h and to 40 °F in 5 h more": "FSIS_COOLING_1999",
    "cured to the middle in 5 h and to 45 °F in 10 h more": "FSIS_COOLING_1999",
    "from 135 to 70 °F in 2 h and to 41 °F in 6 h": "FOOD_CODE_COOLING",
    "5 h down to 26 °C (80 °F), 10 h more to 7 °C (45 °F)": "FSIS_COOLING_1999",
    "2 to 2.5 %": "COMMON_PRACTICE",
    "3 min of rest": "FSIS_SAFE_TEMPERATURES", "30 min there": "HOT_SMOKED_FISH",
    "it has 2 h without heat": "FSIS_DANGER_ZONE",
    "Below 140 °F": "FSIS_DANGER_ZONE", "two hours, in the worst case": "FSIS_DANGER_ZONE",
    "half a step": "DERIVED", "one part in ten is ten times finer": "DERIVED", "three spots": "FSIS_SAFE_TEMPERATURES",
    "an oven at 150 °C (300 °F)": "COMMON_PRACTICE", "the pound and inch of 1959": "COMMON_PRACTICE",
    "1.8 °C steps from 32": "DERIVED", "twice as thick takes four times as long": "CRANK_1975",
    "130 °F within 6 h": "FSIS_COOKING_2021", "140 °F within 4 h": "COMMON_PRACTICE",
    "55 to 65 %": "COMMON_PRACTICE", "70 to 78 %": "COMMON_PRACTICE", "80 to 90 %": "COMMON_PRACTICE",
    "85 to 95 %": "COMMON_PRACTICE", "20 to 30 %": "COMMON_PRACTICE",
    "25 to 40 g of rub": "COMMON_PRACTICE", "6 to 8 g of pickling spice": "COMMON_PRACTICE",
    "6.5 logs in red meat and 7 in birds": "FSIS_COOKING_2021", "39 % of salt": "ATOMIC_WEIGHTS",
    "two readings": "DERIVED", "mm squared over 200": "COMMON_PRACTICE", "half for a round": "COMMON_PRACTICE",
    "gives them 150 g cooked each": "COMMON_PRACTICE",
    "two to three hours until": "COMMON_PRACTICE", "it has 2 h below that line": "FSIS_DANGER_ZONE",
    "2.25 to 2.5 %": "COMMON_PRACTICE", "0.5 to 1.5 %": "COMMON_PRACTICE", "shows 0.1 g": "COMMON_PRACTICE",
    "shows 0.01 oz, or 0.1 g": "COMMON_PRACTICE",
    "at 6.25 %": "CFR_9_424", "90 % of the weight": "FSIS_HANDBOOK_1995", "without one 4 h": "COMMON_PRACTICE",
    "70 to 75 °C (160 to 165 °F)": "COMMON_PRACTICE",
    "65 to 75 °C (150 to 165 °F)": "COMMON_PRACTICE", "have twice that": "COMMON_PRACTICE", "halved": "COMMON_PRACTICE",
    "in half an hour": "COMMON_PRACTICE",
    "Half a percent to one and a half": "COMMON_PRACTICE", "differ by a quarter": "COMMON_PRACTICE",
    "30 to 50 %": "COMMON_PRACTICE", "60 to 100 %": "COMMON_PRACTICE", "a quarter more room": "COMMON_PRACTICE",
    "nine in ten": "JUDGEMENT", "to half a degree": "JUDGEMENT", "at 140 °F": "FSIS_DANGER_ZONE",
    "up to 4 °C": "FSIS_COLD_STORAGE", "45 to 60 min a kilo": "COMMON_PRACTICE",
    "a hundred metres or two": "JUDGEMENT",
    "half as much again": "COMMON_PRACTICE", "heated to 165 °F": "FSIS_SAFE_TEMPERATURES", "counts as day 0": "DERIVED",
    "150 g cooked for each": "COMMON_PRACTICE",
    "100 g with much": "COMMON_PRACTICE", "200 g for hungry": "COMMON_PRACTICE",
    "fewer than half of such cooks": "DERIVED",
    "for 7 days": "FOOD_CODE_PARASITES", "for 15 h": "FOOD_CODE_PARASITES", "for 30 min": "HOT_SMOKED_FISH",
    "two for a thick side": "HOT_SMOKED_FISH",
    "1.5 to 2 %": "COMMON_PRACTICE", "it has 2 h off the heat": "FSIS_DANGER_ZONE", "within 6 h": "FSIS_COOKING_2021",
    "65 to 75 °C (150 to 170 °F)": "COMMON_PRACTICE", "stands for two to five hours": "COMMON_PRACTICE",
}  # fmt: skip
ALL = PRINTED | OF_A_BATCH


def sentences(name: str) -> Iterator[str]:
    """What a file of words says of itself: neither its fields nor what it quotes to be typed."""
    for node in ast.walk(ast.parse((WORDING / f"{name}.py").read_text("utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("say", "later", "say_n"):
            yield from (arg.value for arg in node.args if isinstance(arg, ast.Constant) and isinstance(arg.value, str))


def own(sentence: str) -> str:
    """A sentence without its fields and without what it quotes to be typed."""
    return re.sub(r"\{[^}]*\}|«[^»]*»", "", sentence)


@pytest.mark.parametrize("name", FILES)
def test_no_words_print_a_figure_without_a_source(name: str) -> None:
    """Every number of a sentence, in digits or spelled out, is a field that was computed or stands above."""
    known = re.compile("|".join(map(re.escape, sorted(ALL, key=len, reverse=True))))
    bare = [known.sub("", own(sentence)) for sentence in sentences(name) if sentence not in PARTS]
    assert [rest for rest in bare if NUMBER.search(rest)] == []


def test_the_table_is_used_and_its_sources_exist() -> None:
    """No figure of the table is idle, and each names a source of the bibliography or its own arithmetic."""
    said = "\n".join(own(sentence) for name in FILES for sentence in sentences(name))
    assert [printed for printed in ALL if printed not in said] == []
    assert set(ALL.values()) - {DERIVED, EXAMPLE} <= set(every_source())
