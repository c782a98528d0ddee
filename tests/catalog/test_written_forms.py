"""Cutters, drills, threads and fits as people write them."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.metals.materials import find, own_names
from jobsheet.catalog.reading.sources import table, words
from jobsheet.catalog.tools.cutters import KINDS, read_cutter, short_name, understood
from jobsheet.catalog.tools.drills import named_sizes, read_drill_size
from jobsheet.catalog.tools.threads import read_thread, tap_drill, thread_table
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import NoSuchEntry, QuantityError


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


def test_named_drills_are_all_there_and_fall_in_size():
    sizes = named_sizes()
    assert len(sizes) == 80 + 26
    numbers = [sizes[f"#{n}"] for n in range(1, 81)]
    assert numbers == sorted(numbers, reverse=True)
    letters = [sizes[chr(ord("A") + n)] for n in range(26)]
    assert letters == sorted(letters)
    assert read_drill_size("No. 7") == read_drill_size("#7") == sizes["#7"]


@pytest.mark.parametrize(
    ("text", "major_mm", "pitch_mm"),
    [
        ("M6", 6, 1),
        ("M8", 8, 1.25),
        ("M8x1", 8, 1),
        ("M8x1.25", 8, 1.25),
        ("5/16-18 UNC", 7.9375, 25.4 / 18),
        ("1/4-20", 6.35, 1.27),
        ("#10-32", 4.826, 25.4 / 32),
        ("#10-24 UNC", 4.826, 25.4 / 24),
    ],
)
def test_threads_of_the_standards(text, major_mm, pitch_mm):
    """ISO 261 coarse pitches, ASME B1.1 majors."""
    thread = read_thread(text)
    assert thread.major == pytest.approx(major_mm * 1e-3)
    assert thread.pitch == pytest.approx(pitch_mm * 1e-3)


@pytest.mark.parametrize("text", ["M", "M0", "M6x9", "5/16-18 UNF", "#40-20", "M9.7", "wing nut"])
def test_what_is_no_thread_is_refused(text):
    with pytest.raises(QuantityError):
        read_thread(text)


def test_every_thread_of_the_table_reads_back_and_its_drill_exists():
    for row in thread_table().values():
        thread = read_thread(row.name)
        assert thread.major == pytest.approx(row.major)
        assert thread.fine == row.fine
        drill = tap_drill(thread)
        assert drill is not None
        assert 0.7 < read_drill_size(drill) / row.major < 1


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("40 ±0.03", 39.97, 40.03),
        ("16 H7", 16.0, 16.018),  # ISO 286-1, 10-18 mm, IT7 18 µm
        ("12 H9", 12.0, 12.043),
        ("25 h6", 24.987, 25.0),
        ("10 +0.05/0", 10.0, 10.05),
        ("11.5 ±0.1 mm", 11.4, 11.6),
        ("1.000 ±0.001 in", 25.3746, 25.4254),
        ("12", 12, 12),
    ],
)
def test_sizes_with_their_limits(text, low, high):
    size = read_size(text)
    assert size.low * 1e3 == pytest.approx(low)
    assert size.high * 1e3 == pytest.approx(high)


@pytest.mark.parametrize("text", ["16 k6", "16 H1", "0 ±0.1", "±0.1", "600 H7"])
def test_limits_that_are_not_known_are_refused(text):
    with pytest.raises(QuantityError):
        read_size(text)


def test_a_material_is_found_by_any_of_its_names():
    assert find("A36") is find("S235JR") is find("s235")
    with pytest.raises(NoSuchEntry, match="Did you mean S235"):
        find("S253")
    assert "S235" in own_names()


def test_every_constant_of_every_material_names_a_source():
    for name in own_names():
        material = find(name)
        for constant in (material.kc11, material.mc, material.kd_torque, material.kd_thrust):
            assert words(constant.source)
            assert constant.trust
            assert math.isfinite(constant.value)
            assert constant.value > 0


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


def test_a_source_names_publisher_title_edition_and_page():
    assert words("tun-d") == "Tungaloy, General catalogue, forces of twist drills, 2020, page 1656 (read)"
    assert words("mh31").startswith("Industrial Press, Machinery's Handbook, 31st edition, 2020, pages 1147")


def test_where_two_sources_give_a_formula_the_handbook_stands_first():
    for key in ("mit-f", "tapmatic"):
        assert words(key).startswith("Industrial Press, Machinery's Handbook")
        assert table()[key]["author"] in words(key)


@pytest.mark.parametrize("key", table())
def test_every_source_can_be_looked_up_or_is_called_common_practice(key):
    """An unsigned sheet, a discussion, an encyclopaedia's repetition, a private page: nobody finds what stood there."""
    row, said = table()[key], words(key)
    if row.get("private") or key == "common-practice":
        assert said == "common practice, no source"
        return
    assert row["author"] != "unknown"
    assert row["author"] in said
    assert row["title"] in said
    for word in ("wikipedia", ".com", ".info", "encyclop", "discussion", "blog", "forum"):
        assert word not in said.casefold()
