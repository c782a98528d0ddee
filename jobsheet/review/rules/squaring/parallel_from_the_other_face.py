"""Asks whether a face that is to be parallel is cut from the one opposite."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Plan, Step, in_vice, plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("parallel-from-the-other-face", "Parallel from the face opposite", "scrap")
def parallel_from_the_other_face(view: View) -> Iterator[Remark]:
    """Two opposite faces are to be parallel, and where the second is cut nothing true sets the work by the first.

    With the second face up, the first lies on loose packing; with the second cut by the side of the cutter, the first was cut so too,
    by a raw face at the fixed jaw. Quiet where both are cut in one clamping, where nothing is said of what is below, and for work that
    stands upright: it goes by its sides in the jaws.

    Because: Packing is as high as it happens to be: what lies on it leans, and the part tapers.
    Not so: top parallel to bottom within 0.05, cut with the bottom on packing
    So: the bottom on parallels, tapped down until they are tight
    From: common practice
    """
    plan = plan_of(view)
    done: set[frozenset[str]] = set()
    for face, within in _asked(view, plan):
        pair = frozenset((face, OPPOSITE[face]))
        if pair in done:
            continue
        done.add(pair)
        last = [plan.steps[plan.made[one][-1]] for one in sorted(pair) if plan.made.get(one)]
        if not last or len({step.set_up.key for step in last}) < len(last):
            continue
        first, second = min(last, key=lambda step: step.index), max(last, key=lambda step: step.index)
        cut = next(one for one in pair if one in second.makes)
        close = f"the {cut} is to be parallel to the {OPPOSITE[cut]} within {fine(within, view.job.units)}"
        if second.lie.up == cut:
            if fact(second.set_up, "rests_on") == "packing" and not _stands(second):
                yield remark(
                    view, "parallel-from-the-other-face",
                    f"The {OPPOSITE[cut]} lies on packing here, and {close}: lay it on parallels, tap it down",
                    second.key, set_up=second.set_up.key,
                    fix=Fix("Parallels under it", set_field(f"holding:{second.set_up.key}", "rests_on", "parallels")),
                )  # fmt: skip
        elif first is not second and _by_a_raw_face(plan, first) and second.set_up.fixed_jaw not in pair:
            yield remark(
                view, "parallel-from-the-other-face",
                f"The {OPPOSITE[cut]} is square to a raw face, {plan.named(first.set_up.fixed_jaw)}, and {close}:"
                " true that face first, or cut both ends from one side at the fixed jaw",
                first.key, set_up=first.set_up.key,
                by_hand="put in the step that cuts the face at the fixed jaw before, or turn the work so that a true one stands there",
            )  # fmt: skip


def _asked(view: View, plan: Plan) -> Iterator[tuple[str, float]]:
    """Each face that is to be parallel to the one opposite, and how close [m]: by the finished part, by the step that cuts it."""
    shape = finished_part(view.job).shape if view.job.finished else None
    for form in shape.forms if shape is not None else ():
        if form.form == "parallel" and OPPOSITE[form.face] in form.to:
            yield form.face, form.within
    for step in plan.steps:
        tolerances = getattr(step.fields, "tolerances", None)
        if tolerances is not None and tolerances.parallel is not None:
            for face in step.makes:
                yield face, tolerances.parallel


def _stands(step: Step) -> bool:
    """Whether the work stands upright: higher than its foot is wide."""
    return step.lie.size[2] > min(step.lie.size[:2])


def _by_a_raw_face(plan: Plan, step: Step) -> bool:
    """Whether a side was cut square to a face at the fixed jaw that nothing has trued."""
    return (
        step.lie.up not in step.makes and in_vice(step.set_up, step.lie) and plan.untrue(step.set_up.fixed_jaw, step.index)
    )  # fmt: skip
