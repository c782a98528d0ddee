"""Stock that a machine reamer wants on the diameter, and the drills that leave
it; `resources/reamer-stock.yaml`.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.catalog.reading.data import shipped
from jobsheet.cutting.inputs import positive
from jobsheet.units.grammar import read

_ROUNDING = 1e-9


@cache
def _bands() -> tuple[str, tuple[tuple[float, float, float, float], ...]]:
    """The source, and the bands: from, to, least and most stock [m]."""
    data: dict[str, Any] = shipped("reamer-stock.yaml")
    rows = [[read(row[name], "length") for name in ("from", "to", "low", "high")] for row in data["bands"]]
    return data["source"], tuple((row[0], row[1], row[2], row[3]) for row in rows)


def reaming_stock(diameter: float) -> Suggestion:
    """Stock to leave on the diameter for a machine reamer.

    Parameters
    ----------
    diameter : float
        Finished diameter of the hole [m]

    Returns
    -------
    stock : Suggestion
        Diameter of the hole less that of the drilled one: middle and ends of the published range [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    """
    positive(diameter=diameter)
    source, bands = _bands()
    _, _, low, high = next((band for band in bands if diameter <= band[1] + _ROUNDING), bands[-1])
    outside = not bands[0][0] - _ROUNDING <= diameter <= bands[-1][1] + _ROUNDING
    return Suggestion(
        (low + high) / 2, low, high, source, outside, "middle of the published range for this diameter"
    )
