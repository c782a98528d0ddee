"""What stands on the picture of the work after a set-up: sizes and names as the samples' drawings have
them; and how large the pictures are.
"""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Text
from jobsheet.report.blocks import Columns, Picture
from jobsheet.report.pictured.made_sizes import made
from jobsheet.report.set_up_head import FIRST
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.job_file import read_job
from tests.report.plans import drill, job, pages
from tests.report.seen_from_above import plan_of


def of(samples, name):
    plan = plan_of(read_job(samples / name))
    return [made(plan, course) for course in plan.courses]


def test_the_plate_is_faced_to_its_height_and_has_four_threads(samples):
    """Demo scenario, HM-100: 80 × 50 × 12 faced to 11.5, four M6."""
    (found,) = of(samples, "hm-100-drilled-plate-b1.yaml")
    assert found.sizes == ("", "", "11.5")
    assert [name for name, _ in found.names] == ["4 × M6"]


def test_the_pivot_block_as_its_set_ups_leave_it(samples):
    """Demo scenario, HM-103: casting to 80 × 50 × 40, a step 20 × 12, two M8, a bore 16."""
    found = of(samples, "hm-103-pivot-block.yaml")
    assert found[2].sizes[2] == "50"
    assert found[3].sizes[2] == "40"
    assert found[4].sizes == ("80", "", "")
    assert sorted(name for name, _ in found[4].names) == ["2 × M8", "step 20 × 12"]
    assert [name for name, _ in found[5].names] == ["⌀16"]
    step = dict(found[4].names)["step 20 × 12"]
    assert step == pytest.approx((0.070, 0.025, 0.028))  # in the middle of its floor, 12 below the top of 40


def test_what_let_a_cutter_in_is_gone_with_its_pocket(samples):
    """Demo scenario, HM-104: 120 × 80 out of a sheet, a window 50 × 30 whose corner
    holes and entry go with it, four 6.5.
    """
    (found,) = of(samples, "hm-104-cover-plate.yaml")
    assert found.sizes[:2] == ("120", "80")
    assert sorted(name for name, _ in found.names) == ["4 × ⌀6.5", "50 × 30"]


def pictures_of(document):
    for page in document.pages:
        for block in page.blocks:
            for part in block.parts if isinstance(block, Columns) else ():
                yield from ((page, one) for one in part if isinstance(one, Picture))


def test_a_page_with_room_has_larger_pictures_and_none_takes_a_page_for_it(samples):
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"), fits=fits_on("a4"))
    heights = {
        page.number: one.drawing.height for page, one in pictures_of(document) if one.title.startswith("Zero")
    }
    assert max(heights.values()) > FIRST
    assert len(document.pages) <= 8


def test_how_far_the_work_stands_over_the_jaws_is_on_its_picture():
    document = pages(job([drill(10, [(10, 10)])]))
    held = next(one for page, one in pictures_of(document) if page.kind == "set-up")
    assert "6 mm" in [item.words for item in held.drawing.items if isinstance(item, Text)]
