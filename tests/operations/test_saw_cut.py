"""Sawing: minutes by the area that is sawn through, unless they are typed."""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step

SAW = {"off": "10", "side": "right", "leave": "1", "saw": "hand saw"}
STEEL = {"material": "S235"}


@pytest.mark.parametrize(("side", "square_centimetres"), [("right", 7.2), ("front", 12.0)])
def test_a_hand_saw_goes_through_five_square_centimetres_a_minute(side, square_centimetres):
    """The work is 100 × 60 × 12: a cut off its right is 60 × 12, off its front 100 × 12."""
    step = Step("saw-cut", {**SAW, "side": side}, **STEEL)
    assert step.value("bench_minutes") / 60 == pytest.approx(square_centimetres / 5)
    assert step.value("volume") * 1e6 == pytest.approx(square_centimetres * 1.0)


def test_a_power_saw_is_four_times_as_quick_and_typed_minutes_stand():
    hand, power = (
        Step("saw-cut", {**SAW, "saw": one}, **STEEL).value("bench_minutes")
        for one in ("hand saw", "power saw")
    )
    assert hand == pytest.approx(4 * power)
    assert Step("saw-cut", {**SAW, "minutes": "7 min"}, **STEEL).value("bench_minutes") == pytest.approx(
        7 * 60
    )


def test_the_side_comes_off_over_the_whole_height():
    (edge,) = Step("saw-cut", SAW, **STEEL).shapes
    assert (edge.side, edge.width, edge.depth) == ("right", pytest.approx(10e-3), pytest.approx(12e-3))


def test_a_width_and_a_height_that_are_said_stand_for_those_of_the_work():
    for more, area in (
        ({"area": "30"}, 30 * 12),
        ({"thickness": "20"}, 60 * 20),
        ({"area": "30", "thickness": "20"}, 600),
    ):
        step = Step("saw-cut", {**SAW, **more}, **STEEL)
        assert step.value("bench_minutes") == pytest.approx(area / 500 * 60)
        assert step.value("volume") * 1e9 == pytest.approx(area * 10)


def test_its_row_says_what_is_left_for_milling():
    row = Step("saw-cut", {**SAW, "note": "slowly"}, **STEEL).row
    assert (row.do, row.note, row.power_off) == (
        "Saw 10 off the right side",
        "leave 1 for milling, slowly",
        True,
    )
    assert Step("saw-cut", {**SAW, "leave": ""}, **STEEL).row.note == ""


def test_it_reads_the_size_across_its_side_alone():
    for side, across in (("left", "extent.y"), ("rear", "extent.x")):
        step = Step("saw-cut", {**SAW, "side": side}, **STEEL)
        assert {one for one in step.kind.reads(step.fields) if one.startswith("extent")} == {
            across,
            "extent.z",
        }
