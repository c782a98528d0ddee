"""Asks whether a cutter is further out than its cut needs."""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import roles
from jobsheet.reckoning.by_value import reckon_operation
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import with_stick_out
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.units.table import INCH

#: Limits that bend or ring with the length of the cutter.
BENT = ("cutter-bending", "wall-error", "chatter")
#: A cutter stands out at least by so many diameters, and so far over its cut [m]
#: (common practice, no source).
DIAMETERS, OVER = 1.5, 5e-3


@rule("shorten-the-stick-out", "Shorten the stick-out", "scrap", needs=Needs.FIGURES)
def shorten_the_stick_out(view: View) -> Iterator[Remark]:
    """Bending, the error of a wall or chatter is near, and would not be at the length that this cut needs.

    Because: Bending grows with the cube of the length.
    Not so: end mill 12 mm, 70 mm out, for a cut 10 deep
    So: end mill 12 mm, 20 mm out, for a cut 10 deep
    From: Mitsubishi Materials, training notes, length of cut
    """
    for set_up, operation, outcome in view.steps():
        cutter = getattr(operation.fields, "cutter", None)
        if cutter is None or cutter.stick_out is None or not cutter.diameter:
            continue
        near = {
            limit.name
            for limit in outcome.limits
            if limit.name in BENT and limit.verdict in ("tight", "beyond")
        }
        setting = view.reckoned.settings[operation.key]
        needed = _needed(operation, setting)
        if not near or needed is None or needed > cutter.stick_out - 1e-3:
            continue
        shorter = replace(operation.fields, cutter=replace(cutter, stick_out=needed))
        _, limits, _, _, _ = reckon_operation(operation.kind, shorter, setting)
        if any(limit.name in near and limit.verdict in ("tight", "beyond") for limit in limits) or not limits:
            continue
        shown, size = typed(needed, view.job.units), length(needed, view.job.units)
        message = f"{length(cutter.stick_out, view.job.units)} out, the cut needs {shown}: shorten the stick-out to {shown}"
        yield remark(
            view, "shorten-the-stick-out", message, operation.key, set_up=set_up.key,
            fix=Fix(f"{size} out", set_field(operation.key, "cutter", with_stick_out(cutter.text, size))),
        )  # fmt: skip


def _needed(operation: Operation, setting: Setting) -> float | None:
    """How far out the cutter must be [m]: its cut and a little, and never less than its width asks; to whole millimetres, or sixteenths of an inch."""
    fields = operation.fields
    depth = getattr(fields, "depth", None)
    if depth is None or roles(operation).hole in ("drill", "ream", "tap"):
        return None
    deep = depth.value if depth.value is not None else setting.thickness
    long = max(deep + OVER, DIAMETERS * fields.cutter.diameter)
    step = 1e-3 if setting.units == "mm" else INCH / 16
    return math.ceil(float(long) / step - 1e-6) * step
