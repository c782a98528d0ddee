"""Asks whether work stood up still fits under the spindle."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("lay-tall-work-flat", "Lay tall work flat", "rework", needs=Needs.FIGURES)
def lay_tall_work_flat(view: View) -> Iterator[Remark]:
    """The work is stood up, and between it and the spindle there is less room than cutter and holder need.

    Quiet where the headroom is not known.

    Because: Lower is stiffer, and the side of the cutter makes an end as well.
    Not so: a bar 250 long stood on end under a spindle that rises 300 over the table
    So: the bar lying flat, its end over the jaws
    From: Goodheart-Willcox, Modern Metalworking, 2018, page 484
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        along, across, high = steps[0].lie.size
        if high <= max(along, across):
            continue
        for step in steps:
            limit = next(
                (
                    limit
                    for limit in step.outcome.limits
                    if limit.name == "headroom" and limit.verdict == "beyond"
                ),
                None,
            )
            if limit is not None:
                message = f"Too tall to stand ({limit.shown}): lie it flat and cut the end with the side of the cutter"
                yield remark(view, "lay-tall-work-flat", message, step.key, set_up=set_up.key)
                break
