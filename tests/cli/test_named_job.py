"""The job that is given by name: a file, or its printed sheets."""

from __future__ import annotations

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.named_job import job_named, shots_named
from jobsheet.errors import DocumentError
from jobsheet.storage.job_file import read_job


def test_file_and_sheets_are_the_same_job(samples, tmp_path):
    path = samples / "hm-100-drilled-plate-b1.yaml"
    target = tmp_path / "plate.pdf"
    assert main(["sheet", str(path), "-o", str(target)]) == 0
    assert job_named(path) == read_job(path) == job_named(target)


def test_a_pdf_without_a_job_is_refused(tmp_path):
    path = tmp_path / "other.pdf"
    path.write_bytes(b"%PDF-1.4\n%%EOF\n")
    with pytest.raises(DocumentError):
        job_named(path)


def test_nothing_is_looked_for_where_a_job_has_no_photographs(hm100, tmp_path):
    assert shots_named(hm100, tmp_path / "no-such.yaml") == ()
