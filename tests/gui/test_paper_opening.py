"""Printed sheets are opened in the window: by Open, by letting them fall on it, at
the start; what is asked about them.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication

from jobsheet.__main__ import main
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.forms import ask
from jobsheet.gui.start.start import make_window
from jobsheet.paths import own_folder, resources, sample_jobs
from jobsheet.sheet.pdf import make_pdf
from tests.report.plans import pages, plate

SAMPLE = sample_jobs() / "hm-100-drilled-plate-b2.yaml"


@pytest.fixture
def printed(window, tmp_path):
    path = tmp_path / "plate.pdf"
    assert main(["sheet", str(SAMPLE), "-o", str(path)]) == 0
    return path


def card_here(text):
    folder = own_folder() / "machines"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "bench-mill-b-2.yaml").write_text(text, encoding="utf-8")


def test_the_same_card_here_asks_nothing(window, printed, monkeypatch):
    monkeypatch.setattr(ask, "whose_card", None)
    assert window.parts.files.open_path(printed)
    assert window.desk.job.machine == "bench-mill-b-2"
    assert window.desk.path is None
    assert window.desk.named == "plate.yaml"
    assert window.desk.history.changed


@pytest.mark.parametrize(
    ("answer", "machine"),
    [("here", "bench-mill-b-2"), ("sheets", "bench-mill-b-2-of-the-sheets"), ("cancel", "bench-mill-b-1")],
)
def test_another_card_here_is_asked_about(window, printed, monkeypatch, answer, machine):
    shipped = (resources() / "machines" / "bench-mill-b-2.yaml").read_text(encoding="utf-8")
    card_here(shipped + "# gib lock nipped up since\n")
    asked = []
    monkeypatch.setattr(
        ask, "whose_card", lambda _parent, words, *, there: asked.append((words, there)) or answer
    )
    window.parts.files.open_path(printed)
    ((words, there),) = asked
    assert "Bench mill B-2" in words
    assert there
    assert window.desk.job.machine == machine
    assert window.desk.reckoned is not None


def test_of_several_jobs_one_is_chosen(window, tmp_path, monkeypatch):
    path = tmp_path / "two.pdf"
    second = SAMPLE.read_bytes()
    first = (sample_jobs() / "hm-100-drilled-plate-b1.yaml").read_bytes()
    path.write_bytes(
        make_pdf((pages(plate(), source=first, name="one"), pages(plate(), source=second, name="two")))
    )
    asked = []
    monkeypatch.setattr(ask, "which", lambda _parent, _words, names: asked.append(names) or 1)
    assert window.parts.files.open_path(path)
    assert asked == [["one.yaml", "two.yaml"]]
    assert window.desk.job.machine == "bench-mill-b-2"
    monkeypatch.setattr(ask, "which", lambda *_: None)
    assert not window.parts.files.open_path(path)


def test_a_doctored_one_is_a_sentence_and_leaves_the_job(window, tmp_path, monkeypatch):
    path = tmp_path / "x.pdf"
    path.write_bytes(b"%PDF-1.7\nnothing")
    told = []
    monkeypatch.setattr(ask, "tell", lambda _parent, words: told.append(words))
    before = window.desk.job
    assert not window.parts.files.open_path(path)
    assert len(told) == 1
    assert "x.pdf" in told[0]
    assert window.desk.job is before


def drop(window, path):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    about = (data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    enter = QDragEnterEvent(QPoint(200, 400), Qt.DropAction.CopyAction, *about)
    QApplication.sendEvent(window, enter)
    event = QDropEvent(QPointF(200, 400), Qt.DropAction.CopyAction, *about)
    QApplication.sendEvent(window, event)
    return enter.isAccepted(), event.isAccepted()


def test_what_is_let_fall_on_the_window_is_opened(window, printed, qtbot):
    assert drop(window, printed) == (True, True)
    qtbot.waitUntil(lambda: window.desk.named == "plate.yaml")
    assert window.desk.job.machine == "bench-mill-b-2"


def test_unsaved_work_is_asked_for_before_what_fell_on_it_is_opened(window, printed, qtbot, monkeypatch):
    window.parts.edits.steps.duplicate()
    asked = []
    monkeypatch.setattr(ask, "save_changes", lambda *_: asked.append(1) or "cancel")
    drop(window, printed)
    qtbot.waitUntil(lambda: bool(asked))
    assert window.desk.job.machine == "bench-mill-b-1"


def test_sheets_may_be_named_at_the_start(printed, qtbot, home):
    made = make_window(open_at_start(str(printed)))
    qtbot.addWidget(made)
    made.show()
    qtbot.waitUntil(lambda: made.desk.named == "plate.yaml")
    assert made.desk.job.machine == "bench-mill-b-2"
    made.desk.history.mark_saved()
