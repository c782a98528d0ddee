"""The ruled list paints what is in sight, makes no widget for a row, and is a list to a screen reader."""

import gc
import os
import subprocess
import sys

import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QAccessible, QHelpEvent, QPixmap
from PySide6.QtWidgets import QApplication, QToolTip, QWidget

from jobsheet.edit.commands import SetField
from jobsheet.gui.column import list_reading, row_painter
from jobsheet.gui.column.list_reading import ListFace
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.start.start import make_window
from jobsheet.storage.job_writing import save_job
from tests.benchmarks.test_edit import job_of

MANY = 640


@pytest.fixture
def long(show, tmp_path):
    """The window with a job of 640 steps."""
    save_job(job_of(MANY), tmp_path / "many.yaml")
    return show(str(tmp_path / "many.yaml"))


def ruled(window):
    return window.bench.column.ruled


def face(window):
    return QAccessible.queryAccessibleInterface(ruled(window))


def children(window):
    found = face(window)
    return [found.child(index) for index in range(found.childCount())]


def name(one):
    return one.text(QAccessible.Text.Name)


def by_name(window, part):
    return next(one for one in children(window) if part in name(one))


@pytest.fixture
def painted(monkeypatch):
    """The keys of the rows that were painted."""
    keys = []
    paint = row_painter.RowPainter.paint

    def watching(self, view):
        keys.append(view.key)
        paint(self, view)

    monkeypatch.setattr(row_painter.RowPainter, "paint", watching)
    return keys


def settle(window, qtbot):
    """Nothing is left to do that would paint by itself."""
    parts = window.parts
    qtbot.waitUntil(
        lambda: not window.later.waiting and not parts.solids.waiting and parts.answering.done, timeout=60_000
    )
    QApplication.processEvents()


# --- painting ---


def test_no_row_is_a_widget(window):
    assert ruled(window).findChildren(QWidget) == []
    window.open_key("drill")
    direct = ruled(window).findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
    assert direct == [window.open_row]


def test_a_long_job_has_no_more_widgets_than_a_short_one(long):
    assert len(ruled(long).by_key) > MANY
    assert ruled(long).findChildren(QWidget) == []


def test_only_the_rows_in_sight_are_painted(long, painted):
    column = long.bench.column
    for top in (0, 9_000, ruled(long).height()):
        painted.clear()
        column.scroll_to(top)
        column.view.repaint()
        in_sight = column.view.height() // 31 + 2
        assert 0 < len(set(painted)) <= in_sight


def test_a_step_of_the_keyboard_paints_two_rows(window, painted, qtbot):
    ruled(window).focus_line(ruled(window).lines[3].key)
    settle(window, qtbot)
    painted.clear()
    qtbot.keyClick(ruled(window), Qt.Key.Key_Down)
    QApplication.processEvents()
    assert set(painted) == {ruled(window).lines[3].key, ruled(window).lines[4].key}


def test_an_edit_paints_the_row_that_shows_something_else(window, painted, qtbot):
    window.open_key("face-rough")
    settle(window, qtbot)
    painted.clear()
    window.desk.type(SetField("drill", "peck", "6"))
    QApplication.processEvents()
    assert set(painted) <= {"drill", "tap"}


def test_the_row_that_is_open_is_not_painted_under_its_form(window, painted):
    window.open_key("drill")
    painted.clear()
    ruled(window).render(QPixmap(ruled(window).size()))
    assert "drill" not in painted
    assert "tap" in painted


def test_all_of_a_row_is_said_in_its_tooltip(window, monkeypatch):
    said = []
    monkeypatch.setattr(QToolTip, "showText", lambda _at, text, *_rest: said.append(text))
    line = ruled(window).by_key["drill"]
    at = QPoint(300, line.top + 8)
    QApplication.sendEvent(ruled(window), QHelpEvent(QEvent.Type.ToolTip, at, ruled(window).mapToGlobal(at)))
    assert [text.replace("\n", " ") for text in said] == [line.view.spoken()]


# --- the keyboard ---


def test_the_chosen_line_is_in_view_under_the_heading_that_sticks(long, qtbot):
    column, lines = long.bench.column, ruled(long)
    lines.focus_line(lines.lines[1].key)
    for key in (Qt.Key.Key_End, Qt.Key.Key_Home):
        qtbot.keyClick(lines, key)
        place = lines.place_of(lines.chosen_key)
        assert place.top() >= column.top
        assert place.bottom() <= column.top + column.view.height()


def test_an_open_row_takes_the_tab_stop_from_its_line(window):
    assert ruled(window).focusPolicy() == Qt.FocusPolicy.TabFocus
    window.open_key("drill")
    assert ruled(window).focusPolicy() == Qt.FocusPolicy.NoFocus
    window.close_row()
    assert ruled(window).focusPolicy() == Qt.FocusPolicy.TabFocus


# --- a screen reader ---


def test_it_is_a_list_of_items_with_all_that_the_rows_say(window):
    assert isinstance(face(window), ListFace)
    assert face(window).role() == QAccessible.Role.List
    assert face(window).text(QAccessible.Text.Name) == "Set-ups and operations"
    items = children(window)
    assert [name(one) for one in items] == [line.view.spoken() for line in ruled(window).lines]
    assert all(one.role() == QAccessible.Role.ListItem for one in items)
    for index, one in enumerate(items):
        assert one.isValid()
        assert one.childCount() == 0
        assert face(window).indexOfChild(one) == index
        assert one.parent().role() == QAccessible.Role.List


def test_a_long_list_is_whole(long):
    items = children(long)
    assert len(items) == len(ruled(long).lines) > MANY
    assert len({name(one) for one in items}) == len(items)
    assert sum(not one.state().offscreen for one in items) <= long.bench.column.view.height() // 31 + 2


def test_an_item_says_whether_it_is_chosen_and_can_be_reached(window):
    ruled(window).focus_line("drill")
    for one in children(window):
        state, here = one.state(), one.key == "drill"
        assert state.focusable
        assert state.selectable
        assert state.expandable
        assert bool(state.selected) is here
        assert bool(state.focused) is here
    assert name(face(window).focusChild()) == name(by_name(window, "Drill"))


def test_an_item_says_whether_it_is_open_and_its_form_stands_after_it(window):
    window.open_key("drill")
    items = children(window)
    at = next(index for index, one in enumerate(items) if getattr(one, "key", "") == "drill")
    assert items[at].state().expanded
    assert not items[at].state().collapsed
    assert items[at + 1].object() is window.open_row
    assert face(window).indexOfChild(items[at + 1]) == at + 1
    others = [one for one in items if isinstance(one, list_reading.Item) and one.key != "drill"]
    assert all(one.state().collapsed and not one.state().expanded for one in others)
    assert not isinstance(face(window).focusChild(), list_reading.Item)
    window.close_row()
    assert not by_name(window, "Drill").state().expanded


def test_the_form_of_the_job_stands_before_all_lines(window):
    window.open_key("job")
    assert children(window)[0].object() is ruled(window).opened


def test_what_stands_at_a_place_on_the_screen(window):
    line = ruled(window).by_key["drill"]
    at = ruled(window).mapToGlobal(QPoint(300, line.top + 8))
    item = face(window).childAt(at.x(), at.y())
    assert item.key == "drill"
    assert item.rect().contains(at)
    window.open_key("drill")
    box = window.open_row.form.fields["cutter"].box
    at = box.mapToGlobal(QPoint(3, 3))
    assert face(window).childAt(at.x(), at.y()).object() is not None


def test_a_notice_and_its_button_are_read_in_their_place(window):
    ruled(window).focus_line("find-zero")
    window.parts.edits.steps.delete()
    items = children(window)
    notice = next(one for one in items if one.object() is ruled(window).notice_line)
    assert name(notice) == "40 removed."
    assert face(window).indexOfChild(notice) == [line.key for line in ruled(window).lines].index("notice")


def test_an_item_of_a_step_that_is_gone_is_no_longer_valid(window):
    item = face(window).item("find-zero")
    ruled(window).focus_line("find-zero")
    window.parts.edits.steps.delete()
    assert not item.isValid()
    assert name(item) == ""
    window.parts.edits.history.undo()
    assert item.isValid()


@pytest.fixture
def told(window, monkeypatch):
    """What a screen reader hears, as (kind, name of the child)."""
    heard = []

    def hear(event):
        child = face(window).child(event.child()) if event.child() >= 0 else None
        heard.append((event.type(), name(child) if child is not None else ""))

    monkeypatch.setattr(list_reading, "_listens", lambda: True)
    monkeypatch.setattr(list_reading.QAccessible, "updateAccessibility", hear)
    return heard


def test_the_line_under_the_keyboard_is_told(window, told, qtbot):
    ruled(window).focus_line("spot")
    told.clear()
    qtbot.keyClick(ruled(window), Qt.Key.Key_Down)
    line = ruled(window).by_key["drill"]
    assert told == [(QAccessible.Event.Focus, line.view.spoken())]


def test_opening_and_closing_are_told(window, told):
    window.open_key("drill")
    line = ruled(window).by_key["drill"]
    assert (QAccessible.Event.StateChanged, line.view.spoken()) in told
    told.clear()
    window.close_row()
    assert (QAccessible.Event.StateChanged, line.view.spoken()) in told
    assert (QAccessible.Event.Focus, line.view.spoken()) in told


def test_that_other_rows_are_chosen_is_told(window, told, qtbot):
    ruled(window).focus_line("spot")
    told.clear()
    qtbot.keyClick(ruled(window), Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    assert QAccessible.Event.SelectionWithin in [kind for kind, _ in told]


def test_windows_with_their_items_come_and_go(qapp, qtbot):
    for _ in range(4):
        window = make_window(open_at_start(None))
        window.show()
        qtbot.waitUntil(lambda window=window: bool(window.actions_by_id))
        window.open_key("drill")
        assert len(children(window)) == len(ruled(window).lines) + 1
        window.hide()
        window.parts.solids.halt()
        window.deleteLater()
        del window
        QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
        gc.collect()


LISTENED_TO = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtGui import QAccessible
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.start import start
made = start.make_window
def make(opened):
    window = made(opened)
    QAccessible.setActive(True)
    def read():
        face = QAccessible.queryAccessibleInterface(window.bench.column.ruled)
        return [face.child(index).text(QAccessible.Text.Name) for index in range(face.childCount())]
    def look():
        if not window.actions_by_id:
            QTimer.singleShot(50, look)
            return
        closed = read()
        window.open_key("drill")
        opened = read()
        window.looks.dark()
        print(len(closed), len(opened), len(read()))
        window.desk.history.mark_saved("x")
        QTimer.singleShot(0, window.close)
    QTimer.singleShot(50, look)
    return window
start.make_window = make
sys.exit(start.run(open_at_start(None)))
"""


def test_a_program_that_is_listened_to_ends_cleanly(home):
    """The items are no widgets: the toolkit throws them away at the end, and so must nobody else."""
    environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": str(home)}
    done = subprocess.run(
        [sys.executable, "-c", LISTENED_TO], capture_output=True, text=True, env=environment, check=False
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == ["9", "10", "10"]


def test_the_face_stays_the_same_when_a_row_opens(window):
    before = face(window)
    window.open_key("drill")
    window.close_row()
    assert face(window) is before
