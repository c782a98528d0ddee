"""What the steps of the samples leave, and plans that are spoilt."""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.finished.finished_part import finished_part
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.part_solid import differences
from jobsheet.stages.solids import Modeller

SAMPLES = sorted((Path(__file__).resolve().parents[2] / "sample_jobs").glob("*.yaml"))


PIVOT = next(path for path in SAMPLES if "103" in path.name)


def course(job):
    reckoned = Reckoner().reckon(job)
    return course_of(reckoned.job, reckoned.settings)


def by_solids(job):
    return differences(Modeller().stages(course(job)), finished_part(job))


def without(job, key):
    return replace(
        job,
        set_ups=tuple(
            replace(one, operations=tuple(step for step in one.operations if step.key != key))
            for one in job.set_ups
        ),
    )


def typed(job, key, **fields):
    for name, text in fields.items():
        job = SetField(key, name, text).apply(job)
    return job
