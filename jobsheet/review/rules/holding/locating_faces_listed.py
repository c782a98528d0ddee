"""Asks whether it is said what locates the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import lying, stock_box
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import says
from jobsheet.review.rule import View, remark, rule


@rule("locating-faces-listed", "What locates the work", "scrap")
def locating_faces_listed(view: View) -> Iterator[Remark]:
    """A set-up that makes a size with limits, in a vice whose fixed-jaw face is up or down, or clamped with no stop and no zero.

    Because: Three faces, then two, then one leave it nowhere to go: fewer leave it free, more fight each other.
    Not so: clamped to the table, no stop, no zero
    So: clamped to the table, two pins on the long side, one on the short
    From: common practice
    """
    for set_up in view.job.set_ups:
        sized = [one for one in set_up.operations if _has_limits(one.fields) and roles(one).beside != "bench"]
        holding = set_up.holding
        if not sized or not holding.device:
            continue
        lie = lying(set_up, stock_box(view.job))
        if says("vise|vice|jaws?", holding.device):
            if lie.side(set_up.fixed_jaw) not in ("up", "down"):
                continue
            message = f"The {set_up.fixed_jaw} is {lie.side(set_up.fixed_jaw)} here: say which face is at the fixed jaw"
            fix = Fix(f"Fixed jaw: {lie.far}", set_field(f"setup:{set_up.key}", "fixed_jaw", lie.far))
        else:
            if (
                holding.stop
                or set_up.zero.named
                or set_up.zero.found
                or any(roles(one).beside == "find" for one in set_up.operations)
            ):
                continue
            if says(
                "stops?|pins?|dowels?|against|edges?|indicat\\w*|fixture|centred",
                holding.packing,
                holding.note,
                set_up.note,
            ):
                continue
            message = "Say what locates the part: nothing is named that it stands against or is found by"
            stop = f"{lie.far} against two pins, {lie.left} against one"
            fix = Fix("Two pins and one", set_field(f"holding:{set_up.key}", "stop", stop))
        yield remark(view, "locating-faces-listed", message, sized[0].key, fix=fix, set_up=set_up.key)


def _has_limits(fields: object) -> bool:
    size = getattr(fields, "measure", None)
    return (size is not None and size.high > size.low) or getattr(fields, "within", None) is not None
