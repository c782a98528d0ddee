"""What was copied becomes an edit of a job: every bare number keeps its size, every cutter its words."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.commands import Command
from jobsheet.edit.several_steps import InsertSetUps, InsertSteps
from jobsheet.edit.spelling import with_units_written
from jobsheet.model.job import Job, SetUp
from jobsheet.storage.steps_text import Copied


def paste_command(copied: Copied, job: Job, set_up_key: str, after_key: str | None) -> Command:
    """The edit that puts what was copied into a job: steps behind a step (none: in
    front), set-ups behind the set-up.

    A bare number of a job in the other unit gets its own unit behind it, so that no size changes. Nothing in
    a step points at another job: a cutter is its words, also where this workshop's cabinet has no such tool.
    """
    if copied.set_ups:
        return InsertSetUps(_in_units_of(job, copied.units, copied.set_ups), set_up_key)
    (carrier,) = _in_units_of(job, copied.units, (SetUp(key="copied", number=1, operations=copied.steps),))
    return InsertSteps(carrier.operations, set_up_key, after_key)


def _in_units_of(job: Job, units: str, set_ups: tuple[SetUp, ...]) -> tuple[SetUp, ...]:
    if units == job.units:
        return set_ups
    return with_units_written(replace(job, units=units, set_ups=set_ups), job.units).set_ups
