"""Asks whether the words of a blind hole agree with what its depth means."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.cutting.times import point_length
from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import TO_THE_TIP, manners
from jobsheet.operations.shared.common import radians
from jobsheet.review.mending.fixes import Mend, in_turn, set_field
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import does
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule


@rule("say-what-the-depth-means", "What the depth means", "scrap")
def say_what_the_depth_means(view: View) -> Iterator[Remark]:
    """The depth of a drilled hole counts to the full diameter, and this one is said to be to the tip.

    Because: A point of 118° adds about 0.3 of the diameter: the hole is too deep or the thread has no room.
    Not so: drill 10, 20 deep, depth to the tip
    So: drill 10, 17 deep, which is 20 to the tip
    From: from memory of trade teaching; geometry of the point
    """
    for set_up, operation, _ in view.steps():
        fields = operation.fields
        if does(operation) != "drill" or fields.cutter.kind != "drill":
            continue
        if fields.depth.value is None or not fields.cutter.diameter:
            continue
        if not how(operation, TO_THE_TIP):
            continue
        tip = point_length(
            diameter=fields.cutter.diameter, point_angle=fields.cutter.point_angle or radians(118)
        )
        less = fields.depth.value - tip
        message = f"The depth {fields.depth.text} counts to the full diameter, it is said to be to the tip: {length(tip, view.job.units)} between them"
        fix = None
        if less > 0.5e-3:
            text = typed(less, view.job.units)
            fix = Fix(
                f"Depth {text} to the full diameter", _to_the_full_diameter(operation, text), (operation.key,)
            )
        yield remark(view, "say-what-the-depth-means", message, operation.key, fix=fix, set_up=set_up.key)


def _to_the_full_diameter(operation: Operation, depth: str) -> Mend:
    left = ", ".join(manner for manner in manners(operation.fields) if manner != TO_THE_TIP)
    return in_turn(set_field(operation.key, "depth", depth), set_field(operation.key, "how", left))
