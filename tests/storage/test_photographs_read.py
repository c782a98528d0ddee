"""Photographs in a file are named by their content and by nothing that could be a path."""

from __future__ import annotations

import pytest

from jobsheet.errors import DocumentError
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.photos.photographs_read import MOST, is_content


@pytest.mark.parametrize("text", ["", "a" * 63, "A" * 64, "../" + "a" * 61, "g" * 64, "a" * 65])
def test_what_is_no_content(text):
    assert not is_content(text)
    assert is_content("0f" * 32)


def with_photographs(lines):
    return job_from_text(
        write_job(blank_job("bench-mill-b-1")).rstrip("\n") + "\nphotographs:\n" + lines, "job"
    )


def test_they_come_back_in_their_order():
    job = with_photographs("".join(f"  - content: {sign * 64}\n    shows: '{sign}'\n" for sign in "ab"))
    assert [(one.content[0], one.shows) for one in job.photographs] == [("a", "a"), ("b", "b")]


def test_a_path_is_refused_with_its_line():
    with pytest.raises(DocumentError, match="SHA-256"):
        with_photographs("  - content: /etc/passwd\n")


def test_more_than_a_job_has_are_refused():
    many = "".join(f"  - content: {number:064x}\n" for number in range(MOST + 1))
    with pytest.raises(DocumentError, match=f"at most {MOST}"):
        with_photographs(many)
