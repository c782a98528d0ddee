"""The adviser's answer in words: what would be written, and nothing where the step is as good as the best."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.gui.column.recommended import recommended
from jobsheet.gui.column.suggested import NOTHING
from jobsheet.operations import registry
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.answers.all_answers import Answers, answers_in_parts
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def _answered(job, key):
    found = Reckoner().reckon(job)
    set_up, operation = found.job.find(key)
    return operation, list(answers_in_parts(set_up, operation, found))[-1]


@pytest.fixture(scope="module")
def slow():
    """A facing cut that is far too slow."""
    job = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    return _answered(SetField("face-rough", "feed_per_tooth", "0.005 mm").apply(job), "face-rough")


def test_without_an_answer_nothing_is_recommended(qapp, slow):
    assert recommended(slow[0], Answers(whole=True)) is NOTHING


def test_every_value_has_its_title_and_its_reason(qapp, slow):
    operation, answers = slow
    found = recommended(operation, answers)
    assert found is not NOTHING
    titles = {entry.title for entry in registry.kind(operation.kind).entries}
    said = [one for one in found.reasons if one.title]
    assert {one.title for one in said} <= titles
    assert all(one.text and "; " in one.why for one in said)
    assert found.words.endswith((".", "here"))
    names = {entry.name for entry in registry.kind(operation.kind).entries}
    assert {name for name, _ in found.edits} <= names


def test_what_is_recommended_is_as_good_as_the_best_once_it_is_typed(qapp, slow):
    job = SetField("face-rough", "feed_per_tooth", "0.005 mm").apply(
        read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    )
    for name, text in recommended(*slow).edits:
        job = SetField("face-rough", name, text).apply(job)
    again = recommended(*_answered(job, "face-rough"))
    assert again.edits == ()


def test_an_answer_about_another_step_is_not_shown(qapp, slow):
    job = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
    assert recommended(job.find("drill")[1], slow[1]) is NOTHING
