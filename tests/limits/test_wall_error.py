"""A wall that gives way against the size that is asked of it."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.limits.each import wall_error
from jobsheet.model.quantity import Size

from .one_cut import around, figures


class TestWall:
    """Half of the tolerance's width either way; tight from a half of that."""

    def say(self, error, low=9.96e-3, high=10.04e-3):
        fields = SimpleNamespace(measure=Size(10e-3, low, high, "10 ±0.04"))
        return wall_error.limit(figures(wall_error=error), around(), fields)

    @pytest.mark.parametrize("sign", [1, -1])
    @pytest.mark.parametrize(
        ("microns", "verdict", "shown", "sentence"),
        [
            (19.9, "expected", "20 of 40 µm", ""), (20.1, "tight", "20 of 40 µm", "half of the tolerance is gone: take a light last cut"),
            (39.9, "tight", "40 of 40 µm", "half of the tolerance is gone: take a light last cut"),
            (41.0, "beyond", "41 of 40 µm", "more than half of the tolerance's width: take a light last cut, and measure"),
            (50.0, "beyond", "50 of 40 µm", "more than half of the tolerance's width: take a light last cut, and measure"),
            # The linear model overstates it from there on (cutting-data 1.11): words, not a figure.
            (50.1, "beyond", "over 50 of 40 µm", "more than half of the tolerance's width: take a light last cut, and measure"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, sign, microns, verdict, shown, sentence):
        found = self.say(sign * microns / 1e6)
        assert (found.verdict, found.shown, found.sentence) == (verdict, shown, sentence)
        assert (found.name, found.title, found.unit) == ("wall-error", "Wall error", "m")
        assert (found.demand, found.capacity) == (pytest.approx(microns * 1e-6), pytest.approx(40e-6))
        assert found.working == "half of 10 ±0.04"

    def test_limits_that_lie_to_one_side(self):
        """16 H7 is 0 to +18 µm: 9 of them either way."""
        assert self.say(1e-6, 16e-3, 16.018e-3).capacity == pytest.approx(9e-6)

    def test_none_where_no_wall_is_made_or_no_size_with_limits_is_measured(self):
        assert self.say(None) is None
        assert self.say(1e-6, 10e-3, 10e-3) is None
        assert self.say(1e-6, 10.1e-3, 10e-3) is None
        for fields in (SimpleNamespace(), SimpleNamespace(measure=None)):
            assert wall_error.limit(figures(wall_error=1e-6), around(), fields) is None
