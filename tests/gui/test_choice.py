"""Several rows are chosen, moved, dragged, cut, copied and pasted, by keys
and by the mouse; undo names each.
"""

import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible, QContextMenuEvent, QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from jobsheet.gui.edits.clip_edits import OWN
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.steps_text import read_copied

KEY, NONE = Qt.Key, Qt.KeyboardModifier.NoModifier
CTRL, SHIFT, ALT = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)


@pytest.fixture
def pivot(show):
    """The pivot block: six set-ups."""
    return show(str(sample_jobs() / "hm-103-pivot-block.yaml"))


@pytest.fixture(autouse=True)
def no_button_stays_down(qtbot):
    """Under a menu the right button is pressed and not let go: the next test would press with both."""
    yield
    for popup in iter(QApplication.activePopupWidget, None):
        popup.close()
    other = QWidget()
    qtbot.addWidget(other)
    other.show()
    for button in (Qt.MouseButton.RightButton, Qt.MouseButton.LeftButton):
        QTest.mouseRelease(other, button)


def ruled(window):
    return window.bench.column.ruled


def keys(window):
    return [operation.key for _, operation in window.desk.job.operations()]


def text(window):
    return write_job(window.desk.job)


def said(window):
    return window.bench.status.message


def press(qtbot, window, key, modifier=NONE, times=1):
    for _ in range(times):
        qtbot.keyClick(window.focusWidget() or window, key, modifier)


def at(window, key, x=300):
    line = ruled(window).by_key[key]
    return QPoint(x, line.top + line.high // 2)


def click(window, key, modifier=NONE, x=300):
    QTest.mouseClick(ruled(window), Qt.MouseButton.LeftButton, modifier, at(window, key, x))


def drag(window, key, y, *, keep=False):
    start, end, left = at(window, key, 40), QPoint(40, y), Qt.MouseButton.LeftButton
    QTest.mousePress(ruled(window), left, NONE, start)
    QTest.mouseMove(ruled(window), QPoint(40, (start.y() + end.y()) // 2))
    QTest.mouseMove(ruled(window), end)
    if not keep:
        QTest.mouseRelease(ruled(window), left, NONE, end)


def undo_and_redo(window, qtbot, before):
    """What was done is taken back and done again, and gives equal documents."""
    after = text(window)
    press(qtbot, window, KEY.Key_Z, CTRL)
    assert text(window) == before
    press(qtbot, window, KEY.Key_Z, CTRL | SHIFT)
    assert text(window) == after


# --- choosing ---


def test_shift_and_the_arrows_choose_more_and_fewer(window, qtbot):
    ruled(window).focus_line("face-rough")
    press(qtbot, window, KEY.Key_Down, SHIFT, times=2)
    order = keys(window)
    start = order.index("face-rough")
    assert ruled(window).marked == tuple(order[start : start + 3])
    press(qtbot, window, KEY.Key_Up, SHIFT)
    assert ruled(window).marked == tuple(order[start : start + 2])
    press(qtbot, window, KEY.Key_Up, SHIFT, times=2)
    assert ruled(window).marked == tuple(order[start - 1 : start + 1])
    press(qtbot, window, KEY.Key_Down)
    assert ruled(window).marked == ("face-rough",)


def test_shift_with_home_and_end_and_all_of_them(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_End, SHIFT)
    order = keys(window)
    assert ruled(window).marked == tuple(order[order.index("drill") :])
    press(qtbot, window, KEY.Key_A, CTRL)
    assert ruled(window).marked == tuple(order)


def test_control_and_space_choose_one_by_one(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    press(qtbot, window, KEY.Key_Space, CTRL)
    assert ruled(window).marked == ("drill",)
    press(qtbot, window, KEY.Key_Space, CTRL)
    assert ruled(window).marked == ("drill", "tap")


def test_the_mouse_chooses_with_shift_and_control_and_opens_nothing(window):
    ruled(window).focus_line("face-rough")
    click(window, "drill", CTRL)
    assert ruled(window).marked == ("face-rough", "drill")
    click(window, "face-rough", CTRL)
    assert ruled(window).marked == ("drill",)
    click(window, "tap", SHIFT)
    order = keys(window)
    assert ruled(window).marked == tuple(order[order.index("face-rough") : order.index("tap") + 1])
    assert window.opened_key == ""
    click(window, "drill")
    assert window.opened_key == "drill"
    assert ruled(window).marked == ("drill",)


def test_a_screen_reader_hears_of_all_that_are_chosen(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    face = QAccessible.queryAccessibleInterface(ruled(window))
    assert face.state().multiSelectable
    items = [face.child(index) for index in range(face.childCount())]
    assert [one.key for one in items if one.state().selected] == ["drill", "tap"]
    assert [one.key for one in items if one.state().focused] == ["tap"]


# --- moving ---


def test_alt_moves_what_is_chosen_and_says_where(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    before = text(window)
    press(qtbot, window, KEY.Key_Up, ALT)
    order = keys(window)
    assert order.index("tap") == order.index("drill") + 1
    assert order.index("spot") == order.index("tap") + 1
    assert ruled(window).marked == ("drill", "tap")
    assert said(window).startswith("Now steps ")
    undo_and_redo(window, qtbot, before)


def test_rows_go_over_the_ends_of_their_set_up(pivot, qtbot):
    first, second = pivot.desk.job.set_ups[:2]
    ruled(pivot).focus_line(second.operations[0].key)
    before = text(pivot)
    press(qtbot, pivot, KEY.Key_Up, ALT)
    assert pivot.desk.job.set_ups[0].operations[-1].key == second.operations[0].key
    press(qtbot, pivot, KEY.Key_Down, ALT)
    assert [one.key for one in pivot.desk.job.set_ups[0].operations] == [one.key for one in first.operations]
    press(qtbot, pivot, KEY.Key_Z, CTRL, times=2)
    assert text(pivot) == before


def test_chosen_rows_are_dragged_into_another_set_up(pivot, qtbot):
    source, target = pivot.desk.job.set_ups[4], pivot.desk.job.set_ups[0]
    one, other = source.operations[0].key, source.operations[1].key
    pivot.bench.column.scroll_to(0)
    ruled(pivot).focus_line(one)
    click(pivot, other, CTRL)
    before = text(pivot)
    drag(pivot, other, ruled(pivot).by_key[target.operations[0].key].top + 3)
    moved = [operation.key for operation in pivot.desk.job.set_ups[0].operations]
    assert moved[:2] == [one, other]
    assert set(ruled(pivot).marked) == {one, other}
    undo_and_redo(pivot, qtbot, before)


def test_escape_lets_go_of_what_is_dragged(window, qtbot):
    before = text(window)
    drag(window, "tap", ruled(window).by_key["face-rough"].top + 3, keep=True)
    qtbot.keyClick(ruled(window), KEY.Key_Escape)
    QTest.mouseRelease(ruled(window), Qt.MouseButton.LeftButton, NONE, at(window, "face-rough", 40))
    assert text(window) == before
    assert window.opened_key == ""


# --- out, doubled, repeated ---


def test_what_is_chosen_is_taken_out_and_doubled(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    before = text(window)
    press(qtbot, window, KEY.Key_D, CTRL)
    assert len(ruled(window).marked) == 2
    assert not {"drill", "tap"} & set(ruled(window).marked)
    undo_and_redo(window, qtbot, before)
    press(qtbot, window, KEY.Key_Z, CTRL)
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    press(qtbot, window, KEY.Key_Delete)
    assert not {"drill", "tap"} & set(keys(window))
    assert said(window) == "Steps 60 and 70 removed."
    undo_and_redo(window, qtbot, before)


def test_a_set_up_is_repeated_from_the_menu(pivot, qtbot):
    set_up = pivot.desk.job.set_ups[1]
    ruled(pivot).focus_line(set_up.key)
    before = text(pivot)
    pivot.actions_by_id["repeat-set-up"].trigger()
    copy = pivot.desk.job.set_ups[2]
    assert [one.fields for one in copy.operations] == [one.fields for one in set_up.operations]
    assert ruled(pivot).chosen_key == copy.key
    assert said(pivot).startswith("Set-up 2 is repeated as set-up 3")
    assert pivot.desk.history.undo_label == "repeat set-up 2"
    undo_and_redo(pivot, qtbot, before)


# --- the clipboard ---


def test_copied_steps_are_words_for_others_and_steps_for_us(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    press(qtbot, window, KEY.Key_C, CTRL)
    held = QGuiApplication.clipboard().mimeData()
    lines = held.text().splitlines()
    assert lines[0].startswith("60 ")
    for key, line in zip(("drill", "tap"), lines, strict=False):
        assert window.desk.outcome(key).rows[0].do in line
    back = read_copied(bytes(held.data(OWN).data()).decode())
    assert [one.fields for one in back.steps] == [
        window.desk.job.find(key)[1].fields for key in ("drill", "tap")
    ]
    assert said(window) == "Copied: steps 60 and 70."


def test_cut_and_paste_moves_within_a_job(window, qtbot):
    fields = window.desk.job.find("drill")[1].fields
    before = text(window)
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_X, CTRL)
    assert "drill" not in keys(window)
    assert window.desk.history.undo_label == "cut step 60"
    ruled(window).focus_line(keys(window)[0])
    press(qtbot, window, KEY.Key_V, CTRL)
    (new,) = ruled(window).marked
    assert keys(window).index(new) == 1
    assert window.desk.job.find(new)[1].fields == fields
    assert window.desk.history.undo_label.startswith("paste step ")
    press(qtbot, window, KEY.Key_Z, CTRL, times=2)
    assert text(window) == before


def test_paste_into_another_job(window, show, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    press(qtbot, window, KEY.Key_C, CTRL)
    copied = [window.desk.job.find(key)[1].fields for key in ruled(window).marked]
    other = show(str(sample_jobs() / "hm-103-pivot-block.yaml"))
    ruled(other).focus_line(other.desk.job.set_ups[2].key)
    before = text(other)
    qtbot.keyClick(ruled(other), KEY.Key_V, CTRL)
    assert [one.fields for one in other.desk.job.set_ups[2].operations[:2]] == copied
    numbers = [operation.number for _, operation in other.desk.job.operations()]
    assert len(set(numbers)) == len(numbers)
    qtbot.keyClick(ruled(other), KEY.Key_Z, CTRL)
    assert text(other) == before


def test_a_heading_copies_its_set_up(pivot, qtbot):
    set_up = pivot.desk.job.set_ups[0]
    ruled(pivot).focus_line(set_up.key)
    press(qtbot, pivot, KEY.Key_C, CTRL)
    assert QGuiApplication.clipboard().text().startswith("Set-up 1")
    before = text(pivot)
    press(qtbot, pivot, KEY.Key_V, CTRL)
    assert pivot.desk.job.set_ups[1].title == set_up.title
    assert len(pivot.desk.job.set_ups[1].operations) == len(set_up.operations)
    undo_and_redo(pivot, qtbot, before)


@pytest.mark.parametrize(
    ("held", "sentence"),
    [
        ("Drill it out, then tap it\nand so on", "holds a text and no steps"),
        ("", "holds no steps"),
        ("format: 1\nunits: mm\nsteps:\n  - kind: laser\n", "There is no kind of operation called “laser”"),
        ("format: 1\nunits: mm\nsteps:\n  - kind: bench-step\n    hat: 3\n", "unknown field"),
    ],
)
def test_what_is_no_step_is_refused_in_one_sentence(window, qtbot, held, sentence):
    QGuiApplication.clipboard().setText(held)
    ruled(window).focus_line("drill")
    before = text(window)
    press(qtbot, window, KEY.Key_V, CTRL)
    assert text(window) == before
    assert said(window).startswith("Nothing was pasted: ")
    assert sentence in said(window)
    assert "\n" not in said(window)


def test_in_a_box_of_text_the_keys_are_the_boxs_own(window, qtbot):
    window.open_key("drill")
    box = window.open_row.form.fields["note"].box
    box.setFocus()
    box.selectAll()
    qtbot.keyClicks(box, "mind the burr")
    before = keys(window)
    box.selectAll()
    press(qtbot, window, KEY.Key_C, CTRL)
    assert QGuiApplication.clipboard().text() == "mind the burr"
    window.actions_by_id["copy"].trigger()
    assert QGuiApplication.clipboard().text() == "mind the burr"
    press(qtbot, window, KEY.Key_X, CTRL)
    assert box.text() == ""
    press(qtbot, window, KEY.Key_V, CTRL)
    assert box.text() == "mind the burr"
    assert keys(window) == before


# --- the menu ---


def menu_of(window, key, *, by_key=False):
    reason = QContextMenuEvent.Reason.Keyboard if by_key else QContextMenuEvent.Reason.Mouse
    place = at(window, key)
    if not by_key:
        QTest.mousePress(ruled(window), Qt.MouseButton.RightButton, NONE, place)
    QApplication.sendEvent(ruled(window), QContextMenuEvent(reason, place, ruled(window).mapToGlobal(place)))
    (menu,) = [one for one in window.findChildren(QMenu) if one.isVisible()]
    return menu


def ids(window, menu):
    names = {action: id_ for id_, action in window.actions_by_id.items()}
    return [names[action] for action in menu.actions() if action in names]


def test_the_right_button_shows_what_can_be_done_to_a_step(window):
    menu = menu_of(window, "drill")
    assert ruled(window).marked == ("drill",)
    assert menu.actions()[0].text() == "Step 60"
    assert {"cut", "copy", "paste", "duplicate", "delete", "up", "down", "toggle"} <= set(ids(window, menu))
    menu.close()
    assert "up" not in ids(window, menu_of(window, keys(window)[0]))


def test_the_menu_key_acts_on_all_that_are_chosen(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Down, SHIFT)
    menu = menu_of(window, "tap", by_key=True)
    assert menu.actions()[0].text() == "Steps 60 and 70"
    assert "toggle" not in ids(window, menu)
    window.actions_by_id["delete"].trigger()
    assert not {"drill", "tap"} & set(keys(window))


def test_shift_and_f10_open_the_same_menu(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_F10, SHIFT)
    (menu,) = [one for one in window.findChildren(QMenu) if one.isVisible()]
    assert menu.actions()[0].text() == "Step 60"


def test_the_right_button_keeps_what_is_chosen_and_a_heading_has_its_own(pivot):
    one, other = (pivot.desk.job.set_ups[4].operations[place].key for place in (0, 1))
    ruled(pivot).focus_line(one)
    click(pivot, other, CTRL)
    chosen = ruled(pivot).marked
    menu = menu_of(pivot, one)
    assert ruled(pivot).marked == chosen
    menu.close()
    menu = menu_of(pivot, pivot.desk.job.set_ups[1].key)
    assert {"repeat-set-up", "delete-set-up", "set-up-up", "set-up-down"} <= set(ids(pivot, menu))


# --- what is said ---


def test_undo_names_what_it_undoes_in_menu_and_status(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Up, ALT)
    assert window.actions_by_id["undo"].text() == "&Undo: move step 60"
    press(qtbot, window, KEY.Key_Z, CTRL)
    assert said(window) == "Undone: move step 60."
    assert window.actions_by_id["redo"].text() == "&Redo: move step 60"
    press(qtbot, window, KEY.Key_Y, CTRL)
    assert said(window) == "Done again: move step 60."


def test_nothing_said_stays_when_the_plan_is_another(window, qtbot, type_in):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_Delete)
    assert said(window) == "60 removed."
    press(qtbot, window, KEY.Key_Z, CTRL)
    assert "removed" not in said(window)
    window.open_key("face-rough")
    assert said(window) == "Undone: take out step 60."
    type_in(window, "note", "x")
    assert said(window) == ""
    window.parts.edits.steps.renumber()
    press(qtbot, window, KEY.Key_Z, CTRL)
    assert "numbered anew: print" not in said(window)


def test_nothing_said_of_a_job_stays_for_the_next_one(window, qtbot):
    ruled(window).focus_line("drill")
    press(qtbot, window, KEY.Key_C, CTRL)
    window.desk.history.mark_saved()
    window.parts.files.open_sample(sample_jobs() / "hm-103-pivot-block.yaml", asked=True)
    assert said(window) == ""


COPIES_AND_ENDS = """
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
app = QApplication(["copies"])
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.ink import look
from jobsheet.gui.start.start import make_window
look.load_fonts()
look.apply("light")
window = make_window(open_at_start(None))
window.show()
while not window.actions_by_id:
    QTest.qWait(20)
window.actions_by_id["copy"].trigger()
formats = app.clipboard().mimeData().formats()
assert len(formats) == 2, formats
window.close()
"""


def test_a_program_that_has_copied_ends_cleanly(home):
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    done = subprocess.run(
        [sys.executable, "-c", COPIES_AND_ENDS], capture_output=True, text=True, env=environment, check=False
    )
    assert done.returncode == 0, done.stderr
