"""What a step may run into: half its cutter, and bodies that stay where they stand."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.model.held_work import Body
from jobsheet.review.plan.met import as_now, radius_of, stick_out_of

from .views_read import sample, steps_of


def test_half_of_the_cutter_and_how_far_it_stands_out():
    steps = steps_of(sample(100))
    drill = steps["drill"]
    assert radius_of(drill) == drill.fields.cutter.diameter / 2
    assert radius_of(steps["clamp"]) == 0
    assert stick_out_of(steps["clamp"]) is None


def test_bodies_stay_where_nothing_came_off_a_side():
    steps = steps_of(sample(100))
    body = (Body(part="stop", low=(-0.01, 0, 0), high=(0, 0.02, 0.01)),)
    assert as_now(body, steps["face-rough"], steps["drill"]) is body


def test_what_was_milled_off_the_left_moves_the_corner_and_not_the_stop():
    """HM-102 mills its left end in set-up 3: seen from the new corner a stop lies so much further left."""
    steps = list(steps_of(sample(102)).values())
    end = next(step for step in steps if step.key == "end-b")
    later = next(step for step in steps if step.index > end.index and step.set_up.key == end.set_up.key)
    stop = Body(part="stop", low=(-0.01, 0, 0), high=(0, 0.02, 0.01))
    (seen,) = as_now((stop,), end, later)
    assert seen.size == pytest.approx(stop.size)
    assert seen.low[0] == pytest.approx(
        -0.01 - (end.lie.size[0] - later.lie.size[0]) * (end.lie.left in end.makes)
    )


def test_what_has_no_cutter_has_no_width():
    for cutter, half in (
        (None, 0.0),
        (SimpleNamespace(diameter=None), 0.0),
        (SimpleNamespace(diameter=0.012), 0.006),
    ):
        assert radius_of(SimpleNamespace(fields=SimpleNamespace(cutter=cutter))) == half
    assert radius_of(SimpleNamespace(fields=SimpleNamespace())) == 0.0
    assert stick_out_of(SimpleNamespace(fields=SimpleNamespace())) is None
