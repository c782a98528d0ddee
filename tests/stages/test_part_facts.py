"""How the work differs from the finished part: nothing of the samples, a piece where a step is left out."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.finished.finished_part import finished_part
from jobsheet.model.finished import Finished
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.part_facts import part_facts
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import read_job

PIVOT = read_job(sample_jobs() / "hm-103-pivot-block.yaml")


def facts(job):
    reckoned = Reckoner().reckon(job)
    return part_facts(
        Modeller().stages(course_of(reckoned.job, reckoned.settings)), finished_part(reckoned.job)
    )


def test_the_pivot_block_is_as_it_shall_be():
    assert facts(PIVOT) == []


def test_a_step_that_is_left_out_leaves_its_metal_on():
    """The step at the right is 20 × 50 × 12."""
    found = facts(DeleteSteps(("step",)).apply(PIVOT))
    assert {fact.kind for fact in found} == {"left-on"}
    assert max(round(max(fact.size) * 1e3) for fact in found) <= 80


def test_of_a_part_of_which_nothing_is_said_nothing_is_known():
    assert facts(replace(PIVOT, finished=Finished())) == []
