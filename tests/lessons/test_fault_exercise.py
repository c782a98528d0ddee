"""Planted mistakes have one cause each, are found by their rows, and nothing else of the plan is wrong."""

from __future__ import annotations

from collections import Counter

import pytest

from jobsheet.lessons.fault_exercise import fault_exercise, faults_marked
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.storage.job_file import read_job


def remarks(job):
    """Read through anew, by a reckoner that knows nothing of the exercise."""
    found = Reckoner().reckon(job)
    read = reviewed(found.job, found, facts_of(found.job, found))
    return [one for one in (*read.open, *(one for one, _ in read.aside)) if one.severity != "habit"]


def said(exercise):
    return tuple((one.rows, one.done, one.remark.message) for one in exercise.faults)


@pytest.mark.parametrize(("missing", "level"), [(False, 1), (False, 4), (True, 2)])
def test_the_review_finds_exactly_what_was_planted(pivot, missing, level):
    assert not remarks(pivot.job)
    found = fault_exercise(pivot, level, 37, 1, missing=missing)
    said = remarks(found.job)
    assert Counter(one.rule for one in said) == Counter(one.remark.rule for one in found.faults)
    assert len(found.faults) == (1 if missing else {1: 1, 4: 3}[level])
    assert len({one.remark.rule for one in found.faults}) == len(found.faults)


def test_no_number_tells_what_was_moved_or_taken_out(pivot):
    for missing in (False, True):
        found = fault_exercise(pivot, 2, 5, 3, missing=missing)
        numbers = [operation.number for _, operation in found.job.operations()]
        assert numbers == list(range(1, len(numbers) + 1))


def test_the_same_seed_plants_the_same(pivot):
    first, other = (fault_exercise(pivot, 3, 9, 2, missing=False) for _ in range(2))
    assert first.job == other.job
    assert said(first) == said(other)
    assert len({said(fault_exercise(pivot, 1, 9, sheet, missing=False)) for sheet in range(1, 4)}) > 1


# --- answers ---


def test_a_mistake_is_found_by_any_of_its_rows_and_a_row_besides_is_said(pivot):
    found = fault_exercise(pivot, 3, 37, 1, missing=False)
    first, second = found.faults
    whole = faults_marked(found, f"{first.rows[0]} {second.rows[-1]}")
    assert whole.right
    assert whole.good
    none = next(row for row in range(1, 24) if row not in (*first.rows, *second.rows))
    part = faults_marked(found, f"{first.rows[0]}, {none}")
    assert (part.found, part.left, part.besides) == ((first,), (second,), (none,))
    assert not part.right


def test_the_part_is_good_where_only_rework_was_left(pivot):
    for sheet in range(1, 30):
        found = fault_exercise(pivot, 3, 37, sheet, missing=False)
        costs = {one.remark.severity: one for one in found.faults}
        if set(costs) == {"scrap", "rework"}:
            assert faults_marked(found, str(costs["scrap"].rows[0])).good
            assert not faults_marked(found, str(costs["rework"].rows[0])).good
            return
    pytest.fail("no sheet has one of each")


def test_a_missing_step_is_right_wherever_nothing_that_must_come_first_stands_behind_it(samples):
    """The measuring of the slot belongs behind both of its walls: before row 12, the end of its set-up."""
    reckoned = Reckoner().reckon(read_job(samples / "hm-102-slide-plate.yaml"))
    for sheet in range(1, 40):
        found = fault_exercise(reckoned, 2, 37, sheet, missing=True)
        if found.gone == "Measure the slot before unclamping":
            assert found.faults[0].rows == (12,)
            assert faults_marked(found, "12").right
            assert not faults_marked(found, "9").right
            return
    pytest.fail("no sheet leaves the measuring out")


def test_what_is_no_row_is_said(pivot):
    found = fault_exercise(pivot, 1, 37, 1, missing=False)
    with pytest.raises(WrongAnswer, match="is no row of sheet 1"):
        faults_marked(found, "seven")
    with pytest.raises(WrongAnswer, match="is no row of sheet 1"):
        faults_marked(found, "99")
