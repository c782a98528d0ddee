"""A machine one knows, on a few lines, typed key by key: of another drive nothing stays behind."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QApplication

from jobsheet.gui.ink import look
from jobsheet.gui.places.card import card_window
from jobsheet.storage.card_files import find_card
from jobsheet.storage.card_steps import begin
from jobsheet.storage.paper_text import paper_text


@pytest.fixture
def card(qtbot):
    look.apply("light")
    window = card_window.CardWindow(begin("bench-mill"), None, None, guided=True)
    window.show()
    window.activateWindow()
    window.short.focus_first()
    QApplication.processEvents()
    yield window
    window.history.mark_saved()
    window.close()


def keys(qtbot, text):
    """Into what has the focus, one after another; what was typed stands there after each."""
    box = QApplication.focusWidget()
    for end in range(1, len(text) + 1):
        qtbot.keyClick(box, text[end - 1])
        QApplication.processEvents()
        assert QApplication.focusWidget() is box
        assert box.text() == text[:end]


def tab(qtbot):
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    QApplication.processEvents()


def test_a_machine_with_belts_is_typed_from_top_to_bottom(card, qtbot, home):
    keys(qtbot, "Corner mill")
    tab(qtbot)  # belts is what the class has
    tab(qtbot)  # one range
    tab(qtbot)
    for text in ("250 480 820 1600", "600 W"):
        keys(qtbot, text)
        tab(qtbot)
    tab(qtbot)  # dials in mm
    for text in ("2 mm", "80", "1.5 mm", "60", "320 mm", "140 mm", "300 mm", "90 mm", "85 mm"):
        keys(qtbot, text)
        tab(qtbot)
    assert card.problems == ()
    assert card.save()
    made = find_card("corner-mill")
    assert [round(one.speed * 60) for one in made.spindle.ranges[0].steps] == [250, 480, 820, 1600]
    assert made.handles[0].line == pytest.approx(25e-6)


def test_an_electronic_drive_is_asked_for_its_bounds_and_has_no_belts(card, qtbot):
    by = card.short.by
    by.setFocus()
    for _ in range(3):
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Right)
        QApplication.processEvents()
    assert by.text() == "electronic"
    card.short.count.setFocus()
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Right)
    QApplication.processEvents()
    asked = list(card.short.form.fields)
    assert asked[:4] == ["lowest 0", "highest 0", "lowest 1", "highest 1"]
    assert card.short.charts is None
    for name, text in (
        ("lowest 0", "100 rpm"),
        ("highest 0", "1100 rpm"),
        ("lowest 1", "200 rpm"),
        ("highest 1", "2500 rpm"),
    ):
        box = card.short.form.fields[name].box
        box.setFocus()
        box.selectAll()
        keys(qtbot, text)
    text = paper_text(card.history.paper)
    assert "belt" not in text
    assert "steps" not in text
    assert card.problems == ()


def test_a_speed_that_is_none_stands_as_typed_with_its_sentence_and_is_not_in_the_card(card, qtbot):
    box = card.short.charts.fields["speeds 0"].box
    box.setFocus()
    box.selectAll()
    keys(qtbot, "250, fast")
    field = card.short.charts.fields["speeds 0"]
    assert "fast" in str(field.problem)
    tab(qtbot)
    assert box.text() == "250, fast"
    assert "fast" not in paper_text(card.history.paper)


def test_what_was_typed_is_one_step_of_undo_and_comes_back(card, qtbot):
    before = card.history.paper
    box = card.short.charts.fields["speeds 0"].box
    box.setFocus()
    box.selectAll()
    keys(qtbot, "250 500")
    after = card.history.paper
    card.undo()
    assert card.history.paper == before
    assert box.text() == "200, 350, 600, 950, 1500, 2200"
    card.redo()
    assert card.history.paper == after


def test_another_class_and_then_another_drive_touch_no_button_that_is_gone(card, qtbot):
    for name in ("mill-drill", "turret-and-knee-mill", "bench-mill"):
        card.choose(name)
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        for by in ("electronic", "gears"):
            next(half for half in card.short.by.halves if half.text() == by).click()
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    assert card.problems == ()


def test_in_inches_the_boxes_say_so_and_a_bare_number_is_one(card, qtbot):
    next(half for half in card.short.form.fields["dial"].box.halves if half.text() == "in").click()
    QApplication.processEvents()
    field = card.short.form.fields["turn table"]
    assert field.unit == "in"
    field.box.setFocus()
    field.box.selectAll()
    keys(qtbot, "0.1")
    assert field.understood == "2.54 mm = 0.1000 in"
    tab(qtbot)
    assert field.box.text() == "0.1 in"
    assert "a turn: 0.1 in" in paper_text(card.history.paper)
