"""Asks whether every size with limits is measured while it can still be put right."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_after
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.asked_limits import Limited, limited, measured_by, size_of
from jobsheet.review.plan.full_width import given_by_the_cutter
from jobsheet.review.rule import View, remark, rule


@rule("asked-size-is-measured", "Every size with limits is measured", "scrap")
def asked_size_is_measured(view: View) -> Iterator[Remark]:
    """The drawing gives limits to a size, and no step measures it; or one with close limits only after the work was taken out.

    Quiet where the step that makes it names the size, a gauge, or that it is measured in place, and where a step at the bench
    measures without saying what; and where the limits are so wide that the cutter's own width or diameter gives the size. What is left
    standing beside a step may be measured in its place.

    Because: A size that nobody measures is right by luck, and after unclamping it is not cut again in the same hold.
    Not so: 11.5 ±0.1 on the drawing, faced, and nothing measures it
    So: faced, measure 11.5 ±0.1 before unclamping
    From: common practice; what is close is the workshop's number
    """
    asked = as_asked(view)
    if asked is None:
        return
    close = view.reckoned.shop.close_limits
    for one in limited(asked):
        maker = one.steps[-1]
        steps = measured_by(asked, one)
        if not steps and given_by_the_cutter(maker, one.size):
            continue
        if not steps:
            message = f"Nothing measures {one.called}: measure it here, before you unclamp"
        elif one.width < close - 1e-9 and all(
            step.set_up.key != maker.set_up.key and step.index > maker.index for step in steps
        ):
            message = f"{one.called[:1].upper()}{one.called[1:]} is measured only in {steps[0].number}, after the work was taken out"
        else:
            continue
        if size_of(maker) is not None and size_of(maker).high > size_of(maker).low:
            continue  # a size of its own that nothing measures: said of the step
        yield remark(
            view, "asked-size-is-measured", message, maker.key, set_up=maker.set_up.key, line=one.line, fix=_fix(one),
        )  # fmt: skip


def _fix(one: Limited) -> Fix:
    maker = one.steps[-1]
    texts = {"does": "measure", "measure": one.size.text.strip(), "minutes": "2 min"}
    return Fix(f"Measure behind {maker.number}", added_after(maker.key, written.BENCH, texts))
