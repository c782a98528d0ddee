"""How far the wall comes out from where it should be, against half of the tolerance that is measured."""

from __future__ import annotations

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.milling_work import TOLD

#: What of its setting it reads.
READS: frozenset[str] = frozenset()
#: Where it stands among limits of one share.
ORDER = 110


def limit(figures: Figures, _setting: Setting, fields: object) -> Limit | None:
    """None where no wall is made or no size with limits is measured."""
    error = figures.value("wall_error")
    size = getattr(fields, "measure", None)
    if error is None or size is None or size.high <= size.low:
        return None
    allowed = (size.high - size.low) / 2
    shown = (
        f"{abs(error) * 1e6:.0f} of {allowed * 1e6:.0f} µm"
        if abs(error) <= TOLD
        else f"over {TOLD * 1e6:.0f} of {allowed * 1e6:.0f} µm"
    )
    return by_factor(
        "wall-error", "Wall error", demand=abs(error), capacity=allowed, unit="m", tight=0.5,
        shown=shown,
        when_tight="half of the tolerance is gone: take a light last cut",
        when_beyond="more than half of the tolerance's width: take a light last cut, and measure",
        working=f"half of {size.said}",
    )  # fmt: skip
