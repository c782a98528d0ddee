"""The chance that a cut asks more than was learned, and what asks no more than a chance: plain Python.

The chance itself stands with the limits, which ask it at every keystroke and know nothing of proving.
"""

from __future__ import annotations

import math

from jobsheet.limits.evidence import chance_over
from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import CHANCE

#: Of the lightest bad end, as long as nothing of such cuts ran clean. Found on drawn machines whose class or card is 1.7 times too
#: high: of those without a clean cut the plan was over the truth on half (`tests/proving/stories.py`).
UNTIL_CLEAN = 0.4

__all__ = ["chance_over", "largest_share"]


def largest_share(capacity: Capacity, chance: float = CHANCE) -> float:
    """The largest share that ends badly with at most this chance; 0 where nothing is learned at all.

    After bad ends alone, without one clean cut, it is at most two fifths of the lightest of them.
    """
    cells = capacity.cells
    if not cells or not 0 < chance < 1:
        return 0.0
    low, high = cells[0][0] - 1.0, cells[-1][0] + 1.0
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if chance_over(capacity, math.exp(middle)) <= chance else (low, middle)
    share = math.exp(low)
    if capacity.bad and not capacity.good:
        # Nothing of it ran clean: how far below the first bad end the limit lies only the card says, and that may be far off.
        share = min(share, UNTIL_CLEAN * min(capacity.bad))
    return share
