"""What goes in stays in: heat and water close, whatever the cook."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.heat import smoking
from core.heat.cook import Cook, History, Wrapped
from core.heat.modes import Bodies, modes
from core.heat.pit import course
from core.heat.prior import members, points
from core.heat.smoking import simulate, wrappings
from core.meat.cuts import cut
from core.meat.piece import piece


@given(
    geometry=st.sampled_from(["slab", "cylinder", "sphere"]),
    fluxes=st.lists(st.floats(-800, 2000), min_size=1, max_size=40),
    length=st.floats(0.01, 0.08),
    seconds=st.floats(10, 900),
)
@settings(max_examples=40, deadline=None)
def test_heat_that_enters_is_heat_that_is_there(
    geometry: str, fluxes: list[float], length: float, seconds: float
) -> None:
    """The mean temperature rises by the heat through the surface over the heat capacity, to 1e-9."""
    one = np.ones(1)
    body = Bodies(modes(geometry), length * one, 0.48 * one, 3.6e6 * one, one)
    stride = body.stride(seconds)
    amplitudes = body.modes.uniform(4.0 * one)
    for flux in fluxes:
        amplitudes = amplitudes * stride.keep + stride.gain * flux
    faces = {"slab": 1, "cylinder": 2, "sphere": 3}[geometry]
    expected = 4.0 + faces * sum(fluxes) * seconds / (3.6e6 * length)
    mean = float(amplitudes[0, 0] * body.modes.values[0, 0])
    assert expected == pytest.approx(mean, abs=1e-6 * max(1.0, abs(expected)))


@pytest.mark.parametrize("wrap", ["none", "foil"])
def test_the_cook_keeps_heat_and_water(wrap: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Over a whole cook: heat in the meat = air and walls - latent heat of the water that left, to 1e-6 of it."""
    cook = Cook(piece(cut("brisket_flat"), 3.2))
    crew = members(cook, points()[:, :8])
    kept: list[tuple[np.ndarray, np.ndarray]] = []
    plain = smoking.flux

    def watched(surface: np.ndarray, around: object) -> object:
        found = plain(surface, around)
        kept.append((surface.copy(), found))
        return found

    monkeypatch.setattr(smoking, "flux", watched)
    pit = course(cook, History(), 300.0, 121)
    run = simulate(crew, pit, wrappings(History(wraps=(Wrapped(7200.0, wrap),)), 300.0, slice(None)))
    surfaces = [surface for surface, _ in kept]
    heat, water = np.zeros(8), np.zeros(8)
    for (surface, found), after in zip(kept[:-1], surfaces[1:], strict=True):
        moved = 0.5 * (after - surface)
        heat += 300.0 * (found.heat + found.heat_slope * moved)
        water = np.maximum(water + 300.0 * (found.water + found.water_slope * moved), 0.0)
    assert water == pytest.approx(run.water[-2], rel=1e-6)
    bodies = crew.bodies
    expected = crew.start + heat * bodies.gather / (bodies.volumetric_heat * bodies.length)
    assert expected == pytest.approx(_means(crew, pit, wrap)[-2], rel=1e-6)


def _means(crew: object, pit: object, wrap: str) -> np.ndarray:
    """Mean temperature of each member at each step: a probe that reads mode 0 alone."""
    mean_only = replace(
        crew.bodies.modes, values=_first_only(crew.bodies.modes.values), settled=0 * crew.bodies.modes.settled
    )
    seeing = replace(crew.bodies, modes=mean_only)
    run = simulate(
        replace(crew, bodies=seeing),
        pit,
        wrappings(History(wraps=(Wrapped(7200.0, wrap),)), 300.0, slice(None)),
    )
    return run.core


def _first_only(values: np.ndarray) -> np.ndarray:
    kept = np.zeros_like(values)
    kept[0] = values[0]
    return kept
