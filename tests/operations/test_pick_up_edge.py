"""An edge to find; the zero may lie inside it where the edge is still to be cut:
demo-scenario HM-104, operation 10.
"""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step, check

FINDER = {"cutter": "edge finder, 0.200 in tip", "edges": "the two edges at the pins"}


def edge(**more):
    return Step("pick-up-edge", {**FINDER, **more}, material="304", thickness=0.004)


def test_half_the_tip_alone():
    """Half of 0.200 in: half a turn of a dial of 0.200 in (HM-102, operation 40)."""
    found = edge(spindle="800 rpm")
    check(found, {"half_tip": (2.54, 1e3, 0.005), "spindle_speed": (800, 60, 0.5)})
    assert found.figures.value("wind_on") is None
    assert "half the tip is 2.54 mm = 0 + .1000" in found.row.note
    assert found.dials[1].label == "Half the tip on X"


def test_a_zero_inside_the_edge_is_wound_on_in_one_go():
    """2.54 and 2 mm are 4.54 mm = 0.17874 in on the dial."""
    found = edge(inside="2")
    check(found, {"half_tip": (2.54, 1e3, 0.005), "wind_on": (4.54, 1e3, 0.005)})
    assert "half the tip and 2 mm more is 4.54 mm = 0 + .1787: lift, wind it on, then zero" in found.row.note
    assert [(dial.label, dial.number) for dial in found.dials[1:]] == [
        ("From the edge on X", "0 + .1787"), ("From the edge on Y", "0 + .1787"),
    ]  # fmt: skip


@pytest.mark.parametrize("text", ["0", "-1", "3 kg"])
def test_what_is_no_way_inside(text):
    from jobsheet.errors import QuantityError

    with pytest.raises(QuantityError):
        edge(inside=text)
