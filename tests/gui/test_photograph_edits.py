"""A photograph comes to a set-up by a key or by letting a file fall on it; what is gone is
said; a saved job has it beside it.
"""

from __future__ import annotations

from hashlib import sha256

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms import ask
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job
from tests.photographs_made import jpeg_that_says, photograph, png_that_says

RAW = photograph()
CONTENT = sha256(RAW).hexdigest()


@pytest.fixture
def picture(tmp_path):
    path = tmp_path / "straps.jpg"
    path.write_bytes(RAW)
    return path


@pytest.fixture
def told(monkeypatch):
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    return said


def fall(window, path, key):
    """Let a file fall on the line of a set-up or step."""
    ruled = window.bench.column.ruled
    line = ruled.by_key[key]
    at = QPoint(60, line.top + line.high // 2)
    at = window.mapFromGlobal(ruled.mapToGlobal(at))
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    about = (data, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier)
    QApplication.sendEvent(window, QDragEnterEvent(at, Qt.DropAction.CopyAction, *about))
    QApplication.sendEvent(window, QDropEvent(QPointF(at), Qt.DropAction.CopyAction, *about))


def test_a_file_that_falls_on_a_set_up_is_kept_and_undone(show, picture, qtbot, home):
    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"), size=(1440, 1400))
    second = window.desk.job.set_ups[1]
    fall(window, picture, second.key)
    qtbot.waitUntil(lambda: bool(window.desk.job.photographs))
    (kept,) = window.desk.job.photographs
    assert (kept.content, kept.shows, kept.about) == (CONTENT, "straps", second.key)
    assert (home / "photographs" / f"{CONTENT}.jpg").read_bytes() == RAW
    window.parts.edits.history.undo()
    assert window.desk.job.photographs == ()
    window.parts.edits.history.redo()
    assert window.desk.job.photographs == (kept,)


def press(window, name):
    """Open the menu of the job by its key, and choose an entry by the letter that is marked in it."""
    action = window.actions_by_id[name]
    menu = next(
        menu
        for menu in (top.menu() for top in window.menuBar().actions())
        if menu is not None and action in menu.actions()
    )
    menu.popup(QPoint(0, 0))
    letter = action.text()[action.text().index("&") + 1]
    QTest.keyClick(menu, letter)
    menu.hide()


def test_by_keys_alone_a_picture_is_chosen_and_taken_out_again(window, picture, monkeypatch):
    monkeypatch.setattr(ask, "picture_path", lambda *_: picture)
    press(window, "photograph")
    assert [one.about for one in window.desk.job.photographs] == [window.desk.job.set_ups[0].key]
    assert "straps.jpg is kept as a photograph of set-up 1" in window.bench.status.message
    press(window, "no-photograph")
    assert window.desk.job.photographs == ()


@pytest.mark.parametrize(
    ("name", "raw", "says"),
    [
        ("big.jpg", b"\xff\xd8\xff" + b"\0" * 40_000_000, "40 MB"),
        ("words.jpg", b"only words", "no JPEG or PNG picture"),
        ("huge.png", png_that_says(65_000, 65_000), "65 000 × 65 000"),
        ("huge.jpg", jpeg_that_says(65_000, 65_000), "65 000 × 65 000"),
        ("torn.jpg", RAW[:400] + b"\0" * 30, "is damaged"),
    ],
)
def test_what_is_no_photograph_is_refused_in_one_sentence(window, tmp_path, told, home, name, raw, says):
    path = tmp_path / name
    path.write_bytes(raw)
    before = window.desk.job
    assert not window.parts.edits.photographs.take(path, before.set_ups[0])
    (sentence,) = told
    assert says in sentence
    assert "\n" not in sentence
    assert window.desk.job is before
    assert not (home / "photographs").exists()


def test_saving_takes_it_along_and_saving_elsewhere_too(window, picture, tmp_path, monkeypatch, home):
    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    for folder in ("one", "two"):
        (tmp_path / folder).mkdir()
        monkeypatch.setattr(ask, "save_path", lambda *_, folder=folder: tmp_path / folder / "plate.yaml")
        assert window.parts.files.save_as()
        assert (tmp_path / folder / "photographs" / f"{CONTENT}.jpg").read_bytes() == RAW
        assert read_job(tmp_path / folder / "plate.yaml").photographs == window.desk.job.photographs
    assert not list((home / "photographs").iterdir())


def test_what_cannot_be_taken_along_is_said_when_it_is_saved(window, picture, tmp_path, monkeypatch, home):
    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    (home / "photographs" / f"{CONTENT}.jpg").unlink()
    monkeypatch.setattr(ask, "save_path", lambda *_: tmp_path / "plate.yaml")
    assert window.parts.files.save_as()
    assert "is not there any more" in window.bench.status.message


def test_one_that_vanished_is_said_when_the_job_is_opened(window, tmp_path, picture):
    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    save_job(window.desk.job, tmp_path / "x.yaml")
    window.desk.history.mark_saved("")
    from shutil import rmtree

    from jobsheet.paths import own_folder

    rmtree(own_folder() / "photographs")
    assert window.parts.files.open_path(tmp_path / "x.yaml")
    assert "The photograph of set-up 1 (“straps”) is not there any more" in window.bench.status.message
    line = window.bench.column.ruled.notice_line
    assert "is not there any more" in line.accessibleName()
    line.buttons[0].click()
    assert window.desk.job.photographs == ()
    assert window.bench.column.ruled.notice_line is None


def test_a_set_up_that_is_taken_out_takes_its_photograph_with_it(show, picture):
    window = show(str(sample_jobs() / "hm-103-pivot-block.yaml"))
    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    from jobsheet.edit.step_commands import DeleteSetUp

    window.desk.do(DeleteSetUp(window.desk.job.set_ups[0].key))
    assert window.desk.job.photographs == ()
    window.parts.edits.history.undo()
    assert len(window.desk.job.photographs) == 1


def test_it_prints_with_the_sheets(window, picture, qtbot):
    import io

    from pypdf import PdfReader

    from jobsheet.gui.desk.job_pdf import make_sheets

    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    reader = PdfReader(io.BytesIO(make_sheets(window.desk).pdf))
    assert reader.attachments[f"{CONTENT}.jpg"] == [RAW]
    assert sum(len(page.images) for page in reader.pages) == 1


def test_sheets_that_are_opened_bring_their_photographs(window, picture, tmp_path, home):
    from jobsheet.gui.desk.job_pdf import make_sheets

    window.parts.edits.photographs.take(picture, window.desk.job.set_ups[0])
    (tmp_path / "x.pdf").write_bytes(make_sheets(window.desk).pdf)
    (home / "photographs" / f"{CONTENT}.jpg").unlink()
    window.desk.history.mark_saved("")
    assert window.parts.files.open_path(tmp_path / "x.pdf")
    assert (home / "photographs" / f"{CONTENT}.jpg").read_bytes() == RAW
    assert "not there any more" not in window.bench.status.message
