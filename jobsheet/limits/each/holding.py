"""The grip on the work: what one peak of the cut pulls, times a factor, against what vice or straps hold.

In words only: grip enough, doubtful, not enough. Never learned by slipping.
"""

from __future__ import annotations

from typing import Any

from jobsheet.cutting.clamping import grip, required_grip
from jobsheet.limits.verdict import DOUBTFUL
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"grip", "shop"})


def limit(figures: Figures, setting: Setting, _fields: Any) -> Limit | None:
    """None where nothing pulls sideways or it is not known what holds the work."""
    pull, held = figures.value("in_plane_peak"), setting.grip
    if pull is None or held is None:
        return None
    lift = figures.value("lift") or 0.0
    high = held.above is not None and held.jaw_depth is not None and held.above > held.jaw_depth
    factor = setting.shop.holding_factor_high if high else setting.shop.holding_factor
    wanted = required_grip(in_plane=pull, upward=lift, factor=factor)
    has = grip(force=held.force, friction=held.friction)
    verdict, words = "expected", "grip enough"
    if wanted > has:
        verdict, words = "beyond", "grip not enough: clamp better or cut lighter"
    elif wanted > has * DOUBTFUL:
        verdict, words = "tight", "grip doubtful: tighten, hold more of it, or cut lighter"
    return Limit(
        name="holding", title="Holding", demand=wanted, capacity=has, unit="N", share=wanted / has if has > 0 else float("inf"),
        verdict=verdict, low=grip(force=held.low, friction=held.friction), high=grip(force=held.high, friction=held.friction),
        shown=f"{wanted / 1e3:.2f} of {has / 1e3:.2f} kN", sentence=words,
        working=f"{factor:g} × √({pull:.0f}² + {lift:.0f}²) N; 2 μ F = 2 × {held.friction:.3g} × {held.force / 1e3:.2f} kN; F: {held.working}",
    )  # fmt: skip
