"""Asks whether a step breaks the edges that the drawing wants broken."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.finished import Feature
from jobsheet.model.remark import Remark
from jobsheet.operations.manners import BROKEN
from jobsheet.review.plan.as_asked import as_asked, called
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.against_part import AGREES

#: A chamfer up to this leg is made by hand [m] (planning reference, row of the chamfer: by hand
#: below 0.3; up to here common practice).
BY_HAND = 0.5e-3


@rule("edges-broken-as-asked", "Edges broken as asked", "rework")
def edges_broken_as_asked(view: View) -> Iterator[Remark]:
    """The drawing has a chamfer or broken edges, and no step makes one of that size. Small ones may be filed.

    Because: Sharp edges cut hands, and a part with a burr does not lie flat.
    Not so: cham 1 x 45 on the drawing, and no step with a chamfer mill
    So: an edge chamfer of 1; for 0.3 a step at the bench
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    for line, feature in asked.part.features:
        if feature.kind == "chamfer" and not any(_breaks(step, feature) for step in asked.plan.steps):
            message = f"{called(line, feature)}: no step breaks the edges so"
            yield remark(
                view, "edges-broken-as-asked", message, line=line,
                by_hand="put in a step that chamfers them, or one at the bench that deburrs",
            )  # fmt: skip


def _breaks(step: Step, feature: Feature) -> bool:
    """Whether a step makes it: a cutter of that size, or a file where it is small."""
    leg = feature.size.nominal if feature.size is not None else 0.0
    if step.roles.mills == "edge":
        size = getattr(step.fields, "size", None)
        return size is None or abs(size.value - leg) <= max(AGREES, BY_HAND if leg <= BY_HAND else 0.0)
    return leg <= BY_HAND + AGREES and (does(step.operation, "deburr") or how(step.operation, BROKEN))
