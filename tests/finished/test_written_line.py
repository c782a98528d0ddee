"""A feature written as a line is read as the same feature."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.errors import QuantityError
from jobsheet.finished.told_back import told
from jobsheet.finished.written_line import written

from .lines_typed import LINES, read


def alike(one, other):
    """Whether two features say the same, however they are written."""
    return replace(one, text="") == replace(other, text="")


@pytest.mark.parametrize("text", LINES)
def test_a_line_is_written_and_read_again(text):
    found = read(text)
    line = written(found)
    again = read(line)
    assert alike(again, found)
    assert written(again) == line
    assert told(found, "mm")


@settings(max_examples=150, deadline=None)
@given(
    st.lists(st.sampled_from([*" ".join(LINES).split(), ";", ",", "x", "±", "Ø", "−"]), max_size=9),
    st.sampled_from(["mm", "in"]),
)
def test_any_words_in_any_order_are_read_or_answered(words, units):
    text = " ".join(words)
    try:
        found = read(text, units)
    except QuantityError:
        return
    line = written(found)
    assert written(read(line, units)) == line


@settings(max_examples=100, deadline=None)
@given(
    st.integers(1, 6), st.sampled_from(["6.8", "16 H7", "0.5 in", "M8", "12 ±0.1"]),
    st.sampled_from(["through", "x 12 deep", "blind 9.5"]), st.integers(0, 500), st.integers(0, 500),
    st.sampled_from(["", " from C, B", " within 0.05", " Ra 3.2"]),
)  # fmt: skip
def test_places_come_back_as_they_were_said(count, size, depth, x, y, behind):
    at = "; ".join(f"{x / 10:g}, {(y + 10 * n) / 10:g}" for n in range(count))
    text = f"{f'{count} x ' if count > 1 else ''}{size} {depth} at {at}{behind}"
    found = read(text)
    assert found.count == len(found.places) == count
    assert found.places.points[0].x.value == pytest.approx(x * 1e-4)
    assert found.places.points[-1].y.value == pytest.approx((y + 10 * count - 10) * 1e-4)
    assert alike(read(written(found)), found)
