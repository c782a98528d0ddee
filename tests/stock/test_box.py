"""A block: its three sizes, and their product."""

from __future__ import annotations

import pytest

from jobsheet.stock.all_shapes import outline_of, volume_of
from jobsheet.stock.shapes.box import SHAPE
from jobsheet.storage.job_file import blank_job


def test_a_block_is_its_three_sizes():
    stock = blank_job("bench-mill-b-1").stock
    assert tuple(one.value for one in SHAPE.box(stock)) == stock.sizes
    assert volume_of(stock) == pytest.approx(stock.length.value * stock.width.value * stock.height.value)
    assert SHAPE.words(stock) == f"{stock.length.text} × {stock.width.text} × {stock.height.text}"


def test_it_is_no_other_shape_and_nothing_of_it_can_be_wrong():
    stock = blank_job("bench-mill-b-1").stock
    assert outline_of(stock) is None or SHAPE.outline(stock).area == pytest.approx(
        stock.length.value * stock.width.value
    )
    assert SHAPE.wrong(stock) == ("", "")
