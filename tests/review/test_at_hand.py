"""Tools for a mend: those of the workshop, from small to large, else a drill of that very size."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.review.mending.at_hand import at_hand, drill_near

from .views_read import sample

SHOP = "Harrowmoss Training Workshop (invented)"


def test_the_cabinet_s_drills_lie_between_the_bounds_and_rise():
    job = replace(sample(100), workshop=SHOP)
    found = at_hand(job, "drill", 4e-3, 7e-3)
    sizes = [size for size, _ in found]
    assert sizes
    assert sizes == sorted(sizes)
    assert all(4e-3 - 1e-6 <= size <= 7e-3 + 1e-6 for size in sizes)
    assert drill_near(job, 5.01e-3, 4e-3, 7e-3)[0] == min(sizes, key=lambda one: abs(one - 5.01e-3))


def test_without_a_cabinet_it_is_a_drill_of_that_very_size():
    job = replace(sample(100), workshop="Nobody's")
    assert at_hand(job, "drill", 4e-3, 7e-3) == ()
    assert drill_near(job, 5.1e-3, 4e-3, 7e-3) == (pytest.approx(5.1e-3), "drill 5.1 mm")
