"""Asks whether parallelism that the drawing asks is measured."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import SIZES, FaceForm
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.operations.manners import MEASURED, TO_SIZE
from jobsheet.review.plan.as_asked import AsAsked, as_asked
from jobsheet.review.plan.asked_limits import measures_all, size_of
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.gauges import measures, named
from jobsheet.review.plan.held import how
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("parallelism-is-measured", "Parallelism is measured", "scrap")
def parallelism_is_measured(view: View) -> Iterator[Remark]:
    """The drawing wants a face parallel to the one opposite, and no step measures that once the face is cut.

    A step measures it that has `parallel` in its tolerances, that measures without saying what, or that measures the size between the two
    faces; not where a flat of a round bar is measured at one place by the step that cuts it, and its limits are wider than what is asked.

    Because: A block can have its size in the middle and taper.
    Not so: top parallel to bottom 0.02, both milled, nothing measured
    So: the same, and a step at the bench that measures the height with a micrometer, at both ends
    From: common practice
    """
    asked = as_asked(view)
    if asked is None or asked.part.shape is None:
        return
    for form in asked.part.shape.forms:
        steps = asked.steps(asked.face(form.face).steps)
        if form.form != "parallel" or OPPOSITE[form.face] not in form.to or not steps:
            continue
        if any(_measures(asked, step, form) for step in asked.plan.steps if step.index >= steps[-1].index):
            continue
        last, size = steps[-1], SIZES[AXIS[form.face]]
        message = f"Nothing measures whether the {form.face} face is parallel within {fine(form.within, view.job.units)}: measure the {size} at both ends"
        yield remark(
            view, "parallelism-is-measured", message, last.key, set_up=last.set_up.key, line=0,
            by_hand="write the size with at both ends under Measure of the step, or put in a step at the bench that measures",
        )  # fmt: skip


def _measures(asked: AsAsked, step: Step, face_form: FaceForm) -> bool:
    tolerances = getattr(step.fields, "tolerances", None)
    if (tolerances is not None and tolerances.parallel is not None) or measures_all(step):
        return True
    size, left = size_of(step), asked.size(AXIS[face_form.face])
    if size is None or left is None or abs(size.nominal - left.left) > max(size.high - size.low, 1e-4):
        return False
    if measures(step):
        return True
    # A bar that is held on its round lies on a narrow flat, or on two lines: there one reading within limits
    # that are wider leaves room for a taper. Where it is not said where, nobody knows that it is one.
    alone = bool(size.where) and not size.spread and size.high - size.low > face_form.within + 1e-9
    alone = alone and step.lie.is_curved(face_form.face)
    return not alone and (bool(named(step)) or how(step.operation, MEASURED, TO_SIZE))
