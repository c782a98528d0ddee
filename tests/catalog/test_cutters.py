"""Cutters as people write them in one line."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.tools.cutters import KINDS, read_cutter, short_name, understood
from jobsheet.errors import QuantityError


def test_a_cutter_is_read_from_one_line():
    cutter = read_cutter("face mill 50 mm, 4 teeth, carbide, marked 12000 rpm, drawer 2 no. 7")
    assert (cutter.kind, cutter.teeth, cutter.material, cutter.place) == (
        "face mill",
        4,
        "carbide",
        "drawer 2 no. 7",
    )
    assert cutter.diameter == pytest.approx(0.05)
    assert cutter.marked_speed == pytest.approx(200)
    assert short_name(cutter) == "face mill 50"
    assert "50 mm" in understood(cutter)


def test_the_flute_of_a_tap_is_a_style_and_no_count_of_teeth():
    assert read_cutter("taps M8, spiral flute, drawer 5").style == "spiral flute"
    assert read_cutter("end mill 12 mm, 4 flutes").teeth == 4


def test_a_drill_may_be_named():
    assert read_cutter("drill #7").diameter == pytest.approx(5.1054e-3)  # 0.2010 in, ASME B94.11M
    assert read_cutter("drill H").diameter == pytest.approx(0.266 * 0.0254)
    assert read_cutter("1/2 in end mill, 4 teeth").diameter == pytest.approx(12.7e-3)


@pytest.mark.parametrize("name", sorted(KINDS))
def test_every_kind_of_cutter_can_be_written(name):
    size = "M6" if "tap" in name else "10 mm"
    assert read_cutter(f"{name} {size}").kind == KINDS[name]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("fase mill 50", "Did you mean face mill"),
        ("end mill 12 im", "no unit"),
        ("end mill 12, 0 teeth", "whole number of teeth"),
        ("end mill 0, 4 teeth", "above zero"),
        ("end mill 12, blue", "not understood of a cutter"),
        ("", "No cutter"),
        ("drill #99", "no drill #99"),
        ("spot drill 10, 190°", "between 0° and 180°"),
    ],
)
def test_a_cutter_that_cannot_be_read_says_why(text, says):
    with pytest.raises(QuantityError, match=says):
        read_cutter(text)


def test_state_angles_and_nose_of_a_cutter():
    cutter = read_cutter("face mill 50 mm, 4 teeth, carbide, entering 45°, rake −5°, nose 0.8 mm, dull")
    assert cutter.entering == pytest.approx(math.radians(45))
    assert cutter.rake == pytest.approx(math.radians(-5))
    assert cutter.nose == pytest.approx(0.8e-3)
    assert cutter.state == "dull"
    assert read_cutter("taps M8, taper, plug and bottoming, drawer 5").style == "taper, plug and bottoming"


@pytest.mark.parametrize(
    "text",
    [
        "face mill 50, entering 0°",
        "face mill 50, entering 120°",
        "face mill 50, rake 80°",
        "face mill 50, blunt",
    ],
)
def test_angles_that_no_cutter_has(text):
    with pytest.raises(QuantityError):
        read_cutter(text)


@pytest.mark.parametrize("number", ["4", "7", "31"])
def test_a_bare_number_of_a_drill_is_asked_about_in_inches(number):
    """Nobody has a drill of seven inches: the number drill #7 (0.201 in, ASME B94.11M) is meant, or 7 mm."""
    with pytest.raises(QuantityError, match=f"write #{number} for the drill of that number, or {number} mm"):
        read_cutter(f"drill {number}", "in")
    assert read_cutter(f"drill {number}", "mm").diameter == pytest.approx(int(number) * 1e-3)
    assert read_cutter(f"drill {number} mm", "in").diameter == pytest.approx(int(number) * 1e-3)


def test_drills_of_an_inch_and_more_are_made():
    assert read_cutter("drill 1", "in").diameter == pytest.approx(25.4e-3)
    assert read_cutter("drill #7", "in").diameter == pytest.approx(0.201 * 25.4e-3)


def test_a_raised_figure_is_no_number_of_a_drill():
    """Found by spoilt cabinets: `²3` is made of digits, and no number."""
    with pytest.raises(QuantityError):
        read_cutter("drill ²3", "in")
