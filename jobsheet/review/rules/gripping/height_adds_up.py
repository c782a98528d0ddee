"""Asks whether what stands above the jaws agrees with what the work rests on."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact, size
from jobsheet.review.plan.jaws import sits
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: What a chip, a burr or a rounded size makes of it [m] (common practice, no source).
AGREES = 1.0e-3

#: Nothing that lies under work is thinner than this (common practice, no source) [m].
LEAST = 1e-3


@rule("height-adds-up", "Height in the jaws adds up", "hazard")
def height_adds_up(view: View) -> Iterator[Remark]:
    """What stands above the jaws is said, and parallels or bed under work of this height in jaws of that depth give another height.

    Where it is not said how high parallels or packing are, there must be room for them at least.

    Because: One of both is wrong; where it is the height, the jaws hold less than everybody thinks, and the work is torn out.
    Not so: work 12 high on parallels of 24 in jaws 25 deep, 6 above the jaws
    So: the same on parallels of 19
    From: the sizes of the plan and of the card
    """
    for set_up, steps in plan_of(view).groups():
        found = sits(set_up, steps[0])
        said = size(set_up, "above_jaws")
        if found is None or found.vice is None or said is None:
            continue
        under = 0.0 if fact(set_up, "rests_on") == "bed" else size(set_up, "parallels")
        if under is None:
            yield from _no_room(view, set_up, steps[0], found.vice.jaw_depth, said)
            continue
        high = steps[0].lie.size[2]
        stands = high + under - found.vice.jaw_depth
        if abs(stands - said) <= AGREES:
            continue
        units = view.job.units
        on = f"on parallels of {length(under, units)}" if under else "on the bed"
        message = (
            f"In jaws {length(found.vice.jaw_depth, units)} deep, {length(high, units)} of work {on} stands {length(max(stands, 0.0), units)} above them,"
            f" not {length(said, units)}: put the wrong one right"
        )
        if stands <= 0:
            message = f"{length(high, units)} of work {on} does not come out of jaws {length(found.vice.jaw_depth, units)} deep: {length(said, units)} above them is said"
        fix = None
        if stands > 0:
            text = typed(stands, units, 1)
            fix = Fix(f"{text} above the jaws", set_field(f"holding:{set_up.key}", "above_jaws", text))
        yield remark(
            view, "height-adds-up", message, steps[0].key, set_up=set_up.key, fix=fix,
            by_hand="measure what stands above the jaws, and the parallels, and enter both",
        )  # fmt: skip


def _no_room(view: View, set_up: SetUp, first: Step, jaw_depth: float, said: float) -> Iterator[Remark]:
    """Work that reaches the bed of the vice, though something is said to lie under it."""
    rests, high = fact(set_up, "rests_on"), first.lie.size[2]
    if rests not in ("parallels", "packing") or high - said < jaw_depth - LEAST:
        return
    units = view.job.units
    message = (
        f"No room for the {rests}: {length(high, units)} of work with {length(said, units)} above the jaws goes down to the bed of jaws"
        f" {length(jaw_depth, units)} deep: put the wrong one right"
    )
    yield remark(
        view, "height-adds-up", message, first.key, set_up=set_up.key,
        by_hand=f"measure what stands above the jaws with the {rests} in, and enter it; or say that it rests on the bed",
    )  # fmt: skip
