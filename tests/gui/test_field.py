"""Typed text arrives as it is typed: key by key into the real boxes, never by setting text."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication


def cursor_in(window, key, name):
    """The box of a field of an open row, with all of its text chosen."""
    window.open_key(key)
    box = window.open_row.form.fields[name].box
    box.setFocus()
    box.selectAll()
    return box


def keys_one_by_one(qtbot, box, text):
    """Type a text; after each key exactly what was typed stands there."""
    for end in range(1, len(text) + 1):
        qtbot.keyClick(box, text[end - 1])
        QApplication.processEvents()
        assert box.text() == text[:end]


def keys_one_by_one_from(qtbot, box, there, text):
    """Type on behind what stands there."""
    assert box.text() == there
    for end in range(len(there) + 1, len(text) + 1):
        qtbot.keyClick(box, text[end - 1])
        assert box.text() == text[:end]


def test_a_second_place_can_be_typed(window, qtbot):
    box = cursor_in(window, "drill", "at")
    others = window.desk.job.find("drill")[1].fields.at.points[1:]
    keys_one_by_one(qtbot, box, "40, 25; 20, 20")
    places = window.desk.job.find("drill")[1].fields.at.points
    assert [place.text for place in places[:2]] == ["40, 25", "20, 20"]
    assert places[2:] == others


def test_a_cutter_can_be_typed(window, qtbot):
    box = cursor_in(window, "face-rough", "cutter")
    keys_one_by_one(qtbot, box, "face mill 10 mm, 4 teeth, HSS")
    assert window.desk.job.find("face-rough")[1].fields.cutter.diameter == pytest.approx(0.01)
    window.parts.edits.history.undo()
    assert "10 m" not in box.text()
    assert not window.desk.history.can_undo


def test_spaces_and_noughts_stay_while_the_cursor_is_there(window, qtbot):
    box = cursor_in(window, "drill", "at")
    keys_one_by_one(qtbot, box, " 40 ,  25 ;")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    assert (box.text(), QApplication.focusWidget().text()) == ("40", "25")


def test_a_late_review_does_not_rewrite(window, qtbot):
    box = cursor_in(window, "drill", "at")
    keys_one_by_one(qtbot, box, "40, 25;")
    window.show_job()
    assert box.text() == "40, 25;"


def test_undo_and_redo_write_into_the_box_under_the_cursor(window, qtbot):
    box = cursor_in(window, "drill", "at")
    before = box.text()
    keys_one_by_one(qtbot, box, "40, 25;")
    window.parts.edits.history.undo()
    assert box.text() == before
    window.parts.edits.history.redo()
    assert (box.text(), window.desk.job.find("drill")[1].fields.at.points[0].text) == ("40", "40, 25")


def test_the_last_confirmed_figures_stand_in_pencil_while_the_cursor_is_there(window, qtbot):
    box = cursor_in(window, "face-rough", "depth")
    confirmed = window.open_row.margin.dials._dials[2].number
    keys_one_by_one(qtbot, box, "0.35")
    assert window.open_row.margin.dials._dials[2].number == "0.35"
    keys_one_by_one_from(qtbot, box, "0.35", "0.35 mn")
    dials = window.open_row.margin.dials
    assert dials._stale
    assert dials._dials[2].number == confirmed


def test_a_text_that_was_left_unread_is_a_dash_with_its_field(window, qtbot):
    box = cursor_in(window, "face-rough", "depth")
    keys_one_by_one(qtbot, box, "0.3 mn")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    dials = window.open_row.margin.dials
    assert dials._dials == ()
    assert dials._why_not.startswith("Depth cannot be read.")
    assert window.desk.view("face-rough").problem == "Depth cannot be read."
    assert box.text() == "0.3 mn"
    box.setFocus()
    assert window.open_row.margin.dials._stale
    assert window.open_row.margin.dials._dials


def test_only_figures_follow_a_key_and_the_rest_follows_what_is_meant(window, qtbot, monkeypatch):
    box = cursor_in(window, "face-rough", "depth")
    parts = window.parts  # the solids that arrive are a reason to read the plan too
    qtbot.waitUntil(lambda: not window.later.waiting and parts.answering.done and not parts.solids.waiting)
    QApplication.processEvents()
    asked = []
    ask = parts.answering.ask
    monkeypatch.setattr(parts.answering, "ask", lambda: asked.append("suggestion") or ask())
    review = window.parts.review
    monkeypatch.setattr(window.parts, "review", lambda: asked.append("review") or review())
    keys_one_by_one(qtbot, box, "0.35")
    assert window.open_row.margin.dials._dials[2].number == "0.35"
    assert asked == []
    qtbot.waitUntil(lambda: {"suggestion", "review"} <= set(asked))
    qtbot.waitUntil(lambda: not window.later.waiting)
    asked.clear()
    qtbot.keyClick(box, "1")
    qtbot.keyClick(box, Qt.Key.Key_Return)
    QApplication.processEvents()
    assert "suggestion" in asked


def test_what_fails_beside_the_figures_is_absent_and_stands_in_the_log(window, qtbot, monkeypatch, home):
    from jobsheet.reckoning.answers import all_answers

    def broken(*_args):
        raise ZeroDivisionError("nobody foresaw this suggestion")

    monkeypatch.setattr(all_answers, "advice_on", broken)
    box = cursor_in(window, "face-rough", "depth")
    keys_one_by_one(qtbot, box, "0.35")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    qtbot.waitUntil(lambda: not window.later.waiting and window.parts.answering.done)
    assert not window.open_row.suggestions.item.words
    assert "nobody foresaw this suggestion" in (home / "problems.log").read_text()


def test_of_a_step_with_an_unread_field_nothing_is_answered(window, qtbot):
    """Neither dials, suggestions nor speeds of an older text stand under a dash;
    they come back with the next text.
    """
    box = cursor_in(window, "face-rough", "depth")

    def settled():
        return not window.later.waiting and window.parts.answering.done

    qtbot.waitUntil(settled)
    assert window.parts.answering._found.readings is not None
    keys_one_by_one(qtbot, box, "0.3 mn")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    qtbot.waitUntil(settled)
    assert window.parts.answering._found.readings is None
    assert window.parts.answering._found.neighbours is None
    assert not window.open_row.suggestions.item.words
    box.setFocus(Qt.FocusReason.TabFocusReason)
    keys_one_by_one(qtbot, box, "0.3")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    qtbot.waitUntil(lambda: settled() and window.parts.answering._found.readings is not None)


def typed_in_header(window, qtbot, owner, name, text):
    """Type into a field of the form that is open, and leave it by Tab."""
    box = window.bench.column.ruled.opened.forms[owner].fields[name].box
    box.setFocus()
    box.selectAll()
    for letter in text:
        qtbot.keyClick(box, letter)
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    return box


def test_a_size_of_the_stock_left_unread_is_a_dash_at_every_step(window, qtbot):
    window.parts.edits.rows.open_job()
    typed_in_header(window, qtbot, "job:stock", "length", "80 mn")
    keys = [operation.key for _, operation in window.desk.job.operations()]
    assert {window.desk.view(key).problem for key in keys} == {"Length cannot be read."}
    window.open_key(keys[0])
    assert window.open_row.margin.dials._why_not.startswith("Length cannot be read.")
    window.parts.edits.walking.next_remark()
    form = window.bench.column.ruled.opened.forms["job:stock"]
    box = form.fields["length"].box
    assert box.hasFocus()
    assert (
        window.desk.view(keys[0]).problem == ""
    )  # in hand again: the last that could be read stands in pencil
    assert window.desk.view(keys[0]).stale
    box.selectAll()
    keys_one_by_one(qtbot, box, "80")
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    assert {window.desk.view(key).problem for key in keys} == {""}


def test_a_size_of_the_holding_left_unread_is_a_dash_at_the_steps_held_so(window, qtbot):
    first = window.desk.job.set_ups[0]
    window.open_key(first.key)
    typed_in_header(window, qtbot, f"holding:{first.key}", "tighten", "20 N-m")
    for set_up, operation in window.desk.job.operations():
        problem = "Tighten to cannot be read." if set_up.key == first.key else ""
        assert window.desk.view(operation.key).problem == problem


def test_words_left_unread_in_the_header_leave_the_figures(window, qtbot):
    window.parts.edits.rows.open_job()
    typed_in_header(window, qtbot, "job:part", "quantity", "many")
    assert not any(window.desk.view(operation.key).problem for _, operation in window.desk.job.operations())


def test_what_cannot_be_read_keeps_nothing_of_where_it_was_found_out(window, qtbot):
    box = cursor_in(window, "drill", "depth")
    keys_one_by_one(qtbot, box, "6 mn")
    problem = window.open_row.form.fields["depth"].problem
    assert problem is not None
    assert problem.__traceback__ is None
