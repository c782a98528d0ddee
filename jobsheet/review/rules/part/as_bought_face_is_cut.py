"""Asks whether a face that the drawing leaves as bought is left alone."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked, cut_as_bought
from jobsheet.review.rule import View, remark, rule


@rule("as-bought-face-is-cut", "Faces left as bought", "scrap")
def as_bought_face_is_cut(view: View) -> Iterator[Remark]:
    """A step cuts a face that the drawing, or the stock, leaves as it is bought.

    Because: What was to be left, such as a datum, is gone, and the face that should have been cut is still there.
    Not so: bottom as bought, and the bottom is faced
    So: turn the work over and face the top
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    for face_found in cut_as_bought(asked):
        steps = asked.steps(face_found.steps)
        other = OPPOSITE[face_found.face]
        instead = (
            "" if asked.face(other).steps or asked.as_bought(other) else f"; the {other} face is not cut"
        )
        message = (
            f"{asked.plan.named(face_found.face).capitalize()} is to stay as bought, and is cut here{instead}"
        )
        yield remark(
            view, "as-bought-face-is-cut", message, *face_found.steps, set_up=steps[0].set_up.key,
            by_hand=f"turn the work round so that the {other} face is up, or take as bought out of the line of the sizes",
        )  # fmt: skip
