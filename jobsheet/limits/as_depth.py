"""What is asked of a frame, said as a depth: N/µm mean nothing to a hand, and depth is what it can change.

For one width, speed and metal what a cut asks grows with its depth alone, so a share of
it is the same share of the depth.
"""

from __future__ import annotations

from jobsheet.model.figure import Figures
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH


def depth_of(figures: Figures) -> float | None:
    """The depth of one layer that the demand was worked out from [m]."""
    for step in figures.working:
        if step.figure == "cutting_stiffness":
            found = dict(step.inputs).get("depth")
            return float(found) if found is not None else None
    return None


def said(depth: float, units: str, *, name: bool = True) -> str:
    """A depth [m] to two figures or three, in the unit of the job, with its name or without."""
    value, unit = (depth * 1e3, "mm") if units == "mm" else (depth / INCH, "in")
    decimals = (1 if value >= 10 else 2) if units == "mm" else 3
    return f"{trimmed(value, decimals)} {unit}" if name else trimmed(value, decimals)
