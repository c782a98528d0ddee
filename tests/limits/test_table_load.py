"""What the table carries."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.limits.each import table_load

from .one_cut import BELTS, around, figures


class TestLoad:
    """B-1's table carries 40 kg."""

    @pytest.mark.parametrize(("load", "verdict"), [(12.34, "expected"), (40.0, "expected"), (40.1, "beyond")])
    def test_what_is_said(self, load, verdict):
        found = table_load.limit(figures(spindle_speed=9.0), around(load=load), None)
        assert (found.verdict, found.shown) == (verdict, f"{load:.1f} of 40 kg")
        assert (found.name, found.title, found.unit, found.demand, found.capacity) == ("table-load", "Table load", "kg", load, 40.0)  # fmt: skip
        words = "too heavy for this table: a lighter vice, or another machine"
        assert found.sentence == (words if verdict == "beyond" else "")

    def test_none_where_load_or_table_is_not_known_or_nothing_is_cut(self):
        turning = figures(spindle_speed=9.0)
        assert table_load.limit(turning, around(), None) is None
        assert table_load.limit(figures(), around(load=9.0), None) is None
        assert table_load.limit(turning, around(replace(BELTS, table=None), load=9.0), None) is None
        bare = replace(BELTS, table=replace(BELTS.table, load=None))
        assert table_load.limit(turning, around(bare, load=9.0), None) is None
        assert math.isclose(table_load.limit(turning, around(load=0.0), None).share, 0.0)
