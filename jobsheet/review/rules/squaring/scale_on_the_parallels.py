"""Asks whether a close size is reckoned from scale."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import AXIS
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.model.stock import BLACK
from jobsheet.review.plan.as_asked import as_asked, as_typed
from jobsheet.review.rule import View, remark, rule


@rule("scale-on-the-parallels", "Close sizes count from a true face", "scrap")
def scale_on_the_parallels(view: View) -> Iterator[Remark]:
    """The face that the work lies on is black and stays so, and a size counts from it whose limits are closer than the scale is thick.

    Quiet where that face is cut at any time.

    Because: The size is that over the highest scale: beside it, and when the scale is gone, the part is out.
    Not so: 11.5 ±0.05 over a bottom that is black and stays as bought
    So: face the bottom too; or lay the good side down and face the black one away
    From: common practice; how thick scale is, is the workshop's number
    """
    asked = as_asked(view)
    shape = asked.part.shape if asked is not None else None
    if asked is None or shape is None:
        return
    thick = view.reckoned.shop.scale_skin
    for axis, size in enumerate(shape.sizes):
        size_found = asked.size(axis)
        if size is None or size_found is None or not size_found.steps or not 0 < size.high - size.low < thick:
            continue
        for step in asked.steps(size_found.steps):
            down = step.lie.down
            if AXIS[down] != axis or asked.face(down).steps or view.job.stock.surface(down) != BLACK:
                continue
            if not asked.face(OPPOSITE[down]).steps:
                continue
            yield remark(
                view, "scale-on-the-parallels",
                f"The {down} lies on the parallels as it came, black, and {as_typed(size)} counts from it",
                step.key, set_up=step.set_up.key, line=0,
                by_hand="put in the step that cuts that face, or turn the work over and face it away",
            )  # fmt: skip
            break
