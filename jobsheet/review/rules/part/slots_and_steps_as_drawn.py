"""Asks whether slots, pockets, windows and steps come out as the drawing has them."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked, called
from jobsheet.review.plan.part_pieces import large, left_in, mill, milled_beside
from jobsheet.review.rule import Needs, View, remark, rule


@rule("slots-and-steps-as-drawn", "Slots, pockets and steps as drawn", "rework", needs=Needs.STAGES)
def slots_and_steps_as_drawn(view: View) -> Iterator[Remark]:
    """Metal is left where the drawing has a slot, a keyway, a pocket, a window or a step.

    Nothing mills it, or what mills it is smaller, shallower, shorter or lies beside its place.

    Because: What goes into it does not go in.
    Not so: slot 10 x 6 deep on the drawing, milled 5 deep
    So: milled 6 deep
    From: the solids of the plan
    """
    asked = as_asked(view)
    if asked is None:
        return
    features = dict(asked.part.features)
    for line, fact in left_in(view, asked).items():
        feature = features[line]
        steps = mill(asked, fact)
        beside = () if steps else milled_beside(view, asked, line)
        message = f"{called(line, feature)}: metal is left in it, {large(fact, view.job.units)} over all"
        if beside:
            message += f"; step {beside[0].number} mills beside it"
        elif not steps:
            message += "; no step mills it"
        steps = steps or beside
        yield remark(
            view, "slots-and-steps-as-drawn", message, *(step.key for step in steps), line=line,
            set_up=steps[0].set_up.key if steps else "",
            by_hand="look at its step: width, depth, length and place; or put in the step that is missing",
        )  # fmt: skip
