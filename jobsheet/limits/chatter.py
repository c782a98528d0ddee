"""What the cut asks of the frame before it rings. Until a trial on this machine it is not known, and never judged."""

from __future__ import annotations

import math
from typing import Any

from jobsheet.cutting.chatter import cutter_scale
from jobsheet.limits.verdict import NINE_IN_TEN
from jobsheet.model.figures import Figures, Limit
from jobsheet.model.setting import Setting

#: Supported cutting stiffness before any trial, by class [N/m] (cutting-data section 7: estimate, spread of ln 0.7).
CLASSES = {"bench": 6e6, "knee": 20e6}
SPREAD = 0.7


def limit(figures: Figures, setting: Setting, _fields: Any) -> Limit | None:
    """None where nothing is milled or the machine has no class; else `unknown`: try a lighter cut first."""
    demand = figures.value("cutting_stiffness")
    level = CLASSES.get(setting.machine.stiffness_class)
    if demand is None or level is None:
        return None
    cutter, frame = figures.value("cutter_stiffness"), setting.machine.frame
    scale = cutter_scale(frame=frame.value, cutter=cutter) if cutter and frame else 1.0
    capacity = level * scale
    factor = math.exp(SPREAD * NINE_IN_TEN)
    return Limit(
        name="chatter", title="Chatter", demand=demand, capacity=capacity, unit="N/m", share=demand / capacity,
        verdict="unknown", low=capacity / factor, high=capacity * factor,
        shown=f"{demand / 1e6:.2f} N/µm", sentence="not known on this machine: try a lighter cut first",
        working=f"depth × teeth in cut × Kt; the class supports about {capacity / 1e6:.1f} N/µm with this cutter",
    )  # fmt: skip
