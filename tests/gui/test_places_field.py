"""Places as rows, key by key in the window: typing, walking, inserting, taking
out, moving, pasting, generators.
"""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job

KEY = Qt.Key
ALT, CONTROL = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier
CIRCLE = "circle of 6 on 40 around 40, 25"


@pytest.fixture
def table(window):
    """The places of the drilling step of the sample: 14, 12; 66, 12; 66, 38; 14, 38."""
    window.open_key("drill")
    field = window.open_row.form.rows
    field.cells[0][0].setFocus(Qt.FocusReason.TabFocusReason)
    return field


def keys(*pressed):
    """Press keys and type texts into whatever has the focus, one after the other."""
    for one in pressed:
        if isinstance(one, str):
            for letter in one:
                QTest.keyClick(QApplication.focusWidget(), letter)
        elif isinstance(one, tuple):
            QTest.keyClick(QApplication.focusWidget(), *one)
        else:
            QTest.keyClick(QApplication.focusWidget(), one)


def at(window, key="drill"):
    return window.desk.job.find(key)[1].fields.at


def spots(window):
    return [(place.x.text, place.y.text) for place in at(window)]


def name():
    return QApplication.focusWidget().accessibleName()


def paste(text):
    QGuiApplication.clipboard().setText(text)
    keys((KEY.Key_V, CONTROL))


SAMPLE = [("14", "12"), ("66", "12"), ("66", "38"), ("14", "38")]


def test_each_place_is_a_row_with_its_name_and_its_dials(window, table):
    assert [(x.text(), y.text()) for x, y in table.cells[:5]] == [*SAMPLE, ("", "")]
    assert [x.accessibleName() for x, _ in table.cells[:2]] == ["Place 1, X", "Place 2, X"]
    # 66 mm on the handle of bench mill B-1: 2.5 mm a turn in 125 lines: 26 turns
    # and 1 mm (machine-cards, B-1).
    assert table.words[1].dials == ("26 + 50", "4 + 100")
    assert "26 + 50" in table.cells[1][0].accessibleDescription()


def test_tab_goes_right_and_enter_goes_down_and_adds(window, table):
    keys(KEY.Key_Tab)
    assert name() == "Place 1, Y"
    keys(KEY.Key_Return)
    assert name() == "Place 2, X"
    for _ in range(3):
        keys(KEY.Key_Return)
    assert name() == "Place 5, X"
    keys("20", KEY.Key_Tab, "21", KEY.Key_Return, "30", KEY.Key_Return, "31", KEY.Key_Return)
    assert spots(window) == [*SAMPLE, ("20", "21"), ("30", "31")]
    assert name() == "Place 7, X"
    keys(KEY.Key_Return)
    assert window.open_row.form.fields["within"].box.hasFocus()


def test_each_change_is_one_step_that_names_itself(window, table):
    history = window.desk.history
    keys(KEY.Key_Down, "65", KEY.Key_Tab, "13")
    assert history.undo_label == "change place 2, Y of step 60"
    window.parts.edits.history.undo()
    assert history.undo_label == "change place 2, X of step 60"
    assert spots(window)[1] == ("65", "12")
    window.parts.edits.history.undo()
    assert spots(window) == SAMPLE
    window.parts.edits.history.redo()
    window.parts.edits.history.redo()
    assert spots(window)[1] == ("65", "13")


def test_delete_takes_out_insert_inserts_and_alt_moves(window, table):
    keys(KEY.Key_Down, (KEY.Key_Delete, CONTROL))
    assert spots(window) == [SAMPLE[0], SAMPLE[2], SAMPLE[3]]
    assert window.desk.history.undo_label == "take out place 2 of step 60"
    assert name() == "Place 2, X"
    keys((KEY.Key_Up, ALT))
    assert spots(window) == [SAMPLE[2], SAMPLE[0], SAMPLE[3]]
    assert window.desk.history.undo_label == "move place 2 up of step 60"
    assert name() == "Place 1, X"
    keys((KEY.Key_Down, ALT), (KEY.Key_Down, ALT), (KEY.Key_Down, ALT))
    assert spots(window) == [SAMPLE[0], SAMPLE[3], SAMPLE[2]]
    keys(KEY.Key_Insert)
    assert name() == "Place 3, X"
    assert len(at(window)) == 3
    keys("1", KEY.Key_Return, "2")
    assert spots(window) == [SAMPLE[0], SAMPLE[3], ("1", "2"), SAMPLE[2]]
    keys((KEY.Key_A, CONTROL), KEY.Key_Delete)
    assert QApplication.focusWidget().text() == ""
    keys(KEY.Key_Delete)
    assert spots(window) == [SAMPLE[0], SAMPLE[3], SAMPLE[2]]
    assert len([step for _, step in window.desk.job.operations()]) == len(
        [step for _, step in window.desk.history._states[0].job.operations()]
    )


def test_an_inserted_row_that_stays_empty_is_gone(window, table):
    keys(KEY.Key_Insert)
    assert len(table.rows) == 5
    window.open_row.form.fields["depth"].box.setFocus()
    assert len(table.rows) == 4
    assert not window.desk.history.can_undo


def test_a_list_typed_into_the_first_box_becomes_rows_when_it_is_left(window, table):
    box = table.cells[0][0]
    keys(KEY.Key_End, "; 20, 20")
    assert box.text() == "14; 20, 20"
    assert spots(window) == [SAMPLE[0], ("20", "20"), *SAMPLE[1:]]
    keys(KEY.Key_Tab)
    assert (box.text(), table.cells[1][0].text(), table.cells[1][1].text()) == ("14", "20", "20")
    assert name() == "Place 1, Y"


def test_a_row_that_cannot_be_read_stands_with_its_sentence_and_nothing_is_lost(window, table):
    keys(KEY.Key_Down, "3z3", KEY.Key_Tab, KEY.Key_Tab)
    assert table.cells[1][0].text() == "3z3"
    assert "z3" in str(table.words[1].problem)
    assert table.is_wrong(table.cells[1][0])
    assert not table.is_wrong(table.cells[1][1])
    assert spots(window) == SAMPLE
    window.close_row()
    window.open_key("drill")
    again = window.open_row.form.rows
    assert again.cells[1][0].text() == "3z3"
    window.parts.edits.walking.next_remark()
    assert name() == "Place 2, X"
    keys("33")
    assert spots(window)[1] == ("33", "12")


def test_a_place_without_its_y_says_so_once_it_is_left(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys("20")
    assert not table.is_wrong(table.cells[4][1])
    keys(KEY.Key_Up)
    assert "Y is missing" in str(table.words[4].problem)
    assert table.is_wrong(table.cells[4][1])


@pytest.mark.parametrize("text", ["1\t2\n3,5\t4,5\n", "1 2\n3,5 4,5", "1;2\r\n3,5;4,5", "1, 2\n3,5, 4,5"])
def test_lines_of_two_numbers_are_pasted_as_rows(window, table, text):
    keys(KEY.Key_Down)
    paste(text)
    assert spots(window) == [*SAMPLE[:2], ("1", "2"), ("3,5", "4,5"), *SAMPLE[2:]]
    assert at(window).points[3].x.value == pytest.approx(0.0035)
    assert window.desk.history.undo_label == "paste 2 places of step 60"
    window.parts.edits.history.undo()
    assert spots(window) == SAMPLE


def test_a_bad_line_of_a_paste_keeps_its_text(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    paste("20 21\n22 23 24\n25 26")
    assert table.cells[5][0].text() == "22 23 24"
    assert table.words[5].problem is not None
    assert table.cells[6][0].text() == "25"
    keys(KEY.Key_Up, (KEY.Key_A, CONTROL), "22, 23", KEY.Key_Tab)
    assert spots(window) == [*SAMPLE, ("20", "21"), ("22", "23"), ("25", "26")]


def test_a_typed_generator_stays_one_in_the_file(window, table, tmp_path):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys(CIRCLE, KEY.Key_Tab)
    assert at(window).text.endswith(f"; {CIRCLE}")
    assert [line.text() for line in table.lines] == [CIRCLE]
    assert len(table.rows) == 10
    save_job(window.desk.job, tmp_path / "job.yaml")
    assert CIRCLE in (tmp_path / "job.yaml").read_text(encoding="utf-8")
    assert read_job(tmp_path / "job.yaml") == window.desk.job


def test_the_words_of_a_generator_are_typed_above_its_rows(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys(CIRCLE, KEY.Key_Tab)
    line = table.lines[0]
    line.setFocus()
    line.setCursorPosition(len("circle of 6"))
    keys(KEY.Key_Backspace, "8")
    assert line.text() == "circle of 8 on 40 around 40, 25"
    assert len(at(window)) == 12
    assert window.desk.history.undo_label == "change the generator of step 60"


def test_a_row_of_a_generator_typed_by_hand_makes_plain_rows_in_one_step_that_says_so(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys(CIRCLE, KEY.Key_Tab)
    table.go(5, "x")
    before = at(window)
    keys("51")
    assert window.desk.history.undo_label == "write circle of 6 out as places, change place 6, X of step 60"
    assert "plain places now" in table.note
    assert CIRCLE not in at(window).text
    assert spots(window)[5] == ("51", "42.321")
    assert all(line.isHidden() for line in table.lines)
    window.parts.edits.history.undo()
    assert at(window) == before


def test_put_in_replaces_only_what_was_put_in_before(window, table):
    maker = table.maker
    maker.kinds.halves[2].setFocus()
    keys("3")
    for field, text in (("count", "6"), ("on", "40"), ("x", "40"), ("y", "25")):
        maker.fields["circle"][field].box.setFocus(Qt.FocusReason.TabFocusReason)
        keys(text)
    maker.button.setFocus()
    keys(KEY.Key_Return)
    assert at(window).text == f"14, 12; 66, 12; 66, 38; 14, 38; {CIRCLE}"
    assert window.desk.history.undo_label == f"put in {CIRCLE} of step 60"
    maker.fields["circle"]["count"].box.setFocus(Qt.FocusReason.TabFocusReason)
    keys("8")
    maker.button.setFocus()
    keys(KEY.Key_Return)
    assert at(window).text == "14, 12; 66, 12; 66, 38; 14, 38; circle of 8 on 40 around 40, 25"


def test_the_maker_says_what_is_missing(window, table):
    maker = table.maker
    maker.kinds.halves[0].setFocus()
    keys("1")
    maker.button.setFocus()
    keys(KEY.Key_Return)
    assert "Holes is empty" in maker._problem
    assert spots(window) == SAMPLE


def test_the_maker_begins_with_the_generator_that_is_there(window):
    window.open_key("drill")
    window.open_row.form.rows.go(4, "x")
    keys("grid of 3 x 2 from 10, 10, step 20 x 15", KEY.Key_Tab)
    window.close_row()
    window.open_key("drill")
    maker = window.open_row.form.rows.maker
    assert maker.form == "grid"
    assert maker.made == "grid of 3 x 2 from 10, 10, step 20 x 15"
    assert maker.words() == "grid of 3 × 2 from 10, 10, step 20 × 15"


def test_more_rows_than_are_shown_are_walked_through(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys("row of 30 from 1, 1, step 2", KEY.Key_Return)
    assert name() == "Place 35, X"
    assert table.cells[0][0].accessibleName() == "Place 27, X"
    for _ in range(34):
        keys(KEY.Key_Up)
    assert name() == "Place 1, X"
    for _ in range(60):
        keys(KEY.Key_Tab)
    assert name() == "Place 31, X"


def test_the_place_in_hand_is_blue_on_the_drawing(window, table, qtbot):
    qtbot.waitUntil(lambda: window.bench.strip is not None and not window.parts.solids.waiting)
    strip = window.bench.strip
    keys(KEY.Key_Down)
    assert strip.marked == 1
    cell = next(cell for cell in strip._cells if cell.current)
    qtbot.waitUntil(lambda: cell.ring() is not None)
    second = cell.ring()
    keys(KEY.Key_Up)
    assert cell.ring() != second
    window.open_row.form.fields["depth"].box.setFocus()
    assert cell.ring() is None


def test_the_plan_beside_the_rows_has_each_place_where_it_lies(window, table):
    plan = window.open_row.margin.plan
    # The plate is 80 × 50, zero at its right rear corner, x counts left and y towards: 80 - 14 and 50 - 12.
    assert [(round(x, 6), round(y, 6)) for x, y in plan.plan.points][:2] == [(0.066, 0.038), (0.014, 0.038)]
    assert (plan.plan.length, plan.plan.width, plan.plan.zero) == (0.08, 0.05, (0.08, 0.05))
    keys(KEY.Key_Down)
    assert plan.chosen == 1
    first, second, third, _ = plan.spots()
    assert first.x() > second.x() == third.x()
    assert third.y() > second.y() == first.y()
    keys("60")
    assert plan.plan.points[1][0] == pytest.approx(0.02)


def test_a_row_is_taken_out_by_the_mouse(window, table, qtbot):
    window.bench.column.reveal_widget(table)
    qtbot.mouseClick(table.cells[1][0], Qt.MouseButton.LeftButton)
    table.needed_height(table.width())
    assert table.out.isVisible()
    assert table.out.accessibleName() == "Take place 2 out"
    qtbot.mouseClick(table.out, Qt.MouseButton.LeftButton)
    assert spots(window) == [SAMPLE[0], *SAMPLE[2:]]


def test_the_row_in_hand_can_be_taken_out_from_the_first_moment(window, table):
    assert table.hand == 0
    assert table.at.out.isValid()
    keys(KEY.Key_Down)
    assert table.at.out.top() == table.at.rows[1][1].top()


def test_the_keys_of_the_table_act_on_a_generator_as_a_whole(window, table):
    for _ in range(4):
        keys(KEY.Key_Down)
    keys(CIRCLE, KEY.Key_Tab)
    table.lines[0].setFocus()
    keys((KEY.Key_Up, ALT))
    assert at(window).text == f"14, 12; 66, 12; 66, 38; {CIRCLE}; 14, 38"
    assert name() == "Generator 1"
    assert window.desk.history.undo_label == "move the generator up of step 60"
    paste("1 2\n3 4")
    assert at(window).text == f"14, 12; 66, 12; 66, 38; 1, 2; 3, 4; {CIRCLE}; 14, 38"
    assert name() == "Place 5, X"
    table.lines[0].setFocus()
    keys(KEY.Key_Insert, "9", KEY.Key_Return, "8")
    assert at(window).text == f"14, 12; 66, 12; 66, 38; 1, 2; 3, 4; 9, 8; {CIRCLE}; 14, 38"
    table.lines[0].setFocus()
    keys(KEY.Key_Up)
    assert name() == "Place 6, X"
    table.lines[0].setFocus()
    keys((KEY.Key_Delete, CONTROL))
    assert at(window).text == "14, 12; 66, 12; 66, 38; 1, 2; 3, 4; 9, 8; 14, 38"
    assert name() == "Place 7, X"
