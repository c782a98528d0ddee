"""Sizes with limits: which step makes each last, and which measures it."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.model.finished import Finished
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.asked_limits import asked_sizes, limited, measured_by, measures_all, names, size_of

from .views_read import sample, view_of


def plate(**fields):
    job = replace(sample(100), finished=Finished(sizes="80 x 50 x 11.5 ±0.1"))
    for (key, name), text in fields.items():
        job = SetField(key, name, text).apply(job)
    return as_asked(view_of(job))


def test_the_height_is_made_by_the_faces_in_their_order_and_measured_where_it_is_named():
    """HM-100 names 11.5 ±0.1 at its second face."""
    (height,) = limited(plate())
    assert (height.called, height.line) == ("the height 11.5 ±0.1", 0)
    assert height.width == pytest.approx(0.2e-3)
    assert [step.key for step in height.steps] == ["face-rough", "face-finish"]
    assert [step.key for step in measured_by(plate(), height)] == ["face-finish"]


def test_every_size_of_the_drawing_is_asked_with_the_steps_that_make_it():
    found = {size.text.strip(): [step.key for step in steps] for size, steps in asked_sizes(plate())}
    assert found == {"80": [], "50": [], "11.5 ±0.1": ["face-rough", "face-finish"]}


def test_a_step_names_the_size_that_it_has_and_no_other():
    asked = plate()
    (height,) = limited(asked)
    rough, finish = height.steps
    assert names(finish, height)
    assert not names(rough, height)
    assert size_of(finish).nominal == pytest.approx(11.5e-3)
    assert size_of(rough) is None
    assert not measures_all(finish)
