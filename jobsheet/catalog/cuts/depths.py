"""Depths and widths of cut of an end mill to start from, as shares of its diameter; `resources/feeds.yaml`.

They are where practice begins, not what a machine carries: that is for the limits, and for trials.
"""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.cuts.feeds import feed_class, table
from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.cutting.inputs import positive
from jobsheet.model.material import Material


def _rows() -> dict[str, Any]:
    rows: dict[str, Any] = table()["depths"]
    return rows


def _range(name: str, diameter: float, why: str) -> Suggestion:
    positive(diameter=diameter)
    row = _rows()[name]
    low, high = float(row["low"]) * diameter, float(row["high"]) * diameter
    return Suggestion((low + high) / 2, low, high, _rows()["source"], False, why)


def slot_depth(diameter: float, material: Material, *, knee: bool) -> Suggestion:
    """Depth of a slot in one pass.

    Parameters
    ----------
    diameter : float
        Diameter of the end mill, of high speed steel [m]
    material : Material
        What is cut
    knee : bool
        A knee mill; else a bench mill

    Returns
    -------
    depth : Suggestion
        On a bench mill the middle of the usual range; on a knee mill half of the usual limit [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    """
    positive(diameter=diameter)
    slot = _rows()["slot"]
    low, high = (float(slot["bench"][end]) * diameter for end in ("low", "high"))
    if not knee:
        return Suggestion(
            (low + high) / 2, low, high, _rows()["source"], False, "middle of the usual range on a bench mill"
        )
    column = "aluminium" if feed_class(material) in _rows()["easy"] else "steel"
    most = float(slot["knee"][column]) * diameter
    why = f"half of the usual limit for {column} on a knee mill"
    return Suggestion(most / 2, low, most, _rows()["source"], False, why)


def side_depth(diameter: float) -> Suggestion:
    """Depth along the cutter's axis in side milling [m], from its diameter [m]."""
    return _range("side depth", diameter, "middle of the usual range in side milling")


def side_width(diameter: float, *, finish: bool = False) -> Suggestion:
    """Width of cut in side milling [m], from the diameter [m]; for a finishing pass much less."""
    if finish:
        return _range("finish width", diameter, "middle of the usual range for a finishing pass")
    return _range("side width", diameter, "middle of the usual range in side milling")
