"""What the style of a tap does to its torque."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutters import TAP_STYLES
from jobsheet.catalog.tools.taps import condition_factor, tap_factor

METALS = ("steel", "iron and aluminium", "brass")


@pytest.mark.parametrize("fine", [False, True])
@pytest.mark.parametrize("metal", METALS)
def test_every_style_has_its_factor(metal, fine):
    for style in ("", *TAP_STYLES):
        assert tap_factor(style, metal, fine) > 0


def test_of_a_hand_set_the_plug_counts():
    for style in ("", "taper", "taper and plug"):
        assert tap_factor(style, "steel", fine=False) == tap_factor("plug", "steel", fine=False)


def test_a_worn_or_dry_tap_asks_more_than_a_sharp_one():
    assert condition_factor("sharp and oiled") == 1.0
    assert all(condition_factor(one) > 1 for one in ("used", "dull", "dry"))
