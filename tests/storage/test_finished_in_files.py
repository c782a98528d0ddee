"""What the part shall be, in the job's file: kept as typed, whether it can be read or
not, and never asked of older files.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.errors import DocumentError
from jobsheet.model.finished import Finished
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job

SAID = Finished(
    sizes="80 ±0.1 x 50 x 30; A square to B 0.03",
    features=(
        "4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35",
        "#7 through: here",
        "16 h7 nobody reads",
        "Ø 6 through",
    ),
)


def test_lines_come_back_letter_for_letter():
    text = write_job(replace(blank_job("bench-mill-b-1"), finished=SAID))
    again = job_from_text(text, "plate.yaml")
    assert again.finished == SAID
    assert write_job(again) == text


def test_nothing_said_leaves_no_trace():
    assert "finished" not in write_job(blank_job("bench-mill-b-1"))


@pytest.mark.parametrize(
    ("said", "problem"),
    [
        ("finished: yes", "a group of fields"),
        ("finished:\n  size: 80", "did you mean sizes"),
        ("finished:\n  features: 6 through", "a list belongs here"),
        ("finished:\n  features:\n    - a: 1", "one line of text"),
        ("finished:\n  features:\n    - #7 through", "in quotes if it begins"),
    ],
)
def test_what_is_no_line_is_said_with_its_place(said, problem):
    text = write_job(blank_job("bench-mill-b-1")).replace("set-ups:", f"{said}\nset-ups:")
    with pytest.raises(DocumentError, match=problem) as caught:
        job_from_text(text, "plate.yaml")
    assert all(one.line for one in caught.value.problems)
