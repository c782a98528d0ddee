"""The chance that a cut asks more than was learned: plain Python, since every keystroke asks it."""

from __future__ import annotations

import math
from bisect import bisect_left

from jobsheet.model.proof import Capacity
from jobsheet.proving.assumed import CHANCE, NOISE

#: Further than so many spreads from a cell it is over or under for certain (3 in 100,000 at most are not).
_CERTAIN = 4.0


def chance_over(capacity: Capacity, share: float, extra_spread: float = 0.0) -> float:
    """The chance [0..1] that a cut of this share ends badly there; a single cut's own noise is in it.

    Parameters
    ----------
    capacity : Capacity
        What was learned, with its cells
    share : float
        Demand as a share of what card or class gives [-]
    extra_spread : float, optional
        Standard deviation of the logarithm of the demand itself, where that is a band
    """
    if not share > 0:
        return 0.0
    if share == math.inf:
        return 1.0
    cells, demand = capacity.cells, math.log(share)
    spread = math.hypot(NOISE, extra_spread)
    reach = _CERTAIN * spread
    first, last = bisect_left(cells, (demand - reach,)), bisect_left(cells, (demand + reach,))
    total, scale, erfc = 0.0, 1 / (spread * math.sqrt(2)), math.erfc
    for place, weight in cells[first:last]:
        total += weight * erfc((place - demand) * scale)
    total *= 0.5
    for _, weight in cells[:first]:
        total += weight
    return min(total, 1.0)


def largest_share(capacity: Capacity, chance: float = CHANCE) -> float:
    """The largest share that ends badly with at most this chance; 0 where nothing is learned at all."""
    cells = capacity.cells
    if not cells or not 0 < chance < 1:
        return 0.0
    low, high = cells[0][0] - 1.0, cells[-1][0] + 1.0
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if chance_over(capacity, math.exp(middle)) <= chance else (low, middle)
    return math.exp(low)
