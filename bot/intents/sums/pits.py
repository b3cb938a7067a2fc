"""The pit that a line tells, as air and not as a core."""

from typing import Final

from bot import measures
from bot.intents.sums.told import Told
from core import patterns as re

_TARGET: Final = re.compile(r"\b(?:until|till?|to|core|internal|inside|hits?|reach\w*) (\d{2,3})\b")
COLDEST_PIT: Final = 80.0  # °C
COOLEST_PIT: Final = 60.0  # °C; of fish and bacon, where a line says that it is the pit
HOTTEST_PIT: Final = 200.0
BOILING: Final = 100.0  # °C; no core is hotter
_PIT_IN_C: Final = re.compile(  # no pit has so few °F: «14 h at 110», «from 110 to 130»
    r"\b(?:at|pit|smoker|grill|from|to|of) (1[0-2]\d)\b(?! ?(?:[cf]|g|kg|lb|min|ml|mm|m|h|ft)\b)"
)
_COOL_PIT: Final = re.compile(  # «at 175», «160 pit», «smoker is 71 c»
    r"\b(?:at|pit|smoker|grill|cooker)(?: (?:is|at|of|temp|runs?|set to))* (\d{2,3})\b(?! ?(?:g|kg|lb|min|ml|mm|m|h)\b)"
    r"|\b(\d{2,3})(?: ?[cf])? (?:pit|smoker)\b"
)
_OTHERWISE: Final = re.compile(
    r"\b(?:steam\w*|re-?heat\w*|warm\w*|heat(?:ed|ing)? (?:it )?up|ice|chill\w*|cool\w*|fridge|brin\w+|cur(?:e|es|ing)"
    r"|thaw\w*|hold\w*|keeps?|box)\b"
)
_SMOKED_COOL: Final = ("bacon", "back_bacon", "salmon", "trout")


def pits(line: Told) -> tuple[float, ...]:
    """The temperatures that a pit can have, in the order of the line. [°C]"""
    cores = [measures.to_house(float(n), unit) for n in _TARGET.findall(line.text) for unit in ("c", "f")]
    cores = [core for core in cores if core < BOILING]  # «at 250 until 203»
    hot = tuple(
        t for t in line.temperatures if COLDEST_PIT <= t <= HOTTEST_PIT and all(abs(t - core) > 0.1 for core in cores)
    )
    if not hot and (line.species == "fish" or line.product in _SMOKED_COOL or line.cut == "pork_belly"):
        hot = _cool(line)
    if hot or len(line.temperatures) > 1 or re.search(r"\d ?f\b|\b(?:core|meat|internal)\b", line.text):
        return hot
    return tuple(float(found) for found in _PIT_IN_C.findall(line.text))


def core_wanted(line: Told) -> float | None:
    """The core until which it is to stay on, where a line tells one beside its pit: «at 250 until 203». [°C]"""
    told_ = {measures.to_house(float(n), unit) for n in _TARGET.findall(line.text) for unit in ("c", "f")}
    cores = [t for t in line.temperatures if t < BOILING and any(abs(t - one) < 0.1 for one in told_)]
    return cores[-1] if cores and pits(line) else None


def _cool(line: Told) -> tuple[float, ...]:
    """A pit for fish or bacon that is cooler than any for red meat, by the words beside its number."""
    told_ = [found[1] or found[2] for found in _COOL_PIT.finditer(_TARGET.sub(" ", line.text))]
    degrees = {measures.to_house(float(n), unit) for n in told_ for unit in ("c", "f")}
    cool = (t for t in line.temperatures if COOLEST_PIT <= t < COLDEST_PIT)
    return tuple(t for t in cool if any(abs(t - one) < 0.1 for one in degrees))


def is_smoked(line: Told) -> bool:
    """Whether a line tells a pit to cook in, and no steam, bath of ice, brine or second heating."""
    return bool(pits(line)) and not _OTHERWISE.search(line.text)
