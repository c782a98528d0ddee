"""Sizes in a line, each with the word before it."""

from __future__ import annotations

import pytest

from jobsheet.shelf.size_words import sizes


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("drill 6.8, drawer 3", [(6800, "drill"), (3000, "drawer")]), ("end mill 1/2 in, 4 teeth", [(12700, "mill"), (4000, "in")]),
        ("ream 16 H7", [(16000, "ream")]), ("Ø6,8 through", [(6800, "Ø")]), ("1-1/4 in wide", [(31750, "")]), ("M8 in #7", [(5105, "in")]),
        ("HM-103", []), ("tap 1/4-20", []), ("25.4 mm = 1 in", [(25400, ""), (25400, "mm")]), ("0/0 1/0 999999999", []),
    ],
)  # fmt: skip
def test_sizes_of_a_line(text, wanted):
    """25.4 mm to the inch; #7 is 0.2010 in (ASME B94.11M)."""
    found = [(one.micrometres, one.before) for one in sizes(text)]
    assert [size for size, _ in found] == [size for size, _ in wanted]
