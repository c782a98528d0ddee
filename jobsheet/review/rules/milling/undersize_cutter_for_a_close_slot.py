"""Asks whether a close slot is cut with a cutter of its own width."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Job, SetUp
from jobsheet.model.quantity import Size
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import Mend, added_after, in_turn, set_field
from jobsheet.review.mending.line_texts import with_diameter
from jobsheet.review.plan.cuts import outline
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.full_width import held_by_the_cutter, own_width
from jobsheet.review.plan.gauges import measures
from jobsheet.review.plan.lengths import length, place_text
from jobsheet.review.plan.rough_and_finish import length_text
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.table import INCH

#: Cutters are offered by these steps [m] (common practice).
HALF_MM, THIRTY_SECOND = 0.5e-3, INCH / 32


@rule("undersize-cutter-for-a-close-slot", "A smaller cutter for a close slot", "scrap")
def undersize_cutter_for_a_close_slot(view: View) -> Iterator[Remark]:
    """The width of a slot has close limits, the cutter is within them, and no passes open its sides.

    Quiet where the cutter is smaller than the slot and its sides are opened, and for a keyway cut with a slot drill where its limits
    are no closer than H9: so keyways are cut, after a trial cut.

    Because: A full-width cutter is pushed aside: wide, tapered or off line.
    Not so: slot 10 +0.05 in one pass with the 10 mm cutter
    So: the middle with 9 mm, then each side
    From: common practice
    """
    most = view.reckoned.shop.close_limits
    for set_up, steps in plan_of(view).groups():
        for index, step in enumerate(steps):
            if step.roles.mills != "groove" or not step.fields.cutter.diameter:
                continue
            size = _width(step, steps[index + 1 :])
            if size is None or size.high - size.low >= most - 1e-9:
                continue
            if not own_width(step, size) or held_by_the_cutter(step, size):
                continue
            if any(_opens(step) for step in steps[index + 1 :]):
                continue
            message = f"Smaller cutter: middle first, then each side; {size.said} is close for a cutter of the slot's own width"
            fix = _fix(step, size, set_up, view.job)
            yield remark(
                view, "undersize-cutter-for-a-close-slot", message, step.key, fix=fix, set_up=set_up.key
            )


def _width(step: Step, behind: tuple[Step, ...]) -> Size | None:
    """The slot's width with its limits: entered with it, or measured behind it in the same set-up."""
    diameter = step.fields.cutter.diameter
    sizes = [step.fields.measure]
    sizes += [getattr(other.fields, "measure", None) for other in behind if measures(other)]
    found: Size | None = next(
        (
            size
            for size in sizes
            if size is not None and size.high > size.low and abs(size.nominal - diameter) < 0.2e-3
        ),
        None,
    )
    return found


def _opens(step: Step) -> bool:
    return step.roles.mills == "wall" and step.fields.path is not None


def _fix(step: Step, size: Size, set_up: SetUp, job: Job) -> Fix | None:
    """A cutter a tenth smaller and a pass along each side, the wall on the left of the way the cutter goes."""
    ends = outline(step)
    zero = set_up.zero
    turned = {("right", "away"): 1, ("left", "towards"): -1}.get((zero.x_counts, zero.y_counts))
    if not hasattr(step.fields, "ends") or len(ends) != 2 or turned is None:
        return None
    by = HALF_MM if job.units == "mm" else THIRTY_SECOND
    smaller = round(size.nominal * 0.9 / by) * by
    text = with_diameter(step.fields.cutter, length(smaller, job.units))
    out = (size.nominal - smaller) / 2
    (x1, y1), (x2, y2) = sorted(ends)
    if not text or out <= 0 or min(abs(x1 - x2), abs(y1 - y2)) > 1e-9:
        return None
    along_x = abs(x1 - x2) > abs(y1 - y2)
    depth = step.fields.depth.value if step.fields.depth.value is not None else step.lie.size[2]
    mends: list[Mend] = []
    for name, sign in (("front", -1), ("rear", 1)) if along_x else (("left", -1), ("right", 1)):
        shift = sign * turned * out
        one, other = ((x1, y1 + shift), (x2, y2 + shift)) if along_x else ((x1 + shift, y1), (x2 + shift, y2))
        # As it lies the front wall is cut to the left, the left wall away from the operator.
        forward = (shift > 0) if along_x else (shift < 0)
        first, last = (one, other) if forward else (other, one)
        texts = {
            "cutter": text, "way": "conventional", "side": name, "width": length_text(out, job.units),
            "depth": length_text(depth, job.units), "path": f"{place_text(first, job.units)}; {place_text(last, job.units)}",
        }  # fmt: skip
        for entry in ("feed_per_tooth", "feed", "spindle"):
            value = getattr(step.fields, entry)
            if value is not None:
                texts[entry] = value.text
        mends.append(added_after(step.key, written.SIDE, texts))
    return Fix(
        f"The middle with {length(smaller, job.units)}, then each side",
        in_turn(*reversed(mends), set_field(step.key, "cutter", text)),
    )
