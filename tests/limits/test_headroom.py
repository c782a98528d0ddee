"""Room between table and spindle nose for work and tool."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.limits.each import headroom
from jobsheet.model.shop import Shop

from .one_cut import BELTS, around, figures, step


class TestHeadroom:
    """B-1 has 80 to 300 mm under its spindle; a holder of 60 mm, 10 mm to get
    in and out (common practice).
    """

    def say(self, top, out=40, machine=BELTS, shop=None):
        fields = step("end mill 12 mm" if out is None else f"end mill 12 mm, {out} mm out")
        return headroom.limit(figures(), around(machine, top=top, shop=shop or Shop()), fields)

    @pytest.mark.parametrize(
        ("top", "verdict", "demand", "capacity", "shown", "sentence"),
        [
            (0.073, "expected", 0.183, 0.300, "183 of 300 mm", ""),
            (0.190, "expected", 0.300, 0.300, "300 of 300 mm", ""),
            (
                0.192, "beyond", 0.302, 0.300, "302 of 300 mm",
                "does not fit under the spindle: lower packing or a shorter tool; work 192 over the table, tool 100, room 10 mm",
            ),
        ],
    )  # fmt: skip
    def test_what_is_said(self, top, verdict, demand, capacity, shown, sentence):
        found = self.say(top)
        assert (found.verdict, found.shown, found.sentence) == (verdict, shown, sentence)
        assert (found.demand, found.capacity) == (pytest.approx(demand), pytest.approx(capacity))
        assert (found.name, found.title, found.unit) == ("headroom", "Headroom", "m")
        assert found.working == f"work {top * 1000:.0f} over the table, tool 100, room 10 mm"

    @pytest.mark.parametrize(("out", "low"), [(9, True), (10, False), (11, False)])
    def test_whether_the_spindle_comes_down_far_enough(self, out, low):
        """Work of 10 mm on the table and a holder of 60: 80 mm are reached with 10 mm out."""
        found = self.say(0.010, out)
        assert found.verdict == ("beyond" if low else "expected")
        if low:
            assert (found.demand, found.capacity) == (pytest.approx(0.080), pytest.approx(0.079))
            assert (found.shown, found.name, found.title, found.unit) == ("79, at least 80 mm", "headroom", "Headroom", "m")  # fmt: skip
            assert found.sentence == "the spindle does not come down to the work: stand it higher"
            assert found.working == "work 10 over the table, tool 69, room 10 mm"

    def test_the_workshop_s_own_holder(self):
        assert self.say(0.073, shop=Shop(holder_length=0.1)).demand == pytest.approx(0.223)

    def test_none_where_card_work_or_tool_is_not_known(self):
        assert self.say(None) is None
        assert self.say(0.073, None) is None
        assert self.say(0.073, machine=replace(BELTS, daylight=None)) is None
        assert headroom.limit(figures(), around(top=0.073), SimpleNamespace(cutter=None)) is None
        assert headroom.tool_length(SimpleNamespace(), around()) is None
        assert self.say(0.0, 40) is not None  # flat on the table

    def test_a_tool_from_the_nose_to_its_tip(self):
        assert headroom.tool_length(step("end mill 12 mm, 45 mm out"), around()) == pytest.approx(0.105)
