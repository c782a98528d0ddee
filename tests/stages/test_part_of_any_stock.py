"""The finished part against stock that is no box: what the stock never had is no cut, and
what steps take is told all the same.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.finished.finished_part import finished_part
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.against_part import against
from jobsheet.stages.course import course_of
from jobsheet.stages.part_solid import differences
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import job_from_text

#: What a segment 2 mm high off a circle of 40 has [mm²]: r² acos((r - h) / r) - (r - h) √(2 r h - h²).
SEGMENT = 400 * math.acos(18 / 20) - 18 * math.sqrt(2 * 20 * 2 - 4)
#: Each shape, and where there is a closed form what of 60 × 40 × 38 it never had [mm³].
SHAPES = {
    "round bar": (("diameter: 40", "bar length: 60"), (40 * 38 - (math.pi * 400 - SEGMENT)) * 60),
    "tube": (("diameter: 40", "wall: 6", "bar length: 60"), None),
    "hexagon": (("across flats: 40", "bar length: 60", "along: length"), None),
    "radius flat": (("length: 60", "width: 40", "height: 40", "corner radius: 8"), None),
    "casting": (("length: 60", "width: 40", "height: 40", "draft: 4°"), None),
    "cut plate": (("outline: 0, 0; 60, 0; 60, 25; 20, 40; 0, 40", "height: 40"), 40 * 15 / 2 * 38),
}


def job_of(name, drill="8", depth="2"):
    return job_from_text(
        "format: 2\nunits: mm\nmaterial: S235\nmachine: knee-mill-k-2\nstock:\n"
        + "".join(f"  {line}\n" for line in (f"shape: {name}", *SHAPES[name][0]))
        + f"""finished:
  sizes: 60 × 40 × 38
  features:
    - 8 through at 30, 20
set-ups:
  - key: set-up-1
    number: 1
    up: top
    operator: front
    zero:
      x from: left
      y from: front
    operations:
      - key: face
        number: 10
        kind: face
        cutter: face mill 50 mm, 4 teeth, carbide
        depth: {depth}
        feed per tooth: 0.1
      - key: hole
        number: 20
        kind: drill
        cutter: drill {drill} mm
        at: 30, 20
        depth: through
        feed: 0.1 mm/rev
        spindle: 600 rpm
""",
        "job",
    )


def found_in(job):
    reckoned = Reckoner().reckon(job)
    course = course_of(reckoned.job, reckoned.settings)
    part = finished_part(reckoned.job)
    return differences(Modeller().stages(course), part), against(course, part)


@pytest.mark.parametrize("name", SHAPES)
def test_what_the_stock_never_had_is_no_cut(name):
    solids, steps = found_in(job_of(name))
    over = {"left"} if name == "hexagon" else set()  # it is 46.2 over its corners, and nothing cuts them
    assert {one.what for one in solids} == {"never there"} | over
    assert [one.state for one in steps.holes] == ["made"]
    volume = SHAPES[name][1]
    # The lines of a circle may lie a hundredth inside it, all along the bar.
    inside = 0.01 * math.pi * 40 * 60
    assert volume is None or sum(one.volume for one in solids) * 1e9 == pytest.approx(volume, abs=inside)


@pytest.mark.parametrize("name", SHAPES)
def test_a_layer_too_much_and_a_hole_too_wide_are_told_of_their_steps(name):
    solids, steps = found_in(job_of(name, drill="10"))
    assert {step for one in solids if one.what == "cut away" for step in one.steps} == {"hole"}
    assert [one.state for one in steps.holes] == ["other size"]
    solids, steps = found_in(job_of(name, depth="2.5"))
    assert next(one.state for one in steps.sizes if one.name == "height") == "cut below"
