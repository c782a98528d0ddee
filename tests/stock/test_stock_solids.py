"""Every shape of stock as a solid, and the layers that come off it: against
formulas of area that any handbook has.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import job_from_text

from .shaped_jobs import segment, side_cut


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
    assert stages[1].removed == pytest.approx(figures.value("volume"), rel=0.005)


def test_a_step_across_round_bar_is_as_long_as_its_chord():
    job = side_cut(("round bar", "length", "top", "front", "right"), "side-mill")
    figures = Reckoner().reckon(job).operations["cut"].figures
    # A chord 6 mm below the top of a circle of 40: 2 √(20² - 14²); five wide.
    assert figures.value("volume") * 1e9 == pytest.approx(segment(20, 6) * 5, rel=1e-9)
    chord = 2 * math.sqrt(20**2 - 14**2)
    approach = figures.value("path_length") * 1e3 - chord
    assert approach == pytest.approx(math.sqrt(8**2 - 3**2), abs=0.5)


def test_a_flat_on_round_bar_takes_less_time_than_off_a_box_of_its_size():
    bar = Reckoner().reckon(job_of("shape: round bar; diameter: 80; bar length: 90")).operations["face-1"]
    box = Reckoner().reckon(job_of("length: 90; width: 80; height: 80")).operations["face-1"]
    assert bar.figures.value("passes") < box.figures.value("passes")


def grooved(radius, half, deep):
    """The area of a groove over the middle of a circle, counted from its top: ∫ √(r² −
    x²) − (r − h) over ± half its width.
    """
    across = half * math.sqrt(radius**2 - half**2) + radius**2 * math.asin(half / radius)
    return across - 2 * half * (radius - deep)


KEYWAY = """kind: keyway
        cutter: slot drill 8 mm, 30 mm out
        start:
          - [29, 20]
        length: 32
        along: x
        depth: 4
        layer: 1
        feed per tooth: 0.03"""
SLOT = """kind: slot
        cutter: end mill 10 mm, 4 teeth, 30 mm out
        ends:
          - {ends[0]}
          - {ends[1]}
        depth: {deep}
        layer: 1
        open ends: {open}
        feed per tooth: 0.03"""


def milled(lines, step, up="top"):
    """What figures and solid say that one step takes off [m³]; the zero is at the left, near corner."""
    text = f"format: 2\nunits: mm\nmaterial: S235\nmachine: knee-mill-k-2\nstock:\n{lines}set-ups:\n"
    text += f"  - key: set-up-1\n    number: 1\n    up: {up}\n    operator: {'top' if up == 'front' else 'front'}\n    zero:\n      x from: left\n      y from: front\n"
    text += f"    operations:\n      - key: cut\n        number: 10\n        {step}\n"
    job = job_from_text(text, "job")
    reckoned = Reckoner().reckon(job)
    figures = reckoned.operations["cut"].figures
    return figures.value("volume"), Modeller().stages(course_of(job, reckoned.settings))[1].removed


ROUND = "  shape: round bar\n  diameter: {d}\n  bar length: 90\n"


def test_a_keyway_in_a_shaft_takes_what_is_there():
    """Section × way of the centre; the two round ends by the moments of a disc: ∬ √(R² − x²) = π r²
    R (1 − u/8 − u²/64 …), u = (r/R)².
    """
    volume, solid = milled(ROUND.format(d=40), KEYWAY)
    radius, half, deep, way = 20.0, 4.0, 4.0, 24.0
    u = (half / radius) ** 2
    ends = math.pi * half**2 * (radius * (1 - u / 8 - u**2 / 64 - 5 * u**3 / 1024) - (radius - deep))
    closed = grooved(radius, half, deep) * way + ends
    assert volume * 1e9 == pytest.approx(closed, rel=1e-3)
    assert solid * 1e9 == pytest.approx(closed, rel=5e-3)
    assert volume * 1e9 < 0.97 * 4 * (8 * 24 + math.pi * 16)


def test_a_slot_right_across_a_bar_is_its_segment_times_its_width():
    """The cutter runs out on both sides: of its way only the chord is metal."""
    step = SLOT.format(ends=("[45, -8]", "[45, 48]"), deep=6, open="both open")
    volume, solid = milled(ROUND.format(d=40), step)
    assert volume * 1e9 == pytest.approx(segment(20, 6) * 10, rel=1e-9)
    assert solid == pytest.approx(volume, rel=5e-3)


def test_a_slot_along_a_bar_open_at_both_ends_is_its_section_times_the_bar():
    step = SLOT.format(ends=("[-8, 20]", "[98, 20]"), deep=6, open="both open")
    volume, solid = milled(ROUND.format(d=40), step)
    assert volume * 1e9 == pytest.approx(grooved(20, 5, 6) * 90, rel=1e-9)
    assert solid == pytest.approx(volume, rel=5e-3)


def test_a_slot_in_the_middle_of_a_hexagon_across_flats_is_a_box():
    """A flat is up: nothing is missing over a slot that is narrower than it."""
    lines = "  shape: hexagon\n  across flats: 40\n  bar length: 90\n"
    step = SLOT.format(ends=("[30, 20]", "[60, 20]"), deep=6, open="closed")
    volume, solid = milled(lines, step)
    assert volume * 1e9 == pytest.approx(6 * (10 * 30 + math.pi * 25), rel=1e-9)
    assert solid == pytest.approx(volume, rel=5e-3)


@pytest.mark.parametrize("along", ["x", "y"])
def test_a_keyway_turned_with_its_shaft_takes_the_same(along):
    """The bar lies away from the person: the keyway goes along y."""
    lines, step = ROUND.format(d=40), KEYWAY
    if along == "y":
        lines += "  along: width\n"
        step = KEYWAY.replace("[29, 20]", "[20, 29]").replace("along: x", "along: y")
    volume, solid = milled(lines, step)
    assert volume == pytest.approx(milled(ROUND.format(d=40), KEYWAY)[0], rel=1e-9)
    assert solid == pytest.approx(volume, rel=5e-3)


def test_a_cross_slot_that_stops_in_the_bar_has_round_ends_of_metal():
    step = SLOT.format(ends=("[45, 15]", "[45, 25]"), deep=6, open="closed")
    volume, solid = milled(ROUND.format(d=40), step)
    assert solid == pytest.approx(volume, rel=5e-3)


def test_the_end_of_a_standing_bar_is_flat_and_a_slot_in_it_is_a_box():
    step = SLOT.format(ends=("[15, 20]", "[25, 20]"), deep=6, open="closed")
    volume, solid = milled(ROUND.format(d=40) + "  along: height\n", step)
    assert volume * 1e9 == pytest.approx(6 * (10 * 10 + math.pi * 25), rel=1e-9)
    assert solid == pytest.approx(volume, rel=5e-3)
