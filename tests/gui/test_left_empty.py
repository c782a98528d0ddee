"""A field that is left empty shows in pencil what is recommended; typing pins it, one key gives it back."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

STEP = "face-rough"


def box_of(window, name):
    return window.open_row.form.fields[name].box


def emptied(window, qtbot, name):
    box = box_of(window, name)
    box.setFocus()
    box.selectAll()
    qtbot.keyClick(box, Qt.Key.Key_Delete)
    return box


def settled(window, qtbot):
    qtbot.waitUntil(lambda: not window.later.waiting and not window.desk.reckoner.behind)


def filled(window, name):
    value = getattr(window.desk.filled(STEP).fields, name)
    return value.text.split()[0] if value is not None else "all at once"


def test_an_empty_feed_is_recommended_in_pencil_and_the_figures_stand(window, qtbot):
    window.open_key(STEP)
    box = emptied(window, qtbot, "feed_per_tooth")
    assert box.text() == ""
    assert box.placeholderText()
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    settled(window, qtbot)
    assert box.placeholderText() == filled(window, "feed_per_tooth")
    assert box_of(window, "layer").placeholderText() == filled(window, "layer")
    assert window.open_row.margin.dials._dials
    assert "as recommended" in window.open_row.form.fields["feed_per_tooth"].under()
    assert "as recommended" in box.accessibleDescription()


def test_typing_pins_a_value_and_f8_gives_it_back(window, qtbot):
    window.open_key(STEP)
    window.parts.after_figures()
    emptied(window, qtbot, "feed_per_tooth")
    box = box_of(window, "layer")
    box.setFocus()
    settled(window, qtbot)
    box.selectAll()
    for key in "0.4":
        qtbot.keyClick(box, key)
    assert window.desk.job.find(STEP)[1].fields.layer.text == "0.4"
    assert window.desk.filled(STEP).fields.layer.text == "0.4"
    QTest.keyClick(box, Qt.Key.Key_F8)
    settled(window, qtbot)
    assert window.desk.job.find(STEP)[1].fields.layer is None
    assert box.text() == ""
    assert box.placeholderText() == filled(window, "layer")
    assert "recommended" in window.bench.status.message.lower()


def test_another_metal_is_followed(window, qtbot):
    window.open_key(STEP)
    box = emptied(window, qtbot, "feed_per_tooth")
    box_spindle = emptied(window, qtbot, "spindle")
    qtbot.keyClick(box_spindle, Qt.Key.Key_Tab)
    settled(window, qtbot)
    before = box.placeholderText(), box_spindle.placeholderText()
    window.parts.edits.rows._typed("job", "material", "316L")
    settled(window, qtbot)
    assert (box.placeholderText(), box_spindle.placeholderText()) != before


def test_what_is_recommended_is_given_back_where_the_step_leaves_the_rest(window, qtbot):
    window.open_key(STEP)
    window.parts.after_figures()
    emptied(window, qtbot, "feed_per_tooth")
    box = box_of(window, "layer")
    box.setFocus()
    for key in "0.05":
        qtbot.keyClick(box, key)
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    settled(window, qtbot)
    line = window.open_row.suggestions
    qtbot.waitUntil(lambda: bool(line.item.edits))
    assert ("layer", "") in line.item.edits
    qtbot.keyClick(line.use, Qt.Key.Key_Space)
    settled(window, qtbot)
    assert window.desk.job.find(STEP)[1].fields.layer is None
    qtbot.waitUntil(lambda: not line.item.edits)


def test_f8_on_a_closed_row_gives_the_whole_step_back_and_undo_brings_it_again(window, qtbot):
    window.parts.after_figures()
    before = window.desk.job
    ruled = window.bench.column.ruled
    ruled.focus_line(STEP)
    QTest.keyClick(window.focusWidget() or ruled, Qt.Key.Key_F8)
    qtbot.waitUntil(lambda: window.desk.job is not before)
    fields = window.desk.job.find(STEP)[1].fields
    assert (fields.spindle, fields.feed_per_tooth, fields.layer, fields.width) == (None,) * 4
    assert "one step" in window.bench.status.message
    window.parts.edits.history.undo()
    assert window.desk.job == before
