"""Hexagon bar: 2/√3 over its corners, √3/2 of its flats squared."""

from __future__ import annotations

import math

import pytest

from jobsheet.stock.all_shapes import outline_of
from tests.stock.test_stock_solids import job_of


def test_corners_area_and_how_it_lies():
    stock = job_of("shape: hexagon; across flats: 24; bar length: 60; along: length").stock
    assert [size.value for size in (stock.length, stock.width, stock.height)] == pytest.approx(
        [0.060, 0.024 * 2 / math.sqrt(3), 0.024]
    )
    outline = outline_of(stock)
    assert outline.area == pytest.approx(math.sqrt(3) / 2 * 0.024**2)
    assert len(outline.outer) == 6
    assert {round(math.dist(*pair), 9) for pair in zip(outline.outer, outline.outer[1:], strict=False)} == {
        round(0.024 / math.sqrt(3), 9)
    }
