"""Whether the flutes, and what stands out of the holder, reach as deep as the cut."""

from __future__ import annotations

from typing import Any

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: What of its setting it reads.
READS = frozenset({"units"})
#: Where it stands among limits of one share.
ORDER = 120
#: It only has to fit: where it does, it governs nothing.
FITS = True


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where neither flute length nor stick-out is written of the cutter."""
    cutter, depth = getattr(fields, "cutter", None), getattr(fields, "depth", None)
    if cutter is None or depth is None:
        return None
    reach = min((one for one in (cutter.flutes, cutter.stick_out) if one is not None), default=None)
    deep = _deep(figures, fields)
    if reach is None or deep is None:
        return None
    what = "flutes" if reach == cutter.flutes else "out of the holder"
    metric = setting.units == "mm"
    long = f"{reach * 1e3:.0f} mm" if metric else f"{_thou(reach)} in"
    return by_factor(
        "flute-length", "Reach of the cutter", demand=deep, capacity=reach, unit="m",
        shown=f"{f'{deep * 1e3:.1f}' if metric else _thou(deep)} of {long}", when_beyond=f"only {long} {what}: the shank or the holder rubs; a longer cutter, or from the other side",
    )  # fmt: skip


def _thou(value: float) -> str:
    return trimmed(value / INCH, 3)


def _deep(figures: Figures, fields: Any) -> float | None:
    """How deep the cutter stands in the work [m].

    Layers are cut one below the other along the same wall, so the whole depth counts, in a pocket too; a face
    has no wall and is only as deep as one.
    """
    whole: float | None = figures.value("hole_depth")
    if whole is not None:
        return whole
    whole = fields.depth.value
    if whole is None or not hasattr(fields, "width") or hasattr(fields, "side"):
        return whole
    return whole / figures.count("layers")
