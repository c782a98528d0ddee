"""One sheet of a lesson at the screen: the same numbers make it again, and nothing is said before a try."""

from __future__ import annotations

import pytest

from jobsheet.errors import JobsheetError
from jobsheet.gui.places.lesson.sheet_desk import HOW, LEVELS, SheetDesk
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def reckoned():
    return Reckoner().reckon(read_job(sample_jobs() / "hm-103-pivot-block.yaml"))


@pytest.fixture
def desk(reckoned):
    return SheetDesk(reckoned, 7)


def test_before_a_try_there_is_nothing_to_say(desk):
    assert (desk.head, desk.said) == ("", ())


def test_what_is_typed_and_cannot_be_read_is_said_in_a_sentence(desk):
    desk.answer = "???"
    with pytest.raises(JobsheetError):
        desk.attempt()
    assert desk.head == ""


def test_reasons_are_shown_when_they_are_asked_for(desk):
    desk.choose("wrong", 1, 1)
    desk.answer = "10"
    desk.attempt()
    assert desk.head
    before = desk.said
    desk.reasons = True
    assert set(before) <= set(desk.said)
    if not desk.result.right:
        assert all(line.startswith(("Would the part", "Figures:")) for line in before)


def test_another_exercise_begins_with_nothing_answered(desk):
    desk.answer, desk.figures = "1", "1=2"
    desk.choose("order", 3, 2)
    assert (desk.answer, desk.figures, desk.result) == ("", "", None)


@pytest.mark.parametrize("kind", HOW)
@pytest.mark.parametrize("level", LEVELS)
def test_figures_are_asked_beside_an_order_of_the_upper_levels(desk, kind, level):
    desk.choose(kind, level, 1)
    assert desk.asks_figures == (kind == "order" and level > 2)


def test_a_result_that_is_kept_names_part_exercise_and_sheet(desk):
    desk.choose("wrong", 1, 4)
    desk.answer = "10"
    desk.attempt()
    kept = desk.kept_as("AB")
    assert (kept.initials, kept.part, kept.exercise, kept.sheet) == ("AB", "HM-103", "wrong, level 1", 4)
    assert kept.went
    assert not kept.went.endswith(".")
