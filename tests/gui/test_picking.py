"""The cabinet's list under a field: opened by a key or a press, chosen like any other edit, never in the way of typing."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QMenu

from jobsheet.edit.commands import SetField, value_of
from jobsheet.gui.edits.picking import offer
from jobsheet.storage.cabinet_file import NAME

OWN = """format: 1
cutters:
  - what: end mill 12 mm, 4 teeth, HSS
    place: drawer 1 no. 4
    out: at the grinder
  - what: face mill 40 mm, 4 teeth, carbide
    place: drawer 1 no. 5
"""


def typed(window, key, name="cutter"):
    return value_of(window.desk.job, key, name).text


def listed(window, key, name="cutter"):
    window.open_key(key)
    menu = offer(window.desk, window.open_row, name)
    return menu, [action.text() for action in menu.actions()]


def chosen(window, key, name, begins):
    menu, texts = listed(window, key, name)
    menu.actions()[next(i for i, text in enumerate(texts) if text.startswith(begins))].trigger()
    menu.close()


def test_a_drill_comes_by_the_thread_that_is_cut_later(window):
    """M6 wants 5.0 (ISO 261 pitch 1, drill = 6 - 1): first, and a number drill of nearly that size second."""
    menu, texts = listed(window, "drill")
    assert texts[:3] == ["drill 5.0 mm, drawer 3", "drill #7, drawer 3", "drill 6.0 mm, drawer 3"]
    menu.close()


def test_choosing_writes_the_line_and_undo_takes_it_back(window):
    before = typed(window, "drill")
    chosen(window, "drill", "cutter", "drill 6.5")
    assert typed(window, "drill") == "drill 6.5 mm, drawer 3"
    assert window.open_row.form.fields["cutter"].box.text() == "drill 6.5 mm, drawer 3"
    window.desk.history.undo()
    assert typed(window, "drill") == before


def test_what_is_said_of_the_step_stays(window):
    window.desk.do(SetField("face-rough", "cutter", "end mill 20 mm, 4 teeth, in a collet, 45 mm out"))
    chosen(window, "face-rough", "cutter", "end mill 16")
    assert (
        typed(window, "face-rough") == "end mill 16 mm, 4 teeth, HSS, in a collet, 45 mm out, drawer 1 no. 3"
    )


def test_only_taps_of_the_thread(window):
    menu, texts = listed(window, "tap")
    assert texts == ["taps M6, taper, plug and bottoming, drawer 5"]
    menu.close()
    menu, texts = listed(window, "tap", "wrench")
    assert [text.split(",")[0] for text in texts] == ["tap wrench 180 mm", "tap wrench 280 mm"]
    menu.close()


@pytest.mark.parametrize("key", [Qt.Key.Key_Down, Qt.Key.Key_F4])
def test_a_key_opens_it_and_escape_closes_it(window, qtbot, key):
    window.open_key("drill")
    box = window.open_row.form.fields["cutter"].box
    before = typed(window, "drill")
    qtbot.keyClick(box, key)
    menu = window.open_row.findChild(QMenu)
    assert menu is not None
    assert menu.isVisible()
    qtbot.keyClick(menu, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: window.open_row.findChild(QMenu) is None)
    assert typed(window, "drill") == before


def test_a_press_on_the_mark_opens_it_and_one_on_the_label_does_not(window, qtbot):
    window.open_key("drill")
    field = window.open_row.form.fields["cutter"]
    qtbot.mouseClick(field, Qt.MouseButton.LeftButton, pos=QPoint(10, 4))
    assert window.open_row.findChild(QMenu) is None
    qtbot.mouseClick(
        field, Qt.MouseButton.LeftButton, pos=QPoint(field.width() - 8, field.box.geometry().center().y())
    )
    menu = window.open_row.findChild(QMenu)
    assert menu is not None
    menu.close()


def test_one_s_own_goes_before_and_what_is_away_cannot_be_chosen(window, home):
    home.mkdir(exist_ok=True)
    (home / NAME).write_text(OWN, encoding="utf-8")
    menu, texts = listed(window, "face-rough")
    assert texts == [
        "face mill 40 mm, 4 teeth, carbide, drawer 1 no. 5",
        "end mill 12 mm, 4 teeth, HSS, drawer 1 no. 4\tnot there now: at the grinder",
    ]
    assert [action.isEnabled() for action in menu.actions()] == [True, False]
    menu.close()


def test_without_a_cabinet_it_says_where_to_begin_one(window):
    window.desk.do(SetField("job", "workshop", "The shed"))
    menu, texts = listed(window, "drill")
    assert texts == ["There is no cabinet yet: Machine, Cabinet… begins one."]
    assert not menu.actions()[0].isEnabled()
    menu.close()


def test_a_cabinet_that_cannot_be_used_says_what_is_wrong_with_it(window, home):
    home.mkdir(exist_ok=True)
    (home / NAME).write_text(
        "format: 1\ncutters:\n  - what: end mill\n    place: drawer 1\n", encoding="utf-8"
    )
    menu, texts = listed(window, "drill")
    assert "line 3" in texts[0]
    menu.close()
