"""The faces on which a zero stands, and what the drawing calls them."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.review.plan.zero_faces import letters_at_zero, zero_faces

from .views_read import sample, view_of


def test_the_plate_that_is_turned_round_has_its_zero_on_the_drawing_s_datums():
    """HM-100: front (A) at the far jaw, left (B) to the right."""
    view = view_of(sample(100))
    set_up = view.job.set_ups[0]
    assert set(zero_faces(view, set_up)) == {"front", "left"}
    assert letters_at_zero(view, set_up) == "A and B"


@pytest.mark.parametrize("datums", [(), (("A", "front"),), (("A", "top"), ("B", "bottom"))])
def test_without_both_datums_nothing_is_named(datums):
    view = view_of(replace(sample(100), datums=datums))
    assert letters_at_zero(view, view.job.set_ups[0]) == ""


def test_the_other_edges_are_the_other_faces():
    job = sample(100)
    set_up = job.set_ups[0]
    zero = replace(set_up.zero, x_from="right" if set_up.zero.x_from == "left" else "left")
    view = view_of(replace(job, set_ups=(replace(set_up, zero=zero), *job.set_ups[1:])))
    assert set(zero_faces(view, view.job.set_ups[0])) == {"front", "right"}
