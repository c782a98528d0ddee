"""Asks whether a cut takes the round edges of the stock away."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import AXIS
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import AsAsked, as_asked
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule
from jobsheet.stock.all_shapes import outline_of

#: The edge of a part may be broken so far where nobody says it [m] (common practice, no source).
BROKEN = 0.5e-3


@rule("edges-of-the-stock-stay-round", "Round edges of the stock", "rework")
def edges_of_the_stock_stay_round(view: View) -> Iterator[Remark]:
    """A face of a bar with round edges is cut, and less comes off than the edges are round: the cut face keeps a part of the radius.

    Quiet where nothing is said of the sizes, where the faces beside it are cut as well, and where no more stays than an edge is broken.

    Because: The edge is found with the finger at assembly; and whoever measures near it measures the radius.
    Not so: flat 40 × 25 with edges R4, 2.5 off the top
    So: flat 40 × 30, 4 or more off the top
    From: common practice
    """
    asked = as_asked(view)
    radius = view.job.stock.corner_radius
    if asked is None or asked.part.shape is None or radius is None or not asked.plan.steps:
        return
    round_ = radius.value
    for face, off in _taken(asked):
        beside = [other for other, taken in _taken(asked) if AXIS[other] != AXIS[face] and taken > 0]
        if not 0 < off < round_ - max(BROKEN, _leg(asked)) or beside:
            continue
        steps = asked.steps(asked.face(face).steps)
        if not steps:
            continue
        units = view.job.units
        yield remark(
            view, "edges-of-the-stock-stay-round",
            f"The long edges of the stock are round by {length(round_, units)}, and {length(off, units)} come off the {face}: its edges stay round",
            steps[-1].key, set_up=steps[-1].set_up.key, line=0, by_hand="take thicker stock, or stock with sharper edges",
        )  # fmt: skip


def _taken(asked: AsAsked) -> Iterator[tuple[str, float]]:
    """How much is taken off each long face [m]."""
    stock, last = asked.plan.steps[0].cut.before.box, asked.plan.steps[-1].cut.after.box
    along = outline_of(asked.plan.job.stock).axis
    for face in OPPOSITE:
        axis = AXIS[face]
        if axis != along:
            end = 1 if face in ("right", "rear", "top") else 0
            yield face, abs(stock[axis][end] - last[axis][end])


def _leg(asked: AsAsked) -> float:
    """The largest chamfer that any line asks [m]."""
    return max(
        (
            feature.size.nominal
            for _, feature in asked.part.features
            if feature.kind == "chamfer" and feature.size is not None
        ),
        default=0.0,
    )
