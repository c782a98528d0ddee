"""Reading between the lines."""

from __future__ import annotations

import pytest

from jobsheet.cutting.tables import along, along_logs

TABLE = ((1.0, 10.0), (2.0, 20.0), (4.0, 30.0))


@pytest.mark.parametrize(("x", "y"), [(1, 10), (1.5, 15), (2, 20), (3, 25), (4, 30), (0, 0), (6, 40)])
def test_straight_between_and_past_the_points(x, y):
    assert along(TABLE, x) == pytest.approx(y)


def test_a_power_law_goes_on_as_one():
    table = tuple((x, 5 * x**-0.3) for x in (1.0, 2.0, 4.0))
    for x in (0.5, 1.7, 9.0):
        assert along_logs(table, x) == pytest.approx(5 * x**-0.3)
