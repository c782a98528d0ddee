"""Bare numbers of the lines get their unit, and no size changes."""

from __future__ import annotations

import pytest

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.unit_written import with_units
from jobsheet.model.finished import Finished

from .lines_typed import DATUMS, LINES, read


@pytest.mark.parametrize("text", LINES)
def test_units_written_change_no_size(text):
    changed = with_units(Finished(features=(text,)), "mm", DATUMS).features[0]
    before, after = read(text), read_feature(changed, "in", DATUMS)
    for name in ("size", "depth", "other", "length", "radius", "across", "hole_depth", "within"):
        one, other = getattr(before, name), getattr(after, name)
        if one is not None:
            assert getattr(other, "nominal", other) == pytest.approx(getattr(one, "nominal", one)), name
    if before.places is not None:
        assert [p.spot for p in after.places.points] == [p.spot for p in before.places.points]
