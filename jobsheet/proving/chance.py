"""The chance that a cut asks more than was learned, and what asks no more than a chance: plain Python.

The chance itself stands with the limits, which ask it at every keystroke and know nothing of proving.
"""

from __future__ import annotations

import math

from jobsheet.limits.evidence import chance_over
from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import CHANCE, GROWTH

#: Of the lightest bad end, as long as nothing of such cuts ran clean. Found on drawn machines whose
#: class or card is 1.7 times too high: of those without a clean cut the plan was over the truth on
#: half (`tests/proving/stories.py`).
UNTIL_CLEAN = 0.4
#: So many clean cuts under the ends, or over the lightest, say by themselves how far one may go
#: (estimate, found on the same machines).
FEW = 3

__all__ = ["chance_over", "largest_share"]


def largest_share(capacity: Capacity, chance: float = CHANCE) -> float:
    """The largest share that ends badly with at most this chance; 0 where nothing is learned at all.

    After bad ends it is at most what the cuts that ran clean speak for, as long as
    these are few or none: see `_most`.
    """
    cells = capacity.cells
    if not cells or not 0 < chance < 1:
        return 0.0
    low, high = cells[0][0] - 1.0, cells[-1][0] + 1.0
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if chance_over(capacity, math.exp(middle)) <= chance else (low, middle)
    share = math.exp(low)
    return min(share, _most(capacity)) if capacity.bad else share


def _most(capacity: Capacity) -> float:
    """After bad ends, the most that few clean cuts speak for: how far below the ends the limit lies only the
    card says, and that may be far off.

    Half of the way, by its factor, from the heaviest clean cut below the lightest end to that end, and no
    more than one step of a ladder. In which order they were entered is nothing to it.
    """
    lightest = min(capacity.bad)
    below = [good.share for good in capacity.good if good.share < lightest]
    if len(below) >= FEW or len(capacity.good) - len(below) >= FEW:
        return math.inf
    if not below:
        return UNTIL_CLEAN * lightest
    return min(GROWTH * max(below), math.sqrt(max(below) * lightest))
