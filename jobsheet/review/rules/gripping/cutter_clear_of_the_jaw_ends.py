"""Asks whether an end that is cut stands clear of the jaws."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.jaws import Sits, end_cuts, jaw_cuts, sits
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: The jaws should begin so far behind a cut along the end [m] (common practice, no source).
CLEAR = 2e-3
_NAMES = ("over_left", "over_right")


@rule("cutter-clear-of-the-jaw-ends", "Clear of the jaws at an end", "hazard")
def cutter_clear_of_the_jaw_ends(view: View) -> Iterator[Remark]:
    """A wall is cut along an end, deeper than the work stands above the jaws, and the end does not hang over them as far as it is cut.

    Where it is not said how far the end hangs over, or how far the work stands above the jaws, that is asked.

    Because: The cutter runs into the hardened jaw: cutter, jaw and work are spoiled, and the work is torn loose.
    Not so: an end milled 40 deep, 3 above the jaws, flush with their end
    So: the same end 8 over the jaws
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = sits(set_up, steps[0])
        if found is None:
            continue
        for step, end, width, deep in end_cuts(found, steps[0], steps):
            told = _told(view, set_up, found, step, end, width, deep)
            if told is not None:
                yield told
                break
        else:
            yield from _asked(view, set_up, found, steps)


def _told(
    view: View, set_up: SetUp, found: Sits, step: Step, end: int, width: float, deep: float
) -> Remark | None:
    side, over, units = ("left", "right")[end], found.over[end], view.job.units
    if over is not None and over >= width - 1e-9:
        return None
    if found.above is not None and deep <= found.above + 1e-9:
        return None
    if over is None:
        message = (
            f"How far does it stand over the jaws on the {side}? The cut there is {length(deep, units)} deep"
            + (f", and {length(found.above, units)} stands above them" if found.above is not None else "")
        )
        return _remark(view, message, step, set_up)
    if found.above is None:
        message = f"How far does it stand above the jaws? The cut at the {side} is {length(deep, units)} deep, and the end hangs {length(over, units)} over"
        return _remark(view, message, step, set_up)
    message = (
        f"The cutter meets the jaws on the {side}: {length(deep, units)} deep and {length(width, units)} wide, with {length(found.above, units)}"
        f" above the jaws and {length(over, units)} over their end"
    )
    text = typed(width + CLEAR, units, 1)
    fix = Fix(f"{text} over the jaws", set_field(f"holding:{set_up.key}", _NAMES[end], text))
    return _remark(view, message, step, set_up, fix)


def _asked(view: View, set_up: SetUp, found: Sits, steps: tuple[Step, ...]) -> Iterator[Remark]:
    """The one question where a wall is cut along a jaw, and nobody knows how far the work stands above it."""
    step, side, deep = next(jaw_cuts(found, steps[0], steps), (None, "", 0.0))
    if step is not None and found.above is None:
        message = f"How far does it stand above the jaws? The cut at the {side} is {length(deep, view.job.units)} deep, and a jaw is there"
        yield _remark(view, message, step, set_up)


def _remark(view: View, message: str, step: Step, set_up: SetUp, fix: Fix | None = None) -> Remark:
    return remark(
        view, "cutter-clear-of-the-jaw-ends", message, step.key, set_up=set_up.key, fix=fix,
        by_hand="let the end hang over the jaws as far as it is cut, and enter how far",
    )  # fmt: skip
