"""The finished part as a solid, in closed form."""

from __future__ import annotations

import pytest

from jobsheet.storage.job_file import job_from_text, read_job

from .parts_made import PIVOT, SAMPLES, by_solids, typed, without

#: A keyway 40 over its round ends where 40 from centre to centre is asked, beside a hole that is as asked.
SHAFT = """
format: 2
units: mm
material: S235
machine: knee-mill-k-2
stock: {shape: round bar, diameter: 30, bar length: 60}
finished:
  sizes: 60 x 30 x 30
  features: ["slot 8 x 4 deep from 10, 15 to 50, 15", "6 through at 55, 15"]
set-ups:
  - up: top
    holding: {kind: vee block, clamps: 2}
    operations:
      - {kind: keyway, cutter: "slot drill 8 mm, 25 mm out", start: [[10, 15]], length: 40, depth: 4}
      - {kind: drill, cutter: drill 6 mm, at: [[55, 15]], depth: through}
"""
SLIDE = next(path for path in SAMPLES if "102" in path.name)


def test_metal_left_in_a_step_names_its_line():
    found = by_solids(without(read_job(PIVOT), "step"))
    assert [one.what for one in found] == ["left"]
    assert found[0].lines == (1,)
    assert found[0].volume == pytest.approx(20e-3 * 12e-3 * 50e-3)


def test_a_slot_cut_too_long_names_the_step():
    found = by_solids(typed(read_job(SLIDE), "slot", ends="25, 30; 78, 30"))
    assert [one.what for one in found] == ["cut away"]
    assert found[0].steps == ("slot",)


def test_a_wall_left_in_a_slot_is_found_to_a_hundredth():
    """0.5 a side: left out it leaves a wall that thick over the whole length of the slot."""
    found = by_solids(without(read_job(SLIDE), "slot-rear"))
    assert [one.what for one in found] == ["left"]
    assert found[0].lines == (1,)
    assert 0.1e-3 < found[0].thick < 0.5e-3


def test_what_is_left_is_as_large_as_it_is_thick_somewhere():
    """The drilled hole and the hole that is asked are one: the faces between them have no thickness, and reach
    through the whole bar. Left are 4 of depth and 8 of width, from the centre of the milled end at 10 + 40 - 8 = 42.
    """
    (left,) = (one for one in by_solids(job_from_text(SHAFT, "shaft.yaml")) if one.what == "left")
    assert left.lines == (1,)
    x, y, z = left.box
    # Its end is a cusp beside the round of the cutter, thinner than anybody measures.
    assert x[0] == pytest.approx(42e-3, abs=0.02e-3)
    assert z[1] - z[0] == pytest.approx(4e-3, abs=2e-6)
    assert (y[0], y[1]) == (pytest.approx(11e-3, abs=2e-6), pytest.approx(19e-3, abs=1e-9))
    assert x[1] < 54e-3 + 1e-9
