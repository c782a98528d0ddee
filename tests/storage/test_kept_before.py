"""What stood in a file before it was saved lies beside it, where it is not the same."""

from __future__ import annotations

from jobsheet.storage.disk import digest
from jobsheet.storage.kept.kept_before import keep_before, read_before


def test_what_stood_there_is_kept_once_it_is_another(tmp_path):
    path = tmp_path / "job.yaml"
    path.write_bytes(b"old")
    stood = read_before(path)
    path.write_bytes(b"new")
    before = keep_before(path, stood, digest(b"new"))
    assert before == tmp_path / "job.yaml.before"
    assert before.read_bytes() == b"old"


def test_the_very_same_and_nothing_are_not_kept(tmp_path):
    path = tmp_path / "job.yaml"
    assert read_before(path) is None
    assert keep_before(path, None, digest(b"new")) is None
    assert keep_before(path, b"new", digest(b"new")) is None
    assert list(tmp_path.iterdir()) == []


def test_where_it_cannot_be_kept_saving_goes_on(tmp_path):
    path = tmp_path / "job.yaml"
    (tmp_path / "job.yaml.before").mkdir()
    assert keep_before(path, b"old", digest(b"new")) is None
    assert read_before(tmp_path) is None
