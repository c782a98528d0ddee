"""Asks whether there is a hole to tap."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.rule import View, remark, rule


@rule("tap-drill-before-tap", "Drill before tapping", "scrap")
def tap_drill_before_tap(view: View) -> Iterator[Remark]:
    """A tap needs a hole of its own size at its place.

    Why: A tap cuts a thread, not a hole: without one it breaks.
    Wrong: tap, drill
    Right: drill, tap
    Source: common practice
    """
    for set_up, operation, _ in view.steps():
        if operation.kind not in ("tap", "hand-tap") or operation.fields.hole is not None:
            continue
        if view.reckoned.settings[operation.key].pilot is None:
            yield remark(
                view,
                "tap-drill-before-tap",
                "No hole stands here yet: add the tap drill before this step",
                operation.key,
                set_up=set_up.key,
            )
