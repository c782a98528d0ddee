"""What the holder can take: a drill chuck is not for milling, and lets go of a large tap."""

from __future__ import annotations

from jobsheet.limits.verdict import by_factor
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"shop"})
#: Where it stands among limits of one share.
ORDER = 20
#: Why no good plan of the samples meets it.
UNMET = "it only ever says no: a drill chuck where none belongs"


def limit(figures: Figures, setting: Setting, fields: object) -> Limit | None:
    """None where the cutter is not in a drill chuck."""
    cutter, torque = getattr(fields, "cutter", None), figures.value("torque")
    if cutter is None or cutter.holder != "drill chuck" or torque is None:
        return None
    if figures.value("in_plane_peak") is not None:
        return by_factor(
            "holder-grip", "Drill chuck", demand=1.0, capacity=0.5, unit="-", shown="not for milling",
            when_beyond="side load works a drill chuck loose: take a collet or an end-mill holder",
        )  # fmt: skip
    if figures.value("tap_strength") is None or figures.value("spindle_speed") is None:
        return None
    holds = setting.shop.chuck_torque
    return by_factor(
        "holder-grip", "Drill chuck", demand=torque, capacity=holds, unit="N*m", shown=f"{torque:.2f} of {holds:.0f} N·m",
        when_beyond="the tap turns in the chuck: take a tapping head, or tap by hand",
    )  # fmt: skip
