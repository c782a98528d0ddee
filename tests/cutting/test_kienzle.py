"""Cutting force and power: points for the head, directions, spread of the sources."""

from __future__ import annotations

from math import radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import kienzle
from jobsheet.cutting.textbook import chip_thicknesses
from jobsheet.errors import CalcError

kc = kienzle.specific_cutting_force


def test_a_chip_of_one_millimetre_gives_the_constant():
    assert kc(kc11=1500e6, mc=0.21, h=1e-3) == pytest.approx(1500e6)


@pytest.mark.parametrize(
    ("kc11", "mc", "expected"),
    [(1500, 0.22, 2490), (1775, 0.24, 3085), (2150, 0.20, 3408), (1150, 0.20, 1823), (2110, 0.22, 3502)],
)
def test_at_a_tenth_of_a_millimetre(kc11, mc, expected):
    assert kc(kc11 * 1e6, mc, 0.1e-3) / 1e6 == pytest.approx(expected, abs=1)


@given(st.floats(0.001e-3, 2e-3), st.floats(0.001e-3, 2e-3))
def test_a_thinner_chip_asks_more_force(one, other):
    thin, thick = sorted((one, other))
    assert kc(1500e6, 0.21, thin) >= kc(1500e6, 0.21, thick)


def test_ten_degrees_of_rake_are_a_tenth_less():
    assert kc(1e9, 0.2, 1e-3, rake=radians(10)) == pytest.approx(0.9e9)
    assert kc(1e9, 0.2, 1e-3, rake=radians(-10)) == pytest.approx(1.1e9)


def test_wear_multiplies():
    assert kc(1e9, 0.2, 1e-3, wear=1.3) == pytest.approx(1.3e9)


@pytest.mark.parametrize(
    "put", [{"kc11": 0}, {"h": 0}, {"h": -1e-3}, {"wear": 0}, {"rake": 1.6}, {"mc": float("nan")}]
)
def test_refuses_what_has_no_meaning(put):
    with pytest.raises(CalcError) as refusal:
        kc(**{"kc11": 1e9, "mc": 0.2, "h": 1e-3, **put})
    assert refusal.value.name == next(iter(put))


@given(st.floats(1e-4, 0.02), st.floats(1.01, 5))
def test_power_rises_with_depth(depth, more):
    put = {"width": 0.01, "table_feed": 1e-3, "kc": 2e9}
    assert kienzle.milling_power(depth=depth * more, **put) > kienzle.milling_power(depth=depth, **put)


@given(st.floats(0.05, 1.0))
def test_a_wider_cut_asks_more_power_though_its_chip_is_thicker(part):
    def power(width: float) -> float:
        h = chip_thicknesses.mean_chip_thickness(0.05e-3, width, 12e-3)
        return kienzle.milling_power(2e-3, width, 1e-3, kc(1500e6, 0.21, h))

    assert power(part * 12e-3) >= power(part * 12e-3 * 0.9)


def test_the_books_9550_is_a_rounded_number():
    assert kienzle.torque_from_power(1000, 1 / 60) == pytest.approx(9549.3, abs=0.05)


@pytest.mark.parametrize("rake", [90, -90, 95, -95])
def test_a_rake_of_a_right_angle_has_no_meaning(rake):
    with pytest.raises(CalcError, match="rake"):
        kc(1e9, 0.2, 1e-3, rake=radians(rake))


def test_a_rake_may_be_steep():
    assert kc(1e9, 0.2, 1e-3, rake=radians(80)) == pytest.approx(0.2e9)
    assert kc(1e9, 0.2, 1e-3, rake=radians(-80)) == pytest.approx(1.8e9)
