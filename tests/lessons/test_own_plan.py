"""A plan of one's own is marked by the review: any right one is right, what is left out or done in a
wrong way is said with its reason.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.lessons.order_exercise import NoExercise
from jobsheet.lessons.own_plan import begun, own_plan_marked
from jobsheet.lessons.own_plan_words import own_plan_lines
from jobsheet.model.finished import Finished
from jobsheet.storage.job_file import read_job

from .samples_taught import SAMPLES


@pytest.mark.parametrize("name", SAMPLES)
def test_what_is_begun_with_holds_no_answer(samples, name):
    job = read_job(samples / f"{name}.yaml")
    blank = begun(job)
    assert blank.operations() == []
    assert (blank.why, blank.note, blank.also_fetch, blank.planned_by) == ("", "", "", "")
    assert blank.finished == job.finished
    found = own_plan_marked(job, blank)
    assert not found.right
    assert not found.good
    assert own_plan_lines(blank, found)[0] == "Nothing is planned yet."


def test_what_the_exercise_asks_cannot_be_changed_by_the_answer(samples):
    """Easier limits, softer metal, other stock, a remark set aside: all are as the exercise has them."""
    job = read_job(samples / "hm-103-pivot-block.yaml")
    ream = next(step.key for _, step in job.operations() if step.number == 145)
    easier = replace(DeleteSteps((ream,)).apply(job), finished=Finished(), material="S235")
    assert not own_plan_marked(job, easier).right


def test_a_step_that_cannot_be_reckoned_is_not_passed_over(samples):
    job = read_job(samples / "hm-103-pivot-block.yaml")
    answer = SetField("ream", "hole", "20").apply(
        job
    )  # larger than the reamer: nothing of it can be worked out
    found = own_plan_marked(job, answer)
    assert found.not_checked
    assert not found.right


def test_without_a_drawing_there_is_nothing_to_plan(samples):
    job = replace(read_job(samples / "hm-100-drilled-plate-b1.yaml"), finished=Finished())
    with pytest.raises(NoExercise, match="does not say what the part shall be"):
        begun(job)
