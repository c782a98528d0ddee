"""Speeds that a machine has, in all that is said of them."""

from __future__ import annotations

import pytest

from jobsheet.limits.each import speed_range

from .one_cut import BELTS, STEPLESS, around, figures


class TestSpeedRange:
    """B-1 has 180, 320, 560, 900, 1450 and 2300 rpm; B-2 any from 50 to 2500."""

    def say(self, rpm, machine=BELTS, missing=None):
        return speed_range.limit(
            figures(spindle_speed=None if rpm is None else rpm / 60, missing=missing and missing / 60), around(machine)
        )  # fmt: skip

    @pytest.mark.parametrize(
        ("machine", "rpm", "missing", "verdict", "share", "sentence"),
        [
            (BELTS, 560, None, "expected", 560 / 2300, ""), (BELTS, 2300, None, "expected", 1.0, ""),
            (STEPLESS, 700, None, "expected", 700 / 2500, ""),
            (BELTS, 560, 700, "beyond", 1.0, "this machine has no 700 rpm; it has 560 and 900"),
            (BELTS, 2300, 4600, "beyond", 2.0, "this machine has no 4600 rpm; it has 2300"),
            (BELTS, 180, 90, "beyond", 1.0, "this machine has no 90 rpm; it has 180"),
            (STEPLESS, 2500, 5000, "beyond", 2.0, "this machine has no 5000 rpm; it has 50 to 2500"),
            (STEPLESS, 50, 40, "beyond", 1.0, "this machine has no 40 rpm; it has 50 to 2500"),
            # Whoever asks by a speed that no step has, and did not say so.
            (BELTS, 700, None, "beyond", 700 / 2300, "not a speed of this machine: set one that it has"),
            (STEPLESS, 2600, None, "beyond", 1.04, "not a speed of this machine: set one that it has"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, machine, rpm, missing, verdict, share, sentence):
        found, top = self.say(rpm, machine, missing), 2300 if machine is BELTS else 2500
        assert (found.verdict, found.share, found.sentence) == (verdict, pytest.approx(share), sentence)
        assert (found.name, found.title, found.unit) == ("speed-range", "Speed range", "rev/s")
        asked, least = missing or rpm, 180 if machine is BELTS else 50
        assert (found.demand, found.capacity, found.low, found.high) == (pytest.approx(asked / 60), *[pytest.approx(top / 60)] * 3)  # fmt: skip
        assert found.shown == (f"{asked} rpm, at least {least}" if asked < least else f"{asked} of {top} rpm")
        assert found.chance is None

    def test_none_where_no_speed_is_set(self):
        assert self.say(None) is None
        assert self.say(None, missing=700) is None


def test_a_speed_the_machine_has_not_names_those_it_has():
    one = speed_range.limit(figures(missing=700 / 60, spindle_speed=560 / 60), around())
    assert one.verdict == "beyond"
    assert "560 and 900" in one.sentence
