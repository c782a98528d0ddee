"""How a set-up holds the work, in one line that gives no order away."""

from __future__ import annotations

from jobsheet.report.lesson.held_line import held_line
from jobsheet.storage.job_file import read_job


def test_what_decides_between_two_set_ups_stands_on_the_sheet(samples):
    """The rear of the pivot block is faced with a round bar, the top without: without
    the bar both jaws want a true face.
    """
    job = read_job(samples / "hm-103-pivot-block.yaml")
    said = {one.number: held_line(job, one) for one in job.set_ups}
    assert (
        said[3]
        == "150 mm vice; A, bottom face to the fixed jaw, round bar at the moving one; B, front face down on parallels"
    )
    assert said[4] == "150 mm vice; B, front face to the fixed jaw; A, bottom face down on parallels"
    assert said[6].endswith("; zero A and C")
