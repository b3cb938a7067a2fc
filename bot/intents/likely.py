"""What a told line may be that no reader knew: by its likeness to how people tell such things; only ever offered."""

import tomllib
from functools import cache
from importlib import resources
from typing import Any, Final

from bot.intents.intents import Cancel, Happened, Intent, Pause, Snooze, StepDone, StepMissed, StepSkipped, Undo
from core.answers.entries import ENGLISH
from core.answers.likeness import Index, indexed, likenesses

FILE: Final = "told.toml"
_ENOUGH: Final = 0.11  # below it a likeness is chance; tuned by ten-fold cross-validation over the ways of the file
_BESIDE: Final = 0.8  # of the best: what is nearly as like is offered too
MOST: Final = 3
_PLAIN: Final[dict[str, Intent]] = {
    "later": Snooze(), "skip": StepSkipped(), "missed": StepMissed(), "away": Pause(), "throw": Cancel(),
    "undo": Undo(),
}  # fmt: skip
_HAPPENED: Final = frozenset({"leaked", "left_out", "power_cut", "fire_out"})


def likely(text: str, phase: str, enough: float = _ENOUGH) -> tuple[Intent, ...]:
    """The things that a told line may mean in a phase, the likeliest first; nothing where none is like it enough."""
    scores = likenesses(text, ENGLISH, _index())
    here = {name: scores[name] for name, frame in _frames().items() if phase in frame["in"]}
    least = max(enough, _BESIDE * max(here.values(), default=0.0))
    near = sorted((name for name, score in here.items() if score >= least), key=lambda name: -here[name])
    return tuple(_meant(name) for name in near[:MOST])


def _meant(frame: str) -> Intent:
    if frame in _PLAIN:
        return _PLAIN[frame]
    return Happened(frame) if frame in _HAPPENED else StepDone(frame)


@cache
def _frames() -> dict[str, dict[str, Any]]:
    return tomllib.loads(resources.files("bot.intents").joinpath(FILE).read_text("utf-8"))


@cache
def _index() -> Index:
    ways = {name: tuple(frame["ways"]) for name, frame in _frames().items()}
    return indexed(ways, [""] * len(ways), ENGLISH)
