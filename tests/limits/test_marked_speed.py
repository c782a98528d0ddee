"""The speed that a cutter is marked for."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.limits.each import marked_speed

from .one_cut import around, figures, step


class TestMarkedSpeed:
    @pytest.mark.parametrize(
        ("rpm", "verdict", "sentence"),
        [
            (899, "expected", ""), (900, "expected", ""), (901, "tight", "near what the cutter is marked for: no faster step"),
            (1500, "tight", "near what the cutter is marked for: no faster step"),
            (1501, "beyond", "faster than the cutter is marked for: never; turn slower"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, rpm, verdict, sentence):
        """By a factor: to 0.6 expected, to 1 tight (design, Verdicts)."""
        fields = step("face mill 50 mm, 4 teeth, marked 1500 rpm")
        found = marked_speed.limit(figures(spindle_speed=rpm / 60), around(), fields)
        assert (found.verdict, found.sentence, found.shown) == (verdict, sentence, f"{rpm} of 1500 rpm")
        assert (found.name, found.title, found.unit) == ("marked-speed", "Marked speed", "rev/s")
        assert (found.capacity, found.demand) == (pytest.approx(25), pytest.approx(rpm / 60))

    def test_none_where_nothing_is_marked_or_turns(self):
        marked, plain = step("face mill 50 mm, 4 teeth, marked 1500 rpm"), step("face mill 50 mm, 4 teeth")
        assert marked_speed.limit(figures(), around(), marked) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), plain) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), SimpleNamespace(cutter=None)) is None
        assert marked_speed.limit(figures(spindle_speed=9.0), around(), SimpleNamespace()) is None
