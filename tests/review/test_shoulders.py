"""Shoulders along a side that leave a floor, and what stands across from them."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.finished_part import finished_part
from jobsheet.model.finished import Finished
from jobsheet.review.plan.shoulders import across_what_stands, opposite_of_shoulder, shoulders
from jobsheet.storage.job_file import blank_job

from .views_read import sample, steps_of


def test_only_a_wall_that_leaves_a_floor_is_a_shoulder():
    """HM-103: the step at the right is 20 wide; its ends are milled over their whole height."""
    steps = steps_of(sample(103))
    assert [(face, round(width * 1e3, 6)) for face, width in shoulders(steps["step"])] == [("right", 20)]
    assert opposite_of_shoulder(steps["step"]) == ("left",)
    assert list(shoulders(steps["end-c"])) == []


def test_a_face_has_none():
    assert list(shoulders(steps_of(sample(100))["face-rough"])) == []


def test_what_is_left_beside_a_step_of_the_drawing():
    """80 long, a step of 20 at the right: 60 stand; with one of 15 at the left 45 between them."""

    def part(*features):
        return finished_part(
            replace(blank_job("bench-mill-b-1"), finished=Finished(sizes="80 x 50 x 30", features=features))
        )

    right = read_feature("step 20 x 12 right end", "mm")
    assert [round(one * 1e3, 6) for one in across_what_stands(part("step 20 x 12 right end"), right)] == [60]
    both = part("step 20 x 12 right end", "step 15 x 12 left end")
    assert [round(one * 1e3, 6) for one in across_what_stands(both, right)] == [60, 45]
    assert across_what_stands(part(), read_feature("6 through", "mm")) == ()
