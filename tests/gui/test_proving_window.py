"""The proving place: plan, enter with a digit, see what it teaches, take back;
the log on the disk holds all of it.
"""

import re
from itertools import pairwise

import pytest
from pypdf import PdfReader
from PySide6 import QtCore
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms import ask
from jobsheet.gui.places.proving.proving_window import ProvingWindow
from jobsheet.storage.records.proof_log import own_path, read_log
from tests.gui.notes_read import begin, read_notes


@pytest.fixture
def proving(window, qtbot):
    """A ladder of side cuts on the machine that nobody has tried yet."""
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    place.desk.set("machine", "knee-mill-k-2")
    place.desk.set("role", "Apprentice A")
    place.refresh()
    yield place
    place.close()


def test_the_form_lists_what_is_recorded_and_a_ladder_starts_at_the_bottom(proving):
    proving.desk.set("machine", "bench-mill-b-1")
    proving.refresh()
    said = [line.accessibleName() for line in proving.record.lines]
    assert len(said) == 5  # the invented record of section 3, the newest first
    assert "2.5 mm deep, chatter" in said[0]
    assert "2026-11-12 10:10" in said[-1]
    proving.desk.set("machine", "knee-mill-k-2")
    proving.start()
    assert proving.desk.current.number == 1
    assert proving.desk.ladder.rungs[0].size in proving.desk.conclusion().head


def test_a_digit_says_what_happened_and_the_log_has_it_at_once(proving, qtbot):
    begin(proving)
    qtbot.keyClick(proving.left.ladder, QtCore.Qt.Key.Key_1)
    (trial,) = read_log("knee-mill-k-2").standing
    assert (trial.outcome, trial.role) == ("clean", "Apprentice A")
    assert own_path("knee-mill-k-2").is_file()
    assert proving.desk.current.number == 2


def test_the_first_sign_of_trouble_ends_the_ladder_and_says_what_to_plan_to(proving, qtbot):
    begin(proving)
    clean = proving.desk.ladder.rungs[1]
    for key in (QtCore.Qt.Key.Key_1, QtCore.Qt.Key.Key_1, QtCore.Qt.Key.Key_4):
        qtbot.keyClick(proving.left.ladder, key)
    assert proving.desk.current is None
    found = proving.desk.conclusion()
    assert found.head.startswith("Stop here")
    assert any(clean.size in line and "clean" in line for line in found.lines)
    assert found.planned < proving.desk.ladder.rungs[2].of("chatter").share
    qtbot.keyClick(proving.left.ladder, QtCore.Qt.Key.Key_1)
    assert len(read_log("knee-mill-k-2").standing) == 3


def test_taking_back_strikes_out_and_loses_nothing(proving, qtbot):
    begin(proving)
    qtbot.keyClick(proving.left.ladder, QtCore.Qt.Key.Key_5)
    proving.take_back()
    log = read_log("knee-mill-k-2")
    assert log.standing == ()
    assert len(log.trials) == 1
    assert proving.desk.current.number == 1


def test_seconds_that_cannot_be_read_record_nothing_and_say_so(proving, qtbot):
    begin(proving)
    qtbot.keyClicks(proving.left.ladder.form.fields["seconds"].box, "soon")
    proving.happened(1)
    assert read_log("knee-mill-k-2").trials == ()
    assert "soon" in proving._said


def test_slipped_asks_what(proving, qtbot):
    begin(proving)
    proving.happened(6)
    assert "vice" in proving._said
    assert read_log("knee-mill-k-2").trials == ()


def test_seconds_on_the_watch_give_the_real_feed(proving, qtbot):
    """Twice the planned time is half the planned feed: thinner chips ask less of the spindle."""
    begin(proving)
    rung = proving.desk.current
    qtbot.keyClicks(
        proving.left.ladder.form.fields["seconds"].box, f"{2 * rung.length / (rung.length / rung.seconds):g}"
    )
    proving.happened(1)
    (trial,) = read_log("knee-mill-k-2").standing
    assert trial.of("spindle-torque").demand < 0.75 * rung.of("spindle-torque").demand


def test_magnesium_is_refused_with_a_reason(proving):
    proving.desk.set("material", "magnesium")
    proving.start()
    assert proving.desk.current is None
    assert "magnesium" in proving.right.accessibleName().lower()


def test_the_proving_sheet_is_saved_as_pdf(proving, tmp_path, monkeypatch):
    proving.start()  # nobody has read the notes on the screen: the print asks
    target = tmp_path / "ladder.pdf"
    monkeypatch.setattr(ask, "export_path", lambda *_: target)
    monkeypatch.setattr(ask, "proving_initials", lambda *_: None)
    proving.print_sheet()
    assert not target.exists()
    monkeypatch.setattr(ask, "proving_initials", lambda *_: ("AA", "TR", ""))
    proving.print_sheet()
    printed = "".join(page.extract_text() for page in PdfReader(target).pages)
    assert "NOT ACKNOWLEDGED" not in printed
    monkeypatch.setattr(ask, "proving_initials", lambda *_: ("", "", ""))
    proving.print_sheet()
    assert "NOT ACKNOWLEDGED" in "".join(page.extract_text() for page in PdfReader(target).pages)
    read_notes(proving)
    monkeypatch.setattr(ask, "proving_initials", lambda *_: pytest.fail("they were given already"))
    proving.print_sheet()
    printed = "".join(page.extract_text() for page in PdfReader(target).pages)
    assert "NOT ACKNOWLEDGED" not in printed
    assert "AA, TR" in printed


def press(*keys):
    """Keys to whatever has the focus."""
    for one in keys:
        if isinstance(one, str):
            QTest.keyClicks(QApplication.focusWidget(), one)
        else:
            QTest.keyClick(QApplication.focusWidget(), one)
        QApplication.processEvents()


KEY = QtCore.Qt.Key


def test_no_rung_opens_before_the_stop_notes_were_read(proving):
    proving.activateWindow()
    proving.start()
    said = proving.left.notes.accessibleName()
    for words in ("second person is present", "Spindle slows or belt squeals", "Eye protection"):
        assert words in said
    assert all(button.isHidden() for button in proving.left.ladder.buttons)
    proving.happened(1)
    assert read_log("knee-mill-k-2").trials == ()
    assert "stop notes" in proving._said
    assert QApplication.focusWidget() is proving.left.notes.form.fields["operator"].box
    press("AA", KEY.Key_Return)
    assert not proving.left.notes.read.isEnabled()
    press("TR", KEY.Key_Return, KEY.Key_Return)
    assert QApplication.focusWidget() is proving.left.ladder
    assert proving.left.notes.isHidden()
    press("1")
    assert [one.outcome for one in read_log("knee-mill-k-2").standing] == ["clean"]


def test_a_learner_needs_the_person_in_charge_too(proving):
    proving.desk.trainee = True
    proving.start()
    fields = proving.left.notes.form.fields
    assert list(fields) == ["operator", "second", "in_charge"]
    for name in ("operator", "second"):
        QTest.keyClicks(fields[name].box, "AA")
    assert not proving.left.notes.read.isEnabled()
    QTest.keyClicks(fields["in_charge"].box, "PC")
    assert proving.left.notes.read.isEnabled()


def test_initials_are_asked_for_anew_at_each_ladder(proving):
    begin(proving)
    proving.another()
    proving.start()
    assert proving.desk.unread


def test_what_it_costs_and_teaches_stands_over_the_first_rung_and_on_the_sheet(
    proving, tmp_path, monkeypatch
):
    from jobsheet.reckoning.ladder.ladder_expected import words_of

    begin(proving)
    words = words_of(proving.desk.ladder.expected)
    assert proving.left._expected() == words
    target = tmp_path / "ladder.pdf"
    monkeypatch.setattr(ask, "export_path", lambda *_: target)
    proving.print_sheet()
    assert words.partition(".")[0] in " ".join(
        "".join(page.extract_text() for page in PdfReader(target).pages).split()
    )
    press("1")
    assert proving.left._expected() == ""


def test_after_an_end_a_finer_ladder_is_offered_with_what_it_costs(proving, qtbot):
    begin(proving)
    for key in "114":
        qtbot.keyClicks(proving.left.ladder, key)
    assert proving.right.narrow.isHidden()  # worked out late
    qtbot.waitUntil(lambda: proving.right.finer is not None)
    assert "A finer ladder: " in proving.right.accessibleName()
    clean = proving.desk.ladder.rungs[1].of("chatter").share
    ended = proving.desk.ladder.rungs[2].of("chatter").share
    QTest.keyClick(proving.right.narrow, KEY.Key_Return)
    ladder = proving.desk.ladder
    assert ladder.finer
    shares = [rung.of("chatter").share for rung in ladder.rungs]
    assert max(b / a for a, b in pairwise(shares)) < 1.15
    assert shares[0] <= ended
    assert clean <= max(shares)
    read_notes(proving)
    press("1")
    assert len(read_log("knee-mill-k-2").standing) == 4


def test_where_an_earlier_ladder_ended_it_is_offered_at_once(proving, qtbot):
    proving.desk.set("machine", "bench-mill-b-1")  # its invented log has an end
    proving.start()
    assert proving.desk.current is None
    qtbot.waitUntil(lambda: proving.right.finer is not None)
    assert not proving.left.form.isHidden()  # another can be asked for beside it
    proving.narrow()
    assert proving.desk.ladder.finer


def test_a_ladder_that_only_slipped_has_nothing_to_narrow(proving, qtbot):
    begin(proving)
    proving.left.ladder.texts["slipped"] = "vice"
    proving.happened(6)
    assert proving.desk.current is None
    assert not proving.desk.over


def test_the_workshops_chance_can_be_changed_in_the_form(proving, qtbot):
    QTest.keyClicks(proving.left.form.fields["chance"].box, "3 %")
    proving.start()
    careful = proving.desk.ladder
    assert careful.chance == pytest.approx(0.03)
    proving.another()
    box = proving.left.form.fields["chance"].box
    box.selectAll()
    QTest.keyClicks(box, "80 %")
    proving.start()
    assert proving.desk.ladder is None
    assert "80 %" in proving._said
    box.selectAll()
    QTest.keyClick(box, KEY.Key_Delete)
    proving.start()
    assert careful.rungs[0].of("chatter").share < proving.desk.ladder.rungs[0].of("chatter").share


def test_headline_and_chart_agree_to_the_digit(proving, qtbot):
    """However the ladder goes, what stands in large type is what stands at the blue line."""
    from jobsheet.report.charts import chance_chart

    for kind, keys in (("side", "114"), ("slot", "12"), ("face", "11114")):
        proving.another()
        proving.desk.set("kind", kind)
        proving.desk.set(
            "cutter",
            "face mill 50 mm, 4 teeth, HSS" if kind == "face" else "end mill 12 mm, 4 teeth, 30 mm out",
        )
        proving.desk.set("width", "40 mm" if kind == "face" else "6 mm")
        begin(proving)
        for key in keys:
            qtbot.keyClicks(proving.left.ladder, key)
        found = proving.desk.conclusion()
        size = re.fullmatch(r".+ Plan such cuts up to (.+) deep\.", found.head)[1]
        drawing = chance_chart(
            proving.desk.ladder, proving.desk.before(), proving.desk.after(), proving.desk.same_cuts(), 520, 330,
            planned=found.planned,
        )  # fmt: skip
        assert [one.words for one in drawing.items if getattr(one, "words", "").startswith("plan to")] == [
            f"plan to {size}"
        ]


def test_a_drill_is_planned_to_by_the_tool_and_its_torque_and_the_chart_has_the_same_torque(proving, qtbot):
    from jobsheet.report.charts import chance_chart

    for name, text in (("machine", "bench-mill-b-1"), ("kind", "drill"), ("cutter", "drill 8 mm")):
        proving.desk.set(name, text)
    begin(proving)
    qtbot.keyClicks(proving.left.ladder, "1")
    qtbot.keyClicks(proving.left.ladder, "3")
    found = proving.desk.conclusion()
    tool, torque = re.fullmatch(r"Stop here\. Plan such cuts up to (.+), (.+ N·m)\.", found.head).groups()
    assert tool == proving.desk.ladder.rungs[0].size
    drawing = chance_chart(
        proving.desk.ladder,
        proving.desk.before(),
        proving.desk.after(),
        proving.desk.same_cuts(),
        520,
        330,
        planned=found.planned,
    )
    assert f"plan to {torque}" in [getattr(one, "words", "") for one in drawing.items]


def test_what_the_open_job_needs_is_offered_first_and_begun_by_its_digit(show, qtbot):
    from jobsheet.paths import sample_jobs

    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"))
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    place.activateWindow()
    qtbot.waitUntil(lambda: bool(place.left.needs.rows))
    (row,) = place.left.needs.rows
    assert row.accessibleName().startswith("1: side with end mill: 4 cuts settle step 70")
    assert QApplication.focusWidget() is row
    press("1")
    assert place.desk.ladder is row.need.ladder
    assert place.desk.ladder.up_to
    press("AA", KEY.Key_Return, "TR", KEY.Key_Return, KEY.Key_Return, "1111")
    assert place.desk.current is None
    assert place.desk.conclusion().head.startswith("Every rung ran clean. Plan such cuts up to ")
    assert "what the job asks" in place.desk.conclusion().lines[0]
    place.another()
    qtbot.waitUntil(lambda: not place.left.needs.rows)  # nothing is open any more
    place.close()


def test_a_pocket_is_proved_in_the_part_by_its_digit_and_layer_by_layer(show, qtbot):
    from jobsheet.paths import sample_jobs

    window = show(str(sample_jobs() / "hm-104-cover-plate.yaml"))
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    place.activateWindow()
    qtbot.waitUntil(lambda: bool(place.left.needs.rows))
    (row,) = place.left.needs.rows
    assert row.head.endswith("6 growing layers of step 60, in the part itself")
    press("1")
    assert place.desk.ladder is row.need.ladder
    press("AA", KEY.Key_Return, "TR", KEY.Key_Return, KEY.Key_Return, "113")  # the third one rings
    assert place.desk.current is None
    assert place.desk.finer() is None  # no steel is cut for it: the step goes on with the last clean depth
    assert place.desk.conclusion().head == "Stop here. Go on in the part with layers of 0.6 mm."
    place.close()


def test_what_cannot_be_proved_says_why(show, qtbot):
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs

    window = show(str(sample_jobs() / "hm-104-cover-plate.yaml"))
    window.desk.history.do(SetField("job", "material", "titanium grade 5"))
    window.actions_by_id["prove"].trigger()
    place = next(iter(window.findChildren(ProvingWindow)))
    qtbot.waitUntil(lambda: bool(place.left.needs.rows))
    rows = [one for one in place.left.needs.rows if one.need.process == "pocket"]
    assert [one.isEnabled() for one in rows] == [False]
    assert "titanium" in rows[0].accessibleName().lower()
    press("1")
    assert place.desk.ladder is None
    place.close()
