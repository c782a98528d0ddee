"""Asks whether the piece inside a window is held as it comes loose."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import SKIN_LEFT, TABS
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import added_before, set_field
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule

#: What too few screws do, by their number.
FEW = {
    0: "No screw holds the loose piece, and it will jam and fly: two hold it",
    1: "One screw lets the loose piece turn and jam: two hold it",
}


@rule("hold-the-slug", "Hold the slug", "hazard")
def hold_the_slug(view: View) -> Iterator[Remark]:
    """A closed outline is cut through, and the piece inside is neither held, tabbed nor all milled away; or one screw alone holds it.

    Because: The loose piece jams under the cutter and flies.
    Not so: window cut through by a groove round the middle
    So: screw the slug down, then cut the window through
    From: common practice
    """
    for set_up in view.job.set_ups:
        held: Operation | None = None
        for operation in set_up.operations:
            held = operation if does(operation, "hold loose piece") else held
            if roles(operation).frees and held is not None and held.fields.screws in FEW:
                fix = Fix("Two screws", set_field(held.key, "screws", "2"))
                yield remark(
                    view,
                    "hold-the-slug",
                    FEW[held.fields.screws],
                    operation.key,
                    held.key,
                    set_up=set_up.key,
                    fix=fix,
                )
                break
            if not roles(operation).frees or held is not None or how(operation, TABS, SKIN_LEFT):
                continue
            texts = {"does": "hold loose piece", "screws": "2"}
            yield remark(
                view, "hold-the-slug", "The loose middle will jam and fly: hold it or leave tabs", operation.key, set_up=set_up.key,
                fix=Fix(f"Add holding it before {operation.number}", added_before(operation.key, written.BENCH, texts)),
            )  # fmt: skip
            break
