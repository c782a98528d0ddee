"""Asks whether every face is cut that the drawing does not leave as bought."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import SIZES
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import AsAsked, as_asked, cut_as_bought, left_raw
from jobsheet.review.plan.cut_again import cut_again
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("face-left-raw", "No face left raw", "scrap")
def face_left_raw(view: View) -> Iterator[Remark]:
    """The drawing gives a size to a face that comes black, cast or sawn, and no step cuts it.

    Quiet for faces that the line of the sizes leaves as bought, for bright, pickled and finished ones, and where the
    stock is at most 3 mm longer, the other end is cut to the size, and nothing else is asked of this one.

    Because: A raw face is neither flat nor to size, and nothing may be measured from it.
    Not so: 80 long from 84 sawn, 4 off the right end
    So: 2 off the left end, 2 off the right; or left as bought
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    instead = {OPPOSITE[face_found.face] for face_found in cut_as_bought(asked)}
    instead |= {OPPOSITE[face] for face, *_ in cut_again(asked.plan, view.reckoned.shop.most_finish)}
    raw = [
        face_found.face for face_found in left_raw(asked) if face_found.face not in instead
    ]  # those are said there
    if not raw:
        return
    if len(raw) == 1:
        message = f"The {raw[0]} face is never cut and stays {view.job.stock.surface(raw[0])}{_size(asked, raw[0], view.job.units)}"
    else:
        message = f"{len(raw)} faces are never cut and stay as they come: {', '.join(f'{face} {view.job.stock.surface(face)}' for face in raw)}"
    yield remark(
        view, "face-left-raw", message, line=0,
        by_hand="put in the step that cuts it, or write in the line of the sizes that it stays as bought",
    )  # fmt: skip


def _size(asked: AsAsked, face: str, units: str) -> str:
    """What that makes of the size across it, and which step cuts the other face."""
    axis = AXIS[face]
    other = asked.steps(asked.face(OPPOSITE[face]).steps)
    numbers = ", ".join(str(step.number) for step in other)
    cut = f"; the {OPPOSITE[face]} face is cut in {numbers}" if other else ""
    out = asked.out(axis)
    if not out:
        return cut
    which = "too long" if out > 0 else "too short"
    return f", and the {SIZES[axis]} comes out {fine(abs(out), units)} {which}{cut}"
