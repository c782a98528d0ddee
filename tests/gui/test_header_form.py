"""The form of a set-up: another kind of holding asks other facts, only possible faces can
be chosen, and the pictures follow.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.holdings.all_holdings import holding_kind, holdings
from jobsheet.paths import sample_jobs


@pytest.fixture
def opened(window):
    """The first set-up's form, and how to get at a field's box."""
    window.open_key("set-up-1")

    def form():
        return window.bench.column.ruled.opened

    return form


def fields(form, part="holding"):
    return form().forms[f"{part}:set-up-1"].fields


def choose(form, name, text, part="holding"):
    """As a hand does: the choice is activated in the list, or pressed among the joined boxes."""
    box = fields(form, part)[name].box
    box.setFocus()
    if hasattr(box, "textActivated"):
        box.setCurrentText(text)
        box.textActivated.emit(text)
    else:
        box.typed.emit(text)
    QTest.qWait(10)


def typed(form, name, text, qtbot):
    box = fields(form)[name].box
    box.setFocus()
    box.selectAll()
    for sign in text:
        qtbot.keyClicks(box, sign)
    return box


@pytest.mark.parametrize("kind", holdings())
def test_each_kind_asks_its_facts_and_keeps_the_hand_where_it_was(window, opened, kind):
    choose(opened, "kind", kind)
    wanted = {entry.name for entry in holding_kind(kind).asked(window.desk.job.set_ups[0].holding)}
    assert set(fields(opened)) == {"kind", *wanted}
    assert window.desk.job.set_ups[0].holding.kind == kind
    assert fields(opened)["kind"].box.text() == kind
    assert fields(opened)["kind"].holds_cursor()


def test_going_through_the_kinds_loses_no_fact_and_is_one_step_of_undo(window, opened):
    before = window.desk.job.set_ups[0].holding
    for kind in ("straps", "vee block", "vice"):
        choose(opened, "kind", kind)
    assert window.desk.job.set_ups[0].holding == before
    choose(opened, "kind", "straps")
    window.actions_by_id["undo"].trigger()
    assert window.desk.job.set_ups[0].holding == before
    assert fields(opened)["kind"].box.text() == "vice"


def test_nothing_of_another_job_comes_back(window, opened):
    """The facts that a kind had are those of this form: another job's set-up has the same key."""
    choose(opened, "over_left", "12")
    choose(opened, "kind", "straps")
    assert window.parts.files.open_sample(next(iter(sample_jobs().glob("hm-104*.yaml"))), asked=True)
    window.open_key("set-up-1")
    choose(opened, "kind", "vice")
    held = window.desk.job.set_ups[0].holding
    assert (held.kind, held.vice, held.over_left) == ("vice", "", None)


def test_what_is_entered_is_drawn_at_once(window, opened, qtbot):
    drawn = opened()._pictures
    assert len(drawn) == 2
    typed(opened, "over_left", "12", qtbot)
    assert window.desk.job.set_ups[0].holding.over_left.text == "12"
    assert opened()._pictures != drawn


def test_bar_size_is_asked_where_there_is_a_bar(window, opened):
    assert "bar_size" not in fields(opened)
    choose(opened, "bar", "yes")
    assert "bar_size" in fields(opened)
    assert fields(opened)["bar"].box.isAncestorOf(QApplication.focusWidget())


def test_turning_it_over_leaves_faces_that_fit(window, opened):
    choose(opened, "up", "front", part="setup")
    entry = fields(opened, "setup")["operator"].entry
    assert set(entry.choices) == {"left", "right", "top", "bottom"}
    set_up = window.desk.job.set_ups[0]
    assert set_up.operator in entry.choices
    assert set_up.fixed_jaw in entry.choices


def test_straps_have_no_fixed_jaw(window, opened):
    choose(opened, "kind", "straps")
    assert "fixed_jaw" not in fields(opened, "setup")


def test_places_of_straps_are_typed_key_by_key(window, opened, qtbot):
    choose(opened, "kind", "straps")
    box = typed(opened, "at", "10, 5; 70, 5", qtbot)
    assert box.text() == "10, 5; 70, 5"
    QTest.keyClick(box, Qt.Key.Key_Tab)
    QTest.qWait(10)
    assert len(window.desk.job.set_ups[0].holding.at) == 2


def test_tab_goes_through_the_facts_in_their_order(window, opened):
    """Also after a choice that brought others: what stands below stands below for the keyboard too."""
    choose(opened, "bar", "yes")
    names = [*fields(opened), *fields(opened, "zero")]
    fields(opened)["kind"].box.setFocus(Qt.FocusReason.TabFocusReason)
    seen = []
    for _ in range(60):
        focus = QApplication.focusWidget()
        now = next(
            (
                name
                for part in ("holding", "zero")
                for name, field in fields(opened, part).items()
                if field.box is focus or field.box.isAncestorOf(focus)
            ),
            "",
        )
        if now == "":
            break
        if now not in seen:
            seen.append(now)
        QTest.keyClick(focus, Qt.Key.Key_Tab)
    assert seen == names


def test_a_choice_by_a_digit_brings_other_facts_and_the_hand_goes_on(window, opened, qtbot):
    choose(opened, "rests_on", "bed")
    fields(opened)["rests_on"].box.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_2)
    QTest.qWait(30)
    assert window.desk.job.set_ups[0].holding.rests_on == "parallels"
    assert fields(opened)["rests_on"].box.isAncestorOf(QApplication.focusWidget())
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert fields(opened)["parallels"].box is QApplication.focusWidget()
    qtbot.keyClicks(QApplication.focusWidget(), "16")
    assert window.desk.job.set_ups[0].holding.parallels.text == "16"
