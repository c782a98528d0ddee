"""Chatter: scaling, closed forms against the full theory."""

from __future__ import annotations

from math import acos, asin, cos, inf, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import stability as chatter
from jobsheet.cutting.engagement import teeth_in_cut
from jobsheet.cutting.textbook import chatter_theory
from jobsheet.cutting.textbook.angles_of_engagement import engagement_angle
from jobsheet.errors import CalcError

STEEL = {"teeth": 4, "kt": 1800e6, "kr": 0.3, "start": 0.0, "end": pi}


def asked(depth: float, width: float) -> float:
    return chatter.cutting_stiffness(depth, teeth_in_cut(4, engagement_angle(width, 12e-3)), 3000e6)


#: Computed from ab95 for a frame equally stiff both ways, Kr 0.3 (corrections to
#: the reference, chatter demand).
SIDE = {0.9: 1.03, 0.75: 1.10, 0.5: 1.32, 0.3: 1.70, 0.2: 2.13, 0.1: 3.4}
MIDDLE = {0.9: 1.07, 0.75: 1.25, 0.5: 1.88, 0.3: 3.75}


def side_arc(share):
    return 0.0, acos(1 - 2 * share)


def middle_arc(share):
    half = asin(share)
    return pi / 2 - half, pi / 2 + half


def bears(start, end):
    """How much more than a slot by the full theory, the teeth in the cut counted."""
    mode = chatter.Mode(5e6, 80, 0.04)
    known = {"teeth": 4, "kt": 1800e6, "kr": 0.3}
    slot = chatter.zeroth_order([mode], [mode], **known, start=0.0, end=pi).depth * pi
    return chatter.zeroth_order([mode], [mode], **known, start=start, end=end).depth * (end - start) / slot


@pytest.mark.parametrize(("arc", "table"), [(side_arc, SIDE), (middle_arc, MIDDLE)])
def test_direction_of_the_force_is_the_table_and_the_theory(arc, table):
    for share, factor in table.items():
        assert chatter.direction(*arc(share)) == pytest.approx(factor, rel=1e-9)
        assert bears(*arc(share)) == pytest.approx(factor, rel=0.03)


@given(st.floats(0.011, 0.989), st.sampled_from([side_arc, middle_arc]))
def test_direction_is_without_cliffs_and_a_slot_is_one(share, arc):
    """A hundredth of the width changes nothing by more than a seventh, and wider never bears more."""
    here, there = chatter.direction(*arc(share)), chatter.direction(*arc(share + 0.01))
    assert there <= here + 1e-9 <= there * 1.15
    assert chatter.direction(0.0, pi) == 1.0
    start, end = arc(share)
    assert chatter.direction(pi - end, pi - start) == pytest.approx(here)  # climb as conventional


def test_direction_is_held_where_the_ratio_of_the_forces_decides():
    assert chatter.direction(*side_arc(0.05)) == pytest.approx(4.0)
    assert chatter.direction(*side_arc(0.001)) == 4.0


def test_the_limit_follows_depth_times_teeth_not_width():
    assert asked(2e-3, 6e-3) == pytest.approx(asked(7.6e-3, 0.5e-3), rel=0.01)


def test_the_reference_cutter_scales_by_one_and_a_longer_one_by_less():
    assert chatter.cutter_scale(5e6, chatter.REFERENCE_STIFFNESS) == pytest.approx(1.0)
    assert chatter.cutter_scale(5e6, chatter.REFERENCE_STIFFNESS / 2) < 1


def test_one_mode_is_the_full_theory():
    mode = chatter.Mode(20e6, 80, 0.03)
    full = chatter.zeroth_order([mode], [], teeth=4, kt=600e6, kr=0.3, start=0, end=pi)
    assert full.depth == pytest.approx(
        chatter_theory.slot_limit_one_mode(20e6, 0.03, 600e6, 0.3, 4), rel=1e-5
    )
    assert full.frequency == pytest.approx(1.0296 * 80, rel=1e-4)


def test_two_equal_modes_are_the_full_theory_within_a_percent():
    mode = chatter.Mode(10e6, 80, 0.04)
    full = chatter.zeroth_order([mode], [mode], **STEEL).depth
    assert full == pytest.approx(chatter_theory.slot_limit_two_modes(10e6, 0.04, 1800e6, 0.3, 4), rel=0.01)


def test_twice_as_stiff_bears_twice_the_depth():
    soft, stiff = (chatter.Mode(k, 80, 0.04) for k in (5e6, 10e6))
    one, two = (chatter.zeroth_order([mode], [mode], **STEEL).depth for mode in (soft, stiff))
    assert two == pytest.approx(2 * one, rel=1e-6)


def test_a_response_at_rest_is_the_softness_and_grows_at_the_mode():
    mode = chatter.Mode(10e6, 80, 0.04)
    assert mode.response(0) == pytest.approx(1e-7)
    assert abs(mode.response(80)) == pytest.approx(1e-7 / 0.08)


@pytest.mark.parametrize(("start", "end"), [(0.0, pi), (0.0, 1.1), (0.4, 1.7), (2.1, pi)])
def test_direction_factors_are_the_means_that_altintas_and_budak_give(start, end):
    """Their four integrands, summed over the arc in small steps."""
    kr, steps = 0.3, 4000
    xx = xy = yx = yy = 0.0
    for step in range(steps):
        phi = start + (end - start) * (step + 0.5) / steps
        s, c = sin(2 * phi), cos(2 * phi)
        xx -= s + kr * (1 - c)
        xy -= 1 + c + kr * s
        yx += 1 - c - kr * s
        yy += s - kr * (1 + c)
    width = (end - start) / steps
    expected = [value * width for value in (xx, xy, yx, yy)]
    assert list(chatter._directions(kr, start, end)) == pytest.approx(expected, abs=1e-6)


def plain_scan(
    along, across, start, end, *, teeth=4, kt=1800e6, kr=0.3, low=20.0, high=2000.0
) -> tuple[float, float]:
    """Lowest depth and its frequency by the plain determinant, det(1 + L A G) = 0, at many frequencies."""
    xx, xy, yx, yy = chatter._directions(kr, start, end)
    best = (inf, 0.0)
    for step in range(12000):
        frequency = low * (high / low) ** (step / 12000)
        gx = sum(
            1
            / (m.stiffness * (1 - (frequency / m.frequency) ** 2 + 2j * m.damping * frequency / m.frequency))
            for m in along
        )
        gy = sum(
            1
            / (m.stiffness * (1 - (frequency / m.frequency) ** 2 + 2j * m.damping * frequency / m.frequency))
            for m in across
        )
        a, b, c = (xx * yy - xy * yx) * gx * gy, xx * gx + yy * gy, 1
        root = (b * b - 4 * a * c) ** 0.5
        for value in (2 * c / (-b + root), 2 * c / (-b - root)):
            if value.real:
                depth = -2 * pi * value.real / (teeth * kt) * (1 + (value.imag / value.real) ** 2)
                if depth > 0:
                    best = min(best, (depth, frequency))
    return best


SLOW, QUICK = chatter.Mode(5e6, 60, 0.04), chatter.Mode(9e6, 700, 0.03)
SOFT, STIFF = chatter.Mode(40e6, 60, 0.04), chatter.Mode(2e6, 700, 0.03)


@pytest.mark.parametrize(
    ("along", "across", "start", "end"),
    [([SLOW], [QUICK], 0.0, 1.2), ([STIFF], [SOFT], 0.0, 1.2), ([QUICK], [SLOW], 1.9, pi), ([SOFT], [STIFF], 0.3, 2.5), ([SLOW, STIFF], [QUICK], 0.0, pi)],
)  # fmt: skip
def test_unlike_modes_are_what_a_plain_scan_of_all_frequencies_finds(along, across, start, end):
    found = chatter.zeroth_order(along, across, teeth=4, kt=1800e6, kr=0.3, start=start, end=end)
    depth, frequency = plain_scan(along, across, start, end)
    assert found.depth == pytest.approx(depth, rel=1e-3)
    assert found.frequency == pytest.approx(frequency, rel=2e-3)


@pytest.mark.parametrize(
    "put", [{"teeth": 0}, {"kt": 0.0}, {"start": -0.1}, {"end": 3.2}, {"start": 1.0, "end": 0.9}]
)
def test_the_full_theory_refuses_what_has_no_meaning(put):
    with pytest.raises(CalcError):
        chatter.zeroth_order([SLOW], [], **{**STEEL, **put})


def test_refuses_no_modes_and_no_arc():
    with pytest.raises(CalcError, match="modes"):
        chatter.zeroth_order([], [], **STEEL)
    with pytest.raises(CalcError, match="end"):
        chatter.zeroth_order([chatter.Mode(1e7, 80, 0.04)], [], **{**STEEL, "end": 0.0})
