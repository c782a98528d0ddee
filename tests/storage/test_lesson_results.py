"""Results of lessons: a line each by initials, nothing of a name, gone in one press."""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite, CommandError
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


@pytest.mark.parametrize("initials", ["", "  ", "r w", "r\tw", "x" * (MOST + 1)])
def test_a_name_is_not_kept(initials):
    with pytest.raises(CommandError, match="no name is kept"):
        keep_result(result(initials=initials))
    assert not place().exists()


@pytest.mark.parametrize("initials", ["r", "x" * MOST, " rw "])
def test_initials_are_a_letter_to_six(initials):
    keep_result(result(initials=initials))
    assert kept_results() == (f"2026-11-30; {initials.strip()}; HM-103; order; 3; 2 moves",)


def test_the_head_and_empty_lines_are_no_results():
    keep_result(result())
    text = place().read_text(encoding="utf-8")
    assert text.startswith("# Results of lessons: ")
    place().write_text(f"{text}\n# mine\n\n", encoding="utf-8")
    assert len(kept_results()) == 1


def test_what_cannot_be_read_is_not_written_over():
    """A name in the signs of another encoding would come back as question marks."""
    place().parent.mkdir(parents=True, exist_ok=True)
    place().write_bytes(b"2026-11-30; J\xfc\n")
    with pytest.raises(CannotWrite, match=r"lesson-results\.txt cannot be read: it is not text in UTF-8"):
        keep_result(result())
    assert place().read_bytes() == b"2026-11-30; J\xfc\n"


def test_a_folder_that_cannot_be_made_is_said(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path / "file" / "own"))
    with pytest.raises(CannotWrite):
        keep_result(result())
