"""Remarks that a cut would draw of the rules about chip, slot, skin and pecks: by the
very numbers that those rules ask by.
"""

from __future__ import annotations

from typing import Any

from jobsheet.model.setting import Setting
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared.least_chip import least_chip
from jobsheet.reckoning.adviser.layer_lines import A_HAIR
from jobsheet.reckoning.what_if import Tried

_ROUNDING = 1e-6


def of_milling(plays: Roles, tried: Tried, skin: float) -> int:
    """How many: a chip so thin that it rubs, a first cut that stays within the skin [m]."""
    fields, count = tried.fields, 0
    tooth, least = tried.value("feed_per_tooth"), least_chip(fields.cutter)
    if plays.sizes and tooth is not None and least is not None and tooth < least * (1 - _ROUNDING):
        count += 1
    if skin:
        first = _first(plays, fields, tried)
        count += first is not None and first < skin * (1 - _ROUNDING)
    return count


def _first(plays: Roles, fields: Any, tried: Tried) -> float | None:
    """How deep the first cut goes under the face that it makes [m]."""
    if plays.mills == "wall":
        return tried.value("width_of_cut")
    layers = tried.value("layers")
    return fields.depth.value / layers if plays.mills == "flat" and layers else None


def of_drilling(plays: Roles, tried: Tried, setting: Setting) -> int:
    """Whether a deep hole is drilled in one go."""
    fields = tried.fields
    if plays.hole != "drill" or fields.cutter.kind != "drill" or not fields.cutter.diameter:
        return 0
    deep = tried.number("hole_depth")
    opening = plays.opens or setting.pilot is not None
    most = setting.shop.pecks_opening if opening else setting.shop.pecks_solid
    return int(getattr(fields, "peck", None) is None and deep > most * fields.cutter.diameter * (1 + A_HAIR))
