"""The thickest even layer with which a milling cut goes: reckoned whole for each number of layers, remembered by value."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Any

from jobsheet.errors import JobsheetError
from jobsheet.model.setting import Setting
from jobsheet.reckoning.what_if import tried, with_texts
from jobsheet.review.plan.cuts import layer_of
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.rough_and_finish import length_text

#: Layers thinner than this are no mend [m], and so many are not asked of anybody (common practice).
THINNEST, MOST = 0.1e-3, 64


def lighter(step: Step, units: str, *, names: tuple[str, ...] = (), below: float | None = None) -> str:
    """The layer as it is typed, with which none of these limits is beyond, and the frame is asked for less than `below` [N/m].

    Nothing where no layer of a reasonable thickness does it.
    """
    layer = layer_of(step)
    if layer is None:
        return ""
    depth = step.fields.depth.value if step.fields.depth.value is not None else step.lie.size[2]
    return _thickest(
        step.kind, step.fields, step.setting, units, names, below, depth, max(1, round(depth / layer))
    )


@lru_cache(maxsize=256)
def _thickest(
    kind: str,
    fields: Any,
    setting: Setting,
    units: str,
    names: tuple[str, ...],
    below: float | None,
    depth: float,
    now: int,
) -> str:

    def goes(count: int) -> bool:
        try:
            made = with_texts(kind, fields, (("layer", _text(depth, count, units)),), units)
        except JobsheetError:
            return False
        found = tried(kind, made, setting)
        if found.figures is None or any(
            one.verdict == "beyond" and one.name in names for one in found.limits
        ):
            return False
        asked = next((one.demand for one in found.limits if one.name == "chatter"), 0.0)
        return below is None or asked < below * (1 - 1e-6)

    most = min(MOST, int(depth / THINNEST + 1e-9))
    high = now + 1
    while high < most and not goes(high):
        high *= 2
    high = min(high, most)
    if high <= now or not goes(high):
        return ""
    low = now
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if goes(middle) else (middle, high)
    return _text(depth, high, units)


def _text(depth: float, count: int, units: str) -> str:
    """A layer that makes so many of the depth: rounded up to a hundredth, so that it does not make one more."""
    return length_text(math.ceil(depth / count * 1e5 - 1e-6) / 1e5, units)
