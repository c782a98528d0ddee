"""The route list: every step with its minutes and a box, on one page where it has the room."""

from __future__ import annotations

from jobsheet.report.blocks import words_of
from jobsheet.report.for_use.route_list import route_list

from .plans import bench, job, plate
from .seen_from_above import plan_of


def test_every_step_of_every_set_up_stands_there():
    plan = plan_of(plate())
    words = list(words_of(tuple(route_list(plan))))
    assert {str(one.number) for _, one in plan.job.operations()} <= set(words)


def test_where_nothing_fits_it_goes_on_over_pages_and_no_step_is_lost():
    plan = plan_of(job(*([bench(number, f"Do {number}")] for number in range(10, 60, 10))))
    (whole,) = route_list(plan)
    room = 0.7 * len(list(words_of((whole,))))
    plan.fits = lambda page: len(list(words_of((page,)))) < room
    pages = route_list(plan)
    assert len(pages) > 1
    words = set(words_of(tuple(pages)))
    assert {str(number) for number in range(10, 60, 10)} <= words
