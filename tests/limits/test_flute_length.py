"""How deep a cutter stands in the work, and how long its flutes are."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.limits.each import flute_length
from jobsheet.model.quantity import Depth
from jobsheet.reckoning.what_if import tried
from tests.reckoning.steps import around as around_step
from tests.reckoning.steps import step as step_of

from .one_cut import around, deep, figures, step


class TestReach:
    SHORT = "the shank or the holder rubs; a longer cutter, or from the other side"

    @pytest.mark.parametrize(
        ("cutter", "depth", "verdict", "shown", "sentence"),
        [
            ("flutes 26 mm", 0.026, "expected", "26.0 of 26 mm", ""),
            ("flutes 26 mm", 0.0261, "beyond", "26.1 of 26 mm", f"only 26 mm flutes: {SHORT}"),
            ("30 mm out", 0.031, "beyond", "31.0 of 30 mm", f"only 30 mm out of the holder: {SHORT}"),
            ("30 mm out, flutes 26 mm", 0.027, "beyond", "27.0 of 26 mm", f"only 26 mm flutes: {SHORT}"),
            ("20 mm out, flutes 26 mm", 0.021, "beyond", "21.0 of 20 mm", f"only 20 mm out of the holder: {SHORT}"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, cutter, depth, verdict, shown, sentence):
        found = flute_length.limit(figures(), around(), step(f"end mill 12 mm, {cutter}", depth=deep(depth)))
        assert (found.verdict, found.shown, found.sentence) == (verdict, shown, sentence)
        assert (found.name, found.title, found.unit) == ("flute-length", "Reach of the cutter", "m")

    CUTTER = "end mill 12 mm, 4 teeth, flutes 8 mm, 40 mm out"

    @pytest.mark.parametrize(
        ("values", "more", "demand"),
        [
            ({"hole_depth": 0.02}, {}, 0.02),  # what the figures say of a hole, a slot or a pocket
            ({"hole_depth": 0.02}, {"depth": Depth(None, "through")}, 0.02),
            ({}, {}, 0.012), ({"layers": 3.0, "passes": 6.0}, {}, 0.012),  # a keyway: the whole wall
            ({"layers": 3.0, "passes": 6.0}, {"width": deep(0.01), "side": "left"}, 0.012),  # beside a wall
            ({"layers": 3.0, "passes": 6.0}, {"width": None}, 0.004),  # a face is only as deep as one layer
            ({"layers": 1.0, "passes": 2.0}, {"width": None}, 0.012), ({}, {"width": None}, 0.012),
            ({"layers": 3.0, "passes": 6.0, "hole_depth": 0.012}, {"width": deep(0.01)}, 0.012),  # a pocket has walls
        ],
    )  # fmt: skip
    def test_how_deep_it_stands_in_the_work(self, values, more, demand):
        fields = step(self.CUTTER, **{"depth": deep(0.012), **more})
        assert flute_length.limit(figures(**values), around(), fields).demand == pytest.approx(demand)

    def test_a_pocket_of_many_layers_needs_flutes_for_all_of_them(self):
        """20 mm deep in layers of 5 with flutes of 8 mm: below the second layer
        the shank rubs along the wall.
        """
        one = step_of("pocket", cutter="slot drill 10 mm, flutes 8 mm, 40 mm out", centre="40, 25", length="40 mm", width="30 mm", depth="20 mm", layer="5 mm", clear="all of it", feed_per_tooth="0.03 mm")  # fmt: skip
        found = tried(one.kind, one.fields, around_step("bench-mill-b-1", "6082-T6", thickness=0.03)).limit("flute-length")  # fmt: skip
        assert (found.verdict, found.demand) == ("beyond", pytest.approx(0.020))

    def test_none_where_neither_is_written_or_nothing_is_deep(self):
        written, plain = (
            step(self.CUTTER, depth=deep(0.012)),
            step("end mill 12 mm, 4 teeth", depth=deep(0.012)),
        )
        assert flute_length.limit(figures(), around(), written) is not None
        assert flute_length.limit(figures(), around(), plain) is None
        for fields in (
            step(self.CUTTER), step(self.CUTTER, depth=None), step(self.CUTTER, depth=Depth(None, "through")),
            step(self.CUTTER, depth=Depth(None, "through"), width=None), SimpleNamespace(cutter=None, depth=deep(0.01)), SimpleNamespace(depth=deep(0.01)),
        ):  # fmt: skip
            assert flute_length.limit(figures(), around(), fields) is None
