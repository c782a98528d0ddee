"""The strength of the cutter where it leaves the holder: a third of what breaks it,
the same share as its figure says.
"""

from __future__ import annotations

from jobsheet.cutting.strength import CARBIDE_RUPTURE, HSS_RUPTURE
from jobsheet.limits.verdict import DOUBTFUL, by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting
from jobsheet.operations.shared.milling_work import STRENGTH_FACTOR

#: What of its setting it reads.
READS: frozenset[str] = frozenset()
#: Where it stands among limits of one share.
ORDER = 100


def limit(figures: Figures, _setting: Setting, fields: object) -> Limit | None:
    """None where it is not written how far the cutter is out."""
    stress = figures.value("bending_stress")
    cutter = getattr(fields, "cutter", None)
    if stress is None or cutter is None:
        return None
    rupture = CARBIDE_RUPTURE if cutter.material == "carbide" else HSS_RUPTURE
    allowed = rupture / STRENGTH_FACTOR
    return by_factor(
        "cutter-bending", "Cutter bending", demand=stress, capacity=allowed, unit="Pa", tight=DOUBTFUL,
        shown=f"{stress / 1e6:.0f} of {allowed / 1e6:.0f} MPa",
        when_tight="near to what a cutter is planned for: shorter out, or a lighter cut",
        when_beyond="more than a third of what breaks it: shorter out, a thicker cutter, or a lighter cut",
        working=f"a third of {rupture / 1e6:.0f} MPa; tight from six tenths of that on",
    )  # fmt: skip
