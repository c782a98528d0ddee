"""The right orders as lanes: what must come before stands further left, and
no two rings stand on each other.
"""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Ellipse, Text
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.lesson.order_lanes import RING, WIDE, lanes
from jobsheet.storage.job_file import read_job

NAMES = ("hm-101-setting-block", "hm-103-pivot-block", "hm-104-cover-plate")


def _drawn(samples, name, level=1, seed=7):
    reckoned = Reckoner().reckon(read_job(samples / f"{name}.yaml"))
    exercise = order_exercise(reckoned, level, seed, 1)
    return [(exercise.asked.inside(block.set_up.key), block.slips) for block in exercise.blocks]


def _rings(drawing):
    return [(item.x, item.y) for item in drawing.items if isinstance(item, Ellipse)]


def _places(order, slips, drawing):
    letters = {
        item.words: item.x for item in drawing.items if isinstance(item, Text) and item.style == "number"
    }
    return {slip.key: letters[slip.letter] for slip in slips}


@pytest.mark.parametrize("name", NAMES)
def test_what_must_come_before_stands_further_left(samples, name):
    for order, slips in _drawn(samples, name):
        places = _places(order, slips, lanes(order, slips))
        for first, then in order.needed():
            assert places[first] < places[then]


@pytest.mark.parametrize("name", NAMES)
def test_every_slip_has_a_ring_within_the_drawing_and_none_stands_on_another(samples, name):
    for order, slips in _drawn(samples, name):
        drawing = lanes(order, slips)
        rings = _rings(drawing)
        assert len(rings) == len(order.items)
        for at, (x, y) in enumerate(rings):
            assert RING <= x <= WIDE - RING
            assert RING <= y <= drawing.height
            assert all((x - other) ** 2 + (y - above) ** 2 >= (2 * RING) ** 2 for other, above in rings[:at])


@pytest.mark.parametrize("seed", [1, 99, 123456])
def test_whatever_the_seed_all_of_it_holds(samples, seed):
    for order, slips in _drawn(samples, "hm-103-pivot-block", level=4, seed=seed):
        drawing = lanes(order, slips)
        places = _places(order, slips, drawing)
        assert all(places[first] < places[then] for first, then in order.needed())
        assert len(set(_rings(drawing))) == len(slips)
