"""Weight that a cook takes: water that evaporates, juice and fat that drip.

Evaporation comes out of the surface balance. Under a lid or foil the meat still gives its juice: braised
flat loses 25 % of its raw weight as water and 10 % as fat, of 22 % fat (USDA Table of Cooking Yields, row
13806). What evaporates is taken from that juice first; half of what is left over drips.
"""

from typing import Final

import numpy as np

from core.heat.band import Array
from core.meat.piece import Composition

JUICE: Final = 0.42  # of the raw water, given up by the end of a braise: 25 / 59. DERIVED from USDA row 13806
JUICE_MIDDLE_C: Final = 66.0  # core at which half of it has left. Judgement, from protein denaturation
JUICE_WIDTH_K: Final = 8.0
DRIPS: Final = 0.5  # of the juice that did not evaporate; the rest stays between the fibres. Judgement
FAT: Final = 0.35  # of the raw fat, rendered by the end; 10 of 22 in the braise, part of it trimmed fat. Judgement
FAT_MIDDLE_C: Final = 75.0
LOSS_SD: Final = 0.025  # of the fraction, between pieces: USDA sd 3.0 % over 20 pieces, part of it in the members


def loss_fraction(composition: Composition, evaporated: Array, core_c: Array) -> Array:
    """Share of the raw weight that is gone. [-]

    Parameters
    ----------
    evaporated
        Share of the raw weight that has evaporated. [-]
    core_c
        Core temperature then. [°C]
    """
    juice = JUICE * composition.water * _given(core_c, JUICE_MIDDLE_C)
    fat = FAT * composition.fat * _given(core_c, FAT_MIDDLE_C)
    lost: Array = evaporated + DRIPS * np.maximum(juice - evaporated, 0.0) + fat
    return lost


def _given(core_c: Array, middle_c: float) -> Array:
    share: Array = 1.0 / (1.0 + np.exp(-(core_c - middle_c) / JUICE_WIDTH_K))
    return share
