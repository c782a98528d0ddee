"""A tap under power comes out again only where something reverses or slips."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.limits.each import reverse
from jobsheet.model.quantity import Depth
from jobsheet.model.setting import Setting

from .one_cut import BELTS, around, figures, step


class TestUnderPower:
    """Power tapping only where the spindle reverses and holder or drive slips;
    blind also depth-releasing (issue, 4).
    """

    REVERSE = "this machine does not reverse: tap by hand"
    SLIP = "nothing slips before the tap breaks: tap by hand, or with a tapping head that slips"
    RELEASE = (
        "nothing lets go at the bottom of a blind hole: tap by hand, or in a depth-releasing tapping head"
    )

    @pytest.mark.parametrize(
        ("reverses", "slips", "holder", "through", "why"),
        [
            (False, False, "", True, REVERSE), (False, True, "depth-releasing tapping head", True, REVERSE),
            (True, False, "", True, SLIP), (True, False, "drill chuck", True, SLIP), (True, False, "collet", False, SLIP),
            (True, True, "", True, None), (True, False, "tapping head", True, None),
            (True, False, "depth-releasing tapping head", True, None),
            (True, True, "", False, RELEASE), (True, True, "tapping head", False, RELEASE), (True, False, "tapping head", False, RELEASE),
            (True, False, "depth-releasing tapping head", False, None), (True, True, "depth-releasing tapping head", False, None),
        ],
    )  # fmt: skip
    def test_what_may_be_tapped_under_power(self, reverses, slips, holder, through, why):
        machine = replace(BELTS, spindle=replace(BELTS.spindle, reverses=reverses, slips=slips))
        depth = Depth(None, "through") if through else Depth(0.01, "10 mm")
        fields = step(f"taps M6, in a {holder}" if holder else "taps M6", depth=depth)
        setting = Setting(machine=machine, material=find("S235"))
        found = reverse.limit(figures(tap_strength=9.0, spindle_speed=3.0), setting, fields)
        if why is None:
            assert found is None
            return
        assert (found.verdict, found.sentence, found.shown, found.share) == ("beyond", why, "by hand only", 2.0)  # fmt: skip
        assert (found.name, found.title, found.unit, found.chance) == ("reverse", "Tapping under power", "-", None)  # fmt: skip

    @pytest.mark.parametrize("values", [{"tap_strength": 9.0}, {"spindle_speed": 3.0}])
    def test_none_where_nothing_is_tapped_under_power(self, values):
        fields = step("taps M6", depth=Depth(None, "through"))
        assert reverse.limit(figures(**values), around(), fields) is None
