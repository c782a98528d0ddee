"""The cabinet in its editor: what is saved is picked from at once, what cannot
be used is kept and never counts.
"""

import pytest
from PySide6.QtCore import Qt

from jobsheet.edit.paper_commands import AddEntry, SetText
from jobsheet.gui.places.cabinet.cabinet_window import open_cabinet
from jobsheet.storage.cabinet_file import cabinet_for, cabinet_from_text, own_path
from jobsheet.storage.cabinet_layout import beginning
from jobsheet.storage.paper_text import paper_text


@pytest.fixture
def cabinet(window):
    made = open_cabinet(window.parts.visit)
    yield made
    made.hide()
    made.deleteLater()


def entry(made, section, index, **texts):
    made.do(AddEntry((section,)))
    for name, text in texts.items():
        made.do(SetText((section, index, name), text))


def test_it_begins_blank_and_saying_nothing_of_the_job(cabinet):
    assert cabinet.problems == ()
    assert not own_path().exists()


def test_what_is_saved_counts_at_once(window, cabinet, qtbot):
    entry(cabinet, "drills", 0, what="drills 1 mm to 4.5 mm by 0.5 mm", place="drawer 3")
    assert cabinet.problems == ()
    assert cabinet.save()
    assert cabinet_for("").own
    qtbot.waitUntil(lambda: any(one.rule == "in-the-cabinet" for one in window.desk.remarks))
    messages = {one.message for one in window.desk.remarks}
    assert "The cabinet has no drill 5.0; nearest is drill 4.5 mm (drawer 3)" in messages


def test_a_line_that_cannot_be_read_is_said_at_its_field_and_not_saved(cabinet):
    entry(cabinet, "cutters", 0, what="end mill 12", place="drawer 1 no. 1")
    assert [one.path for one in cabinet.problems] == ["cutters[0].what"]
    assert not cabinet.save()
    assert not own_path().exists()
    cabinet.column.go_to("cutters[0].what")
    field = cabinet.column.fields["cutters[0].what"]
    assert "without its unit" in field.under()
    field.box.put("end mill 12 mm")
    cabinet.do(SetText(("cutters", 0, "what"), "end mill 12 mm, 4 teeth"))
    assert cabinet.problems == ()
    assert cabinet.column.fields["cutters[0].what"].under() == "12 mm, 4 teeth, HSS"


def test_two_things_in_one_place_are_said_at_the_second(cabinet):
    entry(cabinet, "cutters", 0, what="end mill 12 mm", place="drawer 1 no. 1")
    entry(cabinet, "taps", 0, what="tap M6, plug", place="drawer 1 no. 1")
    assert [one.path for one in cabinet.problems] == ["taps[0].place"]
    cabinet.undo()
    assert [one.path for one in cabinet.problems] == ["taps[0].place"]
    assert "write where it lies" in cabinet.problems[0].sentence


def test_no_word_of_the_page_is_cut_off(cabinet):
    entry(cabinet, "cutters", 0, what="end mill 12 mm, 4 teeth", place="drawer 1 no. 1")
    for field in cabinet.column.fields.values():
        assert field.height() >= field.needed_height(field.width())


def test_the_menu_leads_to_it(window, qtbot):
    from jobsheet.gui.papers.paper_window import PaperWindow

    window.actions_by_id["cabinet"].trigger()
    made = next(one for one in window.findChildren(PaperWindow) if one.isVisible())
    assert "cabinet" in made.windowTitle().casefold()
    made.close()


def test_a_usual_set_is_one_press_and_one_undo_and_says_that_it_is_a_beginning(window, cabinet, qtbot):
    blank = cabinet.history.paper
    button = cabinet.head.buttons[0]
    assert "bench mill" in button.text()
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert cabinet.problems == ()
    assert cabinet.state()[0].startswith("A beginning")
    assert not button.isVisible()  # it would take the place of what stands there now
    assert cabinet.save()
    assert cabinet_for("").of("cutters")
    cabinet.undo()
    assert cabinet.history.paper == blank
    assert button.isVisible()
    entry(cabinet, "drills", 0, what="drill 5 mm", place="drawer 3")
    assert not button.isVisible()


@pytest.mark.parametrize("size", ["bench", "knee"])
def test_every_line_of_a_usual_set_can_be_read(size):
    made = cabinet_from_text(paper_text(beginning(size)), "cabinet.yaml", own=True)
    assert "beginning" in made.note
    assert len(made.things) > 30
