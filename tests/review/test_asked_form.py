"""How square or parallel faces have to come out, by the step's own words and by the drawing."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.model.finished import Finished
from jobsheet.review.plan.asked_form import asked_of_part, asked_of_step, faces_cut

from .views_read import sample, steps_of


def test_the_closer_of_both_counts_and_flatness_does_not():
    step = steps_of(
        SetField("face-finish", "tolerances", "square 0.05; parallel 0.02; flat 0.01").apply(sample(100))
    )["face-finish"]
    assert asked_of_step(step) == pytest.approx(0.02e-3)
    flat = steps_of(SetField("face-finish", "tolerances", "flat 0.01").apply(sample(100)))["face-finish"]
    assert asked_of_step(flat) is None


def test_a_face_cuts_what_is_up():
    steps = steps_of(sample(100))
    assert faces_cut(steps["face-rough"]) == (steps["face-rough"].lie.up,)
    assert faces_cut(steps["drill"]) == ()


def test_the_drawing_s_form_is_asked_of_the_step_that_mills_the_face():
    job = replace(sample(100), finished=Finished(sizes="80 x 50 x 12; top square to front 0.03"))
    steps = steps_of(job)
    assert list(asked_of_part(job, steps["face-rough"])) == [("top", pytest.approx(0.03e-3))]
    assert list(asked_of_part(job, steps["drill"])) == []
    assert list(asked_of_part(replace(job, finished=Finished()), steps["face-rough"])) == []
