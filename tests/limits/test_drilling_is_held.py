"""What a drill asks of vice and straps: it turns the work, and lifts it where its point breaks through."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import holding
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.quantity import Depth
from jobsheet.model.setting import Grip, Setting
from jobsheet.storage.card_files import find_card

#: The 80 mm vice of B-1 by its handle (cutting-data section 1.14: 7.54 kN, friction 0.12).
VICE = Grip(kind="vice", force=7540, low=5400, high=10500, friction=0.12, jaw_depth=0.025, jaw_width=0.08)
STRAPS = Grip(kind="straps", force=8000, low=5600, high=10400, friction=0.12)


def judged(cutter, torque, *, grip=VICE, through=True, extent=(0.1, 0.06, 0.02), speed=9.0):
    setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"), grip=grip, extent=extent)
    depth = Depth(None, "through") if through else Depth(0.01, "10 mm")
    figures = [Figure("torque", torque, "N*m", "")]
    if speed:
        figures.append(Figure("spindle_speed", speed, "rev/s", ""))
    fields = SimpleNamespace(cutter=read_cutter(cutter, "mm"), depth=depth)
    return holding.limit(Figures(tuple(figures)), setting, fields)


def test_the_lift_is_that_of_the_reference():
    """A 3 mm drill with 0.39 N·m pulls 149 N, a 5 mm one with 1.69 N·m 390 N (holding-and-more-kinds A2)."""
    assert judged("drill 3", 0.39).demand == pytest.approx(149, abs=1.5)
    assert judged("drill 5", 1.69).demand == pytest.approx(390, abs=1.5)


@pytest.mark.parametrize(
    ("torque", "verdict"), [(10.0, "expected"), (11.2, "expected"), (11.4, "tight"), (18.7, "tight"), (19.0, "beyond")]
)  # fmt: skip
def test_a_drill_that_breaks_through_in_a_vice(torque, verdict):
    """2 × 0.12 × 7.54 kN holds 1810 N; a 12 mm drill lifts 1.155 M/D: 0.6 of it
    at 11.3 N·m, all of it at 18.8.
    """
    found = judged("drill 12", torque)
    assert found.verdict == verdict
    assert ("break" in found.sentence) == (verdict != "expected")


def test_a_blind_hole_only_turns_the_work():
    """12 mm drill, 12.8 N·m with a factor of 2.5: 32 N·m (A2); jaws of 80 mm
    with 7.54 kN are turned by 100 N·m.
    """
    found = judged("drill 12", 12.8, through=False)
    assert (found.demand, found.capacity) == (pytest.approx(32), pytest.approx(7540 * 0.08 / 6))
    assert found.verdict == "expected"


def test_under_straps_friction_alone_holds_it():
    """2 × 0.12 × 8 kN at 0.38 of 60 mm: 43.8 N·m."""
    found = judged("reamer 16", 19.0, grip=STRAPS)
    assert found.capacity == pytest.approx(2 * 0.12 * 8000 * 0.38 * 0.06)
    assert found.verdict == "beyond"
    assert "turns the work" in found.sentence


def test_a_hand_on_a_wrench_is_not_asked_and_nothing_known_says_nothing():
    assert judged("taps M6", 3.0, speed=0) is None
    assert judged("drill 5", 1.69, grip=None) is None
