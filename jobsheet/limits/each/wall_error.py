"""How far the wall comes out from where it should be, against half of the tolerance that is measured."""

from __future__ import annotations

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.shared.milling_work import TOLD

#: What of its setting it reads.
READS = frozenset({"units"})
#: Where it stands among limits of one share.
ORDER = 110


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where no wall is made or no size with limits is measured."""
    error = figures.value("wall_error")
    size = getattr(fields, "measure", None)
    if error is None or size is None or size.high <= size.low:
        return None
    allowed = (size.high - size.low) / 2
    # As the figure itself is shown: micrometres, or thou.
    least = (
        f"over {_number(TOLD, setting.units)}" if abs(error) > TOLD else _number(abs(error), setting.units)
    )
    shown = f"{least} of {show('wall_error', allowed, setting.units)}"
    return by_factor(
        "wall-error", "Wall error", demand=abs(error), capacity=allowed, unit="m", tight=0.5,
        shown=shown,
        when_tight="half of the tolerance is gone: take a light last cut",
        when_beyond="more than half of the tolerance's width: take a light last cut, and measure",
        working=f"half of {size.said}",
    )  # fmt: skip


def _number(error: float, units: str) -> str:
    return show("wall_error", error, units).partition(" ")[0]
