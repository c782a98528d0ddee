"""What the table may carry, against work and vice."""

from __future__ import annotations

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"load", "machine"})
#: Where it stands among limits of one share.
ORDER = 170
#: It only has to fit: where it does, it governs nothing.
FITS = True


def limit(figures: Figures, setting: Setting, _fields: object) -> Limit | None:
    """None where nothing is cut, or load or table are not known."""
    table = setting.machine.table
    if table is None or table.load is None or setting.load is None or figures.value("spindle_speed") is None:
        return None
    return by_factor(
        "table-load", "Table load", demand=setting.load, capacity=table.load, unit="kg",
        shown=f"{setting.load:.1f} of {table.load:.0f} kg", when_beyond="too heavy for this table: a lighter vice, or another machine",
    )  # fmt: skip
