"""A zero is drawn only where something counts from it, and handles say which way the table goes."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Ellipse, Text
from jobsheet.drawing.mark_shapes import mark
from jobsheet.report.blocks import Columns, Picture
from jobsheet.report.pictured.zero_there import zero_there
from jobsheet.storage.job_file import read_job
from tests.report.plans import drill, job, pages

from .seen_from_above import plan_of


def test_a_zero_is_drawn_only_where_something_counts_from_it(samples):
    """The first four set-ups of the pivot block face a casting from a touch, the
    fifth and sixth find two edges.
    """
    plan = plan_of(read_job(samples / "hm-103-pivot-block.yaml"))
    assert [zero_there(plan, one) for one in plan.courses] == [False] * 4 + [True] * 2
    ring = next(item for item in mark("zero", 15.0).items if isinstance(item, Ellipse))
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"))
    rings = [
        sum(isinstance(item, Ellipse) and (item.a, item.weight) == (ring.a, ring.weight) for item in picture.drawing.items)
        for page in document.pages if page.kind == "set-up"
        for block in page.blocks if isinstance(block, Columns)
        for part in block.parts for picture in part if isinstance(picture, Picture) and picture.title.startswith("Zero")
    ]  # fmt: skip
    assert rings[:4] == [0] * 4
    assert set(rings[4:]) == {1}


@pytest.mark.parametrize(
    ("x", "y", "said"),
    [("right", "away", ("table ◂", "table ▾")), ("left", "towards", ("table ▸", "table ▴"))],
)
def test_the_table_goes_against_the_way_the_places_count(x, y, said):
    """A cutter stands still: for a place further to the right the table goes to the left."""
    work = job([drill(10, [(10, 10)])])
    (set_up,) = work.set_ups
    work = replace(work, set_ups=(replace(set_up, zero=replace(set_up.zero, x_counts=x, y_counts=y)),))
    words = [
        item.words
        for page in pages(work).pages
        for block in page.blocks if isinstance(block, Columns)
        for part in block.parts for picture in part if isinstance(picture, Picture)
        for item in picture.drawing.items if isinstance(item, Text)
    ]  # fmt: skip
    assert all(one in words for one in said)
