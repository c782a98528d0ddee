"""What a drill chuck holds, and that nobody mills in one."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.limits.each import holder_grip
from jobsheet.model.shop import Shop

from .one_cut import around, figures, step


class TestChuck:
    """A drill chuck is worked loose by a side load, and holds 4 N·m of a tap (cutting-data 1.6: estimate)."""

    def say(self, cutter="taps M6, in a drill chuck", shop=None, **values):
        return holder_grip.limit(figures(**values), around(shop=shop or Shop()), step(cutter))

    @pytest.mark.parametrize(("torque", "verdict"), [(3.99, "expected"), (4.0, "expected"), (4.01, "beyond")])
    def test_a_tap_under_power(self, torque, verdict):
        found = self.say(torque=torque, tap_strength=9.0, spindle_speed=3.0)
        assert (found.verdict, found.shown) == (verdict, f"{torque:.2f} of 4 N·m")
        assert (found.name, found.title, found.unit, found.demand) == ("holder-grip", "Drill chuck", "N*m", torque)  # fmt: skip
        words = "the tap turns in the chuck: take a tapping head, or tap by hand"
        assert found.sentence == (words if verdict == "beyond" else "")

    def test_the_workshop_s_own_chuck(self):
        assert self.say(torque=1.0, tap_strength=9.0, spindle_speed=3.0, shop=Shop(chuck_torque=8.0)).capacity == 8.0  # fmt: skip

    @pytest.mark.parametrize("pull", [0.0, 1.0, 500.0])
    def test_milling_is_never_right_however_little_it_pulls(self, pull):
        found = self.say("end mill 6 mm, in a drill chuck", torque=0.1, in_plane_peak=pull)
        assert (found.verdict, found.shown, found.share) == ("beyond", "not for milling", 2.0)
        assert (found.name, found.title, found.unit) == ("holder-grip", "Drill chuck", "-")
        assert found.sentence == "side load works a drill chuck loose: take a collet or an end-mill holder"

    def test_none_elsewhere(self):
        tapped = {"torque": 3.0, "tap_strength": 9.0, "spindle_speed": 3.0}
        assert self.say(**tapped) is not None
        assert self.say("taps M6, in a tapping head", **tapped) is None
        assert self.say("taps M6", **tapped) is None
        for missing in tapped:  # a hand tap does not turn under power, a drill is no tap
            assert self.say(**{**tapped, missing: None}) is None
        for fields in (SimpleNamespace(), SimpleNamespace(cutter=None)):
            assert holder_grip.limit(figures(**tapped), around(), fields) is None
