"""What is wrong with a cut, counted: limits that are beyond, remarks that it would draw, limits at their edge.

A limit that nothing is known of is at its edge where its chance by the class is as large as that of a tight one: what a
person has never cut on this machine is not planned deeper than nine of ten such machines carry.
"""

from __future__ import annotations

from jobsheet.limits.verdict import TIGHT, chance_over, is_tight, spread_of
from jobsheet.model.figure import Limit
from jobsheet.reckoning.what_if import Tried

#: Beyond, remarks, at the edge: compared in that order, nought is best.
Burden = tuple[int, int, int]
#: Where a cut cannot be reckoned at all.
HOPELESS: Burden = (99, 0, 0)
_UNKNOWN = ("unknown", "not tried")


def not_known(limit: Limit) -> bool:
    """Whether nothing was tried of it on this machine."""
    return limit.verdict in _UNKNOWN


def over(limit: Limit) -> bool:
    """Whether it gives out."""
    return limit.verdict == "beyond"


def chance_of(limit: Limit) -> float:
    """The chance that it gives out, by what was learned or by the class alone."""
    if limit.chance is not None:
        return limit.chance
    return chance_over(limit.demand, limit.capacity, spread_of((limit.low, limit.high)))


def heavy(limit: Limit) -> bool:
    """Whether it is at its edge, or not known and loaded as if it were."""
    if limit.verdict == "not tried":
        return True
    if not_known(limit):
        return limit.capacity > 0 and chance_of(limit) >= TIGHT
    return is_tight(limit)


def burden_of(found: Tried, remarks: int) -> Burden:
    """What is wrong with it."""
    if found.figures is None:
        return HOPELESS
    return sum(map(over, found.limits)), remarks, sum(map(heavy, found.limits))
