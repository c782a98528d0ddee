"""Asks whether there is a hole to tap."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.threads import tap_drill
from jobsheet.model.job import Operation
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.added_hole import drilled_before, spotted_before
from jobsheet.review.mending.at_hand import drill_named
from jobsheet.review.mending.fixes import in_turn, moved_after
from jobsheet.review.plan.as_asked import misplaced
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import typed
from jobsheet.review.rule import View, remark, rule

#: How much wider than the thread a spot is offered [m] (published 0.25 to 0.4 mm on the diameter).
WIDER = 0.4e-3


@rule("tap-drill-before-tap", "Drill before tapping", "scrap")
def tap_drill_before_tap(view: View) -> Iterator[Remark]:
    """A tap needs a hole of its own size at its place.

    Because: A tap cuts a thread, not a hole: without one it breaks.
    Not so: tap, drill
    So: drill, tap
    From: common practice
    """
    beside = misplaced(view)
    for set_up, operation, _ in view.steps():
        if roles(operation).hole != "tap" or operation.fields.hole is not None or operation.key in beside:
            continue
        if view.reckoned.settings[operation.key].pilot is None:
            fixes = _fixes(view, operation)
            yield remark(
                view, "tap-drill-before-tap", "No hole stands here yet: add the tap drill before this step", operation.key,
                set_up=set_up.key, fix=next(iter(fixes), None), others=fixes[1:],
            )  # fmt: skip


def _fixes(view: View, tap: Operation) -> tuple[Fix, ...]:
    """Behind the drill that comes later; else the usual tap drill before it, with a spot as wide as the thread where there is none."""
    here = list(holes_of(view.reckoned).by_step(tap.key))
    bare = [(chain, step) for chain, step in here if chain.hole_before(step) is None]
    later = [
        hole_step
        for chain, step in bare
        for hole_step in chain.after(step)
        if hole_step.does == "drill" and hole_step.set_up == step.set_up
    ]
    moving = tuple(
        Fix(f"Move {tap.number} behind {hole_step.number}", moved_after(tap.key, hole_step.key))
        for hole_step in sorted(later, key=lambda hole_step: -hole_step.index)[:1]
    )
    return (
        *moving,
        *_drilled(view, tap, "; ".join(step.place.text for _, step in bare) or tap.fields.at.text),
    )


def _drilled(view: View, tap: Operation, at: str) -> tuple[Fix, ...]:
    fields, units = tap.fields, view.job.units
    usual = tap_drill(fields.thread, view.reckoned.shop.thread_height)
    if usual is None:
        return ()
    usual = drill_named(usual, units)
    deep = fields.depth.text
    if fields.depth.value is not None:
        deep = typed(fields.depth.value + 5 * fields.thread.pitch, units)
    drilling = drilled_before(
        tap, view.reckoned.settings[tap.key], {"cutter": f"drill {usual}", "at": at, "depth": deep}
    )
    spotting, _ = spotted_before(view.job, tap.key, at, fields.thread.major + WIDER)
    return (
        Fix(f"Add drill {usual} before {tap.number}", drilling),
        Fix(f"Add a spot and drill {usual} before {tap.number}", in_turn(spotting, drilling)),
    )
