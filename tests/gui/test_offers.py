"""What is offered with a remark in the open row: tried before it is shown, and what it would
change, end and leave stands under it.
"""

from __future__ import annotations

from PySide6.QtCore import Qt

from tests.gui.test_places_field import keys


def moved(window):
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 1)
    window.parts.review()


def line_of(window, rule):
    return next(one for one in window.open_row.remark_lines if one.remark.rule == rule)


def test_an_offer_says_what_it_changes_ends_and_leaves(window):
    moved(window)
    window.open_key("drill")
    line = line_of(window, "spot-before-drilling")
    assert line.button is not None
    said = " ".join(line.offer.lines)
    assert "Moves " in said
    assert "Ends this and " in said
    assert "leaves " in said


def test_what_is_not_offered_says_why_and_what_to_do(window):
    moved(window)
    window.open_key("face-rough")
    line = line_of(window, "no-carbide-shocks-on-a-light-mill")
    assert line.button is None
    assert "No fix is offered: " in line.offer.lines[0]
    assert "By hand: " in line.offer.lines[0]
    before = window.desk.job
    window.parts.edits.remarks.mend(line.remark)
    assert window.desk.job is before


def test_a_remark_that_is_true_no_longer_is_read_again_not_refused(window):
    """A line may still stand there from before the last edit: no fix of it is
    judged by the plan as it is now.
    """
    moved(window)
    window.open_key("drill")
    old = line_of(window, "spot-before-drilling").remark
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 6)
    assert window.parts.edits.remarks.offer(old).lines == ("The plan has changed: this is read again.",)
    assert window.parts.review(), "what was read in passing is still news to the window"
    assert not window.parts.review()


def test_while_it_is_typed_into_an_offer_is_tried_after_a_rest(window, qtbot):
    moved(window)
    window.open_key("drill")
    asked = []
    remarks = window.parts.edits.remarks
    offer = remarks.offer
    window.open_row.say((), (), (), lambda remark: asked.append(remark) or offer(remark))
    window.parts.review()
    window.open_row.say(
        window.desk.remarks_of("drill"), (), (), lambda remark: asked.append(remark) or offer(remark)
    )
    assert not asked, "nothing is tried between two keys"
    qtbot.waitUntil(lambda: all(one.button is not None for one in window.open_row.remark_lines), timeout=3000)
    assert asked


def test_what_is_offered_is_of_the_plan_as_it_is_now(window, qtbot):
    """The remark keeps its words while a second place is typed; the fix that
    is tried after that is for both.
    """
    window.parts.edits.steps.take_out(("spot",), "take out")
    before = {operation.key for _, operation in window.desk.job.operations()}
    window.open_key("drill")
    window.open_row.form.rows.cells[0][0].setFocus(Qt.FocusReason.TabFocusReason)
    keys(*[Qt.Key.Key_Delete] * 4)
    window.parts.review()
    keys("20", Qt.Key.Key_Tab, "21", Qt.Key.Key_Return)
    window.parts.review()
    said = line_of(window, "spot-before-drilling").remark.message
    keys("30", Qt.Key.Key_Tab, "31", Qt.Key.Key_Return)
    window.parts.review()
    assert line_of(window, "spot-before-drilling").remark.message == said
    qtbot.waitUntil(lambda: line_of(window, "spot-before-drilling").button is not None)
    line_of(window, "spot-before-drilling").button.setFocus(Qt.FocusReason.TabFocusReason)
    keys(Qt.Key.Key_Return)
    new = [operation for _, operation in window.desk.job.operations() if operation.key not in before]
    assert [len(operation.fields.at) for operation in new] == [2]
