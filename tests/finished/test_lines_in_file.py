"""The section of a job's file with the finished part: lines come back as they were typed,
what is no line is said by its line.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.errors import DocumentError
from jobsheet.finished.lines_in_file import MOST, finished_data
from jobsheet.model.finished import Finished
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job


def with_section(section):
    return write_job(blank_job("bench-mill-b-1")).rstrip("\n") + "\nfinished:\n" + section


def test_lines_come_back_as_typed_whether_they_can_be_read_or_not():
    finished = Finished(
        sizes="80 ±0.1 x 50 x 30", features=("16 H7 through at 40, 25", "wobble: #7", "'quoted'")
    )
    job = replace(blank_job("bench-mill-b-1"), finished=finished)
    assert job_from_text(write_job(job), "job").finished == finished


def test_nothing_said_is_nothing_written_and_an_empty_line_is_left_out():
    assert finished_data(Finished()) == {}
    assert finished_data(Finished(features=("", "6 through", "  "))) == {"features": ["6 through"]}


@pytest.mark.parametrize(
    ("section", "says"),
    [
        ("  features:\n    - {a: b}\n", "write one line of text"), ("  features:\n    - ''\n", "nothing is written here"),
        ("  features:\n" + "    - 6 through\n" * (MOST + 1), f"more than {MOST} lines"),
    ],
)  # fmt: skip
def test_what_is_no_line_is_refused_with_what_to_write(section, says):
    with pytest.raises(DocumentError, match=says):
        job_from_text(with_section(section), "job")
