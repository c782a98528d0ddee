from __future__ import annotations

import itertools
import math

import pytest

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.drawing.making import arrow, box, ellipse_between, hatched, moved
from jobsheet.drawing.mark_shapes import MARKS, mark
from jobsheet.drawing.share_bar import END, FENCE, share_bar


def test_a_hatch_stays_inside_its_face():
    lines = hatched(box(10, 20, 30, 40), angle=45, apart=4)
    points = [point for line in lines for point in line.points]
    assert len(lines) > 10
    assert all(10 - 1e-6 <= x <= 40 + 1e-6 and 20 - 1e-6 <= y <= 60 + 1e-6 for x, y in points)


def test_a_hatch_rises_to_the_right_on_the_page():
    (x1, y1), (x2, y2) = hatched(box(0, 0, 100, 100), angle=45, apart=30)[0].points
    assert (x2 - x1) * (y2 - y1) < 0


def test_the_lines_of_a_hatch_lie_apart_as_asked():
    lines = hatched(box(0, 0, 100, 50), angle=90, apart=5)
    xs = sorted(line.points[0][0] for line in lines)
    assert [round(b - a, 6) for a, b in itertools.pairwise(xs)] == [5.0] * (len(xs) - 1)


def test_a_circle_on_a_face_seen_square_stays_a_circle():
    seen = ellipse_between((1, 2), (5, 0), (0, 5))
    assert (seen.a, seen.b) == pytest.approx((5, 5))


def test_a_circle_on_the_top_face_of_an_isometric_is_1_732_times_as_wide_as_high():
    # In the head: along x (cos 30, sin 30), along y (cos 30, -sin 30); axes sqrt(2) cos 30 and sqrt(2) sin 30.
    c, s = math.cos(math.radians(30)), 0.5
    seen = ellipse_between((0, 0), (c, s), (c, -s))
    assert seen.a / seen.b == pytest.approx(math.sqrt(3))
    assert seen.turn == pytest.approx(0)


def test_moving_moves_every_kind_of_item():
    items = (Line(((0, 0), (1, 1))), Ellipse(2, 2, 1, 1), Text(3, 3, "a"))
    line, ellipse, text = moved(items, 10, 20)
    assert line.points == ((10, 20), (11, 21))
    assert (ellipse.x, ellipse.y, text.x, text.y) == (12, 22, 13, 23)


def test_an_arrow_ends_at_its_tip():
    line, head = arrow((0, 0), (20, 0), head=6)
    assert head.points[0] == (20, 0)
    assert line.points[1][0] < 20


@pytest.mark.parametrize("name", MARKS)
def test_every_mark_stays_in_its_square(name):
    for item in mark(name, 16).items:
        points = (
            item.points
            if isinstance(item, Line)
            else ((item.x - item.a, item.y - item.b), (item.x + item.a, item.y + item.b))
        )
        assert all(-0.01 <= x <= 16.01 and -0.01 <= y <= 16.01 for x, y in points)


def test_no_two_verdicts_have_the_same_shape():
    shapes = {mark(name, 16).items for name in ("cut before", "expected", "tight", "beyond")}
    assert len(shapes) == 4


def test_an_unknown_verdict_has_no_mark():
    assert mark("unknown", 16).items == ()


def bar(**changes):
    asked = {
        "share": 0.5,
        "verdict": "expected",
        "low_share": 0.6,
        "high_share": 1.2,
        "known": True,
        "learned": False,
        "width": 200.0,
        "height": 24.0,
    }
    return share_bar(**{**asked, **changes})


def test_the_fence_stands_at_the_same_place_in_every_bar():
    for share in (0.1, 0.9, 2.0):
        fence = bar(share=share).items[-1]
        assert {x for x, _ in fence.points} == {FENCE * 200}


def test_a_fence_is_dashed_until_trials_or_knowledge_made_it_firm():
    assert bar().items[-1].dash
    assert not bar(learned=True).items[-1].dash
    assert not bar(low_share=1.0, high_share=1.0).items[-1].dash


def test_half_the_capacity_reaches_half_way_to_the_fence():
    outline = bar().items[-2]
    assert max(x for x, _ in outline.points) == pytest.approx(0.5 * FENCE * 200)


def test_a_demand_far_over_the_fence_is_cut_off_inside_the_box_and_torn():
    outline = bar(share=9.0, verdict="beyond").items[-2]
    assert len(outline.points) > 4
    assert max(x for x, _ in outline.points) == pytest.approx(END * FENCE * 200)
    assert END * FENCE * 200 <= 200


def test_what_is_not_known_has_no_fence_and_says_so():
    items = bar(known=False).items
    assert [item.words for item in items if isinstance(item, Text)] == ["not tried: lowest feed first"]
    assert not any(isinstance(item, Line) and item.dash == "fence" for item in items)


def test_each_verdict_fills_its_bar_another_way():
    patterns = {
        tuple(item for item in bar(verdict=verdict).items if isinstance(item, Line))
        for verdict in ("cut before", "expected", "tight", "beyond")
    }
    assert len(patterns) == 4
