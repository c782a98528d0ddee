"""Asks whether slots, pockets, windows and steps come out as the drawing has them."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.finished import Feature
from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked, called
from jobsheet.review.plan.asked_limits import SAME
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import length
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
        if too_round := _too_round(feature, steps):
            units = view.job.units
            message = (
                f"{called(line, feature)}: corners of R{feature.radius.text if feature.radius else ''} are asked,"
                f" and a cutter of {length(too_round, units)} leaves {length(too_round / 2, units)}"
            )
        elif beside:
            message += f"; step {beside[0].number} mills beside it"
        elif not steps:
            message += "; no step mills it"
        steps = steps or beside
        yield remark(
            view, "slots-and-steps-as-drawn", message, *(step.key for step in steps), line=line,
            set_up=steps[0].set_up.key if steps else "",
            by_hand="take a smaller cutter for its walls, or ask for rounder corners"
            if too_round
            else "look at its step: width, depth, length and place; or put in the step that is missing",
        )  # fmt: skip


def _too_round(feature: Feature, steps: tuple[Step, ...]) -> float:
    """The diameter of the smallest cutter that mills a pocket, where its corners are asked smaller than that leaves them [m]; else nought."""
    diameters = [
        cutter.diameter
        for step in steps
        if (cutter := getattr(step.fields, "cutter", None)) and cutter.diameter
    ]
    if feature.radius is None or not diameters:
        return 0.0
    smallest: float = min(diameters)
    return smallest if smallest / 2 > feature.radius.nominal + SAME else 0.0
