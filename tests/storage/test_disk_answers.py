"""Whether a disk answers: asked aside, one question at a time."""

from __future__ import annotations

import threading
from pathlib import Path

from jobsheet.storage.disk_answers import DiskAnswers


def test_a_disk_that_is_well_answers_and_so_does_one_without_the_folder(tmp_path):
    assert DiskAnswers().within(tmp_path / "job.yaml", 5)
    assert DiskAnswers().within(tmp_path / "none" / "job.yaml", 5)


def test_a_silent_one_is_asked_once_and_answers_later(monkeypatch, tmp_path):
    asked, go = [], threading.Event()

    def silent(self, **_more):
        asked.append(self)
        go.wait(10)
        raise OSError

    monkeypatch.setattr(Path, "stat", silent)
    disk = DiskAnswers()
    assert not disk.within(tmp_path / "job.yaml", 0.01)
    assert not disk.within(tmp_path / "job.yaml", 0.01)
    assert len(asked) == 1
    go.set()
    assert disk.within(tmp_path / "job.yaml", 5)
