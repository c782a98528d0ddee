"""Asks whether the passes of a face add up to its size."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Slab
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.split_cut import where_it_belongs
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.passes import OFF, passes_out
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import plain, trimmed
from jobsheet.units.table import INCH


@rule("passes-reach-the-size", "The passes reach the size", "scrap")
def passes_reach_the_size(view: View) -> Iterator[Remark]:
    """The passes planned for a face or wall take more or less off than its size asks, by over 0.05 mm.

    Quiet where the last pass is to the measured size, and while the face it is measured from is still raw.

    Because: A sum that is out shows first as a wrong part.
    Not so: stock 45, layers of 4 and 2 off, size 40
    So: stock 45, 1 and 4 off, size 40
    From: common practice
    """
    plan = plan_of(view)
    for step, left, off in passes_out(plan):
        size = step.fields.measure
        shown = _length(left, view.job.units)
        message = f"The passes do not add up to the size: they leave {shown}, and {size.said} is asked"
        later = plan.made_later(step)
        first = any(plan.first_cut(face) is step for face in step.makes)
        yield remark(
            view,
            "passes-reach-the-size",
            message,
            step.key,
            fix=None if later else _fix(step, off, view.job.units, first=first),
            set_up=step.set_up.key,
            by_hand=where_it_belongs(later),
        )


def _fix(step: Step, off: float, units: str, *, first: bool) -> Fix | None:
    """As much more or less in the last step, where something is left for it to do."""
    name = "depth" if isinstance(step.cut.shapes[0].shape, Slab) else "width"
    wanted = getattr(step.fields, name).value + off
    if wanted <= OFF:
        return None
    # A first cut that is made thinner may no longer go under the skin: that only a person can weigh.
    if off < 0 and first and wanted < step.setting.shop.casting_skin:
        return None
    text = _length(wanted, units)
    return Fix(f"Take {text} off in step {step.number}", set_field(step.key, name, text), (step.key,))


def _length(value: float, units: str) -> str:
    if units == "in":
        return f"{plain(value / INCH, 4)} in"
    return f"{trimmed(value * 1e3, 3)} mm"
