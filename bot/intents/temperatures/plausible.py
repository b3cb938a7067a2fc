"""Which thermometer and which unit a bare number can mean, by the batch's phase, the person's units and what was read.

One that fits is taken; several, or none in the person's own unit, are asked about. The rules are common practice, no
source: 33 to 46 in the cure is a fridge in °F, 1 to 8 one in °C; 95 to 212 alone in the cook is meat in °F when it
rises from the last; 225 to 300 alone is the pit in °F. A slip («518») is passed on as typed for the core to doubt.
"""

from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from bot.intents.context import FALLING, IN_THE_COLD, RAW, Context
from bot.intents.intents import Temperature
from bot.measures import to_house
from core.batch.events import Probe

# where a thermometer can stand at all: (probe, unit) -> low, high
_WIDE: Final = {
    (Probe.CORE, "f"): (30.0, 212.0), (Probe.CORE, "c"): (0.0, 100.0),
    (Probe.PIT, "f"): (150.0, 450.0), (Probe.PIT, "c"): (80.0, 180.0),
    (Probe.FRIDGE, "f"): (28.0, 60.0), (Probe.FRIDGE, "c"): (-2.0, 15.0),
    (Probe.BRINE, "f"): (30.0, 90.0), (Probe.BRINE, "c"): (-2.0, 30.0),
}  # fmt: skip
_SMOKING: Final = {"f": (190.0, 350.0), "c": (90.0, 180.0)}
_COLD_F: Final = (33.0, 46.0)
_COLD_C: Final = (1.0, 8.0)
COLD: Final = (_COLD_C, _COLD_F)  # what a fridge that works can read, in either unit
_PIT_ALONE_F: Final = (213.0, 330.0)  # above boiling no core is
_PIT_ALONE_C: Final = (100.0, 150.0)
_PIT_OVER_MEAT_K: Final = 8.0  # drives the heat in; nearer, two numbers are one thermometer, or a dead fire
_SLIP: Final = 450.0  # above what any thermometer of a slow cook shows
_DIP_K: Final = 2.5  # a stall may dip by 1 to 3 °F
_CARRY_K: Final = 8.0  # a core goes on rising for a while after it is off
_COOLING_C: Final = 54.0  # below it, in the chill, nothing carries on rising
_RISE_K: Final = 60.0
_LONG_AGO: Final = timedelta(hours=3)  # since then a core may have risen by more
_PIT_DRIFT_K: Final = 30.0


@dataclass(frozen=True)
class Number:
    """A number as typed, with what was said of it."""

    value: float
    unit: str | None = None
    probe: Probe | None = None


def meanings(number: Number, context: Context) -> tuple[Temperature, ...]:
    """What a number means: one temperature where that is clear; several, or none, where it has to be asked."""
    if number.probe:
        units = (number.unit,) if number.unit else _units(number.probe, number.value, context)
        return tuple(Temperature(number.value, unit, number.probe) for unit in units)
    if number.unit:
        return tuple(Temperature(number.value, number.unit, probe) for probe in _probes(number, context))
    return _bare(number.value, context)


@dataclass(frozen=True)
class Pairs:
    """Meat and pit as two numbers may be them; `doubtful` where the one way does not follow the last reading."""

    pairs: tuple[tuple[Temperature, Temperature], ...] = ()
    doubtful: bool = False


def pair(one: Number, two: Number, context: Context) -> Pairs:
    """Meat and pit in one breath, «158/245»: the orders and units in which both can be; several are asked about."""
    if max(one.value, two.value) > _SLIP:  # the core doubts it, as typed
        unit = one.unit or two.unit or "f"
        return Pairs(((Temperature(one.value, unit, Probe.CORE), Temperature(two.value, unit, Probe.PIT)),))
    said = one.unit or two.unit
    fits = tuple(
        pair_ for unit in ((said,) if said else ("f", "c")) for pair_ in _as_pair(one.value, two.value, (unit, unit))
    )
    follow = tuple(f for f in fits if context.phase != "cooking" or _follows(f[0], context))
    own = tuple(f for f in follow if f[0].unit == context.units.temperature)
    mixed = () if said or own else _mixed(one.value, two.value, context)
    if mixed and not (follow and context.last_core_c is not None and not any(_follows(m[0], context) for m in mixed)):
        return Pairs((*mixed, *fits), doubtful=True)
    chosen = own if len(fits) > 1 and len(own) == 1 else fits
    return Pairs(chosen, doubtful=said is None and not follow)


def _as_pair(one: float, two: float, units: tuple[str, str]) -> tuple[tuple[Temperature, Temperature], ...]:
    """Meat and pit out of two numbers, in either order, the units of meat and pit given."""
    meat, pit = units
    return tuple(
        (Temperature(core, meat, Probe.CORE), Temperature(fire, pit, Probe.PIT))
        for core, fire in ((one, two), (two, one))
        if to_house(fire, pit) > to_house(core, meat) + _PIT_OVER_MEAT_K
        and _fits(Probe.CORE, meat, core)
        and _fits(Probe.PIT, pit, fire)
    )


def _mixed(one: float, two: float, context: Context) -> tuple[tuple[Temperature, Temperature], ...]:
    """«54/250»: the meat on a thermometer in the person's own unit, the dial of the lid in the other."""
    own = context.units.temperature
    return _as_pair(one, two, (own, "c" if own == "f" else "f"))


def may_be(number: Number, probe: Probe, context: Context) -> bool:
    """Whether a number without a name can be meat or pit here: a pit for smoking, or a core that follows."""
    units = (number.unit,) if number.unit else ("f", "c")
    if probe is Probe.PIT:
        return any(_SMOKING[unit][0] <= number.value <= _SMOKING[unit][1] for unit in units)
    cores = [Temperature(number.value, unit, probe) for unit in units if _fits(probe, unit, number.value)]
    return any(context.phase != "cooking" or _follows(core, context) for core in cores)


def can_be(probe: Probe | None, unit: str, value: float) -> bool:
    """Whether a thermometer can show a value in a unit at all; one that is not named may be any."""
    if probe is Probe.ROOM:
        return unit == "f" or value < 50
    return any(_fits(p, u, value) for p, u in _WIDE if u == unit and probe in (None, p))


def set_point(probe: Probe, value: float) -> tuple[str, ...]:
    """The units in which a wanted temperature makes sense: a pit at 120 °C, a core of 195 °F, a fridge at 38 °F."""
    split = {Probe.PIT: (170.0, 190.0), Probe.CORE: (100.0, 110.0), Probe.FRIDGE: (10.0, 30.0)}[probe]
    return ("c",) if value <= split[0] else ("f",) if value >= split[1] else ("c", "f")


def everything(value: float, context: Context, unit: str | None = None) -> tuple[Temperature, ...]:
    """Every temperature that a number can be at all, the person's own unit first: what is offered when asking."""
    units = (unit,) if unit else (context.units.temperature, "c" if context.units.temperature == "f" else "f")
    raw = context.phase in RAW
    cold = (Probe.BRINE, Probe.FRIDGE) if context.brine_made else (Probe.FRIDGE, Probe.BRINE)
    cold = (Probe.FRIDGE,) if context.dry else cold
    probes = cold if raw else (Probe.CORE, Probe.PIT, Probe.FRIDGE)
    return tuple(Temperature(value, u, p) for p in probes for u in units if _fits(p, u, value))


def _fits(probe: Probe, unit: str, value: float) -> bool:
    low, high = _WIDE[probe, unit]
    return low <= value <= high


def _bare(value: float, context: Context) -> tuple[Temperature, ...]:
    if context.phase in IN_THE_COLD:
        return _bare_cold(value, context)
    if context.phase == "cooking":
        return _bare_cooking(value, context)
    if context.phase in FALLING:
        return _bare_falling(value, context)
    return ()


def _bare_cold(value: float, context: Context) -> tuple[Temperature, ...]:
    probe = _cold_probe(context)
    if value > _SLIP:
        return (Temperature(value, context.units.temperature, probe or Probe.FRIDGE),)
    if context.phase == "drying" and _PIT_ALONE_F[0] <= value <= _PIT_ALONE_F[1]:
        return (Temperature(value, "f", Probe.PIT),)
    unit = "f" if _COLD_F[0] <= value <= _COLD_F[1] else "c" if _COLD_C[0] <= value <= _COLD_C[1] else None
    if unit is None and probe is Probe.BRINE:
        units = _cold_units(probe, value, context.units.temperature)
        return (Temperature(value, units[0], probe),) if len(units) == 1 else ()  # too warm yet, or a slip told so
    an_hour = value <= 12 and value.is_integer() and context.due_step and not _called_for(context, "fridge", "brine")
    if an_hour or unit != context.units.temperature:
        return ()  # «42» of who counts in °C may be a slip of 4.2; «7» of who was asked to flip, an hour
    probes = (probe,) if probe else (Probe.FRIDGE, Probe.BRINE)
    return tuple(Temperature(value, unit, one) for one in probes) if unit else ()


def _cold_probe(context: Context) -> Probe | None:
    """The thermometer that is read in a cold phase; before the meat is in, brine or fridge by what was called for."""
    due = (context.due_step or "").partition("/")[0]
    if due == "brine_check" or context.probe_asked is Probe.BRINE or (due != "fridge_check" and context.brine_made):
        return Probe.BRINE
    return None if context.phase == "waiting" and due != "fridge_check" else Probe.FRIDGE


def _bare_cooking(value: float, context: Context) -> tuple[Temperature, ...]:
    if value > _SLIP:
        return (Temperature(value, "f", Probe.CORE),)
    if _PIT_ALONE_F[0] <= value <= _PIT_ALONE_F[1]:
        return (Temperature(value, "f", Probe.PIT),)
    if value < 10 or (95 <= value <= 100 and context.last_core_c is None):
        return ()
    out = [t for t in (Temperature(value, u, Probe.CORE) for u in _core_units(value, context)) if _follows(t, context)]
    pit = Temperature(value, context.units.temperature, Probe.PIT)
    alone = pit.unit == "c" and _PIT_ALONE_C[0] < value <= _PIT_ALONE_C[1]
    near = not out and context.last_pit_c is not None and may_be(Number(value, pit.unit), Probe.PIT, context)
    if (alone or near) and _pit_follows(pit, context):  # «210» after a core of 98: no core climbs so
        out.append(pit)
    return tuple(out) if len(out) == 1 and _in_own_unit(out[0], context) else ()


def _in_own_unit(one: Temperature, context: Context) -> bool:
    """Whether a number stands in the person's own unit, or cannot stand in it: otherwise it may be a slip."""
    return one.probe is Probe.PIT or one.unit == context.units.temperature or one.value > 100


def _bare_falling(value: float, context: Context) -> tuple[Temperature, ...]:
    if value > _SLIP:
        return (Temperature(value, "f", Probe.CORE),)
    out = [Temperature(value, u, Probe.CORE) for u in _core_units(value, context)]
    follow = [t for t in out if _follows(t, context)]
    if len(follow) != 1 or not _in_own_unit(follow[0], context) or _may_be_the_fridge(follow[0], context):
        return ()
    return tuple(follow)


def _may_be_the_fridge(core: Temperature, context: Context) -> bool:
    """A cold number in the chill is the core's only when that was called for, or when the core was cool before."""
    low, high = _COLD_F if core.unit == "f" else _COLD_C
    cool = context.last_core_c is not None and context.last_core_c < 27.0  # 80 °F, the first mark of the chill
    called = _called_for(context, "chill_check")
    return low <= core.value <= high and not (cool or called)


def _follows(core: Temperature, context: Context) -> bool:
    """Whether a core can come after the last one: rising in the cook (a stall may dip), falling once it is off."""
    last = context.last_core_c
    if last is None:
        return True
    step = _celsius(core) - last
    if context.phase == "chilling" and last < _COOLING_C:
        return step <= _DIP_K
    long_ago = context.core_at is not None and context.now - context.core_at > _LONG_AGO
    return step <= _CARRY_K if context.phase in FALLING else step >= -_DIP_K and (long_ago or step <= _RISE_K)


def _called_for(context: Context, *steps: str) -> bool:
    return (context.due_step or "").startswith(steps)


def _pit_follows(pit: Temperature, context: Context) -> bool:
    return context.last_pit_c is None or abs(_celsius(pit) - context.last_pit_c) <= _PIT_DRIFT_K


def _celsius(temperature: Temperature) -> float:
    return to_house(temperature.value, temperature.unit or "c")


def _core_units(value: float, context: Context) -> tuple[str, ...]:
    """Units for a core: above 100 only °F; below, the person's own where it can follow, else both are asked about."""
    own = context.units.temperature
    if value > 100:
        return ("f",)
    if context.phase in IN_THE_COLD:  # raw meat in the cold, or just out of it
        raw = tuple(unit for unit in ("c", "f") if _fits(Probe.BRINE, unit, value))
        hot = own not in raw and (not raw or _fits(Probe.CORE, own, value))  # on the fire, and nobody said so
        return (*raw, own) if hot else raw
    other = "c" if own == "f" else "f"
    possible = _fits(Probe.CORE, own, value) and _follows(Temperature(value, own), context)
    if possible:
        return (own,)
    return (own, other) if _fits(Probe.CORE, other, value) else (own,)


def _units(probe: Probe, value: float, context: Context) -> tuple[str, ...]:
    """The units in which a named thermometer can show this number; the first is the likelier."""
    own = context.units.temperature
    if value > _SLIP or probe is Probe.ROOM:
        return (own,)
    if probe is Probe.CORE:
        return _core_units(value, context)
    return _pit_units(value, own) if probe is Probe.PIT else _cold_units(probe, value, own)


def _cold_units(probe: Probe, value: float, own: str) -> tuple[str, ...]:
    if value <= _COLD_C[1]:
        return ("c",)
    if value <= 30:  # 9 to 30: a warm fridge in °C, or one that freezes in °F
        return ("c",) if own == "c" else ("f", "c")
    hot_brine = probe is Probe.BRINE and own == "c" and value <= 100
    return ("c", "f") if hot_brine else ("f",)


def _pit_units(value: float, own: str) -> tuple[str, ...]:
    if own == "f" and value >= 150:  # who counts in °F smokes fish and bacon so, and nothing at 150 °C and up
        return ("f",)
    if value > 180:
        return ("f",) if value >= _PIT_ALONE_F[0] else ("f", "c")
    if value < 90:
        return (own,)
    return ("c",) if own == "c" and value <= 170 else ("c", "f")  # 120: a good pit in °C, a dying one in °F


def _probes(number: Number, context: Context) -> tuple[Probe, ...]:
    """Thermometers for a number whose unit was said."""
    unit, value = number.unit or "c", number.value
    if value > _SLIP or context.phase == "cooking":
        return (Probe.PIT,) if _only_pit(value, unit) else (Probe.CORE,)
    if context.phase in FALLING:
        core = Temperature(value, unit, Probe.CORE)
        return (Probe.CORE, Probe.FRIDGE) if _may_be_the_fridge(core, context) else (Probe.CORE,)
    if context.phase == "drying" and _only_pit(value, unit):
        return (Probe.PIT,)
    if context.phase in IN_THE_COLD and _fits(Probe.FRIDGE, unit, value):
        probe = _cold_probe(context)
        return (probe,) if probe else (Probe.FRIDGE, Probe.BRINE)
    return ()


def _only_pit(value: float, unit: str) -> bool:
    return not _fits(Probe.CORE, unit, value) and value <= _SLIP and _fits(Probe.PIT, unit, value)
