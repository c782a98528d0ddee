"""One tool of a list is right, and every other one is refused for one reason."""

from __future__ import annotations

import pytest

from jobsheet.lessons.cutter_exercise import choices_marked, cutter_exercise
from jobsheet.lessons.order_exercise import NoExercise
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.review.mending.fixes import set_field
from jobsheet.storage.job_file import blank_job, read_job


@pytest.fixture
def pivot(samples):
    return Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))


def test_the_right_one_is_the_plans_and_the_others_are_refused_for_their_reason(pivot):
    """Read through anew: with the right line nothing is said; with each other one its own rule
    speaks, or it cannot be calculated.
    """
    found = cutter_exercise(pivot, 3, 37, 1)
    assert len(found.questions) == 3
    for question in found.questions:
        assert sum(one.refused is None for one in question.choices) == 1
        for one in question.choices:
            changed = Reckoner().reckon(set_field(question.key, "cutter", one.line)(pivot.job))
            problems = [outcome.problem for outcome in changed.operations.values() if outcome.problem]
            messages = [remark.message for remark in review(changed.job, changed)]
            if one.refused is None:
                assert not problems
                assert not messages
            else:
                assert one.refused.words.casefold() in " ".join((*problems, *messages)).casefold()


def test_the_drill_for_the_thread(pivot):
    """M8 in iron is drilled 6.8 (ISO tap drill chart); 6.5 and 6.6 leave too high a thread."""
    question = next(one for one in cutter_exercise(pivot, 3, 37, 1).questions if "M8" in one.ask)
    assert question.right.line.startswith("drill 6.8")
    assert any(
        one.refused is not None and one.refused.title == "Height of thread" for one in question.choices
    )


def test_nothing_in_how_a_line_is_written_gives_the_right_one_away(pivot):
    for question in cutter_exercise(pivot, 3, 37, 1).questions:
        assert all(", drawer " in one.line for one in question.choices)
    letters = {cutter_exercise(pivot, 3, 37, sheet).questions[0].right.letter for sheet in range(1, 9)}
    assert len(letters) > 1


def test_choices_as_they_are_typed(pivot):
    found = cutter_exercise(pivot, 3, 37, 1)
    typed = " ".join(f"{number}={one.right.letter.upper()}" for number, one in enumerate(found.questions, 1))
    assert all(one.right for one in choices_marked(found, typed))
    wrong = next(one for one in found.questions[0].choices if one.refused is not None)
    assert not choices_marked(found, f"1={wrong.letter}")[0].right
    for bad in ("1=z", "9=a", "a"):
        with pytest.raises(WrongAnswer):
            choices_marked(found, bad)


def test_a_job_without_a_cabinet_says_so():
    with pytest.raises(NoExercise, match="has no tool with another one in the cabinet"):
        cutter_exercise(Reckoner().reckon(blank_job("bench-mill-b-1")), 1, 1, 1)
