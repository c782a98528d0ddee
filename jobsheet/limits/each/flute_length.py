"""Whether the flutes, and what stands out of the holder, reach as deep as the cut."""

from __future__ import annotations

from typing import Any

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS: frozenset[str] = frozenset()


def limit(figures: Figures, setting: Setting, fields: Any) -> Limit | None:
    """None where neither flute length nor stick-out is written of the cutter."""
    cutter, depth = getattr(fields, "cutter", None), getattr(fields, "depth", None)
    if cutter is None or depth is None:
        return None
    reach = min((one for one in (cutter.flutes, cutter.stick_out) if one is not None), default=None)
    deep = figures.value("hole_depth") or getattr(depth, "value", None)
    if reach is None or deep is None or getattr(fields, "size", None) is not None:
        return None
    del setting
    # Layers are cut one below the other along the same wall, so the whole depth counts; a face is only as deep as one.
    layers = figures.value("layers") or 1.0
    if figures.value("passes") and hasattr(fields, "width") and not hasattr(fields, "side"):
        deep /= layers
    what = "flutes" if reach == cutter.flutes else "out of the holder"
    return by_factor(
        "flute-length", "Reach of the cutter", demand=deep, capacity=reach, unit="m",
        shown=f"{deep * 1e3:.1f} of {reach * 1e3:.0f} mm", when_beyond=f"only {reach * 1e3:.0f} mm {what}: the shank or the holder rubs; a longer cutter, or from the other side",
    )  # fmt: skip
