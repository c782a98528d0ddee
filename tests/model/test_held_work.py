"""Bodies round the work: as large as from one corner to the other."""

from __future__ import annotations

import pytest

from jobsheet.model.held_work import NOTHING, Body


def test_a_body_is_as_large_as_from_corner_to_corner():
    body = Body(part="fixed jaw", low=(-0.01, 0.05, -0.02), high=(0.09, 0.075, 0.025))
    assert body.size == pytest.approx((0.1, 0.025, 0.045))


def test_nothing_holds_where_no_kind_is_said():
    assert NOTHING.kind == ""
    assert NOTHING.note == ""
