"""Every shape of stock as a solid, and the layers that come off it: against formulas of area that any handbook has."""

from __future__ import annotations

import math

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.model.lying import stock_box
from jobsheet.model.profile import Profile
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import Modeller, drawn_out
from jobsheet.stock.all_shapes import outline_of, shapes, volume_of
from jobsheet.stock.lying_stock import profile_of
from jobsheet.storage.job_file import blank_job, job_from_text, read_job

#: A circle of 48 sides has so much of its area: (n / 2π) sin(2π / n).
ROUND = 48 / (2 * math.pi) * math.sin(2 * math.pi / 48)


def job_of(lines, up="top"):
    text = "format: 2\nunits: mm\nmaterial: S235\nmachine: knee-mill-k-2\nstock:\n"
    text += "".join(f"  {line}\n" for line in lines.split("; "))
    steps = f"""set-ups:
  - key: set-up-1
    number: 1
    up: {up}
    operations:
      - key: face-1
        number: 10
        kind: face
        cutter: face mill 50 mm, 4 teeth, carbide
        depth: 4
        feed per tooth: 0.1
"""
    return job_from_text(text + steps, "job")


def shaped(name, along="length"):
    job = blank_job("knee-mill-k-2")
    for field, text in (("length", "90"), ("width", "40"), ("height", "40"), ("shape", name)):
        job = SetField("job:stock", field, text).apply(job)
    if any(along != "length" and name in row for row in ("round bar", "tube", "hexagon")):
        job = SetField("job:stock", "along", along).apply(job)
    return job


@pytest.mark.parametrize("along", ["length", "width", "height"])
@pytest.mark.parametrize("name", shapes())
def test_the_solid_fills_the_box_and_has_the_volume(name, along):
    job = shaped(name, along)
    solid = drawn_out(outline_of(job.stock))
    low, high = solid.bounding_box()[:3], solid.bounding_box()[3:]
    assert low == pytest.approx((0, 0, 0), abs=1e-6)
    assert high == pytest.approx([end * 1e3 for _, end in stock_box(job)], abs=2e-3)
    share = ROUND if job.stock.is_round else 1.0
    assert solid.volume() * 1e-9 == pytest.approx(volume_of(job.stock) * share, rel=2e-4)


def segment(radius, deep):
    """The area of a segment of a circle: r² acos((r − h) / r) − (r − h) √(2 r h − h²)."""
    return radius**2 * math.acos((radius - deep) / radius) - (radius - deep) * math.sqrt(
        2 * radius * deep - deep**2
    )


@pytest.mark.parametrize("deep", [1.0, 4.0, 12.0, 20.0, 30.0])
def test_a_layer_off_a_lying_bar_is_a_segment_and_as_wide_as_its_chord(deep):
    found = profile_of(shaped("round bar").stock, shaped("round bar").set_ups[0], 0.0)
    assert found.layer(deep * 1e-3) * 1e9 == pytest.approx(segment(20, deep) * 90, rel=1e-9)
    chord = 2 * math.sqrt(20**2 - (20 - min(deep, 20)) ** 2)
    assert found.width(deep * 1e-3) * 1e3 == pytest.approx(chord, rel=1e-9)
    below = profile_of(shaped("round bar").stock, shaped("round bar").set_ups[0], 2e-3)
    whole = segment(20, deep + 2) - segment(20, 2)
    assert below.layer(deep * 1e-3) * 1e9 == pytest.approx(whole * 90, rel=1e-9)


def test_the_end_of_a_tube_is_a_ring():
    job = shaped("tube", "height")
    found = profile_of(job.stock, job.set_ups[0], 0.0)
    wall = job.stock.wall.value
    assert found.layer(1e-3) == pytest.approx(math.pi * (0.02**2 - (0.02 - wall) ** 2) * 1e-3)
    assert found.width(1e-3) is None
    assert Profile(area=1.0).gone == 0.0


@pytest.mark.parametrize(
    ("lines", "up"),
    [
        ("shape: round bar; diameter: 40; bar length: 90", "top"),
        ("shape: round bar; diameter: 40; bar length: 90; along: width", "rear"),
        ("shape: tube; diameter: 40; wall: 6; bar length: 90", "bottom"),
        ("shape: hexagon; across flats: 36; bar length: 60; along: width", "left"),
        ("shape: radius flat; length: 90; width: 40; height: 30; corner radius: 8", "front"),
    ],
)
def test_figures_and_solid_agree_on_what_a_face_takes_off(lines, up):
    job = job_of(lines, up)
    reckoned = Reckoner().reckon(job)
    figures = reckoned.operations["face-1"].figures
    stages = Modeller().stages(course_of(job, reckoned.settings))
    # The solid's circle has 48 sides, so that a layer of a tenth of the bar is short by what they cut off.
    assert stages[1].removed == pytest.approx(figures.value("volume"), rel=0.02)


def test_a_flat_on_round_bar_takes_less_time_than_off_a_box_of_its_size():
    bar = Reckoner().reckon(job_of("shape: round bar; diameter: 80; bar length: 90")).operations["face-1"]
    box = Reckoner().reckon(job_of("length: 90; width: 80; height: 80")).operations["face-1"]
    assert bar.figures.value("passes") < box.figures.value("passes")


def test_the_samples_keep_their_boxes(samples):
    for path in samples.glob("*.yaml"):
        stock = read_job(path).stock
        assert volume_of(stock) == pytest.approx(stock.length.value * stock.width.value * stock.height.value)
