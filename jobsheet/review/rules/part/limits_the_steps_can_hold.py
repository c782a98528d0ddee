"""Asks whether what makes a feature can hold the limits that the drawing gives it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import AsAsked, as_asked, called
from jobsheet.review.plan.asked_limits import Limited, limited, names
from jobsheet.review.plan.faces import Step, width_of_limits
from jobsheet.review.plan.full_width import held_by_the_cutter, own_width
from jobsheet.review.plan.gauges import measures
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("limits-the-steps-can-hold", "Limits that the steps can hold", "scrap")
def limits_the_steps_can_hold(view: View) -> Iterator[Remark]:
    """A hole with close limits is left by a drill, a close slot by a cutter of its own width, or a close place is only drilled.

    Quiet where the step names the limits itself: then it is said of the step.

    Because: Drills cut oversize and out of round, a full-width cutter is pushed aside, and a reamer keeps to the hole it finds.
    Not so: 16 H7 on the drawing, drill 16
    So: drill 15.7, ream 16 H7
    From: MSC Industrial Supply, technical article 5976; common practice. What is close is the workshop's number
    """
    asked = as_asked(view)
    if asked is None:
        return
    close = view.reckoned.shop.close_limits
    wrong = {
        hole_found.line for hole_found in asked.found.holes if hole_found.state != "made"
    }  # said of what is wrong there
    for one in limited(asked):
        if one.line in wrong or one.line == 0 or one.width >= close * (1 - 1e-9):
            continue
        step = _drilled(one) or _full_width(one)
        if step is None or (width_of_limits(step) or close) < close or _measured_behind(asked, step, one):
            continue
        how = (
            "drill under size, then ream or bore"
            if step.roles.hole
            else "a smaller cutter: the middle first, then each side"
        )
        yield remark(
            view, "limits-the-steps-can-hold", f"{one.called}: step {step.number} does not hold that; {how}", step.key,
            set_up=step.set_up.key, line=one.line, by_hand="put in the step that finishes it, or open the limits of the line",
        )  # fmt: skip
    yield from _places(view, asked)


def _measured_behind(asked: AsAsked, step: Step, one: Limited) -> bool:
    """Whether a step of its set-up measures the width of a slot: then it is said of the slot (`undersize-cutter-for-a-close-slot`)."""
    return step.roles.mills == "groove" and any(
        names(other, one) and measures(other)
        for other in asked.plan.of(step.set_up.key)
        if other.index > step.index
    )


def _drilled(one: Limited) -> Step | None:
    """The drill that leaves the hole."""
    sizing = [step for step in one.steps if step.roles.hole in ("drill", "bore", "ream", "plunge")]
    last = max(sizing, key=lambda step: (step.fields.cutter.diameter or 0.0, step.index), default=None)
    if last is None or last.roles.hole != "drill" or last.fields.cutter.kind != "drill":
        return None
    return None if any(step.roles.hole in ("bore", "ream") for step in sizing) else last


def _full_width(one: Limited) -> Step | None:
    """The cutter of the slot's own width, where nothing opens its sides."""
    if any(step.roles.mills in ("wall", "recess") for step in one.steps):
        return None
    return next(
        (
            step
            for step in one.steps
            if own_width(step, one.size) and not held_by_the_cutter(step, one.size)
        ),
        None,
    )  # fmt: skip


def _places(view: View, asked: AsAsked) -> Iterator[Remark]:
    """Holes whose place is closer than spot and drill hold it, and that nothing bores."""
    limit = view.reckoned.shop.close_place
    for line, feature in asked.part.features:
        if feature.kind != "hole" or feature.within is None or feature.within >= limit * (1 - 1e-9):
            continue
        keys = {
            key for hole_found in asked.found.holes if hole_found.line == line for key in hole_found.steps
        }
        steps = [step for step in asked.steps(tuple(keys)) if step.roles.hole]
        if not steps or any(
            step.roles.hole == "bore" or getattr(step.fields, "within", None) is not None for step in steps
        ):
            continue
        last = steps[-1]
        within = fine(feature.within, view.job.units)
        yield remark(
            view, "limits-the-steps-can-hold", f"{called(line, feature)}: ±{within} is too close for drilling: spot, drill, bore",
            last.key, set_up=last.set_up.key, line=line, by_hand="put in a boring step, or open the limits of the place",
        )  # fmt: skip
