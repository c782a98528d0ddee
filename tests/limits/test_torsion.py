"""When a drill or a tap twists off (cutting-data 1.6 and 1.11)."""

from __future__ import annotations

import pytest

from jobsheet.limits.each import torsion

from .one_cut import around, figures


class TestTorsion:
    """Doubtful from six tenths on (estimate)."""

    @pytest.mark.parametrize(
        ("tool", "mend"), [("drill", "feed gently and clear the chips"), ("tap", "drill the hole larger")]
    )
    @pytest.mark.parametrize(
        ("torque", "verdict", "words"),
        [(2.39, "expected", ""), (2.41, "tight", "the {} may break: {}"), (4.01, "beyond", "the {} breaks: {}")],
    )  # fmt: skip
    def test_what_is_said(self, tool, mend, torque, verdict, words):
        found = torsion.limit(figures(torque=torque, **{f"{tool}_strength": 4.0}), around(), None)
        assert (found.verdict, found.sentence) == (verdict, words.format(tool, mend))
        assert (found.name, found.title, found.unit) == (f"{tool}-torsion", f"{tool.title()} torsion", "N*m")
        assert (found.demand, found.capacity, found.shown) == (torque, 4.0, f"{torque:.2f} of 4.0 N·m")

    def test_a_tool_with_a_point_of_its_own_twists_off_there(self):
        """A centre drill: what its cone takes goes through the body."""
        found = torsion.limit(figures(torque=3.0, point_torque=0.2, drill_strength=0.5), around(), None)
        assert (found.demand, found.verdict) == (0.2, "expected")
        assert torsion.limit(figures(point_torque=0.0, torque=3.0, drill_strength=0.5), around(), None).demand == 0.0  # fmt: skip
        assert torsion.limit(figures(point_torque=0.2, drill_strength=0.5), around(), None).demand == 0.2

    def test_none_where_neither_is_turned(self):
        assert torsion.limit(figures(drill_strength=4.0), around(), None) is None
        assert torsion.limit(figures(torque=4.0), around(), None) is None
