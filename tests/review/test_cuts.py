"""Cuts as rules ask of them: soft metals, layers, whole widths, and holes that let a cutter in."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.review.plan import cuts
from jobsheet.review.plan.cuts import full_width, layer_of, soft, total_depth
from tests.limits.one_cut import around

from .views_read import sample, steps_of


@pytest.mark.parametrize(
    ("metal", "is_soft"), [("6082-T6", True), ("S235", False), ("304", False), ("EN-GJL-250", False)]
)
def test_aluminium_is_soft_and_iron_is_not(metal, is_soft):
    assert find(metal)
    assert soft(around(metal=metal)) is is_soft


@pytest.mark.parametrize(
    ("number", "key", "layer"),
    [(100, "face-rough", 0.4), (101, "face-4-rough", 3.8 / 5), (103, "rear-rough", 1.5)],
)
def test_a_layer_is_the_depth_over_their_number(number, key, layer):
    """HM-101 takes 3.8 in five layers of 0.8 at most, HM-103 3 in two."""
    assert layer_of(steps_of(sample(number))[key]) == pytest.approx(layer * 1e-3)
    assert (
        layer_of(
            steps_of(sample(number))[
                next(key for key, step in steps_of(sample(number)).items() if not step.roles.mills)
            ]
        )
        is None
    )


def test_only_what_cuts_with_its_whole_width_has_one():
    for number in (100, 102, 103, 104):
        for step in steps_of(sample(number)).values():
            wide = full_width(step)
            assert (wide is not None) == step.roles.full_width
            if wide is not None:
                assert wide == step.fields.cutter.diameter


def test_a_through_hole_has_no_depth_of_its_own_here():
    assert total_depth(steps_of(sample(100))["clamp"]) is None


#: From one end, 30 along and 40 across to the other [mm]: 50 long by Pythagoras.
ONE, OTHER = (0.010, 0.010), (0.040, 0.050)


@pytest.mark.parametrize(
    ("at", "far"),
    [
        (ONE, 0.0), (OTHER, 0.0), ((0.025, 0.030), 0.0), ((0.033, 0.024), 0.010), ((0.017, 0.036), 0.010), ((0.043, 0.054), 0.005),
        ((0.007, 0.006), 0.005), ((0.010, 0.0), 0.010),
    ],
)  # fmt: skip
def test_how_far_a_point_lies_from_a_slot_s_middle_line(at, far):
    """Beside it along the normal, beyond either end from that end; a line of no length is its one point."""
    assert cuts._from_line(at, ONE, OTHER) == pytest.approx(far, abs=1e-12)
    assert cuts._from_line(at, OTHER, ONE) == pytest.approx(far, abs=1e-12)
    assert cuts._from_line(at, ONE, ONE) == pytest.approx(math.dist(at, ONE))
