"""What crowds on the picture of a set-up from above, drawn larger on its page."""

from __future__ import annotations

from jobsheet.model.not_checked import alone
from jobsheet.report.blocks import Columns, Picture, Words
from jobsheet.report.pictured.closer import MOST, Closer, closer_views, crowds_on
from jobsheet.report.pictured.near_walls import outlined
from jobsheet.report.plan import Course, Plan, letters_of, on_sheet
from jobsheet.report.zero_view import LETTERS, crowded
from jobsheet.stages.course import course_of


def closer_on(plan: Plan, course: Course, width: float, high: float) -> tuple[Closer, ...]:
    """The places that a picture from above of that size [points] is too small for; none where it shows all."""
    return plan.once(_closer_on, course, width, high)[0]


def _closer_on(plan: Plan, course: Course, width: float, high: float) -> tuple[tuple[Closer, ...], int]:
    """Them, and how many more there are."""
    return alone(lambda: _found(plan, course, width, high), lambda _: ((), 0))


def _found(plan: Plan, course: Course, width: float, high: float) -> tuple[tuple[Closer, ...], int]:
    """A detail beside the work is enough for points; where walls have their picture, these stand in it too."""
    set_up, lie, units = course.set_up, course.lie, plan.job.units
    steps = course_of(plan.job, plan.reckoned.settings).cuts
    cuts = outlined(lie, tuple(cut for cut in steps if cut.set_up == set_up.key))
    for beside in (True, False):
        there = crowded(set_up, lie, on_sheet(course), letters_of(plan), width, high, beside=beside)
        crowds = crowds_on(cuts, there.crowds, there.scale, units)
        if not any(crowd.walls for crowd in crowds):
            break
    return closer_views(crowds, cuts, there.points, lie.size[:2], there.scale, units), len(crowds[MOST:])


def larger_pictures(plan: Plan, course: Course, width: float, high: float) -> tuple[object, ...]:
    """The same as blocks of the page: one picture, or two side by side, with what they do not show in words."""
    views, more = plan.once(_closer_on, course, width, high)
    pictures = tuple(
        (
            Picture(
                f"Closer, {letter}",
                view.drawing,
                f"from above, {view.times:.2g} × larger; walls in {'inches' if plan.job.units == 'in' else 'mm'}",
            ),
        )
        for view, letter in zip(views, LETTERS, strict=False)
    )
    if not pictures:
        return ()
    block = Columns(parts=pictures, shares=(0.5, 0.5)) if len(pictures) > 1 else pictures[0][0]
    left = f"{more} more place{'s' if more > 1 else ''} stand{'' if more > 1 else 's'} as close and "
    return (
        (block, Words(f"{left}{'are' if more > 1 else 'is'} not drawn larger.", "note")) if more else (block,)
    )
