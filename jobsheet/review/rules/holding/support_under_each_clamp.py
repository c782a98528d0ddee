"""Asks whether the work is supported where a strap presses on it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, on_straps
from jobsheet.review.rule import View, remark, rule


@rule("support-under-each-clamp", "Support under each clamp", "scrap")
def support_under_each_clamp(view: View) -> Iterator[Remark]:
    """Straps press on thin work that lies on parallels or packing, and it is not said that something solid is under each of them.

    Thin is what is thinner than a tenth of its span, by the workshop's number.

    Because: Over a gap the clamp bends the work or breaks it.
    Not so: four straps, sheet on blocks at the corners
    So: four straps, sheet on a backing plate; or a block under each strap
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 117
    """
    for set_up in view.job.set_ups:
        if not on_straps(set_up) or not set_up.operations:
            continue
        supported, rests = fact(set_up, "supported"), fact(set_up, "rests_on")
        if supported or (supported is None and rests not in ("parallels", "packing")):
            continue
        along, across, high = view.reckoned.settings[set_up.operations[0].key].extent
        if high >= view.reckoned.shop.thin_plate * max(along, across) and supported is None:
            continue
        yield remark(
            view, "support-under-each-clamp", "Support the work under each clamp: over a gap it bends", set_up.operations[0].key,
            set_up=set_up.key, fix=Fix("One under each clamp", set_field(f"holding:{set_up.key}", "supported", "yes")),
        )  # fmt: skip
