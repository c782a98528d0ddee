"""Asks whether every hole meets the work, and no layer is thicker than it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.registry import roles
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Work that is no higher is gone already: that is said of the step that took it [m].
_GONE = 1e-9


@rule("inside-the-stock", "Inside the stock", "hazard")
def inside_the_stock(view: View) -> Iterator[Remark]:
    """A place beyond the work's edges, or a cut deeper than the work is high.

    Because: Beyond the work stand the vice, the parallels and the table, and the cutter goes into them.
    Not so: a hole at 90, 12 in a plate 80 long
    So: a hole at 66, 12 in a plate 80 long
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        setting = view.reckoned.settings[operation.key]
        long, wide, high = setting.extent
        for place in getattr(operation.fields, "at", ()) or ():
            x = place.x.value if set_up.zero.x_counts == _away(set_up.zero.x_from) else -place.x.value
            y = place.y.value if set_up.zero.y_counts == _away(set_up.zero.y_from) else -place.y.value
            if not (0 <= x <= long and 0 <= y <= wide):
                message = (
                    f"The place {place.text} lies outside the work, {length(long, view.job.units)} × {length(wide, view.job.units)}"
                    " as it is held: check the place, the zero and the way it counts"
                )
                yield remark(view, "inside-the-stock", message, operation.key, set_up=set_up.key)
                break
        if roles(operation).mills == "flat" and operation.fields.depth.value >= high > _GONE:
            message = f"{operation.fields.depth.text} deep takes all of the work, {length(high, view.job.units)} high here"
            yield remark(view, "inside-the-stock", message, operation.key, set_up=set_up.key)


def _away(side: str) -> str:
    """The direction that leads from a side into the work."""
    return {"left": "right", "right": "left", "front": "away", "rear": "towards"}[side]
