"""Rows are added, doubled, taken out and moved by keys and by the mouse."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.edit.step_commands import AddSetUp
from jobsheet.gui.column.open_row import OpenRow
from jobsheet.storage.job_file import blank_job


def keys(window):
    return [operation.key for _, operation in window.desk.job.operations()]


def sheet(window):
    return window.bench.column.ruled


def press(qtbot, window, key, modifier=Qt.KeyboardModifier.NoModifier):
    qtbot.keyClick(window.focusWidget() or window, key, modifier)


def test_up_and_down_choose_rows(window, qtbot):
    sheet(window).focus_line("clamp")
    press(qtbot, window, Qt.Key.Key_Down)
    assert sheet(window).chosen_key == "face-rough"
    press(qtbot, window, Qt.Key.Key_Up)
    press(qtbot, window, Qt.Key.Key_Up)
    assert sheet(window).chosen_key == "set-up-1"


def test_enter_opens_and_escape_closes(window, qtbot):
    sheet(window).focus_line("drill")
    press(qtbot, window, Qt.Key.Key_Return)
    assert window.opened_key == "drill"
    assert window.focusWidget() is window.open_row.form.fields["cutter"].box
    press(qtbot, window, Qt.Key.Key_Escape)
    assert window.opened_key == ""
    assert window.focusWidget() is sheet(window)
    assert sheet(window).chosen_key == "drill"


def test_page_down_steps_through_open_rows(window, qtbot):
    window.open_key("face-rough")
    press(qtbot, window, Qt.Key.Key_PageDown)
    assert window.opened_key == "face-finish"
    press(qtbot, window, Qt.Key.Key_PageUp)
    assert window.opened_key == "face-rough"


def test_one_row_is_open_at_a_time(window):
    window.open_key("face-rough")
    window.open_key("drill")
    assert window.opened_key == "drill"
    assert [form.key for form in sheet(window).findChildren(OpenRow) if not form.isHidden()] == ["drill"]


def test_alt_down_moves_and_says_the_place(window, qtbot):
    sheet(window).focus_line("face-rough")
    press(qtbot, window, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert keys(window)[1:3] == ["face-finish", "face-rough"]
    assert "place 3 of 8" in window.bench.status.message
    assert window.focusWidget() is sheet(window)
    assert sheet(window).chosen_key == "face-rough"


def test_an_open_row_moves_too(window, qtbot):
    window.open_key("face-rough")
    press(qtbot, window, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert keys(window)[0] == "face-rough"
    assert window.opened_key == "face-rough"


def test_a_row_moves_over_the_end_into_the_next_set_up(window, qtbot):
    window.desk.do(AddSetUp("set-up-1"))
    last = keys(window)[-1]
    sheet(window).focus_line(last)
    press(qtbot, window, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert window.desk.job.find(last)[0].key == "set-up-2"


def test_delete_leaves_a_line_that_offers_undo(window, qtbot):
    sheet(window).focus_line("find-zero")
    press(qtbot, window, Qt.Key.Key_Delete)
    assert "find-zero" not in keys(window)
    line = sheet(window).notice_line
    assert line.text == "40 removed."
    assert sheet(window).chosen_key == "spot"
    line.buttons[0].click()
    assert "find-zero" in keys(window)
    assert sheet(window).notice_line is None


def test_delete_in_a_field_takes_a_letter_not_the_row(window, qtbot):
    window.open_key("face-rough")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    box.setCursorPosition(0)
    qtbot.keyClick(box, Qt.Key.Key_Delete)
    assert box.text() == ".4"
    assert "face-rough" in keys(window)


def test_duplicate(window, qtbot):
    sheet(window).focus_line("drill")
    press(qtbot, window, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    place = keys(window).index("drill")
    assert keys(window)[place + 1] == sheet(window).chosen_key
    assert window.desk.job.find(keys(window)[place + 1])[1].number == 65


def test_insert_offers_every_kind_and_opens_the_new_row(window, qtbot):
    sheet(window).focus_line("drill")
    from PySide6.QtWidgets import QMenu

    menu = QMenu()
    window.fill_menu("[kinds]", menu)
    from jobsheet.operations.registry import kinds, title

    assert [action.text() for action in menu.actions()] == [title(kind) for kind in kinds()]
    before = set(keys(window))
    next(action for action in menu.actions() if action.text() == title("face")).trigger()
    (new,) = set(keys(window)) - before
    assert window.opened_key == new
    assert keys(window).index(new) == keys(window).index("drill") + 1


def middle(window, key, x):
    line = sheet(window).by_key[key]
    return QPoint(x, line.top + line.high // 2)


def move_hand(window, start, end):
    none, left = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.LeftButton
    QTest.mousePress(sheet(window), left, none, start)
    QTest.mouseMove(sheet(window), QPoint(start.x(), (start.y() + end.y()) // 2))
    QTest.mouseMove(sheet(window), end)
    QTest.mouseRelease(sheet(window), left, none, end)


def drag(window, key, target, *, below=False):
    to = sheet(window).by_key[target]
    move_hand(window, middle(window, key, 40), QPoint(40, to.top + (to.high - 3 if below else 3)))


def test_a_row_is_dragged_by_its_number(window):
    drag(window, "drill", "face-rough")
    assert keys(window)[1] == "drill"
    drag(window, "drill", "tap", below=True)
    assert keys(window).index("drill") == keys(window).index("tap") + 1
    window.parts.edits.history.undo()
    assert keys(window)[1] == "drill"


def test_a_drag_over_words_does_nothing(window):
    before = keys(window)
    start = middle(window, "drill", 300)
    move_hand(window, start, start - QPoint(0, 100))
    assert keys(window) == before
    assert window.opened_key == ""


def test_a_click_opens_a_row(window, qtbot):
    qtbot.mouseClick(sheet(window), Qt.MouseButton.LeftButton, pos=middle(window, "tap", 300))
    assert window.opened_key == "tap"


def test_a_press_gives_the_keyboard_and_one_in_an_open_form_does_not(window, qtbot):
    window.open_key("face-rough")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    qtbot.mousePress(window.open_row, Qt.MouseButton.LeftButton, pos=QPoint(300, 60))
    assert window.focusWidget() is box
    QTest.mousePress(
        sheet(window),
        Qt.MouseButton.RightButton,
        Qt.KeyboardModifier.NoModifier,
        middle(window, "drill", 300),
    )
    assert window.focusWidget() is sheet(window)
    assert sheet(window).chosen_key == "drill"


def test_a_drawing_opens_its_row(window):
    cell = next(c for c in window.bench.strip._cells if c.stage is not None and c.stage.key == "drill")
    cell.click()
    assert window.opened_key == "drill"


def test_the_heading_sticks_while_its_rows_scroll(show):
    window = show(size=(1024, 600))
    window.open_key("face-rough")
    column = window.bench.column
    column.scroll_to(120)
    assert column.sticky is not None
    assert not column.sticky.isHidden()
    assert column.sticky.y() == 0
    column.scroll_to(0)
    assert column.sticky.isHidden()


def test_f8_goes_to_the_field_that_cannot_be_read(window, type_in, qtbot):
    window.open_key("drill")
    type_in(window, "peck", "7 im")
    window.close_row()
    press(qtbot, window, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    assert window.opened_key == "drill"
    assert window.focusWidget() is window.open_row.form.fields["peck"].box
    assert "im" in window.bench.status.message


def test_f8_says_when_there_is_nothing(window, qtbot):
    window.desk.remarks = ()
    press(qtbot, window, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    assert "Nothing to mend" in window.bench.status.message


def test_an_empty_job_says_what_to_begin_with(window, qtbot, monkeypatch):
    from jobsheet.gui.forms import ask

    monkeypatch.setattr(ask, "save_changes", lambda *_: "throw away")
    window.parts.files.begin(blank_job("bench-mill-b-1"))
    press(qtbot, window, Qt.Key.Key_Escape)
    empty = sheet(window).lines[-1].widget
    assert empty.fact == "No operation yet"
    empty.button.click()
    assert window.desk.job.operations()[0][1].kind == "face"


def test_renumber(window):
    window.parts.hand.do(DeleteSteps(("clamp",)))
    window.parts.edits.steps.renumber()
    assert [operation.number for _, operation in window.desk.job.operations()] == [10, 20, 30, 40, 50, 60, 70]


def test_tab_goes_through_form_remarks_suggestions_and_margin(window, qtbot):
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 1)
    window.parts.review()
    window.open_key("drill")
    row = window.open_row
    assert row.remark_lines, "drilled before it is spotted"
    last = list(row.form.fields.values())[-1].box
    last.setFocus()
    wanted = []
    for line in row.remark_lines:
        wanted += [line, *([line.button] if line.button else []), line.aside]
    wanted += [*row.suggestions.stops(), *row.margin.limits.stops(), row.margin.more]
    seen = []
    for _ in wanted:
        press(qtbot, window, Qt.Key.Key_Tab)
        seen.append(window.focusWidget())
    assert seen == wanted


def test_a_fix_mends_the_plan_and_can_be_undone(window):
    before = keys(window)
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 4)  # behind the zero, before its spot
    window.parts.review()
    window.open_key("drill")
    window.open_row.remark_lines[0].button.click()
    window.parts.review()
    assert keys(window).index("spot") < keys(window).index("drill")
    assert window.desk.remarks_of("drill") == ()
    window.parts.edits.history.undo()
    window.parts.edits.history.undo()
    assert keys(window) == before


def test_f8_goes_to_a_remark(window, qtbot):
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 1)
    window.parts.review()
    press(qtbot, window, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    assert window.opened_key in ("drill", "spot")
    assert window.focusWidget() in window.open_row.remark_lines


def test_delete_on_a_choice_takes_out_no_row(window, qtbot):
    window.open_key("face-rough")
    half = window.open_row.form.fields["along"].box.halves[0]
    half.setFocus()
    qtbot.keyClick(half, Qt.Key.Key_Delete)
    assert "face-rough" in keys(window)


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space])
def test_names_and_cells_open_by_enter(window, qtbot, key):
    """The job's own form needs no key of its own: its cell has the focus and is pressed."""
    window.bench.title.cells["part"].setFocus()
    press(qtbot, window, key)
    qtbot.waitUntil(lambda: window.opened_key == "job")


def test_a_fix_is_for_the_plan_as_it_is_now(window, qtbot, type_in):
    """The remark stood before the places were typed, and says the same after: its
    fix spots the places that are there.
    """
    window.open_key("spot")
    window.parts.edits.steps.delete()
    window.parts.review()
    window.open_key("drill")
    line = next(line for line in window.open_row.remark_lines if "Spot before" in line.remark.message)
    places = window.open_row.form.rows
    while len(places.rows) > 1:
        press(qtbot, places.cells[1][0], Qt.Key.Key_Delete, Qt.KeyboardModifier.ControlModifier)
    type_in(window, "at", "10, 15; 50, 15")
    line.button.click()
    window.parts.review()
    steps = [step for _, step in window.desk.job.operations()]
    spot = steps[[step.key for step in steps].index("drill") - 1]
    assert [(one.x.text, one.y.text) for one in spot.fields.at.items] == [("10", "15"), ("50", "15")]
    assert not [one for one in window.desk.remarks if one.rule == "spot-before-drilling"]


def test_a_row_opened_by_key_is_typed_over(window, qtbot):
    sheet(window).focus_line("drill")
    press(qtbot, window, Qt.Key.Key_Return)
    for letter in "drill 5.5":
        qtbot.keyClicks(window.focusWidget(), letter)
    assert window.open_row.form.fields["cutter"].box.text() == "drill 5.5"
