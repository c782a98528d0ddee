"""Where the first cut begins from above, and which way it is fed."""

from __future__ import annotations

import pytest

from jobsheet.report.pictured.cutter_begins import FirstCut, first_cut
from tests.report.plans import bench, drill, job

from .seen_from_above import MM, plan_of

FACE = "      - key: face\n        number: 10\n        kind: face\n        cutter: face mill 50 mm, 4 teeth\n        depth: 0.5\n        width: 30\n        along: {along}\n        feed per tooth: 0.05\n"


SIDE = "      - key: side\n        number: 10\n        kind: side-mill\n        cutter: end mill 20, 4 teeth\n        way: {way}\n        side: {side}\n        width: 3\n        depth: 5\n        feed per tooth: 0.04\n"


SLOT = "      - key: slot\n        number: 10\n        kind: slot\n        cutter: slot drill 10, 2 teeth\n        ends:\n          - [20, 25]\n          - [60, 25]\n        depth: 4\n        feed per tooth: 0.03\n"


def first_of(step) -> FirstCut | None:
    plan = plan_of(job([bench(5), step]))
    return first_cut(plan, plan.courses[0])


def on_the_left(found: FirstCut, middle: tuple[float, float]) -> bool:
    """Whether a place lies on the left of the way that the cutter goes: the cross
    product of the two is above nought.
    """
    way = found.to[0] - found.begins[0], found.to[1] - found.begins[1]
    to = middle[0] - found.begins[0], middle[1] - found.begins[1]
    return way[0] * to[1] - way[1] * to[0] > 0


@pytest.mark.parametrize("along", ["x", "y"])
def test_a_face_begins_with_a_strip_that_has_the_work_on_the_cutter_s_left(along):
    """A right-hand cutter turns clockwise from above: with the work on its left a tooth goes in at
    no thickness, the conventional way.
    """
    found = first_of(FACE.format(along=along))
    assert found.radius == pytest.approx(25 * MM)
    assert on_the_left(found, (40 * MM, 25 * MM))
    moved = [abs(to - begins) for begins, to in zip(found.begins, found.to, strict=True)]
    assert moved == pytest.approx([80 * MM, 0] if along == "x" else [0, 50 * MM])
    # 30 of its 50 are in the metal: 20 of it stand out over the side.
    out = -(found.begins[1] - 25 * MM) if along == "x" else found.begins[0] + 25 * MM - 80 * MM
    assert out == pytest.approx(20 * MM)


@pytest.mark.parametrize("side", ["left", "right", "front", "rear"])
@pytest.mark.parametrize("way", ["conventional", "climb"])
def test_a_side_has_the_work_on_the_left_and_climbing_on_the_right(side, way):
    found = first_of(SIDE.format(side=side, way=way))
    assert on_the_left(found, (40 * MM, 25 * MM)) is (way == "conventional")
    # The edge of a 20 mm cutter is 3 in from the side: its middle stands 7 outside of it.
    away = {
        "left": -found.begins[0],
        "right": found.begins[0] - 80 * MM,
        "front": -found.begins[1],
        "rear": found.begins[1] - 50 * MM,
    }
    assert away[side] == pytest.approx(7 * MM)


def test_a_slot_goes_from_its_first_end_to_its_second():
    found = first_of(SLOT)
    assert (found.step, found.radius) == (10, pytest.approx(5 * MM))
    assert found.begins == pytest.approx((20 * MM, 25 * MM))
    assert found.to == pytest.approx((60 * MM, 25 * MM))


def test_a_hole_is_its_own_sign_and_a_bench_step_cuts_nothing():
    assert first_of(drill(10, [(10, 10)])) is None
    assert first_of(bench(10)) is None
