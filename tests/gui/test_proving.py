"""The proving place: plan, enter with a digit, see what it teaches, take back; the log on the disk holds all of it."""

import pytest
from pypdf import PdfReader
from PySide6 import QtCore

from jobsheet.gui.forms import ask
from jobsheet.gui.places.proving.proving_window import ProvingWindow
from jobsheet.storage.records.proof_log import own_path, read_log


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
    proving.start()
    qtbot.keyClick(proving.left.ladder, QtCore.Qt.Key.Key_1)
    (trial,) = read_log("knee-mill-k-2").standing
    assert (trial.outcome, trial.role) == ("clean", "Apprentice A")
    assert own_path("knee-mill-k-2").is_file()
    assert proving.desk.current.number == 2


def test_the_first_sign_of_trouble_ends_the_ladder_and_says_what_to_plan_to(proving, qtbot):
    proving.start()
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
    proving.start()
    qtbot.keyClick(proving.left.ladder, QtCore.Qt.Key.Key_5)
    proving.take_back()
    log = read_log("knee-mill-k-2")
    assert log.standing == ()
    assert len(log.trials) == 1
    assert proving.desk.current.number == 1


def test_seconds_that_cannot_be_read_record_nothing_and_say_so(proving, qtbot):
    proving.start()
    qtbot.keyClicks(proving.left.ladder.form.fields["seconds"].box, "soon")
    proving.happened(1)
    assert read_log("knee-mill-k-2").trials == ()
    assert "soon" in proving._said


def test_slipped_asks_what(proving, qtbot):
    proving.start()
    proving.happened(6)
    assert "vice" in proving._said
    assert read_log("knee-mill-k-2").trials == ()


def test_seconds_on_the_watch_give_the_real_feed(proving, qtbot):
    """Twice the planned time is half the planned feed: thinner chips ask less of the spindle."""
    proving.start()
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
    proving.start()
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


def test_the_capability_card_of_two_machines(window, qtbot, tmp_path, monkeypatch):
    from jobsheet.gui.places.capability.capability_window import CapabilityWindow

    card = CapabilityWindow(window.desk, window)
    qtbot.addWidget(card)
    assert card.pdf.startswith(b"%PDF")
    card.second.setCurrentIndex(card.second.findData("bench-mill-b-2"))
    assert card.view.count == 1
    card.second.setCurrentIndex(card.second.findData("bench-mill-b-1"))
    assert "another" in card.said.text()
    card.second.setCurrentIndex(0)
    card.metals.setText("unobtainium")
    card.make()
    assert "unobtainium" in card.said.text()
    target = tmp_path / "card.pdf"
    monkeypatch.setattr(ask, "export_path", lambda *_: target)
    card.export()
    assert target.read_bytes() == card.pdf
