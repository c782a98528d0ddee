"""What is wrong with a cut, counted: limits that are beyond, remarks that it
would draw, limits at their edge.

A limit that was not tried counts as one at its edge: what a person has never cut on this machine is not
planned deeper than nine of ten such machines carry.
"""

from __future__ import annotations

from jobsheet.limits.verdict import is_tight
from jobsheet.model.figure import Limit
from jobsheet.reckoning.what_if import Tried

#: Beyond, remarks, at the edge: compared in that order, nought is best.
Burden = tuple[int, int, int]
#: Where a cut cannot be reckoned at all.
HOPELESS: Burden = (99, 0, 0)


def not_tried(limit: Limit) -> bool:
    """Whether nothing was tried of it on this machine, and the class does not make up for it."""
    return limit.verdict == "not tried"


def over(limit: Limit) -> bool:
    """Whether it gives out."""
    return limit.verdict == "beyond"


def heavy(limit: Limit) -> bool:
    """Whether it is at its edge, or was not tried at such a load."""
    return is_tight(limit)


def burden_of(tried: Tried, remarks: int) -> Burden:
    """What is wrong with it."""
    if tried.figures is None:
        return HOPELESS
    return sum(map(over, tried.limits)), remarks, sum(map(heavy, tried.limits))
