"""A casting: a block whose sides lean in, with a skin that is thinner than it."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.model.quantity import Quantity
from jobsheet.stock.shapes.casting import SHAPE, lean
from jobsheet.storage.job_file import blank_job


def casting(x=80.0, y=50.0, z=30.0, draft=None, skin=None):
    """A casting [mm, degrees]."""
    sizes = {
        name: Quantity(value / 1e3, f"{value:g} mm")
        for name, value in (("length", x), ("width", y), ("height", z))
    }
    return replace(
        blank_job("bench-mill-b-1").stock, **sizes,
        draft=None if draft is None else Quantity(math.radians(draft), f"{draft:g}°"),
        skin=None if skin is None else Quantity(skin / 1e3, f"{skin:g} mm"),
    )  # fmt: skip


def test_each_side_leans_in_by_its_height_times_the_tangent():
    """30 high at 2°: 1.0476 mm a side."""
    assert lean(casting(draft=2)) * 1e3 == pytest.approx(30 * math.tan(math.radians(2)))
    assert lean(casting()) == 0


@pytest.mark.parametrize("draft", [0.0, 2.0, 10.0])
def test_its_volume_is_that_of_a_frustum(draft):
    """Simpson's rule is exact for it: (bottom + 4 middle + top) h / 6."""
    stock = casting(draft=draft)
    inward = 30 * math.tan(math.radians(draft))
    bottom, middle, top = ((80 - 2 * part * inward) * (50 - 2 * part * inward) for part in (0, 0.5, 1))
    outline = SHAPE.outline(stock)
    assert outline.area * outline.long * 1e9 == pytest.approx((bottom + 4 * middle + top) * 30 / 6)


@pytest.mark.parametrize(
    ("more", "field"),
    [({"skin": 15}, "skin"), ({"skin": 14.9}, ""), ({"draft": 45}, "draft"), ({"draft": 30}, ""), ({}, "")],
)
def test_what_leaves_nothing_of_it_is_refused_by_its_field(more, field):
    """30 is the thinnest: a skin of 15 on both sides is all of it; 30 at 45° leans
    in 30 a side, more than half of 50.
    """
    name, sentence = SHAPE.wrong(casting(**more))
    assert name == field
    assert bool(sentence) == bool(field)
