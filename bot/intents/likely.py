"""What a told line may be that no reader knew: by its likeness to how people tell such things; only ever offered.

Words and runs of three letters, weighed by how rare they are over all the ways (tf-idf, cosine). Offline, plain Python.
"""

import math
import re
import tomllib
from collections import Counter
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Final

from bot.intents.intents import Cancel, Happened, Intent, Pause, Snooze, StepDone, StepMissed, StepSkipped, Undo

FILE: Final = "told.toml"
_ENOUGH: Final = 0.38  # below it a likeness is chance. Judgement
_BESIDE: Final = 0.8  # of the best: what is nearly as like is offered too
MOST: Final = 3
_WORD: Final = re.compile(r"[a-zäöüß]+")
_PLAIN: Final[dict[str, Intent]] = {
    "later": Snooze(), "skip": StepSkipped(), "missed": StepMissed(), "away": Pause(), "throw": Cancel(),
    "undo": Undo(),
}  # fmt: skip
_HAPPENED: Final = frozenset({"leaked", "left_out", "power_cut", "fire_out"})


@dataclass(frozen=True)
class _Way:
    frame: str
    phases: frozenset[str]
    weights: dict[str, float]


def likely(text: str, phase: str) -> tuple[Intent, ...]:
    """The things that a told line may mean in a phase, the likeliest first; nothing where none is like it."""
    asked = _weighed(_features(text))
    best: dict[str, float] = {}
    for way in _ways():
        if phase in way.phases:
            score = sum(weight * way.weights.get(feature, 0.0) for feature, weight in asked.items())
            best[way.frame] = max(best.get(way.frame, 0.0), score)
    top = max(best.values(), default=0.0)
    near = [name for name, score in best.items() if score >= max(_ENOUGH, _BESIDE * top)]
    return tuple(_meant(name) for name in sorted(near, key=lambda name: -best[name])[:MOST])


def _meant(frame: str) -> Intent:
    if frame in _PLAIN:
        return _PLAIN[frame]
    return Happened(frame) if frame in _HAPPENED else StepDone(frame)


def _features(text: str) -> Counter[str]:
    words = _WORD.findall(text.lower().replace("'", "").replace("’", ""))
    padded = (f" {word} " for word in words)
    runs = (word[i : i + 3] for word in padded for i in range(len(word) - 2))
    return Counter([*words, *words, *runs])


@cache
def _table() -> tuple[tuple[str, frozenset[str], Counter[str]], ...]:
    frames = tomllib.loads(resources.files("bot.intents").joinpath(FILE).read_text("utf-8"))
    return tuple((name, frozenset(f["in"]), _features(way)) for name, f in frames.items() for way in f["ways"])


@cache
def _rarity() -> dict[str, float]:
    table = _table()
    seen = Counter(feature for _, _, features in table for feature in features)
    return {feature: math.log(1 + len(table) / count) for feature, count in seen.items()}


@cache
def _ways() -> tuple[_Way, ...]:
    return tuple(_Way(name, phases, _weighed(features)) for name, phases, features in _table())


def _weighed(features: Counter[str]) -> dict[str, float]:
    unseen = math.log(1 + len(_table()))
    weights = {name: math.sqrt(count) * _rarity().get(name, unseen) for name, count in features.items()}
    length = math.sqrt(sum(weight**2 for weight in weights.values())) or 1.0
    return {name: weight / length for name, weight in weights.items()}
