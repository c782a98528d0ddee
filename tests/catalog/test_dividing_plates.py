"""Plates and worms of dividing heads."""

from __future__ import annotations

import pytest

from jobsheet.catalog.trade.dividing_plates import plate_sets, plates, worms
from jobsheet.errors import NoSuchEntry


def test_the_data():
    assert set(worms()) == {40, 60, 90}
    for one in plate_sets().values():
        for plate in one:
            assert plate.circles == tuple(sorted(set(plate.circles)))
    with pytest.raises(NoSuchEntry, match="three plates"):
        plates("no such")
