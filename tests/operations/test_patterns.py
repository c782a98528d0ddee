"""Patterns in words: places that one can work out by hand."""

from __future__ import annotations

import math

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.errors import QuantityError
from jobsheet.operations.patterns import pitch_circle, read_pattern
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job


def points(text: str, units: str = "mm"):
    scale = 1e3 if units == "mm" else 1 / 0.0254
    return [
        (round(p.x.value * scale, 4), round(p.y.value * scale, 4)) for p in read_pattern(text, units).points
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("row of 3 from 10, 10, step 15", [(10, 10), (25, 10), (40, 10)]),
        ("row of 3 from 10, 10, step 10 at 90°", [(10, 10), (10, 20), (10, 30)]),
        ("row of 3 from 0, 0 to 40, 30", [(0, 0), (20, 15), (40, 30)]),
        (
            "grid of 3 × 2 from 10, 10, step 20 × 15",
            [(10, 10), (30, 10), (50, 10), (50, 25), (30, 25), (10, 25)],
        ),
        ("grid of 2 x 2 from 0, 0, step 1 in x 1 in", [(0, 0), (25.4, 0), (25.4, 25.4), (0, 25.4)]),
        ("circle of 4 on 40 around 50, 30", [(70, 30), (50, 50), (30, 30), (50, 10)]),
        ("circle of 2 on ⌀40 around 50, 30, first at 90°", [(50, 50), (50, 10)]),
        ("circle on 40 around 50, 30 at 0°, 90°", [(70, 30), (50, 50)]),
        ("Row of 2 from 6,5, 10, step 5", [(6.5, 10), (11.5, 10)]),
    ],
)
def test_places_of_a_pattern(text, expected):
    assert points(text) == expected


def test_a_circle_of_six_has_its_sides_as_long_as_its_radius():
    """Geometry: a regular hexagon."""
    found = points("circle of 6 on 60 around 0, 0")
    for a, b in zip(found, [*found[1:], found[0]], strict=True):
        assert math.dist(a, b) == pytest.approx(30, abs=1e-3)


@pytest.mark.parametrize(
    "text",
    [
        "row of 1 from 0, 0, step 5",
        "row of 300 from 0, 0, step 5",
        "row of 3 from 0, 0, step 0",
        "circle of 6 on 0 around 1, 1",
        "circle around",
        "grid of 30 x 30 from 0, 0, step 1 x 1",
        "row of five from 1, 1, step 2",
        "row of 3 from 10, step 15",
    ],
)
def test_what_is_no_pattern_says_how_one_is_written(text):
    with pytest.raises(QuantityError):
        read_pattern(text, "mm")


def test_a_pattern_is_kept_in_words_in_the_file(hm100):
    words = "circle of 6 on 30 around 40, 25"
    job = SetField("drill", "at", f"5, 5; {words}").apply(hm100)
    assert len(job.find("drill")[1].fields.at) == 7
    written = write_job(job)
    assert f"- {words}" in written
    assert job_from_text(written, "x") == job


@pytest.mark.parametrize(
    "words",
    [
        "circle of 6 on 30 around 40, 25, first at 15°",
        "row of 3 from 10, 10, step 15 at 30°",
        "grid of 3 × 2 from 10, 10, step 20 × 15",
        "row of 3 from 0, 0 to 40, 30",
    ],
)
def test_changing_what_a_bare_number_means_moves_no_hole(hm100, words):
    job = SetField("drill", "at", words).apply(hm100)
    inches = SetField("job", "units", "in").apply(job)
    for a, b in zip(job.find("drill")[1].fields.at, inches.find("drill")[1].fields.at, strict=True):
        assert (a.x.value, a.y.value) == pytest.approx((b.x.value, b.y.value), abs=1e-9)
    assert job_from_text(write_job(inches), "x") == inches


@pytest.mark.parametrize(
    ("text", "first", "angles"),
    [
        ("circle of 4 on 40 around 50, 30", 0, [0, 90, 180, 270]),
        ("circle of 3 on 40 around 50, 30, first at 15°", 15, [0, 120, 240]),
        ("circle on 40 around 50, 30 at 10°, 100°, 30.5°", 10, [0, 90, 20.5]),
        ("circle on 40 around 50, 30 at 350° and 20°", 350, [0, 30]),
    ],
)
def test_a_pitch_circle_as_a_dividing_head_sees_it(text, first, angles):
    """Angles from the first hole, exact; a seventh of a turn stays a seventh."""
    found = pitch_circle(read_pattern(text, "mm"), "mm")
    assert (found.x, found.y, found.radius) == (
        pytest.approx(50e-3),
        pytest.approx(30e-3),
        pytest.approx(20e-3),
    )
    assert float(found.first) == first
    assert [float(angle) for angle in found.angles] == angles


def test_its_angles_lead_to_its_places():
    import math
    from fractions import Fraction

    pattern = read_pattern("circle of 7 on 2 around 1, 1, first at 12.5°", "in")
    found = pitch_circle(pattern, "in")
    assert found.angles[1] == Fraction(360, 7)
    for place, angle in zip(pattern.points, found.angles, strict=True):
        there = math.radians(float(angle + found.first))
        assert place.x.value == pytest.approx(found.x + found.radius * math.cos(there), abs=1e-9)
        assert place.y.value == pytest.approx(found.y + found.radius * math.sin(there), abs=1e-9)


@pytest.mark.parametrize("text", ["row of 3 from 1, 1, step 5", "grid of 2 × 2 from 1, 1, step 5 × 5"])
def test_rows_and_grids_are_no_circle(text):
    assert pitch_circle(read_pattern(text, "mm"), "mm") is None
