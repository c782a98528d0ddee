"""A machine card in its window: problems at their field, own copies, undo, the way
in, and every field by the keyboard.
"""

from itertools import pairwise

import pytest
from PySide6 import QtCore
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.ink import ink, look
from jobsheet.gui.places.card import card_window
from jobsheet.paths import resources
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.card_steps import classes
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.own_paper import draft_of, open_own
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import text_at


@pytest.fixture
def made():
    windows = []
    yield windows
    for one in windows:
        one.history.mark_saved()
        one.close()


@pytest.fixture
def card(qtbot, made):
    def card(name="bench-mill-b-1", size=(1440, 900), scheme="light", factor=1.0, guided=False):
        look.apply(scheme, factor=factor)
        paper, lying = (card_window.begin(classes()[0]), None) if guided else open_own("machines", name)
        window = card_window.CardWindow(paper, lying, None, guided=guided)
        made.append(window)
        window.resize(*size)
        window.show()
        window.activateWindow()
        QApplication.processEvents()
        return window

    return card


def type_in(qtbot, window, name, text):
    box = window.column.fields[name].box
    box.setFocus()
    box.selectAll()
    qtbot.keyClicks(box, text)
    return window.column.fields[name]


def test_a_problem_stands_at_its_field_and_the_rest_stays_editable(card, qtbot):
    window = card()
    field = type_in(qtbot, window, "spindle.power", "0.55 kX")
    assert field.problem is not None
    assert "kX" in field.under()
    assert field.problem.start == 5
    assert window.state()[1]
    other = type_in(qtbot, window, "mass", "120 kg")
    assert other.problem is None
    assert text_at(window.history.paper, ("mass",)) == "120 kg"
    type_in(qtbot, window, "spindle.power", "0.6 kW")
    assert text_at(window.history.paper, ("spindle", "power")) == "0.6 kW, plate"
    assert window.problems == ()


def test_a_problem_in_a_closed_row_is_marked_there_and_f8_opens_it(card, qtbot):
    window = card()
    window.column.toggle("handles[1]")
    type_in(qtbot, window, "handles[1].backlash", "much")
    window.column.toggle("handles[1]")
    assert "much" in window.column.rows["handles[1]"][0].toolTip()
    window.next_problem()
    assert window.column.fields["handles[1].backlash"].box.hasFocus()


def test_undo_and_redo_go_through_typing_and_rows(card, qtbot):
    window = card()
    first = window.history.paper
    type_in(qtbot, window, "title", "Mine")
    add = next(
        one for one in window.column.findChildren(Button) if one.text() == "Add a handle" and one.isVisible()
    )
    add.click()
    assert "handles[3].name" in window.column.fields
    window.undo()
    assert "handles[3]" not in window.column.rows
    window.undo()
    assert window.history.paper is first
    assert window.column.fields["title"].box.text() == "Bench mill B-1"
    window.redo()
    assert window.column.fields["title"].box.text() == "Mine"


def test_an_entry_moves_by_the_keyboard(card, qtbot):
    window = card()
    row = window.column.rows["handles[1]"][0]
    row.setFocus()
    qtbot.keyClick(row, QtCore.Qt.Key.Key_Up, QtCore.Qt.KeyboardModifier.AltModifier)
    assert text_at(window.history.paper, ("handles", 0, "name")) == "y"
    assert window.column.rows["handles[0]"][0].hasFocus()


def test_where_a_number_comes_from_is_chosen_beside_it(card):
    window = card()
    window.column.fields["frame stiffness comes from"].box.halves[1].click()
    assert text_at(window.history.paper, ("frame stiffness",)) == "5 N/µm, measured"


def test_a_card_with_problems_is_kept_as_a_draft_and_offered_again(card, qtbot, made):
    window = card()
    type_in(qtbot, window, "spindle.power", "strong")
    assert not window.save()
    assert "draft" in window.state()[0]
    assert not window.lying.path.exists()
    left = window.history.paper
    assert draft_of(window.lying) == left
    again = card()
    assert [button.text() for button in again.head.extra] == ["Go on with it", "Throw it away"]
    again.head.extra[0].click()
    assert again.history.paper == left
    assert again.column.fields["spindle.power"].problem is not None


def test_saving_makes_the_persons_own_copy_and_the_main_window_reckons_with_it(window, qtbot):
    shipped = (resources() / "machines" / "bench-mill-b-1.yaml").read_bytes()
    before = window.desk.outcome("face-rough").figures.shown("spindle_speed")
    editor = card_window.open_card(window.parts.visit, "bench-mill-b-1")
    assert "copy" in editor.state()[0]
    editor.column.toggle("spindle.ranges[0]")
    for index in (2, 3):
        editor.column.toggle(f"spindle.ranges[0].steps[{index}]")
        type_in(qtbot, editor, f"spindle.ranges[0].steps[{index}].speed", f"{500 + index * 100 + 7} rpm")
    assert editor.save()
    editor.close()
    assert (resources() / "machines" / "bench-mill-b-1.yaml").read_bytes() == shipped
    speeds = {round(step.speed * 60) for step in find_card("bench-mill-b-1").spindle.ranges[0].steps}
    assert {707, 807} <= speeds
    setting = next(iter(window.desk.reckoned.settings.values()))
    assert setting.machine is find_card("bench-mill-b-1")
    assert before
    qtbot.waitUntil(lambda: any(one.rule == "card-as-planned" for one in window.desk.remarks))


def test_what_is_not_saved_is_asked_for_before_it_goes(card, qtbot, monkeypatch):
    window = card()
    type_in(qtbot, window, "title", "Mine")
    monkeypatch.setattr(ask, "save_changes", lambda *_: "cancel")
    assert not window.close()
    monkeypatch.setattr(ask, "save_changes", lambda *_: "throw away")
    assert window.close()
    assert draft_of(window.lying) is None


def test_the_way_in_is_a_card_that_can_be_used_at_every_step(card, qtbot):
    """From the class chosen to the last step, whatever is answered so far can be read."""
    window = card(guided=True)

    def usable():
        return machine_from_text(paper_text(window.history.paper), "card.yaml", "card")

    for name in classes():
        window.choose(name)
        assert usable()
    short = window.short.name.fields["title"].box
    short.setFocus()
    short.selectAll()
    qtbot.keyClicks(short, "Mill by the door")
    type_in(qtbot, window, "spindle.power", "1.5 kW")
    window.column.fields["spindle.power comes from"].box.halves[0].click()
    assert usable().spindle.power.mark == "plate"
    type_in(qtbot, window, "spindle.ranges[0].steps[0].measured", "82 rpm")
    type_in(qtbot, window, "handles[0].a turn", "5 mm")
    type_in(qtbot, window, "handles[0].backlash", "0.15 mm")
    assert usable().handles[0].travel == pytest.approx(5e-3)
    speeds = next(
        one
        for one in window.column.findChildren(Joined)
        if one.isVisible() and one.halves[0].text() == "still assumed"
    )
    speeds.halves[1].click()
    assert "speeds" not in usable().assumed
    assert window.save()
    assert "mill-by-the-door" in card_names()
    assert find_card("mill-by-the-door").title == "Mill by the door"


@pytest.mark.parametrize("guided", [False, True])
def test_every_field_is_reached_by_the_keyboard(card, qtbot, guided):
    window = card(guided=guided)
    window.column.focus_first()
    seen, here = set(), None
    for _ in range(300):
        here = QApplication.focusWidget()
        if here in seen:
            break
        seen.add(here)
        qtbot.keyClick(here, QtCore.Qt.Key.Key_Tab)
    for name, field in window.column.fields.items():
        boxes = field.box.halves if isinstance(field.box, Joined) else [field.box]
        assert any(box in seen for box in boxes), name
    for name, (row, _, _) in window.column.rows.items():
        assert row in seen, name


@pytest.mark.parametrize("guided", [False, True])
@pytest.mark.parametrize(
    ("size", "factor"), [((1440, 900), 1.0), ((1024, 700), 1.0), ((820, 700), 1.0), ((1440, 900), 2.0)]
)
def test_no_text_is_shortened_and_no_field_lies_on_another(card, monkeypatch, size, factor, guided):
    found = []
    write = ink.write

    def watching(painter, now, rect, text, font, *args, **kwargs):
        if text and now.width(text, font) > rect.width():
            found.append((text, rect.width(), now.width(text, font)))
        return write(painter, now, rect, text, font, *args, **kwargs)

    window = card(size=size, factor=factor, guided=guided)
    if not guided:
        for name in ("spindle.ranges[0]", "spindle.ranges[0].steps[1]", "handles[0]", "vices[0]"):
            window.column.toggle(name)
    monkeypatch.setattr(ink, "write", watching)
    window.grab()
    window.column.grab()
    window.facts.grab()
    assert found == []
    rects = [block.rect for block in window.column._blocks]
    for above, below in pairwise(rects):
        assert below.top() > above.bottom() - 1


def test_a_card_changed_outside_is_saved_under_another_name(card, qtbot, monkeypatch, home):
    window = card()
    type_in(qtbot, window, "title", "Bench mill one")
    assert window.save()
    mine = home / "machines" / "bench-mill-b-1.yaml"
    theirs = mine.read_text().replace("Bench mill one", "Somebody else's")
    mine.write_text(theirs)
    type_in(qtbot, window, "title", "Bench mill two")
    monkeypatch.setattr(ask, "changed_outside", lambda *_: "save as")
    assert window.save()
    assert mine.read_text() == theirs
    assert find_card("bench-mill-two").title == "Bench mill two"


def test_the_main_window_stays_while_an_editor_may_not_be_put_away(window, qtbot, monkeypatch, made):
    window.actions_by_id["card"].trigger()
    editor = next(one for one in window.findChildren(card_window.CardWindow))
    made.append(editor)
    type_in(qtbot, editor, "title", "Half typed")
    monkeypatch.setattr(ask, "save_changes", lambda *_: "cancel")
    assert not window.close()
    assert window.isVisible()
    assert editor.isVisible()
