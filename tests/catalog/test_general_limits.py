"""General limits of lengths, against the table of ISO 2768-1."""

from __future__ import annotations

import pytest

from jobsheet.catalog.trade.general_limits import general_limit
from jobsheet.errors import CalcError


@pytest.mark.parametrize(
    ("size", "limit"), [(6, 0.1), (6.1, 0.2), (30, 0.2), (40, 0.3), (120, 0.3), (400, 0.5)]
)
def test_general_limits_are_those_of_class_m(size, limit):
    """ISO 2768-1:1989, table 1."""
    assert general_limit(size * 1e-3) * 1e3 == pytest.approx(limit)


def test_beyond_the_table_nothing_is_assumed():
    with pytest.raises(CalcError):
        general_limit(2.5)
