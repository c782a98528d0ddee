"""What stands in the fields of the finished part: as typed, with what was understood or why it was not."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.gui.desk.lines_shown import line_shown
from jobsheet.model.finished import Finished
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def job():
    return read_job(sample_jobs() / "hm-104-cover-plate.yaml")


def test_a_line_that_is_read_is_told_back(job):
    found = line_shown(job, "line_1")
    assert found.text == "4 x 6.5 through at 8, 8; 112, 8; 112, 72; 8, 72"
    assert found.problem is None
    assert "6.5" in found.understood


def test_the_sizes_and_the_letters_are_told_back(job):
    sizes, letters = line_shown(job, "sizes"), line_shown(job, "datums")
    assert sizes.text == "120 ±0.2 x 80 ±0.2 x 4 as bought; top flat 0.3"
    assert sizes.problem is None
    assert sizes.understood
    assert letters.text
    assert "front" in letters.understood


def test_a_line_that_cannot_be_read_has_its_reason_and_stands_as_typed(job):
    odd = replace(job, finished=Finished(sizes="as wide as it is", features=("a nice hole",)))
    for name, text in (("sizes", "as wide as it is"), ("line_1", "a nice hole")):
        found = line_shown(odd, name)
        assert found.text == text
        assert found.problem is not None
        assert not found.understood


def test_a_draft_of_the_letters_that_cannot_be_read_has_its_reason(job):
    found = line_shown(job, "datums", "A front B B")
    assert found.text == "A front B B"
    assert found.problem is not None


def test_where_nothing_is_written_nothing_is_read(job):
    bare = replace(job, finished=Finished(), datums=())
    for name in ("sizes", "line_1", "line_9"):
        assert (line_shown(bare, name).text, line_shown(bare, name).understood) == ("", "")
