"""How thick a chip is along its arc: means against the integral, slanted edges, round inserts."""

from __future__ import annotations

from math import pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.textbook import chip_thicknesses

from .drawn_sizes import parts


def test_a_slot_has_two_over_pi_of_the_feed():
    assert chip_thicknesses.mean_chip_thickness(1.0, 10, 10) == pytest.approx(2 / pi)


@pytest.mark.parametrize(
    ("part", "exact", "root"), [(0.2, 0.4314, 0.4472), (0.4, 0.5842, 0.6325), (1, 0.6366, 1.0)]
)
def test_exact_mean_and_the_square_root(part, exact, root):
    assert chip_thicknesses.mean_chip_thickness(1.0, part, 1.0) == pytest.approx(exact, abs=5e-5)
    assert chip_thicknesses.thin_cut_chip_thickness(1.0, part, 1.0) == pytest.approx(root, abs=5e-5)


@given(parts)
def test_mean_is_at_most_the_thickest_chip_and_that_at_most_the_feed(part):
    mean = chip_thicknesses.mean_chip_thickness(1.0, part, 1.0)
    assert mean <= chip_thicknesses.max_chip_thickness(1.0, part, 1.0) <= 1.0
    assert mean <= chip_thicknesses.centred_chip_thickness(1.0, part, 1.0) * (1 + 1e-9)


@given(st.floats(1e-3, 0.5), st.floats(1e-3, 0.5))
def test_a_narrower_cut_has_a_thinner_chip_up_to_half_the_cutter(one, other):
    narrow, wide = sorted((one, other))
    assert chip_thicknesses.mean_chip_thickness(1.0, narrow, 1.0) <= chip_thicknesses.mean_chip_thickness(
        1.0, wide, 1.0
    ) * (1 + 1e-9)


@given(parts)
def test_feed_for_a_chip_turns_the_thickest_chip_round(part):
    assert chip_thicknesses.max_chip_thickness(
        chip_thicknesses.feed_for_chip(0.1, part, 1.0), part, 1.0
    ) == pytest.approx(0.1)


def test_half_width_and_wider_cut_the_full_feed():
    assert chip_thicknesses.max_chip_thickness(1.0, 0.5, 1.0) == pytest.approx(1.0)
    assert chip_thicknesses.feed_for_chip(0.1, 0.7, 1.0) == 0.1


@pytest.mark.parametrize(
    "mean",
    [
        chip_thicknesses.max_chip_thickness,
        chip_thicknesses.mean_chip_thickness,
        chip_thicknesses.centred_chip_thickness,
        chip_thicknesses.thin_cut_chip_thickness,
    ],
    ids=lambda function: function.__name__,
)
@pytest.mark.parametrize("part", [0.2, 0.7])
def test_an_edge_of_thirty_degrees_halves_every_chip(mean, part):
    assert mean(0.1, part, 1.0, radians(30)) == pytest.approx(mean(0.1, part, 1.0) / 2)


def test_an_edge_of_thirty_degrees_asks_twice_the_feed():
    assert chip_thicknesses.feed_for_entering_angle(0.1, radians(30)) == pytest.approx(0.2)


def test_a_round_insert_at_its_full_depth_cuts_the_feed():
    assert chip_thicknesses.round_insert_chip_thickness(0.1, 12, 12) == pytest.approx(0.1)
