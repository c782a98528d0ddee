"""What the steps leave against the drawing: nothing of the samples, and each fault under its own cause."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import Finished
from jobsheet.review.plan.as_asked import as_asked, at_face, called, holes, misplaced, sizes_out

from .views_read import sample, view_of


@pytest.mark.parametrize("number", [100, 101, 102, 103, 104])
def test_the_samples_are_as_their_drawings_ask(number):
    asked = as_asked(view_of(sample(number)))
    if asked is not None:
        assert list(sizes_out(asked)) == []
        assert [
            group for state in ("missing", "shifted", "not through") for group in holes(asked, state)
        ] == []
    assert misplaced(view_of(sample(number))) == frozenset()


def test_a_size_that_no_step_reaches_is_out_by_the_difference():
    job = sample(100)
    asked = as_asked(view_of(replace(job, finished=Finished(sizes="80 x 50 x 11 ±0.1"))))
    found = dict(sizes_out(asked))
    assert set(found) == {AXIS["top"]}
    assert found[AXIS["top"]].out > 0
    assert asked.out(AXIS["top"]) == found[AXIS["top"]].out
    assert asked.size(AXIS["top"]).name == "height"


def test_without_a_drawing_nothing_is_compared():
    assert as_asked(view_of(replace(sample(100), finished=Finished()))) is None


def test_a_line_in_a_sentence():
    assert called(2, read_feature("4 x M8 through", "mm")).endswith("(line 2)")
    assert at_face(AXIS["left"]) == "the left and the right"
