"""How a shape lies: layers off a bar are segments."""

from __future__ import annotations

import math

import pytest

from jobsheet.stock.lying_stock import profile_of

from .shaped_jobs import segment, shaped


@pytest.mark.parametrize("deep", [1.0, 4.0, 12.0, 20.0, 30.0])
def test_a_layer_off_a_lying_bar_is_a_segment_and_as_wide_as_its_chord(deep):
    found = profile_of(shaped("round bar").stock, shaped("round bar").set_ups[0], 0.0)
    assert found.layer(deep * 1e-3) * 1e9 == pytest.approx(segment(20, deep) * 90, rel=1e-9)
    chord = 2 * math.sqrt(20**2 - (20 - min(deep, 20)) ** 2)
    assert found.width(deep * 1e-3) * 1e3 == pytest.approx(chord, rel=1e-9)
    below = profile_of(shaped("round bar").stock, shaped("round bar").set_ups[0], 2e-3)
    whole = segment(20, deep + 2) - segment(20, 2)
    assert below.layer(deep * 1e-3) * 1e9 == pytest.approx(whole * 90, rel=1e-9)
