"""What somebody else saved is kept under its day and code before it is written over."""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage.check_code import check_code
from jobsheet.storage.kept.kept_aside import keep_aside


def test_it_is_kept_beside_the_job_byte_for_byte(tmp_path):
    data = b"format: 2\r\n\xc3\xa4"
    path = keep_aside(tmp_path / "HM-103.yaml", data, "2026-11-30")
    assert path.read_bytes() == data
    assert path.name == f"saved-2026-11-30-{check_code(data)}.yaml"
    assert path.parent.parent == tmp_path


def test_the_same_again_is_not_written_again_and_another_is_beside_it(tmp_path):
    job = tmp_path / "HM-103.yaml"
    path = keep_aside(job, b"one", "2026-11-30")
    stamp = path.stat().st_mtime_ns
    assert keep_aside(job, b"one", "2026-11-30") == path
    assert path.stat().st_mtime_ns == stamp
    assert keep_aside(job, b"two", "2026-11-30") != path


def test_a_disk_that_refuses_is_a_sentence(tmp_path):
    job = tmp_path / "HM-103.yaml"
    from jobsheet.storage.kept.closed_plans import folder_of

    folder_of(job).write_text("no folder", encoding="utf-8")
    with pytest.raises(CannotWrite):
        keep_aside(job, b"one", "2026-11-30")
