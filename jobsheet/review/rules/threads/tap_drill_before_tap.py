"""Asks whether there is a hole to tap."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import tap_drill
from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.lengths import typed
from jobsheet.review.rule import View, remark, rule


@rule("tap-drill-before-tap", "Drill before tapping", "scrap")
def tap_drill_before_tap(view: View) -> Iterator[Remark]:
    """A tap needs a hole of its own size at its place.

    Because: A tap cuts a thread, not a hole: without one it breaks.
    Not so: tap, drill
    So: drill, tap
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        if roles(operation).hole != "tap" or operation.fields.hole is not None:
            continue
        if view.reckoned.settings[operation.key].pilot is None:
            yield remark(
                view,
                "tap-drill-before-tap",
                "No hole stands here yet: add the tap drill before this step",
                operation.key,
                set_up=set_up.key,
                fix=_fix(view, operation),
            )


def _fix(view: View, tap: Operation) -> Fix | None:
    """The usual tap drill before the tap, deep enough for a bottoming tap."""
    fields, units = tap.fields, view.job.units
    usual = tap_drill(fields.thread)
    if usual is None:
        return None
    deep = fields.depth.text
    if fields.depth.value is not None:
        deep = typed(fields.depth.value + 5 * fields.thread.pitch, units)
    texts = {
        "cutter": f"drill {usual}",
        "at": fields.at.text,
        "depth": deep,
        "feed": typed(read_drill_size(usual) * 0.015, units),
    }
    return Fix(f"Add drill {usual} before {tap.number}", added_before(tap.key, written.DRILL, texts))
