"""Asks whether the hole leaves as much thread as a thread should have."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import EASIER, LEAST, tap_drill
from jobsheet.cutting.tapping import percent_of_thread
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.at_hand import drill_named
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.rule import View, remark, rule

#: Height of thread by the workshop's choice `thread-height`, with what the next drill of a set
#: makes of it either way (tables give up to 80 % for small sizes): below it a gauge may fail,
#: above it the torque climbs steeply.
BOUNDS = {"60 to 75 %": (0.58, 0.82), "75 %": (0.65, 0.85), EASIER: (LEAST, 0.72)}


@rule("thread-height-in-bounds", "Height of thread", "scrap")
def thread_height_in_bounds(view: View) -> Iterator[Remark]:
    """The drilled hole decides how high the thread stands.

    Because: Above it the torque climbs steeply and the strength hardly; below it the thread may fail its gauge.
    Not so: drill 5.5, tap M6
    So: drill 5.0, tap M6
    From: Virtual Machine Shop, course unit on tapping; bounds are the workshop's setting
    """
    lowest, highest = BOUNDS[view.reckoned.shop.thread_height]
    for set_up, operation, outcome in view.steps():
        height = outcome.figures.value("percent_thread") if outcome.figures else None
        if (
            roles(operation).hole != "tap"
            or height is None
            or lowest <= height <= highest
            or operation.fields.cutter.style == "form"
        ):
            continue
        thread = operation.fields.thread
        usual = tap_drill(thread, view.reckoned.shop.thread_height)
        message = f"Thread would be {height * 100:.0f} %: change the drill"
        fix = None
        drill = _drill_of(set_up, operation)
        if usual is not None:
            better = percent_of_thread(major=thread.major, hole=read_drill_size(usual), pitch=thread.pitch)
            usual = drill_named(usual, view.job.units)
            message = f"Thread would be {height * 100:.0f} %: drill {usual} gives {better * 100:.0f} %"
            if drill is not None and operation.fields.hole is None:
                fix = Fix(f"Drill {usual}", set_field(drill.key, "cutter", f"drill {usual}"), (drill.key,))
        keys = (operation.key,) if drill is None else (operation.key, drill.key)
        yield remark(view, "thread-height-in-bounds", message, *keys, fix=fix, set_up=set_up.key)


def _drill_of(set_up: SetUp, tap: Operation) -> Operation | None:
    """The last drilling step before the tap, at one of its places."""
    places = {(round(p.x.value * 1e6), round(p.y.value * 1e6)) for p in tap.fields.at}
    found = None
    for operation in set_up.operations:
        if operation.key == tap.key:
            break
        if (
            roles(operation).hole == "drill"
            and not roles(operation).opens
            and operation.fields.cutter.kind == "drill"
        ):
            here = {(round(p.x.value * 1e6), round(p.y.value * 1e6)) for p in operation.fields.at}
            if here & places:
                found = operation
    return found
