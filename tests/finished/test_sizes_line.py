"""The line of the whole: sizes with limits, and what is asked of the faces."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.sizes_line import read_shape

from .lines_typed import DATUMS, LINES, SIZES


@pytest.mark.parametrize("text", LINES + SIZES)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_every_beginning_of_a_line_is_read_or_answered(text, units):
    answered = []
    for end in range(len(text) + 1):
        for reader in (read_feature, read_shape):
            try:
                reader(text[:end], units, DATUMS)
            except QuantityError as error:
                answered.append((str(error), error.start, end))
    assert all(sentence.strip() and 0 <= start <= max(end, 1) for sentence, start, end in answered)


def test_as_bought_is_chosen_for_both_faces_of_a_size():
    assert read_shape(SIZES[2], "mm", DATUMS).as_bought == ("front", "rear")


@pytest.mark.parametrize(
    ("text", "says"),
    [("80 x 50", "Three sizes"), ("80 x 50 x 30 x 2", "fourth"), ("A square to top 0.03", "cannot be square"),
     ("A parallel to B 0.02", "parallel to the top"), ("A square to B", "within how much"), ("wide", "width is missing")],
)  # fmt: skip
def test_what_is_wrong_in_the_sizes_is_said(text, says):
    with pytest.raises(QuantityError, match=says):
        read_shape(text, "mm", DATUMS)


def test_an_end_is_square_to_the_sides_where_nobody_says_to_what():
    shape = read_shape("109 x 30 x 16; right end square 0.05", "mm", DATUMS)
    assert shape.forms[0].face == "right"
    assert sorted(shape.forms[0].to) == ["bottom", "front", "rear", "top"]
    with pytest.raises(QuantityError, match="which face it is square to"):
        read_shape("109 x 30 x 16; right square 0.05", "mm", DATUMS)
