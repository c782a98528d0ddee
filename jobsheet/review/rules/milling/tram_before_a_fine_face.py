"""Asks whether the head was checked before a fine wide face."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet import clock
from jobsheet.machine.card_words import day, trammed_on
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.mending.tram_added import tram_texts
from jobsheet.review.plan.faces import plan_of, trams
from jobsheet.review.rule import View, remark, rule

#: A face as wide as this shows a small tilt, and a finish as fine as this asks for it [m]
#: (row of this rule; common practice).
WIDE, FINE = 50e-3, 1.6e-6


@rule("tram-before-a-fine-face", "Tram before a fine face", "rework")
def tram_before_a_fine_face(view: View) -> Iterator[Remark]:
    """Flatness or a fine finish is asked of a wide face, and the last tram check on the card is old.

    The age counts to the day the job was planned. Quiet where the card has no date, and where a tram check is a step of this job.

    Because: A wide cutter turns a small tilt into a hollow.
    Not so: flat 0.02 on a face 80 wide, trammed half a year ago
    So: the tram checked first
    From: common practice. The days are the workshop's number
    """
    plan = plan_of(view)
    for step in plan.steps:
        asked = getattr(step.fields, "tolerances", None)
        if step.roles.mills != "flat" or asked is None:
            continue
        if asked.flat is None and (asked.finish is None or asked.finish > FINE + 1e-12):
            continue
        if min(step.lie.size[:2]) <= WIDE + 1e-9 or any(trams(other) for other in plan.steps[: step.index]):
            continue
        checked, planned = trammed_on(step.setting.machine), day(view.job.planned_on)
        if checked is None:
            continue
        days = ((planned or clock.now().date()) - checked).days
        if days <= view.reckoned.shop.tram_days:
            continue
        message = f"Check the tram before this pass: the card says {checked.isoformat()}, {days} days before"
        first = plan.of(step.set_up.key)[0]
        texts = tram_texts(view.job.units, "10 min")
        fix = Fix("Add a tram check", added_before(first.key, written.TRAM, texts))
        yield remark(view, "tram-before-a-fine-face", message, step.key, fix=fix, set_up=step.set_up.key)
