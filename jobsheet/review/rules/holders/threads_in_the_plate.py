"""Asks whether the screws of a fixture plate hold by enough thread."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: A screw holds by so many threads at least (holding-and-more-kinds A1: three).
LEAST = 3


@rule("threads-in-the-plate", "Threads in the plate", "hazard")
def threads_in_the_plate(view: View) -> Iterator[Remark]:
    """Fewer than three threads of a screw are in the fixture plate, or in aluminium less than its diameter.

    Because: So few strip as it is tightened, or under the cut.
    Not so: M6 screws, 2 mm in the plate
    So: M6 screws, 9 mm in the plate
    From: Saunders Machine Works, torque of screws in fixture plates
    """
    for set_up in view.job.set_ups:
        screw, engaged = fact(set_up, "screw"), size(set_up, "engaged")
        if not holding_roles(set_up).screwed or screw is None or engaged is None or not set_up.operations:
            continue
        threads = engaged / screw.pitch
        soft = fact(set_up, "plate_metal") == "aluminium" and engaged < screw.major - 1e-9
        if threads >= LEAST - 1e-9 and not soft:
            continue
        units = view.job.units
        message = f"{screw.text} goes {length(engaged, units)} deep, {threads:.1f} threads in the plate: three at least"
        if threads >= LEAST - 1e-9:
            message = f"{screw.text} goes {length(engaged, units)} deep in aluminium: as much as its diameter at least, or its threads strip"
        text = typed(1.5 * screw.major, units, 1)
        fix = Fix(f"{text} deep in the plate", set_field(f"holding:{set_up.key}", "engaged", text))
        yield remark(
            view, "threads-in-the-plate", message, set_up.operations[0].key, fix=fix, set_up=set_up.key
        )
