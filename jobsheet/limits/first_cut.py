"""Where to begin with a cut that was never tried: the size that nine of ten machines of the class carry.

It is the size that the step leaves free: the depth of a layer, but the width where the depth is a wall's.
"""

from __future__ import annotations

import math
from typing import Any

from jobsheet.cutting.chip import arc_chip_thickness
from jobsheet.cutting.stability import direction
from jobsheet.limits.as_depth import depth_of
from jobsheet.model.figure import Figures
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.milling_work import edge_arc
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A first face is not cut deeper than this, whatever the class says; in stainless on a bench machine less [m]
#: (holding-and-more-kinds C4: common practice).
FACE = {"bench": 0.5e-3, "knee": 2.0e-3}
STAINLESS_FACE = 0.3e-3
#: Narrower cuts are asked of nobody [m] (common practice).
THINNEST = 0.1e-3
#: A width is halved so many times: to a micrometre of any cutter here, far finer than it is set.
_HALVINGS = 16
#: In which steps a size is easily set, from so much on, in its unit; coarse ones are whole numbers of the
#: finer, so that nothing hangs on the bounds (common practice).
_STEPS = {
    "mm": (1e-3, ((1.0, 0.1), (0.2, 0.05), (0.0, 0.01))),
    "in": (INCH, ((0.05, 0.005), (0.0, 0.0005))),
}
_ROUNDING, _DECIMALS = 1e-9, 4


def first_cut(figures: Figures, setting: Setting, fields: object, process: str, share: float) -> str:
    """The size in words, which asks only this share of what the cut asks as it stands."""
    if process == "side" and figures.count("layers") <= 1:
        width = _width(figures, setting, fields, share)
        if width is not None:
            return f"{_rounded_down(width, setting.units)} wide"
    depth = depth_of(figures)
    if depth is None:
        return "a lighter cut"
    return f"{_rounded_down(min(depth * share, _most(setting, fields, process)), setting.units)} deep"


def _most(setting: Setting, fields: Any, process: str) -> float:
    """How deep a first layer is at most [m]."""
    name, cutter = setting.machine.stiffness_class, fields.cutter
    if process == "face" or cutter.kind in ("face mill", "fly cutter"):
        if name == "bench" and setting.material.family == "stainless":
            return STAINLESS_FACE
        return FACE.get(name, math.inf)
    if process == "slot" and cutter.diameter:
        shop = setting.shop
        bench = shop.slot_layer_bench if name == "bench" else shop.slot_layer
        return min(shop.slot_layer, bench) * float(cutter.diameter)
    return math.inf


def _width(figures: Figures, setting: Setting, fields: Any, share: float) -> float | None:
    """The width at the same depth [m]; None where even the narrowest asks more."""
    now, tooth, diameter = (
        figures.value("width_of_cut"),
        figures.value("feed_per_tooth"),
        fields.cutter.diameter,
    )
    if now is None or tooth is None or not diameter:
        return None

    def asks(width: float) -> float:
        # The slope of the edge thins every chip alike: it is no part of the comparison.
        start, end = edge_arc(width, diameter)
        chip = arc_chip_thickness(feed_per_tooth=tooth, start=start, end=end)
        return (end - start) * float(chip**-setting.material.mc.value) / direction(start, end)

    most = asks(now) * share
    low, high = min(THINNEST, now), now
    if asks(low) > most:
        return None
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if asks(middle) <= most else (low, middle)
    return low


def _rounded_down(value: float, units: str) -> str:
    """A size that is easily set and no more than it is."""
    unit, rows = _STEPS[units]
    size = value / unit
    step = next(step for least, step in rows if size >= least)
    return f"{trimmed(max(step, math.floor(size / step + _ROUNDING) * step), _DECIMALS)} {units}"
