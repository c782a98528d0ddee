"""What is left of a start speed by how the fluid is given and how deep the
hole is; `resources/fluids.yaml`.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.catalog.reading.data import shipped
from jobsheet.cutting.inputs import not_negative
from jobsheet.cutting.tables import along
from jobsheet.errors import NoSuchEntry
from jobsheet.units.show import trimmed

#: Ways of giving a fluid by hand: it comes in drops.
BY_HAND = ("brushed", "dripped")
_ROUNDING = 1e-9


@cache
def _table() -> dict[str, Any]:
    data: dict[str, Any] = shipped("fluids.yaml")
    return data


def _factor(row: dict[str, str], why: str) -> Suggestion:
    value = float(row["factor"])
    return Suggestion(
        value, float(row.get("low", value)), float(row.get("high", value)), row["source"], False, why
    )


def fluid_speed(fluid: str, work: str, *, dry_by_nature: bool = False) -> Suggestion:
    """Share of the start speed that is left with this fluid.

    Parameters
    ----------
    fluid : str
        `flood`, `mist`, `brushed`, `dripped` or `dry`
    work : str
        `mill`, `drill`, `ream` or `tap`
    dry_by_nature : bool, optional
        A metal that is cut dry by nature loses nothing

    Returns
    -------
    factor : Suggestion
        Factor on the speed [-]

    Raises
    ------
    NoSuchEntry
        If there is no such way of giving a fluid.
    """
    row = _table()["fluids"].get(fluid)
    if row is None:
        raise NoSuchEntry(f"Fluid is given as {', '.join(_table()['fluids'])}; not “{fluid}”.")
    if float(row["factor"]) == 1:
        return _factor(row, "a steady flow, as the start speeds suppose")
    if dry_by_nature:
        return _factor(_table()["dry by nature"], "this is cut dry by nature")
    if fluid in BY_HAND and work in ("ream", "tap"):
        return _factor(_table()["ream and tap by hand"], "the start speed is low enough for oil by hand")
    return _factor(row, "cut dry" if fluid == "dry" else "oil by hand, not a steady flow")


def deep_hole(depth: float) -> tuple[Suggestion, Suggestion]:
    """Shares of speed and of feed that are left in a deep hole with a steady flow of
    fluid, even between the table's depths.

    Parameters
    ----------
    depth : float
        Depth over diameter [-]

    Returns
    -------
    speed, feed : Suggestion
        Factors [-]; beyond 8 diameters those of 8, marked as outside

    Raises
    ------
    CalcError
        If the depth is below zero or not finite.
    """
    not_negative(depth=depth)
    rows = _table()["deep holes"]
    points = [(float(step["from"]), float(step["speed"]), float(step["feed"])) for step in rows["steps"]]
    outside = depth > float(rows["deepest"]) + _ROUNDING
    if depth <= points[0][0]:
        none = Suggestion(1.0, 1.0, 1.0, rows["source"], False, "not a deep hole")
        return none, none
    at = min(depth, points[-1][0])
    why = f"{trimmed(depth, 1)} diameters deep"
    speed, feed = (along([(point[0], point[column]) for point in points], at) for column in (1, 2))
    return (
        Suggestion(speed, speed, speed, rows["source"], outside, why),
        Suggestion(feed, feed, feed, rows["source"], outside, why),
    )


def drilling_speed(fluid: str, depth: float, *, dry_by_nature: bool = False) -> Suggestion:
    """Share of the start speed that is left in drilling, fluid and depth together.

    Oil by hand halves the speed of a deep hole; the published depths say what a deep hole takes with a steady
    flow. Both speak of the same trouble, so with oil by hand the smaller counts: half, or the fluid's share
    times the step's, never half times the step's.

    Parameters
    ----------
    fluid : str
        As for `fluid_speed`
    depth : float
        Depth over diameter [-]
    dry_by_nature : bool, optional
        A metal that is cut dry by nature

    Returns
    -------
    factor : Suggestion
        Factor on the speed [-]

    Raises
    ------
    NoSuchEntry
        If there is no such way of giving a fluid.
    CalcError
        If the depth is below zero or not finite.
    """
    given = fluid_speed(fluid, "drill", dry_by_nature=dry_by_nature)
    step, _ = deep_hole(depth)
    both = Suggestion(
        given.value * step.value, given.low * step.low, given.high * step.high,
        given.source if step.value == 1 else step.source, step.outside,
        given.why if step.value == 1 else f"{given.why}; {step.why}",
    )  # fmt: skip
    by_hand = _table()["by hand in deep holes"]
    begins, ends = float(by_hand["from"]), float(by_hand["to"])
    if fluid not in BY_HAND or dry_by_nature or depth <= begins + _ROUNDING:
        return both
    shallow = given.value * deep_hole(begins)[0].value
    half = along(((begins, shallow), (ends, float(by_hand["factor"]))), min(depth, ends))
    if both.value <= half:
        return both
    why = f"oil by hand in a hole {trimmed(depth, 1)} diameters deep"
    return Suggestion(half, min(half, both.low), half, by_hand["source"], step.outside, why)
