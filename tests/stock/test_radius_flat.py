"""Flat bar with round edges: (4 − π) r² less than the rectangle, and a radius of half its size at most."""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import DocumentError
from jobsheet.stock.all_shapes import outline_of
from tests.stock.test_stock_solids import job_of


def test_area():
    stock = job_of("shape: radius flat; length: 80; width: 40; height: 10; corner radius: 2").stock
    assert outline_of(stock).area == pytest.approx(0.040 * 0.010 - (4 - math.pi) * 0.002**2)


def test_a_radius_that_does_not_fit():
    with pytest.raises(DocumentError, match="does not fit"):
        job_of("shape: radius flat; length: 80; width: 40; height: 10; corner radius: 5.1")
