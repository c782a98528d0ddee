"""Asks whether it is said what locates the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import does, holding_roles, stopped
from jobsheet.review.rule import View, remark, rule


@rule("locating-faces-listed", "What locates the work", "scrap")
def locating_faces_listed(view: View) -> Iterator[Remark]:
    """A set-up that makes a size with limits, strapped with no stop and no zero found.

    Because: Three faces, then two, then one leave it nowhere to go: fewer leave it free, more fight each other.
    Not so: clamped to the table, no stop, no zero
    So: clamped to the table, two pins on the long side, one on the short
    From: common practice
    """
    for set_up in view.job.set_ups:
        sized = [
            operation
            for operation in set_up.operations
            if _has_limits(operation.fields) and roles(operation).beside != "bench"
        ]
        plays = holding_roles(set_up)
        if not sized:
            continue
        if not plays.straps or stopped(set_up) or _found(set_up):
            continue
        message = "Say what locates the part: nothing is named that it stands against or is found by"
        fix = Fix("Two pins and one", set_field(f"holding:{set_up.key}", "stops", "rear, left"))
        yield remark(view, "locating-faces-listed", message, sized[0].key, fix=fix, set_up=set_up.key)


def _found(set_up: SetUp) -> bool:
    """Whether the zero is named, or something is found or trued here."""
    return bool(set_up.zero.named or set_up.zero.found) or any(
        does(operation, "find zero", "square up") for operation in set_up.operations
    )


def _has_limits(fields: object) -> bool:
    size = getattr(fields, "measure", None)
    return (size is not None and size.high > size.low) or getattr(fields, "within", None) is not None
