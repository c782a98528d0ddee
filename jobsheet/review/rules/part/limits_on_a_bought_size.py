"""Asks whether a size with limits is made by a step, or at least measured on the stock."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.finished.settled import ENDS
from jobsheet.model.finished import SIZES
from jobsheet.model.quantity import Size
from jobsheet.model.remark import Remark
from jobsheet.model.stock import BRIGHT, FINISHED
from jobsheet.review.plan.as_asked import AsAsked, as_asked, as_typed, left_raw
from jobsheet.review.plan.asked_limits import SAME, size_of
from jobsheet.review.plan.gauges import measures
from jobsheet.review.rule import View, remark, rule

#: Bright drawn bar is sold to this (EN 10278, from memory: h10 or h11).
BRIGHT_BAR = "h11"


@rule("limits-on-a-bought-size", "Limits on a size that is bought", "scrap")
def limits_on_a_bought_size(view: View) -> Iterator[Remark]:
    """The drawing gives limits to a size that no step cuts, and nobody measures what the stock has.

    Quiet where the line says as bought, where both faces come finished, where the limits are those of bright drawn bar (h11), where a
    step measures the size, and for faces that come black, cast or sawn, which have a remark of their own.

    Because: Rolled plate and bar lie anywhere within what they are sold to, often outside what a drawing asks.
    Not so: 80 x 50 x 20 ±0.05 from rolled plate 20, and only its sides are milled
    So: the same from plate 25, both faces milled; or 20 as bought
    From: common practice; EN 10278, from memory
    """
    asked = as_asked(view)
    shape = asked.part.shape if asked is not None else None
    if asked is None or shape is None:
        return
    raw = {face_found.face for face_found in left_raw(asked)}
    for axis, size in enumerate(shape.sizes):
        size_found, faces = asked.size(axis), ENDS[axis]
        if size is None or size_found is None or size.high - size.low < SAME or size_found.out:
            continue
        if any(asked.face(face).steps or asked.as_bought(face) or face in raw for face in faces):
            continue
        if _as_sold(asked, size, faces) or _measured(asked, size):
            continue
        yield remark(
            view, "limits-on-a-bought-size",
            f"The {SIZES[axis]} {as_typed(size)} has limits, and no step cuts the {faces[0]} or the {faces[1]}: it stays as it was bought",
            line=0, by_hand="put in the step that cuts it or one that measures the stock, or write as bought behind the size",
        )  # fmt: skip


def _as_sold(asked: AsAsked, size: Size, faces: tuple[str, str]) -> bool:
    """Whether the stock is sold as closely: both faces finished, or bright to h11."""
    surfaces = {asked.plan.job.stock.surface(face) for face in faces}
    if surfaces == {FINISHED}:
        return True
    sold = read_size(f"{size.nominal * 1e3:.6g} mm {BRIGHT_BAR}", "mm")
    return surfaces <= {FINISHED, BRIGHT} and size.low <= sold.low + SAME and size.high >= sold.high - SAME


def _measured(asked: AsAsked, size: Size) -> bool:
    """Whether a step names the size, and how it is measured or that it measures."""
    return any(
        (one := size_of(step)) is not None and abs(one.nominal - size.nominal) < SAME and measures(step)
        for step in asked.plan.steps
    )
