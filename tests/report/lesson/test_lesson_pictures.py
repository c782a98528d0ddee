"""How the work comes and how it must leave: two pictures, and the second one
is of less metal or more cuts.
"""

from __future__ import annotations

import pytest

from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Columns, Picture
from jobsheet.report.lesson.lesson_pictures import HIGH, WIDE, before_and_after
from jobsheet.storage.job_file import read_job


@pytest.mark.parametrize(
    ("name", "level"), [("hm-103-pivot-block", 1), ("hm-103-pivot-block", 4), ("hm-104-cover-plate", 1)]
)
def test_there_are_two_of_one_size_and_they_differ(samples, name, level):
    reckoned = Reckoner().reckon(read_job(samples / f"{name}.yaml"))
    made = before_and_after(order_exercise(reckoned, level, 7, 1), reckoned)
    assert isinstance(made, Columns)
    (comes,), (leaves,) = made.parts
    assert isinstance(comes, Picture)
    assert isinstance(leaves, Picture)
    for one in (comes, leaves):
        assert (one.drawing.width, one.drawing.height) == (WIDE, HIGH)
    assert comes.drawing.items != leaves.drawing.items
