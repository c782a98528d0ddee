"""Whether anything of a set-up counts from its zero: only then it is drawn, said and explained."""

from __future__ import annotations

from jobsheet.operations.registry import roles
from jobsheet.report.plan import Course, Plan
from jobsheet.stages.course import course_of


def zero_there(plan: Plan, course: Course) -> bool:
    """True where the zero is named or found, or a step has a place that counts from it;
    a face or a touched side has none.
    """
    set_up = course.set_up
    if set_up.zero.named or set_up.zero.found or course.points:
        return True
    if any(
        "find zero" in roles(operation).does or roles(operation).beside == "find"
        for operation in set_up.operations
    ):
        return True
    cuts = course_of(plan.job, plan.reckoned.settings).cuts
    return any(cut.set_up == set_up.key and any(sized.corners for sized in cut.shapes) for cut in cuts)
