"""The crash journal: what was not saved lies there until it is saved or thrown away,
and a living window's own is let be.
"""

from __future__ import annotations

import os

import pytest

from jobsheet.gui.desk import journal
from jobsheet.gui.desk.journal import Entry, Journal, folder, left_behind

ENTRY = Entry(
    job="job: 1\n", drafts=(("face", "depth", "1 "),), path="/jobs/a.yaml", name="a.yaml", digest="d"
)


def _crashed(name, entry=ENTRY, when=1_000_000_000):
    """A journal whose window is gone."""
    kept = Journal()
    assert kept.write(entry)
    written = next(path for path in folder().glob("*.json") if path.name.startswith(f"{os.getpid()}-"))
    bytes_of = written.read_bytes()
    kept.clear()
    path = folder() / name
    path.write_bytes(bytes_of)
    os.utime(path, (when, when))
    return path


def test_before_anything_is_kept_there_is_no_folder():
    assert left_behind() == []
    assert not folder().exists()


def test_what_a_living_window_keeps_is_not_left_behind_and_cleared_it_is_gone():
    kept = Journal()
    assert kept.write(ENTRY)
    assert left_behind() == []
    kept.clear()
    kept.clear()
    assert list(folder().glob("*.json")) == []


def test_what_a_crash_left_is_found_the_newest_first():
    old = _crashed("1-a.json", when=1_000_000_000)
    new = _crashed("2-b.json", Entry(job="job: 2\n"), when=1_000_000_900)
    assert left_behind() == [(new, Entry(job="job: 2\n")), (old, ENTRY)]


@pytest.mark.parametrize("kept", [b"", b"{", b'{"job": 7}', b"\xff\xfe"])
def test_what_cannot_be_read_is_left_alone_and_hides_no_other(kept):
    whole = _crashed("1-a.json")
    (folder() / "2-b.json").write_bytes(kept)
    (folder() / "3-c.json").mkdir()
    assert [path for path, _ in left_behind()] == [whole]
    assert (folder() / "2-b.json").read_bytes() == kept


def test_what_is_far_too_large_is_no_journal(monkeypatch):
    _crashed("1-a.json")
    monkeypatch.setattr(journal, "LARGEST", 10)
    assert left_behind() == []


def test_a_folder_that_cannot_be_made_is_told(home):
    home.write_text("a file where the folder should be")
    assert Journal().write(ENTRY) is False
