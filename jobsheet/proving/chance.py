"""The chance that a cut asks more than was learned, and what asks no more than a chance: plain Python.

The chance itself stands with the limits, which ask it at every keystroke and know nothing of proving.
"""

from __future__ import annotations

import math

from jobsheet.limits.evidence import chance_over
from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import CHANCE

__all__ = ["chance_over", "largest_share"]


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
