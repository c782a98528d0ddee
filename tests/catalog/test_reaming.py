"""What a machine reamer wants left on the diameter, and the drill that leaves it."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.reaming import reaming_stock

#: Stock on the diameter: finished size mm, least and most mm as the page converts them.
STOCK = [
    (3, 0.13, 0.25), (4.3, 0.13, 0.25), (6, 0.20, 0.30), (7.1, 0.20, 0.30), (10, 0.25, 0.41), (16, 0.25, 0.41),
    (22.3, 0.25, 0.41), (25, 0.38, 0.76), (63, 0.38, 0.76),
]  # fmt: skip


@pytest.mark.parametrize(("size", "low", "high"), STOCK)
def test_stock_for_a_reamer(size, low, high):
    stock = reaming_stock(size * 1e-3)
    assert (stock.low * 1e3, stock.high * 1e3) == pytest.approx((low, high), abs=0.006)
    assert stock.value == pytest.approx((stock.low + stock.high) / 2)
    assert not stock.outside
    assert stock.source == "proto"


@pytest.mark.parametrize("size", [1e-3, 70e-3])
def test_reamers_that_the_table_does_not_reach_are_marked(size):
    assert reaming_stock(size).outside
