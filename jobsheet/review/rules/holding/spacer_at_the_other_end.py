"""Asks whether jaws that hold at one end are held apart at the other."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws, vice_of
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying
from jobsheet.model.machine import Machine
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, size
from jobsheet.review.rule import View, remark, rule


@rule("spacer-at-the-other-end", "Spacer at the other end", "hazard")
def spacer_at_the_other_end(view: View) -> Iterator[Remark]:
    """The work sits at one end of the jaws, or they hold it over less than half their width at one end, and no spacer is at the other.

    Because: The moving jaw twists and grips badly.
    Not so: at the left end of the jaws
    So: at the left end of the jaws, same-size spacer at the other end
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        lie = steps[0].lie
        if not in_jaws(set_up, lie) or fact(set_up, "spacer"):
            continue
        if not _at_one_end(set_up, lie, steps[0].setting.machine):
            continue
        yield remark(
            view, "spacer-at-the-other-end", "The work lies in one half of the jaws: same-size spacer at the other end",
            set_up.operations[0].key, set_up=set_up.key, fix=Fix("Add a spacer", set_field(f"holding:{set_up.key}", "spacer", "yes")),
        )  # fmt: skip


def _at_one_end(set_up: SetUp, lie: Lying, machine: Machine) -> bool:
    vice = vice_of(set_up.holding, machine)
    long = lie.size[0 if lie.side(set_up.fixed_jaw) in ("near", "far") else 1]
    left, right = size(set_up, "over_left") or 0.0, size(set_up, "over_right") or 0.0
    held = long - left - right
    if fact(set_up, "sits") in ("left end", "right end"):
        return vice is None or held <= vice.jaw_width * 2 / 3
    least = 2 / 3 if fact(set_up, "spacer") is False else 1 / 2
    return vice is not None and bool(left) != bool(right) and held < vice.jaw_width * least - 1e-9
