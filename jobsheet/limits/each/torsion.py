"""The strength of drill or tap against twisting off: doubtful from six tenths on
(estimate, cutting-data section 1.6).
"""

from __future__ import annotations

from jobsheet.limits.verdict import DOUBTFUL, by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS: frozenset[str] = frozenset()
#: Where it stands among limits of one share.
ORDER = 90
#: Why no good plan of the samples meets it.
UNMET = "it is met under the names of what may break"

_MENDS = {"drill": "feed gently and clear the chips", "tap": "drill the hole larger"}


def limit(figures: Figures, _setting: Setting, _fields: object) -> Limit | None:
    """None where neither a drill nor a tap is turned; a tool with a point of its own twists off
    there, under what the point takes.
    """
    point = figures.value("point_torque")
    torque = point if point is not None else figures.value("torque")
    if torque is None:
        return None
    drill, tap = figures.value("drill_strength"), figures.value("tap_strength")
    strength = drill if drill is not None else tap
    if strength is None:
        return None
    tool = "drill" if drill is not None else "tap"
    return by_factor(
        f"{tool}-torsion", f"{tool.title()} torsion", demand=torque, capacity=strength, unit="N*m", tight=DOUBTFUL,
        shown=f"{torque:.2f} of {strength:.1f} N·m",
        when_tight=f"the {tool} may break: {_MENDS[tool]}",
        when_beyond=f"the {tool} breaks: {_MENDS[tool]}",
    )  # fmt: skip
