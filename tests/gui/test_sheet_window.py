"""Every sort of exercise at the screen, by key: the pages as on paper, a try says how it went, reasons when
asked for; kept only where one says so.
"""

from __future__ import annotations

import contextlib
import re
import shutil

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.gui.places.lesson.sheet_window import SheetWindow
from jobsheet.lessons.cutter_exercise import cutter_exercise
from jobsheet.lessons.fault_exercise import fault_exercise
from jobsheet.lessons.figure_exercise import figure_exercise
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from jobsheet.storage.kept import lesson_results

SEED = 7


@pytest.fixture
def reckoned(samples):
    return Reckoner(learns=True).reckon(read_job(samples / "hm-103-pivot-block.yaml"))


@pytest.fixture
def place(show, samples, tmp_path, reckoned):
    path = tmp_path / "block.yaml"
    shutil.copy(samples / "hm-103-pivot-block.yaml", path)
    window = show(str(path))
    found = SheetWindow(window.parts.visit, reckoned, SEED)
    found.show()
    yield found
    with contextlib.suppress(RuntimeError):  # it is gone where a plan was begun from it
        found.close()


def choose(place, kind, level=1):
    place.level.setCurrentIndex(place.level.findData(level))
    place.kind.setCurrentIndex(place.kind.findData(kind))


def typed(place, text):
    QTest.keyClicks(place.answer, text)
    QTest.keyClick(place.answer, Qt.Key.Key_Return)


def right_answer(reckoned, kind):
    """What is right, worked out from the exercise itself."""
    if kind == "figures":
        asked = figure_exercise(reckoned, 1, SEED, 1).questions
        # The number alone is typed: the answer is said as it is set, `240 mm/min` or `drill 6.8`.
        numbers = [re.findall(r"[0-9.]+", one.answer)[0] for one in asked]
        return " ".join(f"{at}={number}" for at, number in enumerate(numbers, 1))
    if kind == "cutter":
        asked = cutter_exercise(reckoned, 1, SEED, 1).questions
        return " ".join(
            f"{at}={next(choice.letter for choice in one.choices if choice.refused is None)}"
            for at, one in enumerate(asked, 1)
        )
    if kind == "order":
        exercise = order_exercise(reckoned, 1, SEED, 1)
        block = exercise.blocks[0]
        order = exercise.asked.inside(block.set_up.key)
        found, left = [], list(order.items)
        while left:
            one = next(
                key for key in left if not any(order.before(other, key) for other in left if other != key)
            )
            found.append(one)
            left.remove(one)
        letters = {slip.key: slip.letter for slip in block.slips}
        return "".join(letters[key] for key in found)
    return str(fault_exercise(reckoned, 1, SEED, 1, missing=kind == "missing").faults[0].rows[0])


def shown_rows(reckoned):
    exercise = fault_exercise(reckoned, 1, SEED, 1, missing=False)
    return [
        step.number for one in exercise.job.set_ups if one.key in exercise.shown for step in one.operations
    ]


@pytest.mark.parametrize("kind", ["order", "wrong", "missing", "cutter", "figures"])
def test_a_right_answer_is_right(place, reckoned, kind):
    choose(place, kind)
    assert place.view.count >= 1
    typed(place, right_answer(reckoned, kind))
    assert place.desk.result is not None
    assert place.desk.result.right, place.desk.result.lines


def test_nothing_is_given_away_before_it_is_asked_for(place, reckoned):
    fault = fault_exercise(reckoned, 1, SEED, 1, missing=False).faults[0]
    assert not place.why.isEnabled()
    other = next(row for row in shown_rows(reckoned) if row not in fault.rows)
    typed(place, str(other))
    shown = place.head.text() + place.said.text()
    assert place.head.text() == "0 of 1 found."
    assert fault.title not in shown
    assert fault.remark.message not in shown
    QTest.keyClick(place.why, Qt.Key.Key_Space)
    assert fault.title in place.said.text()  # the rule to think of, not the row
    assert fault.remark.message not in place.said.text()
    QTest.keyClick(place.again, Qt.Key.Key_Space)
    assert place.said.text() == ""


def test_a_row_that_is_not_on_the_sheet_is_said_to_be_none(place, reckoned):
    """Level 1 shows one set-up: its rows keep the numbers of the whole job."""
    rows = shown_rows(reckoned)
    for row in (rows[0] - 1, rows[-1] + 1):
        typed(place, str(row))
        assert place.desk.result is None
        assert place.head.text().endswith(f"write the numbers of rows, {rows[0]} to {rows[-1]}.")
        place.answer.clear()


def test_what_cannot_be_read_is_one_sentence(place):
    typed(place, "the drill")
    assert place.desk.result is None
    assert place.head.text().endswith(".")
    assert place.answer.text() == "the drill"


def test_a_job_without_such_an_exercise_says_so(show, samples, tmp_path):
    path = tmp_path / "plate.yaml"
    shutil.copy(samples / "hm-101-setting-block.yaml", path)
    window = show(str(path))
    place = SheetWindow(window.parts.visit, Reckoner(learns=True).reckon(read_job(path)), SEED)
    place.show()
    choose(place, "cutter")
    assert place.view.count == 0
    assert "has no tool with another one in the cabinet" in place.head.text()
    assert not place.go.isEnabled()
    place.close()


def test_a_result_is_kept_by_initials_and_all_are_gone_in_one_press(place, reckoned):
    assert lesson_results.kept_results() == ()
    typed(place, right_answer(reckoned, "wrong"))
    QTest.keyClicks(place.initials, "Anna Smith")
    QTest.keyClick(place.keep, Qt.Key.Key_Space)
    assert lesson_results.kept_results() == ()
    assert "no name is kept" in place.head.text()
    place.initials.selectAll()
    QTest.keyClicks(place.initials, "AS")
    QTest.keyClick(place.initials, Qt.Key.Key_Return)
    (line,) = lesson_results.kept_results()
    assert line.split("; ")[1:] == ["AS", "HM-103", "wrong, level 1", "1", "Right"]
    QTest.keyClick(place.delete, Qt.Key.Key_Space)
    assert not lesson_results.place().exists()


def test_a_part_is_planned_by_oneself_and_marked_by_the_review(place):
    choose(place, "plan")
    assert place.answer.isHidden()
    window = place._visit.parent
    QTest.keyClick(place.begin, Qt.Key.Key_Space)
    desk = place._visit.desk
    assert desk.job.operations() == []
    assert desk.job.finished.features
    assert desk.exercise is not None
    window.actions_by_id["lesson"].trigger()
    again = next(one for one in window.findChildren(SheetWindow) if one.isVisible() and one is not place)
    QTest.keyClick(again.go, Qt.Key.Key_Space)
    assert again.head.text() == "Nothing is planned yet."
    desk.history.restore(desk.exercise, {})  # as if it had been planned as the trainer did
    QTest.keyClick(again.go, Qt.Key.Key_Space)
    assert again.head.text() == "Right: the review has nothing against it."
    again.close()


def test_results_that_cannot_be_read_are_said_and_not_written_over(place, monkeypatch):
    def refuses(*_, **__):
        raise PermissionError(13, "Permission denied")

    lesson_results.place().parent.mkdir(parents=True, exist_ok=True)
    lesson_results.place().write_bytes(b"kept\n")
    monkeypatch.setattr(type(lesson_results.place()), "read_text", refuses)
    typed(place, "10")
    assert "cannot be read" in place.kept.text()
    QTest.keyClicks(place.initials, "AS")
    QTest.keyClick(place.keep, Qt.Key.Key_Space)
    assert lesson_results.place().read_bytes() == b"kept\n"
