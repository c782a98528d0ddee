"""The work after each set-up, pictured: inside its picture, and nothing for a set-up that there is not."""

from __future__ import annotations

from jobsheet.drawing.drawn import Line
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.stage_view import finished_view, from_above, stages_of
from jobsheet.storage.job_file import read_job

FOUND = Reckoner().reckon(read_job(sample_jobs() / "hm-103-pivot-block.yaml"))


def inside(items, width, height):
    return all(
        -2 <= x <= width + 2 and -2 <= y <= height + 2
        for item in items
        if isinstance(item, Line)
        for x, y in item.points
    )


def test_the_finished_work_stays_in_its_picture():
    stages = stages_of(FOUND.job, FOUND.settings)
    drawing = finished_view(stages, FOUND.job.datums, 240, 160)
    assert inside(drawing.items, 240, 160)
    assert any(isinstance(item, Line) for item in drawing.items)


def test_from_above_is_drawn_to_the_scale_that_is_asked():
    stages = stages_of(FOUND.job, FOUND.settings)
    paint = from_above(stages, FOUND.job.set_ups[0].key)
    small, large = paint(0.0, 0.0, 1000.0), paint(0.0, 0.0, 2000.0)

    def wide(items):
        xs = [x for item in items if isinstance(item, Line) for x, _ in item.points]
        return max(xs) - min(xs)

    assert abs(wide(large) - 2 * wide(small)) < 0.5
    assert from_above(stages, "no-such-set-up") is None
