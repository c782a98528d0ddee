"""Asks whether the hole leaves as much thread as a thread should have."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from msgspec.structs import replace

from jobsheet.catalog.cutters import read_cutter
from jobsheet.catalog.drills import read_drill_size
from jobsheet.catalog.threads import tap_drill
from jobsheet.cutting.tapping import percent_of_thread
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.rule import View, remark, rule

#: Height of thread that is usual (workshop setting `thread-height`): below it a gauge may fail, above it
#: the torque climbs steeply and the strength hardly. 60-75 % is the cautious choice; tables give up to 80 %.
LOWEST, HIGHEST = 0.58, 0.82


@rule("thread-height-in-bounds", "Height of thread", "scrap")
def thread_height_in_bounds(view: View) -> Iterator[Remark]:
    """The drilled hole decides how high the thread stands.

    Why: Above it the torque climbs steeply and the strength hardly; below it the thread may fail its gauge.
    Wrong: drill 5.5, tap M6
    Right: drill 5.0, tap M6
    Source: trade teaching on tap drills; bounds are the workshop's setting
    """
    for set_up, operation, outcome in view.steps():
        height = outcome.figures.value("percent_thread") if outcome.figures else None
        if (
            operation.kind not in ("tap", "hand-tap")
            or height is None
            or LOWEST <= height <= HIGHEST
            or operation.fields.cutter.style == "form"
        ):
            continue
        thread = operation.fields.thread
        usual = tap_drill(thread)
        message = f"Thread would be {height * 100:.0f} %: change the drill"
        fix = None
        drill = _drill_of(set_up, operation)
        if usual is not None:
            better = percent_of_thread(major=thread.major, hole=read_drill_size(usual), pitch=thread.pitch)
            message = f"Thread would be {height * 100:.0f} %: drill {usual} gives {better * 100:.0f} %"
            if drill is not None:
                fix = Fix(f"Drill {usual}", partial(_with_drill, key=drill.key, size=usual))
        keys = (operation.key,) if drill is None else (operation.key, drill.key)
        yield remark(view, "thread-height-in-bounds", message, *keys, fix=fix, set_up=set_up.key)


def _drill_of(set_up: SetUp, tap: Operation) -> Operation | None:
    """The last drilling step before the tap, at one of its places."""
    places = {(round(p.x.value * 1e6), round(p.y.value * 1e6)) for p in tap.fields.at}
    found = None
    for operation in set_up.operations:
        if operation.key == tap.key:
            break
        if operation.kind == "drill" and operation.fields.cutter.kind == "drill":
            here = {(round(p.x.value * 1e6), round(p.y.value * 1e6)) for p in operation.fields.at}
            if here & places:
                found = operation
    return found


def _with_drill(job: Job, key: str, size: str) -> Job:
    """The job with another drill in that step; its place in the cabinet is no longer known."""
    set_ups = tuple(
        replace(
            set_up,
            operations=tuple(
                replace(one, fields=replace(one.fields, cutter=read_cutter(f"drill {size}")))
                if one.key == key
                else one
                for one in set_up.operations
            ),
        )
        for set_up in job.set_ups
    )
    return replace(job, set_ups=set_ups)
