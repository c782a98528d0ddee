"""A shelf read in a process of its own: it tells that it lives, how far it went, and ends with done."""

from __future__ import annotations

from jobsheet.shelf import read_apart
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find


def told(shelf, monkeypatch):
    lines = []
    monkeypatch.setattr(read_apart, "_tell", lines.append)
    read_apart.main(str(shelf))
    return lines


def test_it_ends_with_done_and_the_index_has_the_jobs(shelf, monkeypatch):
    lines = told(shelf, monkeypatch)
    assert lines[-1].strip() == read_apart.DONE
    assert {line.split()[0] for line in lines} <= {read_apart.ALIVE, read_apart.WENT, read_apart.DONE}
    index = Index(shelf)
    assert find(index, "pivot").count == 1
    index.close()


def test_a_folder_that_is_not_there_is_a_sentence_behind_done(tmp_path, monkeypatch):
    lines = told(tmp_path / "none", monkeypatch)
    assert lines[-1].startswith(read_apart.DONE)
    assert len(lines[-1].split()) > 2
    assert "\n" not in lines[-1]
