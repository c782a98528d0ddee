"""Asks whether a face that is to have a finish is cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.reckoning.skin import is_untrue
from jobsheet.review.plan.as_asked import as_asked, left_raw
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import trimmed


@rule("finish-of-a-raw-face", "A finish on a face that is cut", "scrap")
def finish_of_a_raw_face(view: View) -> Iterator[Remark]:
    """The drawing gives a finish to a face that comes black, cast, sawn or sheared, leaves it as bought, and no step cuts it.

    Because: Scale, a cast skin and saw marks are rougher than any finish on a drawing.
    Not so: top Ra 3.2, black bar, the top as bought
    So: the top milled; or bright bar
    From: common practice
    """
    asked = as_asked(view)
    if asked is None or asked.part.shape is None:
        return
    raw = {face_found.face for face_found in left_raw(asked)}  # said there
    stock = view.job.stock
    for face, finish in asked.part.shape.finishes:
        if face in raw or asked.face(face).steps or not is_untrue(stock, face):
            continue
        message = f"The {face} face is to have Ra {trimmed(finish * 1e6, 2)} and is never cut: it stays {stock.surface(face)}"
        yield remark(
            view, "finish-of-a-raw-face", message, line=0,
            by_hand="put in the step that mills it, or take stock with a bright face there",
        )  # fmt: skip
