"""Asks whether the bolt of a strap stands nearer to the work than to the heel."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, on_straps, size
from jobsheet.review.rule import View, remark, rule


@rule("bolt-nearer-the-work", "Bolt nearer the work", "rework")
def bolt_nearer_the_work(view: View) -> Iterator[Remark]:
    """The bolt of a strap stands further from its nose than from its heel.

    Because: The work gets the smaller share of the bolt, and the packing the larger.
    Not so: 40 from heel to bolt, 80 from bolt to nose
    So: 80 from heel to bolt, 40 from bolt to nose
    From: the lever of the strap: F a / (a + b)
    """
    for set_up in view.job.set_ups:
        heel, nose = size(set_up, "heel_to_bolt"), size(set_up, "bolt_to_nose")
        if (
            not on_straps(set_up)
            or heel is None
            or nose is None
            or nose <= heel + 1e-9
            or not set_up.operations
        ):
            continue
        message = (
            f"The work gets {heel / (heel + nose) * 100:.0f} % of each bolt: {fact(set_up, 'bolt_to_nose').text} to the nose and"
            f" {fact(set_up, 'heel_to_bolt').text} to the heel; set the bolt near the work"
        )
        fix = Fix(
            "Half each", set_field(f"holding:{set_up.key}", "bolt_to_nose", fact(set_up, "heel_to_bolt").text)
        )
        yield remark(
            view, "bolt-nearer-the-work", message, set_up.operations[0].key, fix=fix, set_up=set_up.key
        )
