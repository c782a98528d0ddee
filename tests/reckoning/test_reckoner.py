"""Remembering must never change a figure."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps, DuplicateSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation
from jobsheet.errors import JobsheetError
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

JOB = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
KEYS = [operation.key for _, operation in JOB.operations()]

edits = st.one_of(
    st.builds(
        SetField,
        st.sampled_from(["drill", "spot"]),
        st.just("feed"),
        st.sampled_from(["0.05", "0.1", "2 thou"]),
    ),
    st.builds(
        SetField, st.just("drill"), st.just("cutter"), st.sampled_from(["drill 5", "drill #7", "drill 4"])
    ),
    st.builds(SetField, st.just("face-rough"), st.just("depth"), st.sampled_from(["0.4", "1", "0.02 in"])),
    st.builds(
        SetField, st.just("job"), st.just("machine"), st.sampled_from(["bench-mill-b-2", "knee-mill-k-2"])
    ),
    st.builds(SetField, st.just("job:stock"), st.just("height"), st.sampled_from(["12", "20", "1 in"])),
    st.builds(DuplicateSteps, st.tuples(st.sampled_from(KEYS))),
    st.builds(DeleteSteps, st.tuples(st.sampled_from(KEYS))),
    st.builds(MoveSteps, st.tuples(st.sampled_from(KEYS)), st.just("set-up-1"), st.integers(0, 8)),
    st.builds(AddOperation, st.just("set-up-1"), st.sampled_from(["face", "drill", "tap"])),
)


@settings(max_examples=60, deadline=None)
@given(st.lists(edits, max_size=8))
def test_a_reckoner_that_remembers_says_what_a_new_one_says(commands):
    job = JOB
    remembering = Reckoner()
    remembering.reckon(job)
    for command in commands:
        try:
            job = command.apply(job)
        except JobsheetError:
            continue
        assert remembering.reckon(job).operations == Reckoner().reckon(job).operations


def test_what_did_not_change_is_the_very_same_outcome():
    reckoner = Reckoner()
    before = reckoner.reckon(JOB)
    after = reckoner.reckon(SetField("drill", "feed", "0.1").apply(JOB))
    assert after.operations["face-rough"] is before.operations["face-rough"]
    assert after.operations["drill"] is not before.operations["drill"]


def test_facing_thins_the_work_for_what_goes_through():
    deeper = SetField("face-rough", "depth", "2").apply(JOB)
    assert abs(Reckoner().reckon(deeper).operations["drill"].figures.value("hole_depth") - 9.9e-3) < 1e-9


def test_an_operation_that_cannot_be_reckoned_says_why_and_spares_the_others():
    without = DeleteSteps(("drill",)).apply(JOB)
    found = Reckoner().reckon(without)
    assert "drilled at these places" in found.operations["tap"].problem
    assert found.operations["face-rough"].figures is not None


def test_units_never_change_a_result():
    inches = SetField("job", "units", "in").apply(JOB)
    a, b = Reckoner().reckon(JOB), Reckoner().reckon(inches)
    for key, outcome in a.operations.items():
        for figure in outcome.figures.items:
            other = b.operations[key].figures.value(figure.name)
            assert abs(other - figure.value) <= 1e-9 * abs(figure.value), (key, figure.name)
    assert replace(inches, units="mm") != JOB  # the spelling now has its units
