"""Two people save one plan: both are put together by key alone, what the other
saved is kept, and it is one edit.
"""

from __future__ import annotations

import shutil

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from jobsheet.edit.commands import SetField
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.two_plans import TwoPlans
from jobsheet.storage.disk import write_file
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job
from jobsheet.storage.kept.closed_plans import folder_of

ROUGH = "face-rough"
THE_QUESTION = ask.changed_outside


@pytest.fixture
def two(show, samples, tmp_path):
    """A window with a job, which somebody else has saved since; `theirs` does that."""
    path = tmp_path / "plate.yaml"
    shutil.copy(samples / "hm-100-drilled-plate-b1.yaml", path)
    window = show(str(path))

    def theirs(*commands):
        job = read_job(path)
        for command in commands:
            job = command.apply(job)
        save_job(job, path)

    return window, path, theirs


def typed(*keys):
    """Keys that are pressed in the boxes that open one after the other; what each of them said is kept."""
    seen = []

    def press(left):
        box = QApplication.activeModalWidget()
        if box is None:
            return
        seen.append(box)
        QTimer.singleShot(
            0, lambda: press(left[1:])
        )  # for the next box, which opens when this one is answered
        for key in left[0]:
            QTest.keyClick(box.focusWidget() or box, key)

    QTimer.singleShot(0, lambda: press(list(keys)))
    return seen


def kept_aside(path):
    return sorted(one for one in folder_of(path).iterdir() if one.name.startswith("saved-"))


def test_what_each_changed_alone_is_put_together_by_one_key(two, monkeypatch):
    monkeypatch.setattr(ask, "changed_outside", THE_QUESTION)
    window, path, theirs = two
    theirs(SetField("drill", "note", "peck it"))
    saved_by_them = path.read_bytes()
    window.desk.do(SetField(ROUGH, "depth", "0.5 mm"))
    seen = typed([Qt.Key.Key_Return])
    assert window.parts.files.save()
    assert len(seen) == 1
    now = read_job(path)
    assert now == window.desk.job
    assert now.find(ROUGH)[1].fields.depth.text == "0.5 mm"
    assert now.find("drill")[1].fields.note == "peck it"
    (kept,) = kept_aside(path)
    assert kept.read_bytes() == saved_by_them
    assert not window.desk.history.changed
    window.actions_by_id["undo"].trigger()
    assert window.desk.job.find("drill")[1].fields.note != "peck it"
    assert window.desk.job.find(ROUGH)[1].fields.depth.text == "0.5 mm"


def test_what_both_changed_is_chosen_step_by_step(two, monkeypatch):
    monkeypatch.setattr(ask, "changed_outside", THE_QUESTION)
    window, path, theirs = two
    theirs(SetField(ROUGH, "depth", "0.3 mm"), SetField("drill", "note", "theirs"))
    window.desk.do(SetField(ROUGH, "depth", "0.5 mm"))
    window.desk.do(SetField("drill", "note", "mine"))
    seen = typed([Qt.Key.Key_Return], [Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_Return])
    assert window.parts.files.save()
    assert isinstance(seen[1], TwoPlans)
    now = read_job(path)
    assert now.find(ROUGH)[1].fields.depth.text == "0.3 mm"
    assert now.find("drill")[1].fields.note == "mine"


def test_called_off_nothing_is_changed(two, monkeypatch):
    monkeypatch.setattr(ask, "changed_outside", THE_QUESTION)
    window, path, theirs = two
    theirs(SetField(ROUGH, "depth", "0.3 mm"))
    there = path.read_bytes()
    window.desk.do(SetField(ROUGH, "depth", "0.5 mm"))
    job = window.desk.job
    typed([Qt.Key.Key_Return], [Qt.Key.Key_Escape])
    assert not window.parts.files.save()
    assert window.desk.job is job
    assert path.read_bytes() == there
    assert window.desk.history.changed


def test_written_over_it_is_kept_beside(two, monkeypatch):
    window, path, theirs = two
    theirs(SetField(ROUGH, "depth", "0.3 mm"))
    there = path.read_bytes()
    window.desk.do(SetField(ROUGH, "depth", "0.5 mm"))
    monkeypatch.setattr(ask, "changed_outside", lambda *_: "overwrite")
    assert window.parts.files.save()
    assert [one.read_bytes() for one in kept_aside(path)] == [there]
    assert read_job(path) == window.desk.job


def test_what_cannot_be_read_is_said_with_its_line_and_nothing_is_lost(two, monkeypatch):
    window, path, _ = two
    text = path.read_text(encoding="utf-8").replace(
        "units: mm\n", "<<<<<<< ours\nunits: mm\n=======\nunits: in\n>>>>>>> theirs\n", 1
    )
    write_file(path, text)
    window.desk.do(SetField(ROUGH, "depth", "0.5 mm"))
    said = []
    monkeypatch.setattr(ask, "changed_outside", lambda *_: "both")
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    assert not window.parts.files.save()
    assert "line 2" in said[0]
    assert "<<<<<<<" in said[0]
    assert path.read_text(encoding="utf-8") == text
    assert window.desk.history.changed
