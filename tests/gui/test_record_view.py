"""The record of a machine in the proving place: every trial is seen, struck with a reason and given back, by
key; what does not fit is asked about.
"""

import pytest
from msgspec.structs import replace
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.places.proving.proving_window import ProvingWindow
from jobsheet.storage.records.proof_log import append, own_path, read_log, strike
from tests.gui.notes_read import begin

B1 = "bench-mill-b-1"
KEY = Qt.Key


def cut(depth, date, time, **more):
    """The invented cut of that depth (scenario, section 3), made again."""
    like = next(one for one in read_log(B1).trials if dict(one.step)["depth"] == depth)
    return append(B1, replace(like, id="", date=date, time=time, note="", **more))


@pytest.fixture
def proving(window):
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    place.desk.set("machine", B1)
    place.refresh()
    place.activateWindow()
    yield place
    place.close()


def press(*keys):
    """Keys to whatever has the focus."""
    for one in keys:
        if isinstance(one, str):
            QTest.keyClicks(QApplication.focusWidget(), one)
        else:
            QTest.keyClick(QApplication.focusWidget(), one)
        QApplication.processEvents()


def lines(place):
    return [line.accessibleName() for line in place.record.lines]


def test_every_trial_says_day_time_cut_and_what_it_asked_then_and_now(proving):
    newest = lines(proving)[0]
    for words in (
        "5, 2026-11-12 10:34",
        "side",
        "6 mm wide, 2.5 mm deep",
        "chatter",
        "end mill 12 mm",
        "S235",
    ):
        assert words in newest
    assert "126 % then, 95 % now of what its class carries" in newest  # the log has 1.26


def test_one_of_ordinary_work_says_of_which_job(proving):
    cut("1.5 mm", "2026-11-21", "09:25:00", job="HM-104, plan 2, step 60")
    proving.refresh()
    assert "HM-104, plan 2, step 60" in lines(proving)[0]


def test_a_trial_is_struck_with_a_reason_and_given_back_by_key(proving):
    taught = proving.desk.known()
    proving.record.focus_lines()
    press(KEY.Key_Down, KEY.Key_Down, KEY.Key_Delete)
    press(KEY.Key_Return, KEY.Key_Return)  # past the empty box to the button: no reason yet
    assert read_log(B1).struck == {}
    assert "why" in proving.record.question.accessibleDescription()
    proving.record.question.form.focus_first()
    press("another cutter", KEY.Key_Return, KEY.Key_Return)
    (one,) = read_log(B1).struck.values()
    assert one.note == "another cutter"
    assert "1.5 mm deep" in lines(proving)[2]
    assert "struck out" in lines(proving)[2]
    assert QApplication.focusWidget() is proving.record.lines[2]
    press(KEY.Key_Return, KEY.Key_Return)  # the same line, and the button that gives it back
    assert len(read_log(B1).standing) == 5
    assert proving.desk.known() == taught


def test_undo_gives_back_and_takes_back_step_by_step(proving):
    taught = proving.desk.known()
    proving.record.focus_lines()
    press(KEY.Key_Return, "slip", KEY.Key_Return, KEY.Key_Return)
    press(KEY.Key_Down, KEY.Key_Return, "slip", KEY.Key_Return, KEY.Key_Return)
    assert len(read_log(B1).standing) == 3
    proving.undo()
    assert len(read_log(B1).standing) == 4
    proving.undo()
    assert proving.desk.known() == taught
    before = own_path(B1).read_bytes()
    proving.undo()  # nothing of this visit is left
    assert own_path(B1).read_bytes() == before


def test_escape_leaves_the_question_and_not_the_place(proving):
    proving.record.focus_lines()
    press(KEY.Key_Return, "not")
    proving._escape()
    assert proving.record.question.isHidden()
    assert proving.isVisible()
    assert QApplication.focusWidget() is proving.record.lines[0]
    assert read_log(B1).struck == {}


def test_one_that_does_not_fit_stands_on_top_and_is_struck_from_there(proving):
    cut("1.0 mm", "2026-11-20", "09:00:00", outcome="chatter")
    cut("2.0 mm", "2026-11-21", "09:10:00")
    cut("2.0 mm", "2026-11-21", "09:20:00")
    proving.refresh()
    (odd,) = proving.record.odd
    assert "2026-11-20 09:00" in odd.accessibleName()
    assert "This one says 1 mm deep, chatter; the other seven say over" in odd.accessibleName()
    proving.record.focus_lines()
    assert QApplication.focusWidget() is odd.strike
    press(KEY.Key_Return, "never cut", KEY.Key_Return, KEY.Key_Return)
    assert proving.record.odd == []
    assert len(read_log(B1).standing) == 7
    proving.undo()
    assert len(proving.record.odd) == 1


def test_it_was_so_is_not_asked_again_until_that_is_taken_back(proving):
    odd = cut("1.0 mm", "2026-11-20", "09:00:00", outcome="chatter")
    cut("2.0 mm", "2026-11-21", "09:10:00")
    cut("2.0 mm", "2026-11-21", "09:20:00")
    proving.refresh()
    proving.record.odd[0].keep.setFocus()
    press(KEY.Key_Return)
    assert proving.record.odd == []
    assert [one.keeps for one in read_log(B1).marks] == [odd.id]
    assert "it was so" in proving.record.lines[2]._under()
    proving.undo()
    assert len(proving.record.odd) == 1


def test_the_machine_changed_then_is_marked_between_what_was_before_and_that_trial(proving):
    """Five trials say over 2 mm, then one at half of it gives out: from that one on it is another machine."""
    odd = cut("1.0 mm", "2026-11-20", "09:00:00", outcome="chatter")
    proving.refresh()
    proving.record.odd[0].then.setFocus()
    press(KEY.Key_Return)
    press(KEY.Key_Return, "gib let go", KEY.Key_Return, KEY.Key_Return)
    (mark,) = read_log(B1).marks
    assert (mark.changed, mark.date, mark.note) == ("gibs", "2026-11-20", "gib let go")
    order = [one.id for one in read_log(B1).teaching]
    assert order.index(mark.id) == order.index(odd.id) - 1
    assert proving.record.odd == []
    assert any("The machine changed: gibs" in words for words in lines(proving))


def test_what_did_not_fit_at_the_beginning_was_before_the_change(proving):
    """The very first trial is the odd one: whatever it was, it was put right after it."""
    odd = cut("0.5 mm", "2026-11-01", "09:00:00", outcome="chatter")
    proving.refresh()
    proving.record.odd[0].then.setFocus()
    press(KEY.Key_Return, KEY.Key_Return, KEY.Key_Return, KEY.Key_Return)
    order = [one.id for one in read_log(B1).teaching]
    (mark,) = read_log(B1).marks
    assert order.index(mark.id) == order.index(odd.id) + 1
    assert proving.record.odd == []


def test_a_change_is_marked_with_its_day_and_what_it_concerns_is_said_before(proving):
    before = proving.desk.known().find("chatter", "side", "end mill")
    proving._machine_changed()
    asked = proving.record.question
    assert "chatter" in asked._sentence(asked.texts)
    press("bel")  # the list finds what is typed
    asked.form.fields["what"].box.typed.emit("belt")
    assert "torque" in asked._sentence(asked.texts)
    asked.form.fields["what"].box.put("vice")
    asked.form.fields["what"].box.typed.emit("vice")
    asked.form.fields["date"].box.setFocus(Qt.FocusReason.TabFocusReason)
    press("soon", KEY.Key_Return, KEY.Key_Return, KEY.Key_Return)
    assert read_log(B1).marks == ()
    assert "no date" in asked.accessibleDescription()
    asked.form.fields["date"].box.setFocus(Qt.FocusReason.TabFocusReason)
    press("2026-11-20", KEY.Key_Return, "another one", KEY.Key_Return, KEY.Key_Return)
    (mark,) = read_log(B1).marks
    assert (mark.changed, mark.date, mark.note) == ("vice", "2026-11-20", "another one")
    after = proving.desk.known().find("chatter", "side", "end mill")
    assert after.high / after.low > before.high / before.low
    proving.undo()
    assert proving.desk.known().find("chatter", "side", "end mill") == before


def test_what_was_struck_elsewhere_is_no_longer_on_the_ladder(proving):
    proving.desk.set("machine", "knee-mill-k-2")
    begin(proving)
    QTest.keyClick(proving.left.ladder, KEY.Key_1)
    (trial,) = read_log("knee-mill-k-2").standing
    assert proving.desk.current.number == 2
    strike("knee-mill-k-2", trial.id, "2026-11-29", "Trainer", "another drawer")
    proving.refresh()
    assert proving.desk.done == {}
    assert proving.desk.current.number == 1


def test_the_record_of_the_machine_is_a_key_away_from_its_ladder(proving):
    proving.start()
    assert proving.record.isHidden()
    proving._to_record()
    assert not proving.record.isHidden()
    assert proving.right.isHidden()
    proving._escape()
    assert proving.record.isHidden()
    assert proving.isVisible()


def test_what_is_given_back_counts_for_the_open_job_at_once(proving, window):
    """Verdicts of the job follow what was struck."""
    told = []
    proving._visit = replace(proving._visit, proof_changed=lambda: told.append(True))
    proving.record.focus_lines()
    press(KEY.Key_Return, "slip", KEY.Key_Return, KEY.Key_Return)
    proving.undo()
    assert len(told) == 2


def test_a_record_that_cannot_be_read_is_said(proving):
    cut("2.0 mm", "2026-11-21", "09:10:00")
    path = own_path(B1)
    path.write_text(path.read_text().replace("outcome: clean", "outcome: fine"))
    proving.refresh()
    assert "bench-mill-b-1.txt: line" in proving.record.accessibleName()
    assert len(proving.record.lines) == 5


@pytest.mark.usefixtures("day_of_the_figures")
def test_what_was_learned_stands_over_the_record_in_sizes(proving):
    """Scenario, section 3: 1.76 mm at 6 wide ends badly in one of ten."""
    (words,) = proving.record.carries
    assert "6 mm wide in S235: about 2.3 mm deep" in words
    assert "plan to 1.75 mm deep; 5 cuts, the newest of 2026-11-12" in words


def test_a_year_of_work_is_gone_through_by_key_and_shown_in_parts(proving):
    for day in range(1, 29):
        for hour in ("08", "15"):
            cut("1.5 mm", f"2026-10-{day:02}", f"{hour}:00:00", job=f"HM-{day}, plan 1, step 60")
    proving.refresh()
    assert len(proving.record.lines) == 40
    assert proving.record.older.text() == "Show 21 older"
    proving.record.focus_lines()
    press(KEY.Key_End, KEY.Key_Tab)
    assert QApplication.focusWidget() is proving.record.older
    press(KEY.Key_Return)
    assert len(proving.record.lines) == 61
    proving.record.lines[0].setFocus()
    press(KEY.Key_End)
    assert "no. " in proving.record.lines[-1].row.named()
    assert QApplication.focusWidget() is proving.record.lines[-1]


def test_the_page_of_the_place_tells_its_keys(proving, window):
    pages = {page.id: page for page in window.parts._own_pages()}
    said = dict(pages["place:proving"].lines)
    for key in ("1 to 8", "Ctrl + T", "Ctrl + M", "Ctrl + Z", "Enter, Del"):
        assert said[key]
