"""Asks whether both parallels are of one height."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: So far a pair may be apart [m]: as a ground pair is sold (common practice).
PAIR = 0.01e-3


@rule("parallels-of-one-height", "Parallels of one height", "scrap")
def parallels_of_one_height(view: View) -> Iterator[Remark]:
    """The two parallels under the work are of different height.

    Because: The work leans between the jaws, and what is cut is a wedge.
    Not so: one parallel 20 high, the other 19.5
    So: a pair, both 20 high
    From: common practice
    """
    for set_up in view.job.set_ups:
        one, other = size(set_up, "parallels"), size(set_up, "other_parallel")
        if one is None or other is None or abs(one - other) <= PAIR + 1e-12 or not set_up.operations:
            continue
        units = view.job.units
        message = (
            f"One parallel is {length(one, units)} high and the other {length(other, units)}: take a pair"
        )
        fix = Fix("A pair", set_field(f"holding:{set_up.key}", "other_parallel", ""))
        yield remark(
            view, "parallels-of-one-height", message, set_up.operations[0].key, fix=fix, set_up=set_up.key
        )
