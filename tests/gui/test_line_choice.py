"""What a line of the finished part can be: every form with an example that
can be read, and the next letter.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.sizes_line import read_shape
from jobsheet.gui.edits.line_choice import lines_listed, sizes_in
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture(params=["mm", "in"])
def job(request):
    return replace(read_job(sample_jobs() / "hm-104-cover-plate.yaml"), units=request.param)


def test_every_example_of_a_feature_can_be_read(job):
    found = lines_listed(job, "line_1")
    assert len({one.title for one in found}) == len(found) > 5
    for one in found:
        assert one.under == one.key
        read_feature(one.key, job.units, job.datums)


def test_every_example_of_the_sizes_can_be_read(job):
    for one in lines_listed(job, "sizes"):
        read_shape(one.key, job.units, job.datums)


def test_the_sizes_of_an_example_are_numbers_to_be_typed_over(job):
    for one in lines_listed(job, "line_1"):
        at = sizes_in(job, one.key)
        if at is not None and at[1] > at[0]:
            assert any(letter.isdigit() for letter in one.key[slice(*at)])
    assert sizes_in(job, "no example of these") is None


def test_a_letter_that_is_given_is_not_offered_again(job):
    given = {letter for letter, _ in job.datums}
    offered = lines_listed(job, "datums")
    assert all(one.key and one.title for one in offered)
    assert not any(one.title in given for one in offered)
