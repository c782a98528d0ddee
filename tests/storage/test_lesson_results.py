"""Results of lessons: a line each by initials, nothing of a name, gone in one press."""

from __future__ import annotations

import pytest

from jobsheet.errors import CommandError
from jobsheet.storage.kept.lesson_results import (
    MOST,
    LessonResult,
    delete_results,
    keep_result,
    kept_results,
    place,
)


def result(**more):
    return LessonResult(**{"day": "2026-11-30", "initials": "rw", "part": "HM-103", "exercise": "order", "sheet": 3, "went": "2 moves", **more})  # fmt: skip


def test_lines_stand_in_the_order_in_which_they_were_kept_until_they_are_deleted():
    assert kept_results() == ()
    keep_result(result())
    keep_result(result(initials="12", went="right"))
    assert kept_results() == (
        "2026-11-30; rw; HM-103; order; 3; 2 moves",
        "2026-11-30; 12; HM-103; order; 3; right",
    )
    delete_results()
    assert not place().exists()
    delete_results()
    assert kept_results() == ()


def test_what_is_typed_makes_no_line_and_no_field_of_its_own():
    assert result(went="a;b\nc").line().count(";") == 5
    assert "\n" not in result(went="a;b\nc").line()


@pytest.mark.parametrize("initials", ["", "  ", "r w", "x" * (MOST + 1)])
def test_a_name_is_not_kept(initials):
    with pytest.raises(CommandError, match="no name is kept"):
        keep_result(result(initials=initials))
    assert not place().exists()
