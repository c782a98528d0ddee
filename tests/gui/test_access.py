"""The tree that a screen reader walks: label, role and state of every control, the
column as a list, tables with rows.
"""

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QFontInfo
from PySide6.QtWidgets import QApplication, QComboBox, QWidget

from jobsheet.gui.column.list_reading import Item
from jobsheet.paths import sample_jobs

ROLE = QAccessible.Role
#: What a person does something with.
CONTROLS = {
    ROLE.Button, ROLE.CheckBox, ROLE.RadioButton, ROLE.ComboBox, ROLE.EditableText, ROLE.SpinBox, ROLE.Link, ROLE.ButtonMenu,
}  # fmt: skip
#: Panes that only hold others, and the heads of the columns, whose words every row says.
GROUNDS = {"Bench", "Column", "QWidget", "HeadsLine"}


@pytest.fixture
def pivot(show):
    return show(str(sample_jobs() / "hm-103-pivot-block.yaml"))


def name(one):
    return one.text(QAccessible.Text.Name)


def labels(one):
    return [name(face) for face, flag in one.relations() if flag == QAccessible.RelationFlag.Label]


def walk(one):
    """A face and all below it that can be seen."""
    if one is None or not one.isValid() or one.state().invisible:
        return
    yield one
    for index in range(one.childCount()):
        yield from walk(one.child(index))


def tree(widget):
    return list(walk(QAccessible.queryAccessibleInterface(widget)))


def kind(one):
    return type(one.object()).__name__ if one.object() is not None else ""


@pytest.mark.parametrize("key", ["", "step", "drill-threads", "job", "set-up-5"])
def test_label_role_and_state_of_every_control(pivot, qtbot, key):
    if key:
        pivot.open_key(key)
    qtbot.waitUntil(lambda: not pivot.later.waiting)
    every = tree(pivot)
    controls = [one for one in every if one.role() in CONTROLS]
    assert len(controls) > (20 if key else 7)
    controls = [one for one in controls if kind(one) != "StageCell"]  # a second way to what the list does
    for one in controls:
        state = one.state()
        assert name(one) or labels(one), kind(one)
        assert state.focusable or state.disabled, name(one)
        if one.role() in (ROLE.CheckBox, ROLE.RadioButton):
            assert state.checkable, name(one)
        if one.role() == ROLE.EditableText:
            assert state.editable, name(one)
    for one in every:
        if one.role() == ROLE.Client:
            assert name(one) or kind(one) in GROUNDS, kind(one)


@pytest.mark.parametrize("key", ["job", "set-up-5"])
def test_a_list_of_choices_is_named_by_its_label_and_not_by_what_is_chosen(pivot, key):
    pivot.open_key(key)
    boxes = [one for one in tree(pivot) if isinstance(one.object(), QComboBox)]
    assert boxes
    for one in boxes:
        assert labels(one) == [one.object().accessibleName()]
        assert labels(one) != [one.text(QAccessible.Text.Value)]


def test_the_column_is_a_list_whose_items_say_their_state(pivot):
    pivot.open_key("step")
    (column,) = [one for one in tree(pivot) if kind(one) == "RuledList"]
    assert column.role() == ROLE.List
    items = [column.child(index) for index in range(column.childCount())]
    items = [one for one in items if isinstance(one, Item)]
    assert len(items) == len(pivot.bench.column.ruled.lines)
    assert all(one.role() == ROLE.ListItem and one.state().selectable for one in items)
    assert [one.key for one in items if one.state().expanded] == ["step"]
    assert [one.key for one in items if one.state().selected] == ["step"]


def test_each_limit_and_each_figure_is_a_text_of_its_own(pivot, qtbot):
    pivot.open_key("step")
    qtbot.waitUntil(lambda: not pivot.later.waiting)
    every = tree(pivot)
    (limits,) = [one for one in every if kind(one) == "LimitsView"]
    rows = [one for one in walk(limits) if kind(one) == "LimitRow"]
    assert len(rows) == limits.childCount() > 2
    assert all("% of what there is" in name(one) for one in rows)
    (dials,) = [one for one in every if kind(one) == "DialsView"]
    assert dials.role() == ROLE.StaticText
    assert "rpm" in name(dials)


def test_a_table_has_rows(pivot, qtbot):
    way = next(one for one in pivot.parts.ways if one.id == "fits")
    pivot.parts.go(way)
    (box,) = [
        one
        for one in QApplication.topLevelWidgets()
        if one.isVisible() and type(one).__name__ == "FitsWindow"
    ]
    (table,) = [one for one in tree(box) if kind(one) == "FitTable"]
    rows = [one for one in walk(table) if one.role() == ROLE.StaticText]
    assert len(rows) == len(pivot.desk.job.operations())
    assert [name(one).split()[0] for one in rows] == [
        str(one.number) for _, one in pivot.desk.job.operations()
    ]
    (machines,) = [one for one in tree(box) if isinstance(one.object(), QComboBox)]
    assert labels(machines) == ["Machine"]
    box.close()


def test_a_unit_is_said_once(pivot):
    pivot.open_key("step")
    for one in tree(pivot):
        if one.role() == ROLE.EditableText:
            words = one.text(QAccessible.Text.Description).split()
            assert all(first != second for first, second in pairwise(words)), words


# --- focus ---


@pytest.mark.parametrize("action", ["dark", "bench"])
def test_focus_and_cursor_are_where_they_were_after_another_look(window, qtbot, action):
    window.open_key("drill")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    box.setCursorPosition(1)
    window.actions_by_id[action].trigger()
    now = window.open_row.form.fields["depth"].box
    assert now is not box
    assert window.focusWidget() is now
    assert now.cursorPosition() == 1


def test_focus_is_on_the_line_after_another_look(window):
    ruled = window.bench.column.ruled
    ruled.focus_line("drill")
    ruled.choose_up_to("tap")
    window.actions_by_id["dark"].trigger()
    ruled = window.bench.column.ruled
    assert window.focusWidget() is ruled
    assert ruled.chosen_key == "tap"
    assert ruled.marked == ("drill", "tap")


def test_focus_is_in_the_same_control_of_the_open_row_after_a_box(window, qtbot):
    from PySide6.QtCore import QTimer
    from PySide6.QtTest import QTest

    from jobsheet.gui.forms import plain_widgets

    window.open_key("drill")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    asked = plain_widgets.box(window, "It could not be written.")
    QTimer.singleShot(0, asked, lambda: QTest.keyClick(asked, Qt.Key.Key_Escape))
    asked.exec()
    window.activateWindow()
    qtbot.waitUntil(lambda: QApplication.activeWindow() is window)
    assert window.focusWidget() is box


def test_focus_comes_back_from_a_place(window, qtbot):
    window.open_key("drill")
    box = window.open_row.form.fields["depth"].box
    box.setFocus()
    before = set(QApplication.topLevelWidgets())
    window.parts.go(next(one for one in window.parts.ways if one.id == "fits"))
    opened = [one for one in QApplication.topLevelWidgets() if one not in before and one.isVisible()]
    opened[0].close()
    window.activateWindow()
    qtbot.waitUntil(lambda: QApplication.activeWindow() is window)
    assert QApplication.focusWidget() is box
    assert isinstance(box, QWidget)


# --- large type ---


def test_drawings_and_figures_stay_at_200_percent(show, monkeypatch):
    from jobsheet.gui.ink import ink

    written = []
    write = ink.write

    def watching(painter, look, rect, text, *rest):
        written.append(text)
        return write(painter, look, rect, text, *rest)

    monkeypatch.setattr(ink, "write", watching)
    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"), factor=2.0)
    assert window.strip().isVisible()
    assert window.strip().height() > 2 * 60
    window.bench.repaint()
    assert "500 rpm · 1.3 s a turn, x · 1.5 mm" in written
    written.clear()
    window.open_key("step")
    window.open_row.repaint()
    assert "300 rpm · 4.2 s a turn, y · 3 × 4 mm" in written


def test_captions_are_16_pixels_in_bench_size():
    from jobsheet.gui.ink import look

    now = look.apply("light", bench=True, factor=1.0)
    assert QFontInfo(now.caption).pixelSize() >= 16
    look.apply("light", factor=1.0)
