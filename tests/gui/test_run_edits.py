"""The chosen row, one key and a digit: how the step went today, kept at once,
seen in the row, and taken back.
"""

import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.gui.ink.look import look
from jobsheet.reckoning.run_words import day_words
from jobsheet.reckoning.runs_kept import this_moment
from jobsheet.storage.records.proof_log import read_log
from jobsheet.storage.records.run_log import path_beside, read_runs

MACHINE = "knee-mill-k-2"
KEYS = Qt.Key


@pytest.fixture
def job(samples, tmp_path):
    return shutil.copy(samples / "hm-103-pivot-block.yaml", tmp_path / "pivot.yaml")


@pytest.fixture
def window(show, job):
    return show(str(job))


def on(window, key):
    window.bench.column.ruled.focus_line(key)


def press(window, *keys):
    for key in keys:
        QTest.keyClick(window.focusWidget() or window, key, delay=5)


def standing(job):
    return [(one.number, one.outcome, one.slipped) for one in read_runs(job)[0].standing]


def row(window, key):
    return window.desk.view(key)


def test_a_key_and_a_digit_keep_it_and_the_row_says_so(window, job, qtbot):
    on(window, "step")
    press(window, KEYS.Key_F5)
    assert "How did step 70 go today? 1 clean" in window.bench.status.message
    assert not path_beside(job).exists()
    press(window, "2")
    assert standing(job) == [(70, "noisy", "")]
    assert [one.outcome for one in read_log(MACHINE).standing] == ["noisy"]
    line = window.bench.column.ruled.notice_line
    assert "Step 70, noisy, today: kept in pivot.ran.txt and in the proof log" in line.accessibleName()
    view = row(window, "step")
    assert view.last == f"last: noisy {day_words(this_moment()[0])}"
    assert view.last in view.spoken()
    QTest.mouseClick(line.buttons[0], Qt.MouseButton.LeftButton)
    assert standing(job) == []
    assert read_log(MACHINE).standing == ()
    assert row(window, "step").last == ""
    assert window.bench.column.ruled.notice_line is None


def test_a_wrong_digit_is_put_right_by_the_right_one_or_by_backspace(window, job):
    on(window, "step")
    press(window, KEYS.Key_F5, "5", KEYS.Key_F5)
    assert "Step 70 today: stalled" in window.bench.status.message
    press(window, "1")
    assert standing(job) == [(70, "clean", "")]
    press(window, KEYS.Key_F5, KEYS.Key_Backspace)
    assert standing(job) == []
    assert read_log(MACHINE).standing == ()


def test_what_slipped_is_asked_with_a_second_digit(window, job):
    on(window, "step")
    press(window, KEYS.Key_F5, "6")
    assert standing(job) == []
    assert "1 vice" in window.bench.status.message
    press(window, "9", "3")
    assert standing(job) == [(70, "slipped", "shank")]


@pytest.mark.parametrize("key", [KEYS.Key_Escape, KEYS.Key_Down, KEYS.Key_X])
def test_any_other_key_ends_the_question_and_says_nothing(window, job, key):
    on(window, "step")
    press(window, KEYS.Key_F5, key, "1")
    assert not path_beside(job).exists()
    assert window.bench.status.message == ""


def test_in_a_field_the_digit_is_the_fields(window, job):
    window.open_key("step")
    press(window, KEYS.Key_F5)
    assert "Close the row first" in window.bench.status.message
    assert not path_beside(job).exists()


def test_a_step_that_does_not_cut_and_a_heading_are_not_asked(window, job):
    number = next(one for _, one in window.desk.job.operations() if one.number == 55)
    on(window, number.key)
    press(window, KEYS.Key_F5, "1")
    assert not path_beside(job).exists()
    on(window, "set-up-5")
    press(window, KEYS.Key_F5)
    assert "Choose one step first" in window.bench.status.message


def test_a_job_without_a_file_is_saved_first(show):
    window = show()
    on(window, "drill")
    press(window, KEYS.Key_F5)
    assert "Save the job first" in window.bench.status.message


def test_the_row_says_it_when_the_job_is_opened_again_and_not_before_the_hand_rests(
    job, show, qtbot, monkeypatch
):
    from jobsheet.gui.desk import last_runs

    window = show(str(job))
    on(window, "step")
    press(window, KEYS.Key_F5, "1")
    again = show(str(job))
    qtbot.waitUntil(lambda: row(again, "step").last.startswith("last: clean"))
    asked = []
    real = last_runs.last_runs
    monkeypatch.setattr(last_runs, "last_runs", lambda path: asked.append(path) or real(path))
    from jobsheet.edit.commands import SetField

    again.desk.do(SetField("step", "note", "mind the edge"))
    assert asked == []


def test_it_is_painted_where_it_has_room(window, job, tmp_path):
    on(window, "step")
    blank = window.grab().toImage()
    press(window, KEYS.Key_F5, "1")
    window.bench.column.ruled.notice("", "", ())
    assert window.grab().toImage() != blank
    assert look().width(row(window, "step").last, look().label) > 0
