"""Asks whether anything holds the work while it is cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import in_turn, set_field
from jobsheet.review.plan.held import holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("hold-before-drilling", "Hold the work before it is cut", "hazard")
def hold_before_drilling(view: View) -> Iterator[Remark]:
    """Something is cut in a set-up that nothing holds.

    Because: An 8 mm drill tore a casting of 7.5 kg out of a man's hand as it broke through.
    Not so: drill, and no holding in the set-up
    So: drill, the work in the vice or strapped down
    From: Fine Homebuilding, 1 November 1989; GTZ, course in metalworking, drilling and clamping; Michigan
    Administrative Code R 408.12639
    """
    for set_up in view.job.set_ups:
        if holding_roles(set_up).holds:
            continue
        first = next(
            (operation for operation in set_up.operations if roles(operation).mills or roles(operation).hole),
            None,
        )
        if first is None:
            continue
        vices = view.reckoned.settings[first.key].machine.vices
        owner = f"holding:{set_up.key}"
        mend = set_field(owner, "kind", "vice" if vices else "straps")
        if vices:
            mend = in_turn(mend, set_field(owner, "vice", vices[0].name))
        yield remark(
            view, "hold-before-drilling", "Nothing holds the work here: clamp it, whatever is cut", first.key, set_up=set_up.key,
            fix=Fix(f"Held in: {vices[0].name if vices else 'straps on the table'}", mend),
            by_hand="enter under Held by what holds it, and where",
        )  # fmt: skip
