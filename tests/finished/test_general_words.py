"""General limits in a drawing's words, against the table of ISO 2768-1."""

from __future__ import annotations

import pytest

from jobsheet.finished.general_words import general_either_way


@pytest.mark.parametrize(
    ("words", "size", "either"),
    [
        ("ISO 2768-1 m", 50, 0.3), ("ISO 2768-mK", 25, 0.2), ("general tolerances 2768 - 1 - M", 6, 0.1),
        ("ISO 2768-f", 6, 0.05), ("ISO 2768-fH", 100, 0.15), ("ISO 2768-1 f", 30, 0.1), ("ISO 2768-f", 400, 0.2),
        ("±0.1 unless stated", 50, 0.1), ("all +/- 0.05 mm", 5, 0.05), ("+-.2", 5, 0.2),
    ],
)  # fmt: skip
def test_what_drawings_say_for_all_sizes(words, size, either):
    """ISO 2768-1:1989, table 1, classes f and m."""
    assert general_either_way(size * 1e-3, words) == pytest.approx(either * 1e-3)


def test_a_bare_number_is_of_the_job():
    assert general_either_way(1e-2, "±0.005 unless stated", "in") == pytest.approx(0.005 * 25.4e-3)


@pytest.mark.parametrize(
    ("words", "size"),
    [("", 0.05), ("as usual", 0.05), ("ISO 2768-f", 0.5), ("ISO 2768-m", 3.0), ("ISO 2768-c", 0.05)],
)
def test_what_says_nothing_that_is_known_is_none(words, size):
    assert general_either_way(size, words) is None
