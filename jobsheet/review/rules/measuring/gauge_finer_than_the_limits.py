"""Asks whether a gauge reads finely enough."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import with_instrument, with_micrometer
from jobsheet.review.plan.asked_limits import closest_unnamed
from jobsheet.review.plan.faces import Step, plan_of, width_of_limits
from jobsheet.review.plan.gauges import named, reads_to
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule

#: A micrometer reads to [m] (as sold; common practice).
MICROMETER = 0.01e-3


@rule("gauge-finer-than-the-limits", "A gauge finer than the limits", "scrap")
def gauge_finer_than_the_limits(view: View) -> Iterator[Remark]:
    """Four times the reading step of the gauge that is named is more than the width of the limits.

    Quiet for gauges that only say yes or no, and where nobody knows how finely it reads. A micrometer counts as reading to 0.01 mm,
    a calliper to 0.02 mm, a rule to 0.5 mm.

    Where a step at the bench measures without saying what, the closest size of the drawing counts that no step names.

    Because: Aim for a gauge several times finer than the limits.
    Not so: 40 ±0.03 with a calliper
    So: 40 ±0.03 with a micrometer
    From: common practice. The share is the workshop's number
    """
    share = view.reckoned.shop.gauge_share
    closest = closest_unnamed(view)
    for step in plan_of(view).steps:
        width = width_of_limits(step) or closest.get(step.key)
        gauge, reads = named(step), reads_to(step)
        if width is None or reads is None or reads <= share * width + 1e-12:
            continue
        message = f"Take a finer gauge: {gauge} reads to {fine(reads, view.job.units)}, the limits are {fine(width, view.job.units)} wide"
        yield remark(
            view,
            "gauge-finer-than-the-limits",
            message,
            step.key,
            fix=_finer(step, share * width),
            set_up=step.set_up.key,
        )


def _finer(step: Step, most: float) -> Fix | None:
    """A micrometer, where that is fine enough."""
    if most + 1e-12 < MICROMETER:
        return None
    size = step.fields.measure
    if size is not None and size.instrument and size.instrument == named(step):
        line = with_instrument(size.text, "micrometer")
        return Fix("Take a micrometer", set_field(step.key, "measure", line)) if line != size.text else None
    if step.roles.beside == "bench":
        return Fix("Take a micrometer", set_field(step.key, "instrument", "micrometer"))
    return Fix(
        "Take a micrometer", set_field(step.key, "tolerances", with_micrometer(step.fields.tolerances.text))
    )
