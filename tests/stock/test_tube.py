"""Tube: a ring, and no ring whose wall leaves no bore."""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import DocumentError
from jobsheet.stock.all_shapes import outline_of
from tests.stock.test_stock_solids import job_of


def test_area_of_the_ring():
    stock = job_of("shape: tube; diameter: 50; wall: 5; bar length: 100; along: length").stock
    outline = outline_of(stock)
    assert outline.area == pytest.approx(math.pi / 4 * (0.050**2 - 0.040**2))
    assert outline.is_round
    assert outline.inner


@pytest.mark.parametrize("wall", ["25", "30"])
def test_a_wall_that_leaves_no_bore(wall):
    with pytest.raises(DocumentError, match="leaves no bore"):
        job_of(f"shape: tube; diameter: 50; wall: {wall}; bar length: 100; along: length")
