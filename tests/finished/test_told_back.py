"""What was understood of a line, in shop words."""

from __future__ import annotations

import pytest

from jobsheet.finished.sizes_line import read_shape
from jobsheet.finished.told_back import shape_told

from .lines_typed import DATUMS, SIZES


def test_sizes_with_squareness():
    shape = read_shape(SIZES[0], "mm", DATUMS)
    assert [size.nominal * 1e3 for size in shape.sizes] == pytest.approx([80, 50, 30])
    assert (shape.length.low * 1e3, shape.length.high * 1e3) == pytest.approx((79.9, 80.1))
    assert (shape.forms[0].face, shape.forms[0].to) == ("bottom", ("front",))
    assert shape.forms[0].within == pytest.approx(0.03e-3)
    assert "bottom square to front within 0.03 mm" in shape_told(shape, "mm")
