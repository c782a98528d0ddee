"""Round and six-sided stock in vees and chucks: bodies round its own axis, a diameter that is not asked twice."""

from __future__ import annotations

import math

import pytest

from jobsheet.holdings.of_stock import at_odds
from jobsheet.holdings.placed import bar_of, bodies_of
from jobsheet.holdings.to_say import to_say
from jobsheet.model.lying import lying, stock_box
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stock.all_shapes import shape_of
from jobsheet.stock.lying_stock import silhouette
from jobsheet.storage.job_file import job_from_text

BAR = "shape: round bar; diameter: 40; bar length: 90"
HEXAGON = "shape: hexagon; across flats: 36; bar length: 90"
VEE = "kind: vee block; angle: 90°; blocks: 2; clamps: 2; bolt: M10; tighten: 20 N·m"
CHUCK = "kind: chuck; 'on': dividing head; lies: along; grip length: 20; jaw force: 8 kN"


def job_of(stock, holding, first=""):
    lines = ["format: 2", "units: mm", "material: S235", "machine: knee-mill-k-2", "stock:"]
    lines += [f"  {line}" for line in stock.split("; ")]
    lines += [
        "set-ups:",
        "  - key: held",
        "    number: 1",
        "    up: top",
        "    operator: front",
        "    holding:",
    ]
    lines += [f"      {line}" for line in holding.split("; ")]
    lines += [
        "    operations:",
        "      - key: flat",
        "        number: 10",
        "        kind: face",
        "        cutter: face mill 50 mm, 4 teeth, carbide",
        "        depth: 6",
        "        feed per tooth: 0.1",
    ]
    return job_from_text("\n".join(lines) + "\n", "job")


def lie_of(job):
    return lying(job.set_ups[0], stock_box(job), shape_of(job.stock))


def test_a_bar_knows_which_of_its_faces_are_round():
    lie = lie_of(job_of(BAR, VEE))
    assert lie.bar == 0
    assert [face for face in ("left", "right", "front", "rear", "top", "bottom") if lie.is_curved(face)] == [
        "front", "rear", "top", "bottom",
    ]  # fmt: skip
    assert not lie_of(job_of(HEXAGON, CHUCK)).is_curved("top")
    assert lie_of(job_of("length: 90; width: 40; height: 40", CHUCK)).bar is None


def test_the_point_of_a_vee_lies_under_the_axis_of_its_bar():
    """The axis lies R / sin(α / 2) over the point (holding-and-more-kinds A1): 28.28 mm for 40 in a vee of 90°."""
    job = job_of(BAR, VEE)
    vees = [body for body in bodies_of(job.set_ups[0], lie_of(job), None) if body.part == "vee"]
    assert len(vees) == 2
    middle, point, half = vees[0].vee
    assert (middle, point, half) == pytest.approx((0.02, 0.02 - 0.02 * math.sqrt(2), math.pi / 4))
    assert vees[0].high[2] < 0.02  # below the axis, so that a strap finds the bar


def test_the_axis_stays_where_it_was_when_a_flat_is_cut():
    job = job_of(BAR, VEE)
    reckoned = Reckoner().reckon(job)
    after = course_of(reckoned.job, reckoned.settings).cuts[0].after
    assert after.size[2] == pytest.approx(0.034)
    assert bar_of(after).middle == pytest.approx((0.045, 0.02, 0.02))
    outline = silhouette(after, 1, 2)[0]
    flat = [x for x, z in outline if z == pytest.approx(0.034)]
    # A chord 6 below the top of a circle of 40: 2 √(20² - 14²) = 28.57; its lines lie up to 0.01 inside the circle.
    assert max(flat) - min(flat) == pytest.approx(0.02857, abs=3e-5)


@pytest.mark.parametrize(("stock", "across"), [(BAR, 40e-3), (HEXAGON, 36e-3)])
def test_the_diameter_is_that_of_the_stock(stock, across):
    told = Reckoner().reckon(job_of(stock, f"{CHUCK}; diameter: {across * 1e3:g}")).settings["flat"].grip
    found = Reckoner().reckon(job_of(stock, CHUCK)).settings["flat"].grip
    assert found == told
    assert found.radius == pytest.approx(across / 2)
    job = job_of(stock, VEE)
    assert "diameter of the work" not in to_say(job.set_ups[0], job.stock)
    block = job_of("length: 90; width: 40; height: 40", VEE)
    assert "diameter of the work" in to_say(block.set_ups[0], block.stock)


def test_another_diameter_is_said_with_what_to_do():
    job = job_of(BAR, f"{CHUCK}; diameter: 35")
    assert at_odds(job.set_ups[0], job.stock) == (
        "the chuck is said to hold 35, and the stock is ⌀40:"
        " leave the diameter of the work empty, or write that of the stock"
    )
    assert at_odds(job_of(BAR, f"{CHUCK}; diameter: 1.575 in").set_ups[0], job.stock) == ""


def test_a_chuck_is_round_about_the_axis():
    job = job_of(HEXAGON, CHUCK)
    chuck = bodies_of(job.set_ups[0], lie_of(job), None)[0]
    assert chuck.size[1] == pytest.approx(chuck.size[2])
    assert (chuck.low[2] + chuck.high[2]) / 2 == pytest.approx(0.018)
