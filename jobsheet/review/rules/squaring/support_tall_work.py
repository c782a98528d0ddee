"""Asks whether tall work is supported."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, supported
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("support-tall-work", "Support tall work", "scrap")
def support_tall_work(view: View) -> Iterator[Remark]:
    """The work stands more than three times its smaller width above the jaw or clamp, and no support is entered.

    Quiet where a support, an angle plate or a jack is entered, and where the height above the jaws is not.

    Because: Tall work tips and rings.
    Not so: a bar 20 wide, 70 above the jaws
    So: the same against an angle plate
    From: Goodheart-Willcox, Modern Metalworking, 2018, page 484; common practice. The share is the workshop's
    number
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        above = fact(set_up, "above_jaws")
        if above is None or not any(step.cuts for step in steps):
            continue
        width = min(steps[0].lie.size[:2])
        if above.value <= view.reckoned.shop.tall_work * width + 1e-9:
            continue
        if supported(set_up):
            continue
        message = f"Support this tall work: it stands {above.text} above the jaws and is {length(width, view.job.units)} at its narrower width"
        fix = Fix(
            "Enter an angle plate as support",
            set_field(f"holding:{set_up.key}", "supported_by", "angle plate"),
        )
        yield remark(view, "support-tall-work", message, steps[0].key, fix=fix, set_up=set_up.key)
