"""The finished part that its lines mean: limits where a line gives none, and a line
that cannot be read beside the others.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.finished import Finished
from jobsheet.storage.job_file import blank_job


def test_a_line_that_cannot_be_read_is_kept_beside_the_others():
    job = replace(
        blank_job("bench-mill-b-1"),
        finished=Finished(sizes="80 x 50", features=("16 h7 through", "6 through")),
    )
    part = finished_part(job)
    assert [(one.line, one.text) for one in part.unread] == [(0, "80 x 50"), (1, "16 h7 through")]
    assert [number for number, _ in part.features] == [2]


def test_general_limits_stand_for_sizes_without_their_own():
    """ISO 2768-1 m: ±0.3 from 30 to 120 (ISO 2768-1:1989 table 1)."""
    job = blank_job("bench-mill-b-1")
    job = replace(
        job,
        part=replace(job.part, general_limits="ISO 2768-mK"),
        finished=Finished(sizes="80 x 50 ±0.1 x 12"),
    )
    part = finished_part(job)
    assert part.limits(part.shape.length) == pytest.approx((79.7e-3, 80.3e-3))
    assert part.limits(part.shape.width) == pytest.approx((49.9e-3, 50.1e-3))
