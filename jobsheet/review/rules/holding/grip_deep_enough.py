"""Asks whether the jaws hold enough of the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.placed import above_jaws, in_jaws, vice_of
from jobsheet.model.job import SetUp
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import supported
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import Needs, View, remark, rule


@rule("grip-deep-enough", "Grip deep enough", "hazard", needs=Needs.FIGURES)
def grip_deep_enough(view: View) -> Iterator[Remark]:
    """In a vice the work stands more over the jaws than twice what they grip, or holding is not enough. The number is the workshop's.

    Because: Work climbs out of the jaws under the cut.
    Not so: work 30 high, 25 over the jaws
    So: work 30 high, 15 over the jaws
    From: common practice
    """
    box = stock_box(view.job)
    for set_up in view.job.set_ups:
        if not set_up.operations or not in_jaws(set_up, lying(set_up, box)):
            continue
        setting = view.reckoned.settings[set_up.operations[0].key]
        high = setting.extent[2]
        above = above_jaws(set_up, lying(set_up, box), setting.machine)
        vice = vice_of(set_up.holding, setting.machine)
        if above is not None:
            grip = max(0.0, high - above)
            if vice is not None:
                grip = min(grip, vice.jaw_depth)
            most = setting.shop.stands_above
            if above > most * grip * (1 + 1e-6) and not supported(set_up):
                message = f"{length(above, view.job.units)} stands over the jaws and they grip {length(grip, view.job.units)}: hold more of it or take lighter cuts"
                yield remark(
                    view, "grip-deep-enough", message, set_up.operations[0].key, set_up=set_up.key,
                    fix=_lower(view, set_up, high, vice.jaw_depth if vice else high),
                )  # fmt: skip
                continue
        short = next(
            (
                operation.key
                for operation in set_up.operations
                if any(
                    limit.name == "holding" and limit.verdict == "beyond"
                    for limit in view.reckoned.operations[operation.key].limits
                )
            ),
            None,
        )
        if short is not None:
            yield remark(
                view, "grip-deep-enough", "Grip not enough: hold more of it, tighten as the vice allows, or take lighter cuts",
                short, set_up=set_up.key,
            )  # fmt: skip


def _lower(view: View, set_up: SetUp, high: float, jaw: float) -> Fix | None:
    """As low in the jaws as they are deep, where the cuts still clear them."""
    most = view.reckoned.shop.stands_above
    above = max(high - jaw, high / 2)
    if above > most * min(high - above, jaw):
        return None
    for operation in set_up.operations:
        depth = getattr(operation.fields, "depth", None)
        if roles(operation).sizes and depth is not None and (depth.value or high) > above:
            return None
    text = typed(above, view.job.units, 1)
    return Fix(f"{text} above the jaws", set_field(f"holding:{set_up.key}", "above_jaws", text))
