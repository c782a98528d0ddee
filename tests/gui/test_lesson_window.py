"""A lesson by key: letters place slips, Backspace gives one back, Ctrl + Enter
tries; nothing is given away before.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.gui.places.lesson.lesson_window import LessonWindow
from jobsheet.gui.places.lesson.order_desk import OrderDesk
from jobsheet.gui.places.lesson.sheet_window import SheetWindow
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.lessons.work_so_far import placed_so_far
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


@pytest.fixture
def exercise(samples):
    return order_exercise(Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml")), 1, 7, 1)


def right(exercise):
    """A right order, found by taking what nothing unplaced has to come before."""
    order = exercise.asked.inside(exercise.blocks[0].set_up.key)
    found, left = [], list(order.items)
    while left:
        one = next(key for key in left if not any(order.before(other, key) for other in left if other != key))
        found.append(one)
        left.remove(one)
    return found


def test_a_right_order_is_right_and_reversed_it_says_why(exercise):
    desk = OrderDesk(exercise)
    letters = {slip.key: slip.letter for slip in desk.slips.values()}
    assert desk.head.startswith(f"{len(desk.fixed)} of {len(desk.places)} placed")
    for key in right(exercise):
        if key not in desk.places:
            assert desk.put(letters[key]) is not None
    found = desk.attempt()
    assert (found.total, desk.brackets) == (0, ())
    assert desk.head.startswith("Right")
    free = [at for at, key in enumerate(desk.places) if key not in desk.fixed]
    turned = [desk.places[at] for at in reversed(free)]
    for at, key in zip(free, turned, strict=True):
        desk.places[at] = key
    assert desk.attempt().total > 0
    assert 1 <= len(desk.brackets) <= 3
    assert desk.reason_lines() == []
    desk.reasons = True
    assert all(" before " in line for line in desk.reason_lines())
    near = desk.brackets[0]
    desk.move(near.upper, 1 if near.upper == free[0] else -1)
    assert near not in desk.brackets  # a row that is changed loses its marking
    assert desk.said == ()


def test_what_is_given_away_stays_and_a_slip_has_one_place(exercise):
    desk = OrderDesk(exercise)
    for key in desk.fixed:
        at = desk.places.index(key)
        assert desk.put(desk.slips[key].letter) is None
        assert desk.move(at, 1) == at
    slip = desk.left[0]
    at = desk.put(slip.letter.upper())
    assert desk.put(slip.letter) is None
    assert desk.give_back(at)
    assert slip in desk.left
    assert desk.put("!") is None


@pytest.fixture
def place(show, samples):
    window = show(str(samples / "hm-103-pivot-block.yaml"))
    window.actions_by_id["lesson"].trigger()
    found = next(one for one in window.findChildren(LessonWindow) if one.isVisible())
    yield found
    for one in window.findChildren(LessonWindow):
        one.close()


def test_by_key_from_the_first_slip_to_right(place):
    desk = place.desk
    letters = {slip.key: slip.letter for slip in desk.slips.values()}
    assert place.said.text() == ""
    order = right(desk.exercise)
    free = [key for key in order if key not in desk.places]
    QTest.keyClick(place.board, letters[free[-1]])
    QTest.keyClick(place.board, Qt.Key.Key_Backspace)
    for key in free:
        QTest.keyClick(place.board, letters[key])
    assert [key for key in desk.places if key] == order
    QTest.keyClick(place.board, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert place.head.text().startswith("Right")
    QTest.keyClick(place.board, Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
    assert place.head.text().endswith("placed.")


def test_a_wrong_order_shows_where_and_only_when_asked_why(place):
    desk = place.desk
    order = [key for key in right(desk.exercise) if key not in desk.places]
    letters = {slip.key: slip.letter for slip in desk.slips.values()}
    for key in reversed(order):
        QTest.keyClick(place.board, letters[key])
    QTest.keyClick(place.board, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert desk.brackets
    assert "before" not in place.said.text()
    place.why.click()
    assert " before " in place.said.text()
    assert "Would the part be good" in place.said.text()
    words = place.board.accessibleName()
    assert words.startswith("Your order: 1, ")


def test_another_sheet_is_another_shuffle_and_the_same_seed_the_same(place):
    first = [slip.letter + slip.key for slip in place.desk.slips.values()]
    sheet = place.sheet
    place.another.click()
    assert place.sheet == sheet + 1
    assert [slip.letter + slip.key for slip in place.desk.slips.values()] != first


def test_a_job_without_an_order_worth_asking_says_so(show, samples, tmp_path):
    text = (samples / "hm-100-drilled-plate-b1.yaml").read_text("utf-8")
    path = tmp_path / "short.yaml"
    path.write_text(text, encoding="utf-8")
    window = show(str(path))
    window.desk.do(DeleteSteps(tuple(step.key for _, step in window.desk.job.operations()[2:])))
    window.actions_by_id["lesson"].trigger()
    assert not [one for one in window.findChildren(LessonWindow) if one.isVisible()]
    # Other exercises may be in it: their place says what is there, and what is not.
    place = next(one for one in window.findChildren(SheetWindow) if one.isVisible())
    place.kind.setCurrentIndex(place.kind.findData("order"))
    assert "no order worth asking" in place.head.text()
    place.close()


def test_the_work_so_far_is_drawn_when_the_hand_rests(window_of_pivot, qtbot):
    place = window_of_pivot
    qtbot.waitUntil(lambda: place.work.drawing is not None)
    before = place.work.drawing
    letter = place.desk.left[0].letter
    QTest.keyClicks(place.board, letter)
    qtbot.waitUntil(lambda: place.work.drawing is not None and place.work.drawing is not before)
    assert place.work.said == f"After the steps placed so far: {len(place.desk.in_a_row)}"


def test_what_is_placed_behind_a_gap_is_not_done_yet(exercise):
    desk = OrderDesk(exercise)
    start = len(desk.in_a_row)
    slip = desk.left[0]
    desk.put(slip.letter, len(desk.places) - 2)
    assert len(desk.in_a_row) == start
    job = placed_so_far(exercise.asked.needed.job, exercise.blocks[0].set_up.key, [slip.key])
    assert [one.key for one in job.set_ups[-1].operations] == [slip.key]
    assert job.set_ups[-1].key == exercise.blocks[0].set_up.key


@pytest.fixture
def window_of_pivot(show, samples, tmp_path):
    path = tmp_path / "pivot.yaml"
    path.write_text((samples / "hm-103-pivot-block.yaml").read_text("utf-8"), encoding="utf-8")
    window = show(str(path))
    window.actions_by_id["lesson"].trigger()
    place = next(one for one in window.findChildren(LessonWindow) if one.isVisible())
    yield place
    place.close()
