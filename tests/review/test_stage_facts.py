"""Facts of the solids find their step, or nothing once it is gone."""

from __future__ import annotations

from jobsheet.review.plan.stage_facts import step_of

from .views_read import sample, view_of


def test_a_step_that_is_there_and_one_that_is_gone():
    view = view_of(sample(100))
    assert step_of(view, "drill") == view.job.find("drill")
    assert step_of(view, "gone") is None
