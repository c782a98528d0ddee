"""Round bar: a circle along its length, whichever way it lies."""

from __future__ import annotations

import math

import pytest

from jobsheet.stock.all_shapes import volume_of
from jobsheet.stock.shapes.round_bar import SHAPE
from tests.stock.shaped_jobs import shaped


@pytest.mark.parametrize("along", ["length", "width", "height"])
def test_it_is_a_cylinder_whichever_way_it_lies(along):
    stock = shaped("round bar", along).stock
    diameter, length = stock.diameter.value, stock.bar_length.value
    assert volume_of(stock) == pytest.approx(math.pi / 4 * diameter**2 * length)
    assert sorted(one.value for one in SHAPE.box(stock)) == sorted((diameter, diameter, length))
    assert SHAPE.outline(stock).is_round


def test_its_words_name_diameter_and_length():
    stock = shaped("round bar").stock
    assert SHAPE.words(stock) == f"round bar ⌀{stock.diameter.text} × {stock.bar_length.text}"


def test_a_block_becomes_a_bar_as_thick_as_its_thinnest_size():
    from jobsheet.storage.job_file import blank_job

    stock = blank_job("bench-mill-b-1").stock
    assert SHAPE.usual(stock)["diameter"].value == min(stock.sizes)
