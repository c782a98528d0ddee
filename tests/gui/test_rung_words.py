"""Rungs and what a ladder would cost, as they are said."""

from __future__ import annotations

from jobsheet.gui.places.proving.rung_words import foreseen_words, named
from jobsheet.reckoning.ladder.ladders import plan

SIDE = {
    "cutter": "end mill 12 mm, 4 teeth, 30 mm out, drawer 1 no. 4", "material": "S235", "kind": "side",
    "texts": {"width": "6 mm", "feed_per_tooth": "0.04 mm", "spindle": "560 rpm"}, "trials": (),
}  # fmt: skip
WIDE = {
    "cutter": "end mill 1/2 in, 4 teeth, 32 mm out, drawer 1 no. 7", "material": "S235", "kind": "side", "units": "in", "grow": "width",
    "texts": {"depth": "0.250 in", "feed_per_tooth": "0.04 mm", "spindle": "550 rpm"}, "trials": (),
}  # fmt: skip


def test_a_rung_is_said_by_what_grew(qapp):
    ladder = plan("bench-mill-b-1", **SIDE)
    assert named(ladder, ladder.rungs[0]) == f"{ladder.rungs[0].size} deep"
    wide = plan("bench-mill-b-2", **WIDE)
    assert named(wide, wide.rungs[0]) == f"{wide.rungs[0].size} wide"


def test_what_it_would_cost_is_said_with_its_sizes(qapp):
    ladder = plan("bench-mill-b-1", **SIDE)
    said = foreseen_words(ladder)
    assert f"{len(ladder.rungs)} rungs on the sheet" in said
    assert said.endswith(f"{ladder.rungs[-1].size} deep.")


def test_one_that_is_refused_says_why_and_none_says_nothing(qapp):
    refused = plan("bench-mill-b-1", **{**SIDE, "cutter": "end mill 60 mm, 4 teeth, 30 mm out"})
    assert foreseen_words(None) == ""
    assert refused.refused.startswith("Cutting speed")
    assert foreseen_words(refused) == refused.refused
