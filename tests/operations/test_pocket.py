"""The wall of a pocket as a step of its own, and where its corners lie;
demo-scenario HM-104, operations 60 and 70.
"""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step, check, refusal

CUTTER = {
    "cutter": "end mill 10, 4 teeth, cobalt, 30 mm out",
    "centre": "60, 40",
    "feed": "48",
    "spindle": "300 rpm",
}
SHEET = {"material": "304", "thickness": 0.004}
FINISH = {
    **CUTTER,
    "length": "50",
    "width": "30",
    "depth": "through",
    "leave": "0.4",
    "clear": "only the wall",
}


class Pocket(Step):
    """A pocket has a centre and no places."""

    def __init__(self, texts, **around):
        super().__init__("pocket", texts, **{**SHEET, **around})


def test_the_wall_alone_is_a_thin_cut_at_full_depth():
    """Printed: 8 W, 0.5 % of the torque; the way round is 2 × (40 + 20) mm at 48 mm/min."""
    found = Pocket(FINISH)
    check(found, {"power": (8, 1, 0.5), "share": (0.5, 1, 0.05), "time_each": (120 / 48 * 60, 1, 0.01)})
    # What stood on the wall: the ring between 50 × 30 and 49.2 × 29.2, of the same corner radius, 4 deep.
    assert found.value("volume") * 1e9 == pytest.approx((50 * 30 - 49.2 * 29.2) * 4)
    assert found.row.do == "Finish the wall of the window 50 × 30, 0.4 off"
    assert "clockwise" in found.row.note


def test_it_asks_the_last_round_of_the_pocket_that_is_cut_in_one_step():
    whole = Pocket({**FINISH, "clear": "a groove round the middle", "layer": "1"})
    alone = Pocket(FINISH)
    assert whole.value("last_power") == pytest.approx(alone.value("power"))
    assert whole.value("wall_error") == pytest.approx(alone.value("wall_error"))


def test_in_layers_each_asks_its_share():
    """Two layers of 2 mm ask half of what 4 mm do (Kienzle's power goes with the depth)."""
    assert Pocket({**FINISH, "layer": "2"}).value("power") * 2 == pytest.approx(Pocket(FINISH).value("power"))


@pytest.mark.parametrize(
    ("size", "left", "right", "front", "rear"),
    [(("50", "30"), 40, 80, 30, 50), (("49.2", "29.2"), 40.4, 79.6, 30.4, 49.6)],
)
def test_the_corners_of_the_centre_line(size, left, right, front, rear):
    """Printed for the 10 mm cutter: X 40-80, Y 30-50, and before it X 40.4-79.6, Y 30.4-49.6."""
    fields = Pocket({**FINISH, "length": size[0], "width": size[1]}).fields
    found = [(round(x * 1e3, 6), round(y * 1e3, 6)) for x, y in fields.around]
    assert found == [(left, front), (left, rear), (right, rear), (right, front)]
    # Clockwise, so that the wall is on the left of the way: the area of the corners comes out below zero.
    around = zip(found, found[1:] + found[:1], strict=True)
    assert sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in around) < 0


def test_what_is_left_must_be_said():
    texts = {name: text for name, text in FINISH.items() if name != "leave"}
    assert "what is left on it, such as 0.4 mm" in refusal("pocket", texts, **SHEET)
    assert "smaller than the pocket" in refusal("pocket", {**FINISH, "length": "10", "width": "10"}, **SHEET)


def test_the_shape_is_the_finished_window():
    (recess,) = Pocket(FINISH).shapes
    assert (recess.length, recess.width, recess.radius) == (
        pytest.approx(50e-3),
        pytest.approx(30e-3),
        pytest.approx(5e-3),
    )
    assert math.isclose(recess.x, 60e-3)


@pytest.mark.parametrize(
    ("texts", "rounds", "way"),
    [
        # 20 wide with 10 of cutter leaves 5 to each side. A step of six tenths of the cutter:
        # one more round, on the middle line.
        ({}, 2, 60 + 8),
        ({"step": "5"}, 2, 60 + 10),
        # A little less than 5: a round of 10.2 x 0.2, and the middle line of 0.4.
        ({"step": "4.9"}, 3, 60 + 20.8 + 0.4),
        ({"step": "10"}, 2, 60),
        # Half a millimetre stays on the walls: 29 x 19.
        ({"leave": "0.5"}, 2, 56 + 7),
        ({"clear": "a groove round the middle"}, 1, 60),
        ({"length": "10.1", "width": "10.1", "clear": "a groove round the middle"}, 1, 10),  # as far as the cutter is wide at least
    ],
)  # fmt: skip
def test_a_pocket_of_30_by_20_is_cleared_in_rounds_that_grow_by_one_step(texts, rounds, way):
    layers = 2
    asked = {"length": "30", "width": "20", "depth": "4", "layer": "2", **texts}
    found = Pocket({**CUTTER, "clear": "all of it", **asked})
    assert found.value("passes") == rounds * layers
    assert found.value("layers") == layers
    assert found.value("path_length") * 1e3 == pytest.approx(way)
    assert found.value("time_each") == pytest.approx(way / 48 * 60)
    more = 2 * (20 + 10) / 48 * 60 if "leave" in texts else 0  # one last round at full depth
    assert found.value("cutting_time") == pytest.approx(layers * way / 48 * 60 + more)


def test_what_comes_out_of_a_pocket_has_round_corners_and_a_groove_leaves_its_middle():
    corners = (4 - math.pi) * 10**2 / 4
    sizes = {**CUTTER, "length": "40", "width": "30", "depth": "4", "layer": "2"}
    assert Pocket({**sizes, "clear": "all of it"}).value("volume") * 1e9 == pytest.approx(
        4 * (40 * 30 - corners)
    )
    groove = Pocket({**sizes, "clear": "a groove round the middle"})
    assert groove.value("volume") * 1e9 == pytest.approx(4 * (40 * 30 - corners - 20 * 10))


def test_a_step_inward_is_no_wider_than_the_cutter_and_the_cutter_no_wider_than_the_pocket():
    sizes = {**CUTTER, "length": "30", "width": "20", "depth": "4", "clear": "all of it"}
    assert "at most the cutter's diameter" in refusal("pocket", {**sizes, "step": "10.1"}, **SHEET)
    assert "smaller than the pocket less what is left" in refusal(
        "pocket", {**sizes, "width": "9.9"}, **SHEET
    )
    assert Pocket({**sizes, "width": "10"}).value("path_length") * 1e3 == pytest.approx(20)
    assert "one place, such as" in refusal("pocket", {**sizes, "centre": "10, 10; 20, 20"}, **SHEET)
