"""Style sheets take their colours from the look, so dark is dark, and their measures grow with it."""

from __future__ import annotations

import pytest

from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.style_sheets import menu_style, scroll_style
from jobsheet.gui.ink.tokens import DARK, LIGHT


@pytest.mark.parametrize("style", [menu_style, scroll_style])
def test_light_and_dark_differ_and_each_has_its_own_colours(qapp, style):
    light, dark = style(Look(LIGHT)), style(Look(DARK))
    assert light != dark
    assert LIGHT.edge in light
    assert DARK.edge in dark
    assert light.count("{") == light.count("}")


def test_a_larger_type_has_a_wider_scroll_bar(qapp):
    assert "width: 10px" in scroll_style(Look(LIGHT))
    assert "width: 15px" in scroll_style(Look(LIGHT, 1.5))
