"""Asks whether anything holds the work while it is drilled."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import says, words_of
from jobsheet.review.rule import View, remark, rule

_HELD = r"clamp\w*|strap\w*|vise|vice|screw\w*|hold\w*|bolt\w*|pin\w*"


@rule("hold-before-drilling", "Hold the work before drilling", "hazard")
def hold_before_drilling(view: View) -> Iterator[Remark]:
    """A hole is made in a set-up that names no vice, no clamps and no stop against turning.

    Because: An 8 mm drill tore a casting of 7.5 kg out of a man's hand as it broke through.
    Not so: drill, the work held by hand
    So: drill, the work clamped or stopped from turning
    From: Fine Homebuilding, 1 November 1989; GTZ, course in metalworking, drilling and clamping; Michigan
    Administrative Code R 408.12639
    """
    for set_up in view.job.set_ups:
        holding = set_up.holding
        if (
            holding.device
            or holding.clamps
            or holding.stop
            or says(_HELD, holding.packing, holding.note, set_up.note)
        ):
            continue
        for operation in set_up.operations:
            if roles(operation).beside == "bench" and says(_HELD, *words_of(operation)):
                break
            if not roles(operation).hole:
                continue
            setting = view.reckoned.settings[operation.key]
            vices = setting.machine.vices
            device = vices[0].name if vices else "clamped to the table"
            yield remark(
                view, "hold-before-drilling", "Nothing holds the work here: clamp it or stop it from turning", operation.key,
                set_up=set_up.key, fix=Fix(f"Held in: {device}", set_field(f"holding:{set_up.key}", "device", device)),
            )  # fmt: skip
            break
