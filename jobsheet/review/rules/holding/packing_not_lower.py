"""Asks whether the heels of straps stand as high as their noses."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import on_straps, size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: A heel that is higher by this share of the strap pushes the work sideways
#: (holding-and-more-kinds A2: 1/20 of its length).
HIGHER = 1 / 20
#: How long a strap is from heel to nose where nobody says [m] (holding-and-more-kinds A2: strap 80).
USUAL = 0.080


@rule("packing-not-lower", "Packing level with the work", "hazard")
def packing_not_lower(view: View) -> Iterator[Remark]:
    """The heel of a strap lies lower than its nose, or higher by more than a twentieth of the strap.

    Because: A strap that slopes up to the work slides off it; one that slopes down pushes the work sideways.
    Not so: strap clamps, their heels 6 mm lower than the work
    So: strap clamps, their heels level with the work or a little higher
    From: common practice; the twentieth from the force that a sloping strap pushes sideways with
    """
    for set_up in view.job.set_ups:
        level = size(set_up, "heel_level")
        if level is None or not on_straps(set_up) or not set_up.operations:
            continue
        long = _long(set_up)
        if -1e-9 <= level <= HIGHER * long + 1e-9:
            continue
        shown = length(abs(level), view.job.units)
        message = (
            f"The heels lie {shown} lower than the work: level with it or a little higher, or the straps slide off"
            if level < 0
            else f"The heels lie {shown} higher than the work on straps of {length(long, view.job.units)}: up to a twentieth goes, or"
            " they push it sideways"
        )
        fix = Fix("Heels level with the work", set_field(f"holding:{set_up.key}", "heel_level", "0"))
        yield remark(view, "packing-not-lower", message, set_up.operations[0].key, fix=fix, set_up=set_up.key)


def _long(set_up: SetUp) -> float:
    """From heel to nose [m]."""
    heel, nose = size(set_up, "heel_to_bolt"), size(set_up, "bolt_to_nose")
    return heel + nose if heel is not None and nose is not None else USUAL
