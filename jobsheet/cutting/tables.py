"""Reading between the lines of a printed table."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence


def along(points: Sequence[tuple[float, float]], value: float) -> float:
    """Value of a table at `value`, straight between its points.

    Past an end the line of the last two points goes on: a table is never clamped; the formula says in its
    range where
    the table ends.
    """
    x = float(value)
    upper = min(max(bisect_right(points, (x, math.inf)), 1), len(points) - 1)
    (x0, y0), (x1, y1) = points[upper - 1], points[upper]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def along_logs(points: Sequence[tuple[float, float]], value: float) -> float:
    """Value of a table at `value`, straight between the logarithms of its points.

    For tables that follow a power law; past an end the law of the last two points goes on, and stays above
    zero.
    """
    logs = [(math.log(x), math.log(y)) for x, y in points]
    return math.exp(along(logs, math.log(float(value))))
