"""What a slice and a taste teach."""

from dataclasses import replace

import numpy as np
import pytest

from core.cure import diffusion
from core.cure.contents import Contents
from core.cure.course import Immersion, ensemble, going_on, way
from core.cure.diffusivity import nitrite_loss
from core.cure.dose import Recipe, dose
from core.cure.learning import PIECE_LOG_SD, SALT_FURTHEST, from_slice, from_taste
from core.cure.penetration import penetration
from core.errors import OutOfRange
from core.meat.cuts import cut
from core.meat.piece import piece
from core.person import Learned

TUB = Contents("brine", 3.2, 0.011, 0.0625, salt_kg=0.200, water_kg=3.79)


def immersion(thickness: float = 0.050) -> Immersion:
    return Immersion(piece(cut("brisket_flat"), 3.2, thickness), TUB)


def test_pink_at_a_coin_flip_says_faster_and_grey_says_slower():
    """4 days are the coin-flip of this tub: pink moves D up, a wide grey moves it down, and both narrow the doubt."""
    pink = from_slice(Learned(), immersion(), 4.0, 0.0)
    grey = from_slice(Learned(), immersion(), 4.0, 0.025)
    assert pink.diffusivity_log_shift > 0.1
    assert grey.diffusivity_log_shift < -0.1
    assert max(pink.diffusivity_log_sd, grey.diffusivity_log_sd) < Learned().diffusivity_log_sd


def test_pink_when_everybody_is_pink_says_nothing():
    """After 20 days pink was to be expected: the shift stays within 0.02."""
    after = from_slice(Learned(), immersion(), 20.0, 0.0)
    assert after.diffusivity_log_shift == pytest.approx(0.0, abs=0.02)
    assert after.diffusivity_log_sd == pytest.approx(0.35, abs=0.01)


def test_more_grey_is_never_a_faster_cure():
    """Over the whole width of the slice the learned diffusivity falls with the grey."""
    shifts = [from_slice(Learned(), immersion(), 4.0, g).diffusivity_log_shift for g in (0, 0.005, 0.01, 0.02, 0.03)]
    assert shifts == sorted(shifts, reverse=True)


def test_the_truth_is_found_from_slices():
    """Eight slices of a cook whose meat is half as fast again, where the model itself puts their grey: found to 0.12.

    The slices are cut from the model with the cook's own D, at the day when its front stands at each width.
    """
    truth = 0.4
    known = Learned()
    for days in (2.0, 2.5, 3.0, 2.0, 2.5, 3.0, 2.5, 2.0):
        grey = _grey(replace(immersion(), diffusivity_log_shift=truth, diffusivity_log_sd=1e-9), days)
        known = from_slice(known, immersion(), days, grey)
    assert known.diffusivity_log_shift == pytest.approx(truth, abs=0.12)
    assert PIECE_LOG_SD <= known.diffusivity_log_sd < 0.25


def _grey(known: Immersion, days: float) -> float:
    """Grey in the middle, by stages on cells: where the nitrite is under 14 mg/kg after the cook. [m]"""
    along = way(known)
    pace = np.array([float(np.median(ensemble(known, along).pace))])
    seconds = days * 86400.0
    loss = np.array([nitrite_loss(known.fridge_c) * seconds])
    cured = diffusion.run(along.shape, along.start(1), diffusion.Stage(pace * seconds, along.bath_ratio, loss=loss))
    cooked = diffusion.run(along.shape, cured, diffusion.Stage(pace * going_on(known)))
    grey_cells = int((cooked.cells[0] * along.nitrite < known.piece.cut.pink_from).sum())
    return grey_cells / diffusion.CELLS * known.piece.thickness


def test_one_slice_does_not_replace_the_default():
    """However odd the slice, one moves ln D by no more than two and a half times what was unknown."""
    for grey in (0.0, 0.01, 0.03, 0.045):
        assert abs(from_slice(Learned(), immersion(), 7.0, grey).diffusivity_log_shift) < 2.5 * 0.35


def test_the_doubt_never_falls_below_that_between_pieces():
    """Forty equal slices leave the spread from piece to piece."""
    known = Learned()
    for _ in range(40):
        known = from_slice(known, immersion(), 4.0, 0.005)
    assert PIECE_LOG_SD <= known.diffusivity_log_sd < 0.2


def test_a_shrunken_slice_is_read_by_its_share():
    """12 mm of a cooked 40 mm say the same as 15 mm of the raw 50."""
    cooked = from_slice(Learned(), immersion(), 4.0, 0.012, 0.040)
    raw = from_slice(Learned(), immersion(), 4.0, 0.015)
    assert cooked.diffusivity_log_shift == pytest.approx(raw.diffusivity_log_shift, abs=0.02)


def test_what_teaches_nothing():
    """An injected piece, and one grey to the rim (that is no slow cure, it is none), leave everything as it was."""
    pumped = replace(immersion(), dose=dose(Recipe("inject", 3.2, 0.0625)))
    assert from_slice(Learned(), pumped, 3.0, 0.01) == Learned()
    assert from_slice(Learned(), immersion(), 7.0, 0.050) == Learned()


def test_slices_that_cannot_be():
    """More grey than meat, no days, no slice: refused."""
    for days, grey, of in ((4.0, 0.06, 0.05), (0.0, 0.01, 0.05), (4.0, -0.01, 0.05), (4.0, 0.0, 0.0)):
        with pytest.raises(OutOfRange):
            from_slice(Learned(), immersion(), days, grey, of)


def test_what_was_learned_elsewhere_is_kept():
    """Only the diffusivity moves; cooker, salt and count are left to others."""
    before = Learned(cook_log_shift=0.1, salt_shift=0.0025, batches=3)
    after = from_slice(before, immersion(), 4.0, 0.0)
    assert replace(after, diffusivity_log_shift=0.0, diffusivity_log_sd=0.35) == before


def test_a_grey_slice_makes_the_next_plan_longer():
    """The loop closes: what was grey is given more days next time."""
    usual = penetration(immersion())
    known = from_slice(Learned(), immersion(), 5.0, 0.02)
    next_time = replace(
        immersion(),
        diffusivity_log_shift=known.diffusivity_log_shift,
        diffusivity_log_sd=known.diffusivity_log_sd,
    )
    assert penetration(next_time).days_p50 > usual.days_p50 * 1.15


def test_taste_moves_salt_by_a_quarter_per_cent_within_bounds():
    """Too salty down, bland up, right nothing; and never further than the bound."""
    assert from_taste(Learned(), 1).salt_shift == pytest.approx(-0.0025)
    assert from_taste(Learned(), -1).salt_shift == pytest.approx(0.0025)
    assert from_taste(Learned(), 0) == Learned()
    known = Learned()
    for _ in range(9):
        known = from_taste(known, 1)
    assert known.salt_shift == -SALT_FURTHEST
