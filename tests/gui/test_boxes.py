"""The other forms that are typed into: a card, the cabinet, a ladder and its
rungs, the stopwatch; key by key.
"""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from jobsheet.edit.paper_commands import AddEntry
from jobsheet.gui.forms.boxes import Line, Lines
from jobsheet.gui.ink import look
from jobsheet.gui.places.cabinet.cabinet_window import open_cabinet
from jobsheet.gui.places.card.card_window import CardWindow
from jobsheet.gui.places.proving.proving_window import ProvingWindow
from jobsheet.storage.own_paper import open_own
from tests.gui.notes_read import begin

NUMBERS = ["12 s", "12.5", "1 min", "0.5", "7,5 s"]
WORDS = ["hums at the end ", "chips blue;  short", "12", "1, 2; 3"]


def typed(qtbot, box, text):
    """Type over what stands there; after every key, a slip and its mending exactly that stands there."""
    box.setFocus()
    box.selectAll()
    qtbot.keyClick(box, Qt.Key.Key_Delete)
    for end, letter in enumerate(text):
        for key, expected in (
            (letter, text[: end + 1]),
            ("q", text[: end + 1] + "q"),
            (Qt.Key.Key_Backspace, text[: end + 1]),
        ):
            qtbot.keyClick(box, key)
            assert box.text() == expected
    QApplication.processEvents()
    assert box.text() == text


@pytest.fixture
def card(qtbot):
    look.apply("light", factor=1.0)
    paper, lying = open_own("machines", "bench-mill-b-1")
    window = CardWindow(paper, lying, None, guided=False)
    window.show()
    window.activateWindow()
    yield window
    window.history.mark_saved()
    window.close()


def test_every_field_of_a_card_takes_its_own_text_key_by_key(card, qtbot, home):
    before = card.history.paper
    count = 0
    for field in list(card.column.fields.values()):
        text = field.box.text()
        if isinstance(field.box, Line | Lines) and text and text.isascii():
            typed(qtbot, field.box, text)
            count += 1
    assert count > 20
    assert card.problems == ()
    assert card.history.paper == before
    assert not (home / "problems.log").exists()


@pytest.mark.parametrize("text", ["0.81, guessed", "0.81,", " 0.81 ", "0,81", "0.8 , 1"])
def test_a_mark_that_is_typed_behind_a_number_stays_there(card, qtbot, text):
    name = next(name for name in card.column.fields if name.endswith(" comes from"))
    typed(qtbot, card.column.fields[name.removesuffix(" comes from")].box, text)


def test_undo_in_a_card_writes_into_the_box_under_the_cursor(card, qtbot):
    box = card.column.fields["spindle.power"].box
    before = box.text()
    typed(qtbot, box, "0.75 kW")
    card.undo()
    assert box.text() == before
    card.redo()
    assert box.text() == "0.75 kW"


def test_lines_of_the_cabinet(window, qtbot, home):
    cabinet = open_cabinet(window.parts.visit)
    for section, what, place in (
        ("cutters", "end mill 10 mm, 4 teeth, HSS, 40 mm out", "drawer 1 no. 1"),
        ("drills", "drills 1 mm to 13 mm by 0.5 mm", "drawer 3"),
        ("taps", "taps M6, taper and plug", "drawer 5, left"),
    ):
        cabinet.do(AddEntry((section,)))
        cabinet.column.go_to(f"{section}[0].what")
        typed(qtbot, cabinet.column.fields[f"{section}[0].what"].box, what)
        typed(qtbot, cabinet.column.fields[f"{section}[0].place"].box, place)
    assert cabinet.problems == ()
    assert not (home / "problems.log").exists()
    cabinet.history.mark_saved()
    cabinet.close()
    cabinet.deleteLater()


def test_a_ladder_and_what_happened_on_its_rungs(window, qtbot, home):
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    place.desk.set("machine", "knee-mill-k-2")
    place.refresh()
    fields = place.left.form.fields
    for name, text in (
        ("cutter", "end mill 12 mm, 4 teeth, HSS, 30 mm out"), ("width", " 6 mm "), ("spindle", "500 rpm"), ("feed", "0.05 mm"),
        ("holding", "80 mm vice, soft jaws"), ("role", "Apprentice A, with the Trainer"), ("material", "S235"),
    ):  # fmt: skip
        typed(qtbot, fields[name].box, text)
        assert getattr(place.desk.asked, name) == text
    begin(place)
    assert place.desk.current is not None
    rung = place.left.ladder.form.fields
    for name in rung:
        if isinstance(rung[name].box, Line):
            for text in WORDS if rung[name].entry.asks == "text" else NUMBERS:
                typed(qtbot, rung[name].box, text)
                assert place.left.ladder.texts[name] == text
    assert place.desk.done == {}
    assert not (home / "problems.log").exists()
    place.close()


def test_the_stopwatch_takes_seconds_with_their_unit(window, qtbot, home):
    window.open_key("face-rough")
    qtbot.waitUntil(lambda: window.open_row.margin.beside is not None)
    beside = window.open_row.margin.beside
    beside.clock.click()
    for text in NUMBERS:
        typed(qtbot, beside.watch.form.fields["seconds"].box, text)
    for text in ("80", "80 mm", "1/2 in"):
        typed(qtbot, beside.watch.form.fields["length"].box, text)
    assert not (home / "problems.log").exists()
