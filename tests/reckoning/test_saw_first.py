"""The bulk comes off sooner with a saw where milling takes longer."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers.saw_first import saw_first
from tests.reckoning.steps import around, step

from .machines_asked import SIDE


def test_saw_first_when_the_bulk_takes_longer_to_mill():
    """20 off the end of a 40 × 40 bar, a millimetre at a time: 16 cm² are 3.2
    minutes by hand at 5 cm² a minute.
    """
    texts = {
        **SIDE,
        "width": "20",
        "cut": "1",
        "depth": "40",
        "layer": "2",
        "cutter": "end mill 12 mm, 4 teeth, 60 mm out",
    }
    setting = around("bench-mill-b-1", extent=(0.08, 0.04, 0.04), thickness=0.04)
    found = saw_first(step("side-mill", **texts), setting)
    assert found.saw_time == pytest.approx(16 / 5 * 60)
    assert found.saw_time + found.rest_time < found.mill_time
    assert found.off == pytest.approx(19e-3)
    assert found.words.startswith("Saw first: 3.2 min with a hand saw")
    # A step needs two saw cuts: 40 × 20 across and 40 × 20 along.
    two = saw_first(step("side-mill", **{**texts, "depth": "20"}), setting)
    assert two.saw_time == pytest.approx(16 / 5 * 60)
    # A slice of three millimetres is not sawn, whatever it takes to mill.
    assert saw_first(step("side-mill", **{**texts, "width": "4"}), setting) is None
    # Two millimetres are off at once: no saw.
    assert saw_first(step("side-mill", **{**SIDE, "width": "2", "depth": "2"}), setting) is None
    assert saw_first(step("drill", cutter="drill 5", at="1, 1", depth="5", feed="0.08"), setting) is None
