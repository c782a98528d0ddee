"""Tramming: a reading over a swing is a tilt, and a tilt makes a face hollow."""

from __future__ import annotations

import math

import pytest

from jobsheet.operations.kinds.tram_check import hollow
from tests.operations.hole_steps import Step

TRAM = {"swing": "150", "allowed": "0.02", "cutter_width": "100"}
STEEL = {"material": "S235"}


def test_a_reading_over_its_swing_is_the_tilt():
    """0.03 over 150: 0.2 mm/m; a face 100 wide comes out 50 × 0.0002 = 0.01 hollow."""
    step = Step("tram-check", {**TRAM, "found": "0.03"}, **STEEL)
    assert step.value("tilt") == pytest.approx(math.atan(0.03 / 150))
    assert step.value("hollow") * 1e3 == pytest.approx(0.01, rel=1e-6)


def test_without_a_reading_what_is_allowed_counts():
    assert Step("tram-check", TRAM, **STEEL).value("tilt") == pytest.approx(math.atan(0.02 / 150))


def test_more_than_is_allowed_is_said():
    assert "tram the head" in Step("tram-check", {**TRAM, "found": "0.03"}, **STEEL).caveats()
    assert Step("tram-check", {**TRAM, "found": "0.02"}, **STEEL).caveats() == ""


def test_a_square_head_leaves_nothing_hollow():
    assert hollow(0.1, 0.0) == 0.0
    assert hollow(0.2, 1e-4) == pytest.approx(2 * hollow(0.1, 1e-4))
