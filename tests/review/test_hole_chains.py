"""Holes of a plan, each with its steps in cutting order."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.model.shape import Edge
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan import hole_chains
from jobsheet.review.plan.hole_chains import Holes, Lowered, Taken, does, flat, holes_of, places_of

from .views_read import sample, steps_of


def test_the_plate_has_four_holes_each_spotted_drilled_and_tapped():
    holes = holes_of(Reckoner().reckon(sample(100)))
    assert len(holes.chains) == 4
    for chain in holes.chains:
        assert [does(step.operation) for step in chain.steps] == ["spot", "drill", "tap"]
        assert [step.key for step in chain.steps] == ["spot", "drill", "tap"]


def test_a_hole_lies_where_it_is_on_its_face():
    """HM-100: the four points of the plate, 14 and 12 from the datums (design, section 3b)."""
    chains = holes_of(Reckoner().reckon(sample(100))).chains
    spots = sorted(tuple(round(one * 1e3, 3) for one in chain.at) for chain in chains)
    assert len(set(spots)) == 4
    xs, ys = {x for x, _ in spots}, {y for _, y in spots}
    assert len(xs) == len(ys) == 2


def test_only_steps_at_holes_have_places():
    job = sample(100)
    assert len(places_of(job.find("drill")[1])) == 4
    assert places_of(job.find("face-rough")[1]) == ()


@pytest.mark.parametrize("key", ["drill", "face-rough"])
def test_a_place_on_the_face_that_is_up_has_two_of_its_coordinates(key):
    lie = steps_of(sample(100))[key].lie
    one, other = flat(lie, 0.0, 0.0), flat(lie, lie.size[0], lie.size[1])
    assert sorted(abs(a - b) for a, b in zip(one, other, strict=True)) == pytest.approx(sorted(lie.size[:2]))


#: From one end, 30 along and 40 across to the other [mm]: 50 long by Pythagoras.
ONE, OTHER = (0.010, 0.010), (0.040, 0.050)


@pytest.mark.parametrize(
    ("at", "far"),
    [
        (ONE, 0.0), (OTHER, 0.0), ((0.025, 0.030), 0.0),
        # Beside the middle by 10 along the normal (4, −3)/5; beyond either end along the line by 5; and off a corner.
        ((0.033, 0.024), 0.010), ((0.017, 0.036), 0.010), ((0.043, 0.054), 0.005), ((0.007, 0.006), 0.005), ((0.010, 0.0), 0.010),
    ],
)  # fmt: skip
def test_how_far_a_point_lies_from_a_slot_s_middle_line(at, far):
    assert hole_chains._from_line(at, ONE, OTHER) == pytest.approx(far, abs=1e-12)
    assert hole_chains._from_line(at, OTHER, ONE) == pytest.approx(far, abs=1e-12)
    assert hole_chains._from_line(at, ONE, ONE) == pytest.approx(math.dist(at, ONE))


def test_how_far_a_point_lies_inside_of_what_is_taken():
    """A slot 8 wide has 4 on either side of its line; a pocket is nearest to its nearest side."""
    around = {"operation": sample(100).find("drill")[1], "set_up": "set-up-1", "index": 3, "face": "top"}
    slot = Taken(**around, low=ONE, high=OTHER, width=0.008)
    for at, inside in (
        ((0.025, 0.030), 4),
        ((0.0266, 0.0288), 2),
        ((0.033, 0.024), -6),
        ((0.043, 0.054), -1),
    ):
        assert slot.inside(at) * 1e3 == pytest.approx(inside)
    pocket = Taken(**around, low=ONE, high=OTHER)
    for at, inside in (
        ((0.025, 0.030), 15), ((0.012, 0.030), 2), ((0.037, 0.030), 3), ((0.025, 0.011), 1), ((0.025, 0.046), 4), ((0.005, 0.030), -5),
        ((0.025, 0.056), -6),
    ):  # fmt: skip
        assert pocket.inside(at) * 1e3 == pytest.approx(inside)


@pytest.mark.parametrize(
    ("side", "strip"),
    [
        ("left", (-1, -1, 12, 51)),
        ("right", (68, -1, 81, 51)),
        ("front", (-1, -1, 81, 12)),
        ("rear", (-1, 38, 81, 51)),
    ],
)
def test_an_edge_cut_takes_a_strip_along_its_side(side, strip):
    """12 wide on a face of 80 by 50, a millimetre over its ends."""
    edge = Edge(side=side, width=0.012, depth=0.005)
    assert [one * 1e3 for one in hole_chains._strip(edge, 0.080, 0.050)] == pytest.approx(strip)


def deep(step, depth):
    return replace(step, depth=depth)


def test_a_through_hole_is_as_deep_as_any():
    first = holes_of(Reckoner().reckon(sample(100))).chains[0].steps[1]
    for mine, other, enough in (
        (None, 0.01, True), (None, None, True), (0.02, None, False), (0.02, 0.02, True), (0.02, 0.0201, False), (0.0201, 0.02, True),
    ):  # fmt: skip
        assert deep(first, mine).as_deep_as(deep(first, other)) is enough


def test_only_what_comes_later_over_the_same_place_of_the_same_face_takes_a_hole_away():
    """A slot over the hole of step 3, before it, behind it, beside it and in another face."""
    around = {"operation": sample(100).find("drill")[1], "set_up": "set-up-1"}
    chain, step = SimpleNamespace(face="top", at=(0.025, 0.030)), SimpleNamespace(index=3)
    for index, face, low, away in (
        (4, "top", ONE, True), (3, "top", ONE, False), (2, "top", ONE, False), (4, "left", ONE, False), (4, "top", (0.035, 0.045), False),
    ):  # fmt: skip
        taken = Taken(**around, index=index, face=face, low=low, high=OTHER, width=0.008)
        lower = Lowered(**around, index=index, face=face, amount=0.001)
        holes = Holes((), (taken,), (lower,), None)
        assert holes.cut_away_later(chain, step) is away
        assert (holes.lowered_later(chain, step) == (lower,)) is (index > 3 and face == "top")
