"""Typing moves the margin; what cannot be read keeps the last good figures and says what to write."""

from PySide6.QtCore import Qt


def dial(window, index):
    return window.open_row.margin.dials._dials[index]


def test_typing_a_feed_changes_the_margin(window, type_in):
    window.open_key("face-rough")
    before = dial(window, 1)
    type_in(window, "feed_per_tooth", "0.04")
    after = dial(window, 1)
    assert (before.number, before.unit) == ("1.3", "s a turn")
    assert after.number == "1.7"
    assert "1.7 s a turn" in window.desk.view("face-rough").pace


def test_what_was_understood_stands_under_the_field(window, type_in):
    window.open_key("face-rough")
    field = type_in(window, "depth", "25 thou")
    assert field.understood == "0.635 mm = 0.0250 in"
    assert field.problem is None


def test_a_bad_text_keeps_the_figures_grey_and_says_what_to_write(window, type_in):
    window.open_key("face-rough")
    type_in(window, "depth", "0.3")
    good = dial(window, 2)
    field = type_in(window, "depth", "1-1/4 im")
    # Every prefix that reads is taken; the last good one stays.
    assert window.desk.view("face-rough").stale
    assert field.box.text() == "1-1/4 im"
    assert "Did you mean 1-1/4 in" in str(field.problem)
    assert (field.problem.start, field.problem.end) == (6, 8)
    assert window.open_row.margin.dials._stale
    assert dial(window, 2).number
    assert good.number == "0.3"
    assert "mend" in window.bench.title.cells["review"].shown.caption


def test_a_mended_text_takes_the_grey_away(window, type_in):
    window.open_key("face-rough")
    type_in(window, "depth", "0.3 im")
    type_in(window, "depth", "0.3 in")
    assert not window.desk.view("face-rough").stale
    assert window.desk.history.drafts == {}


def test_without_figures_there_is_a_dash_and_the_reason(window, type_in, qtbot):
    window.open_key("face-rough")
    type_in(window, "cutter", "face mill 50 mm")
    dials = window.open_row.margin.dials
    assert dials._dials == ()
    assert "teeth" in dials._why_not.lower()
    assert window.desk.view("face-rough").problem


def test_typing_merges_into_one_step_of_undo(window, type_in, qtbot):
    window.open_key("face-rough")
    before = window.desk.job
    field = type_in(window, "feed_per_tooth", "0.0432")
    assert window.desk.job != before
    qtbot.keyClick(field.box, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert window.desk.job == before
    assert field.box.text() == "0.05"
    ctrl_shift = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.ShiftModifier
    qtbot.keyClick(field.box, Qt.Key.Key_Z, ctrl_shift)
    assert field.box.text() == "0.0432"


def test_undo_goes_through_half_typed_texts_too(window, type_in):
    window.open_key("face-rough")
    field = type_in(window, "depth", "im")
    window.parts.edits.history.undo()
    assert field.box.text() == "0.4"
    assert field.problem is None


def test_a_choice_is_typed_by_its_digit(window, qtbot):
    window.open_key("face-rough")
    joined = window.open_row.form.fields["along"].box
    qtbot.keyClick(joined.halves[0], Qt.Key.Key_2)
    assert window.desk.job.find("face-rough")[1].fields.along == "y"


def test_the_wheel_over_a_list_scrolls_the_sheet_and_changes_nothing(window):
    from PySide6.QtCore import QPoint, QPointF
    from PySide6.QtGui import QWheelEvent
    from PySide6.QtWidgets import QApplication

    window.open_key("set-up-1")
    box = window.bench.column.ruled.opened.forms["setup:set-up-1"].fields["up"].box
    before = window.desk.job
    event = QWheelEvent(
        QPointF(5, 5), QPointF(5, 5), QPoint(), QPoint(0, -120), Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(box, event)
    assert window.desk.job is before


def test_the_header_is_edited_in_place(window, qtbot):
    window.open_key("job")
    form = window.bench.column.ruled.opened.forms["job:part"]
    box = form.fields["name"].box
    box.setFocus()
    box.selectAll()
    qtbot.keyClicks(box, "Base plate")
    assert window.desk.job.part.name == "Base plate"
    assert "Base plate" in window.bench.title.cells["part"].shown.value


def test_a_set_up_opens_into_its_form(window, qtbot):
    window.open_key("set-up-1")
    box = window.bench.column.ruled.opened.forms["holding:set-up-1"].fields["vice"].box
    box.setFocus()
    box.selectAll()
    qtbot.keyClicks(box, "100 mm vice")
    assert window.desk.job.set_ups[0].holding.vice == "100 mm vice"
    window.close_row()
    assert "100 mm vice" in window.bench.column.ruled.by_key["set-up-1"].view.holding


def test_the_working_shows_formula_numbers_and_source(window):
    window.open_key("face-rough")
    margin = window.open_row.margin
    margin.more.click()
    texts = [label.text() for label in margin.working._labels]
    assert any("=" in text for text in texts)
    assert any(text.startswith("Source: ") for text in texts)


def test_other_units_make_the_boxes_anew_and_change_no_size(window):
    before = window.desk.job.find("face-rough")[1].fields.depth.value
    window.open_key("job")
    form = window.bench.column.ruled.opened.forms["job"]
    form.fields["units"].box.halves[1].click()
    assert window.desk.job.units == "in"
    assert window.desk.job.find("face-rough")[1].fields.depth.value == before
    window.open_key("face-rough")
    assert window.open_row.form.fields["depth"].unit == "in"


def test_typing_in_another_field_is_another_step(window, type_in):
    window.open_key("face-rough")
    type_in(window, "depth", "0.35")
    type_in(window, "feed_per_tooth", "0.04")
    type_in(window, "depth", "0.36")
    window.parts.edits.history.undo()
    assert window.desk.job.find("face-rough")[1].fields.depth.text == "0.35"
    assert window.desk.job.find("face-rough")[1].fields.feed_per_tooth.text == "0.04"


def test_another_machine_is_another_set_of_figures(window):
    from PySide6.QtWidgets import QMenu

    menu = QMenu()
    window.fill_menu("[machines]", menu)
    before = window.desk.view("face-rough").share
    next(action for action in menu.actions() if "K-2" in action.text()).trigger()
    assert window.desk.job.machine == "knee-mill-k-2"
    assert window.desk.view("face-rough").share != before
    assert "K-2" in window.bench.title.cells["machine"].shown.value
