"""Holes of a plan, each with its steps in cutting order."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.hole_chains import does, flat, holes_of, places_of

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
