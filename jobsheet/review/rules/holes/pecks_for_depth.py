"""Asks whether a deep hole is drilled in pecks."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import does
from jobsheet.review.plan.lengths import typed
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import trimmed


@rule("pecks-for-depth", "Pecks in a deep hole", "scrap")
def pecks_for_depth(view: View) -> Iterator[Remark]:
    """A hole deeper than three diameters from the solid, or five when it is opened, in one go. Both numbers are the workshop's.

    Because: Chips pack in the flutes, the drill heats up or snaps.
    Not so: drill 5.0, 40 deep in one go
    So: drill 5.0, 40 deep in pecks of 15
    From: Kennametal Greenfield, printed tips on taps and drills; common practice
    """
    for set_up, operation, _ in view.steps():
        fields, setting = operation.fields, view.reckoned.settings[operation.key]
        if does(operation) != "drill":
            continue
        if fields.cutter.kind != "drill" or not fields.cutter.diameter or fields.peck is not None:
            continue
        deep = fields.depth.value if fields.depth.value is not None else setting.thickness
        times = deep / fields.cutter.diameter
        opening = roles(operation).opens or setting.pilot is not None
        most = setting.shop.pecks_opening if opening else setting.shop.pecks_solid
        if times <= most * (1 + 1e-9):
            continue
        peck = typed(1.5 * fields.cutter.diameter, view.job.units, 1)
        message = f"{trimmed(times, 1)} diameters deep in one go: withdraw and clear the chips in pecks"
        yield remark(
            view, "pecks-for-depth", message, operation.key, set_up=set_up.key,
            fix=Fix(f"Pecks of {peck}", set_field(operation.key, "peck", peck)),
            others=(best_here(operation, setting),),
        )  # fmt: skip
