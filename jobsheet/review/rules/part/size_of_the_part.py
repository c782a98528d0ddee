"""Asks whether the steps leave the sizes of the drawing."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.finished import SIZES
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import taken_out
from jobsheet.review.plan.as_asked import AsAsked, as_asked, as_typed, at_face, at_the_edge, sizes_out
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.against_part import SizeFound


@rule("size-of-the-part", "The steps leave the size", "scrap")
def size_of_the_part(view: View) -> Iterator[Remark]:
    """After the last step the length, the width or the height is not what the drawing asks.

    Also where it comes out at the very edge of its limits, and not at the nominal. Quiet where a face that is never cut, or the passes of a step that names the size, say it already.

    Because: What is left too long is found at the last step, and what is cut below size is not put on again.
    Not so: 80 long from 90, with 4 off one end
    So: 80 long from 90, with 4 and 6 off
    From: the sizes of the drawing, the stock and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    yield from _at_the_edge(view, asked)
    for axis, size_found in sizes_out(asked):
        steps = asked.steps(size_found.steps)
        twice = _twice(steps, size_found)
        last = steps[-1:]
        yield remark(
            view, "size-of-the-part", _message(asked, axis, size_found, twice, view.job.units), *(step.key for step in twice or last),
            set_up=(twice or last)[0].set_up.key if steps else "", line=0,
            fix=Fix(f"Take out step {twice[0].number}", taken_out(twice[0].key), (twice[0].key,)) if twice else None,
            by_hand="cut as much more or less there, or look at the stock and at the line of the sizes",
        )  # fmt: skip


def _at_the_edge(view: View, asked: AsAsked) -> Iterator[Remark]:
    for axis, size_found in at_the_edge(asked):
        steps = asked.steps(size_found.steps)
        size = asked.part.shape.sizes[axis] if asked.part.shape is not None else None
        wanted = as_typed(size) if size is not None else "its limits"
        message = f"{SIZES[axis].capitalize()} comes out {fine(size_found.left, view.job.units)}, at the edge of {wanted}: aim at the size"
        yield remark(
            view, "size-of-the-part", message, steps[-1].key, set_up=steps[-1].set_up.key, line=0,
            by_hand="take as much more or less off that it comes out as on the drawing",
        )  # fmt: skip


def _message(asked: AsAsked, axis: int, size_found: SizeFound, twice: tuple[Step, ...], units: str) -> str:
    size = asked.part.shape.sizes[axis] if asked.part.shape is not None else None
    wanted = f"{as_typed(size)} is asked" if size is not None else "another is asked"
    name, left, off = SIZES[axis].capitalize(), fine(size_found.left, units), fine(abs(size_found.out), units)
    if not size_found.steps:
        small = "too much, and nothing cuts it" if size_found.out > 0 else "too little from the start"
        return f"{name} is {left} as bought, {wanted}: {off} {small} ({at_face(axis)})"
    if size_found.out > 0:
        return f"{name} comes out {left}, {wanted}: the steps leave {off} too much"
    if twice:
        return f"{name} comes out {left}, {wanted}: steps {twice[1].number} and {twice[0].number} take the same off twice"
    return f"{name} comes out {left}, {wanted}: the steps take {off} too much"


def _twice(steps: tuple[Step, ...], size_found: SizeFound) -> tuple[Step, ...]:
    """The last of two equal steps and the first, where the size is below."""
    if size_found.out > 0:
        return ()
    for late in reversed(steps):
        for early in steps:
            if early is not late and early.makes == late.makes and early.cut.shapes == late.cut.shapes:
                return late, early
    return ()
