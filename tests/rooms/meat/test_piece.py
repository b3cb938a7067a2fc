"""A piece of meat: what is estimated says so, what cannot be is refused."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.errors import Gone, OutOfRange, Unreadable
from core.meat import cuts as file
from core.meat.cuts import cut, cuts
from core.meat.piece import Shape, Species, piece


@pytest.mark.parametrize(
    ("name", "mass", "millimetres"),
    [("brisket_flat", 3.2, 50), ("brisket_flat", 1.8, 41), ("brisket_point", 2.0, 65)],
)
def test_the_thickness_of_a_usual_piece(name: str, mass: float, millimetres: float) -> None:
    """Common practice, no source: a trimmed flat of 3.2 kg is 50 mm thick, one of 1.8 kg 41, a point of 2 kg 65."""
    assert piece(cut(name), mass).thickness * 1000 == pytest.approx(millimetres, abs=0.6)


def test_an_estimate_has_a_wide_band_and_a_ruler_a_narrow_one() -> None:
    """A thickness that nobody measured is known to a fifth or so, a measured one to a few millimetres."""
    guessed, measured = piece(cut("brisket_flat"), 3.2), piece(cut("brisket_flat"), 3.2, 0.050)
    assert (guessed.measured, measured.measured) == (False, True)
    assert guessed.thickness_low < measured.thickness_low < 0.050 < measured.thickness_high < guessed.thickness_high
    assert guessed.thickness_high / guessed.thickness_low > 1.3


@given(st.sampled_from(sorted(cuts())), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_more_of_a_cut_is_never_thinner(name: str, less: float, more: float) -> None:
    """Within the range of a cut the estimate grows with the mass."""
    known = cut(name)
    masses = [known.mass_low + share * (known.mass_high - known.mass_low) for share in sorted((less, more))]
    assert all(a.thickness <= b.thickness for a, b in pairwise([piece(known, m) for m in masses]))


@pytest.mark.parametrize("mass", [0.0, -3.0, 0.29, 9.01, 900.0, float("nan"), float("inf")])
def test_a_mass_that_a_flat_cannot_have(mass: float) -> None:
    """Nothing, less than nothing, a crumb, a whole herd, no number: refused with the range that can be."""
    with pytest.raises(OutOfRange) as refused:
        piece(cut("brisket_flat"), mass)
    assert (refused.value.quantity, refused.value.low, refused.value.high, refused.value.unit) == (
        "mass",
        0.3,
        9.0,
        "kg",
    )


@pytest.mark.parametrize("thickness", [0.0, -0.05, 0.0049, 0.2501, 48.0, float("nan")])
def test_a_thickness_that_meat_cannot_have(thickness: float) -> None:
    """48 metres of flat (millimetres taken for metres) are refused, not planned."""
    with pytest.raises(OutOfRange) as refused:
        piece(cut("brisket_flat"), 3.2, thickness)
    assert (refused.value.quantity, refused.value.unit) == ("thickness", "m")


def test_a_cut_that_there_is_not() -> None:
    """A cut that nobody has written is gone, by name."""
    with pytest.raises(Gone, match="moon"):
        cut("moon")


@pytest.mark.parametrize(
    ("entry", "value"),
    [("species", "unicorn"), ("shape", "star"), ("mass_kg", [1.0]), ("composition", {}), ("pink_from_mg_kg", None)],
)
def test_a_slip_in_the_file_is_named(entry: str, value: object) -> None:
    """A wrong or missing entry is refused with the file and the cut."""
    good = {
        "species": "beef",
        "shape": "slab",
        "composition": {"ndb": 1, "water": 70.0, "protein": 20.0, "fat": 9.0, "ash": 1.0},
        "thickness_scale_mm": 34.0,
        "thickness_log_sd": 0.1,
        "mass_kg": [0.3, 9.0],
        "pink_from_mg_kg": 14.0,
        "thickness_source": "common practice, no source",
    }
    known = file._cut("flat", good)
    assert (known.species, known.shape) == (Species.BEEF, Shape.SLAB)
    bad = {k: v for k, v in (good | {entry: value}).items() if v is not None}
    with pytest.raises(Unreadable) as refused:
        file._cut("flat", bad)
    assert (refused.value.file, refused.value.where) == ("cuts.toml", "flat")


@pytest.mark.parametrize("name", sorted(cuts()))
def test_every_cut_turns_pink_where_it_was_found_to(name: str) -> None:
    """Onset of pink, Heaton et al. 2000, Meat Science 55:321-329 [mg/kg]."""
    onset = {Species.BEEF: 14.0, Species.PORK: 4.0, Species.TURKEY: 2.0, Species.CHICKEN: 1.0}
    # duck and fish were not measured: taken as slow as beef, judgement
    assert cut(name).pink_from == onset.get(cut(name).species, onset[Species.BEEF])
