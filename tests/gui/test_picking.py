"""The list under a field: opened by a key, a press or what is typed; taken by Enter or a
press, never in the way of typing.
"""

import pytest
import shiboken6
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication

from jobsheet.edit.commands import SetField, value_of
from jobsheet.gui.papers.paper_window import PaperWindow
from jobsheet.storage.cabinet_file import NAME

OWN = """format: 1
cutters:
  - what: end mill 12 mm, 4 teeth, HSS
    place: drawer 1 no. 4
    out: at the grinder
  - what: face mill 40 mm, 4 teeth, carbide
    place: drawer 1 no. 5
"""


def stands(window, key, name="cutter"):
    return value_of(window.desk.job, key, name).text


def picking(window):
    return window.parts.edits.rows.picking


def listed(window, key, name="cutter"):
    window.open_key(key)
    picking(window).ask(key, window.open_row.form.fields[name])
    return [one.title for one in picking(window).list.list.things]


def press(qtbot, key):
    qtbot.keyClick(QApplication.focusWidget(), key)


def typed(qtbot, text):
    for letter in text:
        qtbot.keyClicks(QApplication.focusWidget(), letter)
        QApplication.processEvents()


def cutter_box(window, key):
    window.open_key(key)
    box = window.open_row.form.fields["cutter"].box
    box.setFocus()
    box.selectAll()
    return box


def titles(window):
    return [one.title for one in picking(window).list.list.things]


# --- asked for ---


def test_a_drill_comes_by_the_thread_that_is_cut_later(window):
    """M6 wants 5.0 (ISO 261 pitch 1, drill = 6 - 1): first, and a number drill of nearly that size second."""
    assert listed(window, "drill")[:3] == [
        "drill 5.0 mm, drawer 3",
        "drill #7, drawer 3",
        "drill 6.0 mm, drawer 3",
    ]


@pytest.mark.parametrize("key", [Qt.Key.Key_Down, Qt.Key.Key_F4])
def test_a_key_opens_it_enter_takes_and_escape_closes_it(window, qtbot, key):
    box = cutter_box(window, "drill")
    before = stands(window, "drill")
    press(qtbot, key)
    under = picking(window).list
    assert under.isVisible()
    assert under.list.chosen.title == "drill 5.0 mm, drawer 3"
    press(qtbot, Qt.Key.Key_Escape)
    assert picking(window).list is None
    assert window.opened_key == "drill"
    assert stands(window, "drill") == before
    press(qtbot, key)
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "drill") == "drill #7, drawer 3"
    assert box.hasFocus()
    assert picking(window).list is None


def test_undo_takes_back_what_was_taken(window, qtbot):
    cutter_box(window, "drill")
    before = stands(window, "drill")
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert window.open_row.form.fields["cutter"].box.text() == "drill #7, drawer 3"
    window.parts.edits.history.undo()
    assert stands(window, "drill") == before
    assert window.open_row.form.fields["cutter"].box.text() == before


def test_a_press_takes_a_row(window, qtbot):
    listed(window, "drill")
    row = picking(window).list.list.rows[2]
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    assert stands(window, "drill") == "drill 6.0 mm, drawer 3"


def test_what_is_said_of_the_step_stays(window, qtbot):
    window.desk.do(SetField("face-rough", "cutter", "end mill 20 mm, 4 teeth, in a collet, 45 mm out"))
    found = listed(window, "face-rough")
    under = picking(window).list
    under.list.choose(next(one.key for one in under.list.things if one.title.startswith("end mill 16")))
    assert found
    press(qtbot, Qt.Key.Key_Return)
    assert (
        stands(window, "face-rough") == "end mill 16 mm, 4 teeth, HSS, in a collet, 45 mm out, drawer 1 no. 3"
    )


def test_only_taps_of_the_thread(window):
    assert listed(window, "tap") == ["taps M6, taper, plug and bottoming, drawer 5"]
    wrenches = listed(window, "tap", "wrench")
    assert [text.split(",")[0] for text in wrenches] == ["tap wrench 180 mm", "tap wrench 280 mm"]


def test_a_press_on_the_mark_opens_it_and_one_on_the_label_does_not(window, qtbot):
    window.open_key("drill")
    field = window.open_row.form.fields["cutter"]
    qtbot.mouseClick(field, Qt.MouseButton.LeftButton, pos=QPoint(10, 4))
    assert picking(window).list is None
    qtbot.mouseClick(
        field, Qt.MouseButton.LeftButton, pos=QPoint(field.width() - 8, field.box.geometry().center().y())
    )
    assert picking(window).list.isVisible()


def test_leaving_the_field_leaves_the_list(window, qtbot):
    cutter_box(window, "drill")
    press(qtbot, Qt.Key.Key_F4)
    press(qtbot, Qt.Key.Key_Tab)
    assert picking(window).list is None
    cutter_box(window, "drill")
    press(qtbot, Qt.Key.Key_F4)
    window.close_row()
    assert picking(window).list is None


# --- by what is typed ---


def test_20_end_finds_its_drawers_and_enter_takes_the_first(window, qtbot):
    cutter_box(window, "face-rough")
    typed(qtbot, "20 end")
    assert titles(window)[0] == "end mill 20 mm, 4 teeth, HSS, drawer 1 no. 1"
    assert all("20 mm" in one for one in titles(window))
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "face-rough") == "end mill 20 mm, 4 teeth, HSS, drawer 1 no. 1"


def test_a_text_that_can_be_read_stays_and_enter_goes_on(window, qtbot):
    box = cutter_box(window, "face-rough")
    typed(qtbot, "end mill 20 mm")
    assert picking(window).list.list.chosen is None
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "face-rough") == "end mill 20 mm"
    assert not box.hasFocus()
    assert picking(window).list is None


def test_after_down_the_row_is_taken_though_the_text_can_be_read(window, qtbot):
    cutter_box(window, "face-rough")
    typed(qtbot, "end mill 20 mm")
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "face-rough").startswith("end mill 20 mm, 4 teeth, HSS, drawer 1 no. 1")


def test_a_typed_cutter_that_is_no_one_s_is_in_nobody_s_way(window, qtbot):
    cutter_box(window, "face-rough")
    typed(qtbot, "face mill 63 mm, 5 teeth")
    assert picking(window).list is None
    assert stands(window, "face-rough") == "face mill 63 mm, 5 teeth"


# --- whose cabinet ---


def test_one_s_own_goes_before_and_what_is_away_cannot_be_taken(window, home, qtbot):
    home.mkdir(exist_ok=True)
    (home / NAME).write_text(OWN, encoding="utf-8")
    assert listed(window, "face-rough") == [
        "face mill 40 mm, 4 teeth, carbide, drawer 1 no. 5",
        "end mill 12 mm, 4 teeth, HSS, drawer 1 no. 4",
        "Open the cabinet…",
    ]
    under = picking(window).list
    assert under.list.things[1].away == "not there now: at the grinder"
    before = stands(window, "face-rough")
    qtbot.mouseClick(under.list.rows[1], Qt.MouseButton.LeftButton)
    assert stands(window, "face-rough") == before


def test_without_a_cabinet_a_new_one_is_offered_at_once(window, qtbot):
    window.desk.do(SetField("job", "workshop", "The shed"))
    assert listed(window, "drill") == ["There is no cabinet yet.", "New cabinet…"]
    press(qtbot, Qt.Key.Key_Return)
    papers = [one for one in QApplication.topLevelWidgets() if isinstance(one, PaperWindow)]
    made = [one for one in papers if one.isVisible()]
    assert len(made) == 1
    made[0].close()


def test_a_cabinet_that_cannot_be_used_says_what_is_wrong_with_it(window, home):
    home.mkdir(exist_ok=True)
    (home / NAME).write_text(
        "format: 1\ncutters:\n  - what: end mill\n    place: drawer 1\n", encoding="utf-8"
    )
    assert "line 3" in listed(window, "drill")[0]


# --- the header's fields ---


@pytest.fixture
def header(window):
    """The box of a field of the job's form or of a set-up's."""

    def header(key, section, name):
        window.open_key(key)
        box = window.bench.column.ruled.opened.forms[section].fields[name].box
        box.setFocus()
        box.selectAll()
        return box

    return header


def test_what_holds_the_work_comes_from_the_card(window, header, qtbot):
    header("set-up-1", "holding:set-up-1", "vice")
    press(qtbot, Qt.Key.Key_F4)
    assert titles(window)[0] == "80 mm vice"
    assert picking(window).list.list.things[0].under == "opens 75 mm, jaws 25 mm deep, bed 42 mm high"
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.set_ups[0].holding.vice == "80 mm vice"


def test_the_material_of_the_form_is_found_by_its_names(window, header, qtbot):
    header("job", "job", "material")
    typed(qtbot, "aisi 304")
    press(qtbot, Qt.Key.Key_Down)
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.material == "304"


def test_the_machine_of_the_form_is_found_by_its_title(window, header, qtbot):
    header("job", "job", "machine")
    typed(qtbot, "knee")
    press(qtbot, Qt.Key.Key_Return)
    assert window.desk.job.machine == "knee-mill-k-2"


def test_the_list_goes_with_its_field_and_touches_nothing_that_is_gone(window, qtbot):
    listed(window, "drill")
    under = picking(window).list
    field = under.field
    ruled = window.bench.column.ruled
    # As when the form is made anew while the list stands: the old field is no
    # longer among those that are filled.
    window.open_row.form.fields.pop(field.entry.name)
    field.setParent(None)
    shiboken6.delete(field)
    QApplication.processEvents()
    ruled.resize(ruled.width(), ruled.height() + 10)
    ruled.move(0, 1)
    QApplication.processEvents()
    assert not shiboken6.isValid(under) or not under.isVisible()


def test_what_a_step_does_is_chosen_one_after_the_other(window, qtbot):
    """Key by key: half a word brings the list with the first one blue, Enter
    takes it behind what stands there.
    """
    window.open_key("clamp")
    box = window.open_row.form.fields["does"].box
    box.setFocus()
    box.selectAll()
    typed(qtbot, "cl")
    qtbot.waitUntil(lambda: picking(window).list is not None)
    assert [one.title for one in picking(window).list.list.things] == ["clamp", "clean"]
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "clamp", "does") == "clamp"
    typed(qtbot, ", me")
    qtbot.waitUntil(lambda: picking(window).list is not None)
    press(qtbot, Qt.Key.Key_Return)
    assert stands(window, "clamp", "does") == "clamp, measure"
    assert box.text() == "clamp, measure"
    press(qtbot, Qt.Key.Key_Down)
    titles = [one.title for one in picking(window).list.list.things]
    assert "knock" in titles
    assert not {"clamp", "measure"} & set(titles)
