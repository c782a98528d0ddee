"""The journal is written when something is unsaved, and cleared when nothing is."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QObject

from jobsheet.edit.commands import SetField
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.journal_keeping import JournalKeeping
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import job_from_text, read_job


class _Kept:
    def __init__(self, works=True):
        self.entry, self.works = None, works

    def write(self, entry):
        self.entry = entry
        return self.works

    def clear(self):
        self.entry = None


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-104-cover-plate.yaml"))


def _keeping(desk, kept):
    said, parent = [], QObject()
    made = JournalKeeping(desk, kept, said.append, parent)
    made.lives, made.said = parent, said
    return made


def test_what_is_unsaved_is_kept_whole(desk):
    kept = _Kept()
    keeping = _keeping(desk, kept)
    keeping.write()
    assert kept.entry is None
    key = desk.job.set_ups[0].operations[0].key
    desk.do(SetField(key, "note", "hold it well"))
    keeping.write()
    assert job_from_text(kept.entry.job, "a").find(key)[1].fields.note == "hold it well"
    assert keeping.said == []
    desk.history.undo()
    keeping.write()
    assert kept.entry is None


def test_where_it_cannot_be_written_one_is_told_to_save(desk):
    keeping = _keeping(desk, _Kept(works=False))
    desk.do(SetField(desk.job.set_ups[0].operations[0].key, "note", "hold it well"))
    keeping.write()
    assert keeping.said == ["The crash journal cannot be written: save often."]


def test_what_is_saved_is_forgotten(desk):
    kept = _Kept()
    keeping = _keeping(desk, kept)
    desk.do(SetField(desk.job.set_ups[0].operations[0].key, "note", "hold it well"))
    keeping.later()
    keeping.write()
    keeping.forget()
    assert kept.entry is None
