"""How thick a drill is at its heart, and how wide a pilot should be; rows in `resources/webs.yaml`."""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.catalog.reading.data import shipped
from jobsheet.cutting.drill_point import chisel_edge
from jobsheet.cutting.inputs import positive
from jobsheet.cutting.tables import along

_MILLIMETRE = 1e-3


@cache
def _table() -> tuple[dict[str, Any], tuple[tuple[float, float], ...]]:
    data: dict[str, Any] = shipped("webs.yaml")
    return data, tuple((float(row["diameter"]), float(row["web"])) for row in data["webs"])


def web(diameter: float) -> Suggestion:
    """Web at the point of a new jobber drill.

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]

    Returns
    -------
    web : Suggestion
        Average thickness, straight between the rows of the table; below its smallest
        drill it shrinks with the diameter [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    """
    positive(diameter=diameter)
    data, points = _table()
    size = diameter / _MILLIMETRE
    outside = not points[0][0] - 1e-6 <= size <= points[-1][0] + 1e-6
    thick = points[0][1] * size / points[0][0] if size < points[0][0] else along(points, size)
    value = thick * _MILLIMETRE
    return Suggestion(value, value, value, data["source"], outside, "average of new jobber drills")


def chisel(diameter: float) -> float:
    """Length of the chisel edge [m] of a usual drill of that diameter [m]: 1.15 times its web."""
    return chisel_edge(web(diameter).value)


def pilot(diameter: float) -> Suggestion:
    """Pilot hole for a drill.

    Parameters
    ----------
    diameter : float
        Diameter of the drill that follows [m]

    Returns
    -------
    pilot : Suggestion
        From a tenth more than the web to a third of the drill; the value is as wide as the chisel edge, which
        then has nothing left to push through [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    """
    data, _ = _table()
    thick = web(diameter)
    low = float(data["pilot"]["of web"]["value"]) * thick.value
    high = float(data["pilot"]["of diameter"]["value"]) * diameter
    edge = chisel(diameter)
    return Suggestion(
        edge, low, max(edge, high), data["pilot"]["of web"]["source"], thick.outside,
        "as wide as the chisel edge, 1.15 times the web; a third of the drill at most",
    )  # fmt: skip
