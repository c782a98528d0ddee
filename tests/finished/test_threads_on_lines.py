"""Threads at the head of a line: metric by diameter and pitch, unified by its
name, a class that its tap decides.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.scanned import Scanned
from jobsheet.finished.threads_on_lines import take_thread, thread_class


def read(text, **more):
    line, said = Scanned(text, "mm", ()), {"what": ""}
    return take_thread(line, said, **more), said, line


@pytest.mark.parametrize(
    ("text", "major", "pitch", "rest"),
    [
        ("M8 through", 8, 1.25, "through"), ("M8x1 through", 8, 1.0, "through"), ("M10 x 25", 10, 1.5, "x 25"), ("M8-6H through", 8, 1.25, "through"),
        ("1/4-20 UNC x 12 deep", 6.35, 1.27, "x 12 deep"), ("#10-32 through", 4.826, 0.79375, "through"),
    ],
)  # fmt: skip
def test_a_thread_and_what_stands_behind_it(text, major, pitch, rest):
    """ISO 261 and ASME B1.1: 1/4-20 has 25.4 / 20 = 1.27; #10 is 0.190 in."""
    taken, said, line = read(text)
    assert taken
    assert (said["thread"].major * 1e3, said["thread"].pitch * 1e3) == pytest.approx((major, pitch))
    assert said["what"] == "tapped hole"
    line.gap()
    assert line.text[line.at :] == rest


def test_a_bolt_that_is_only_named_makes_no_hole():
    taken, said, _ = read("M10", alone=True)
    assert taken
    assert said["what"] == ""


def test_what_is_no_thread_is_left():
    for text in ("16 H7", "slot 12", "Mx"):
        taken, said, line = read(text)
        assert not taken
        assert line.at == 0
        assert "thread" not in said


def test_a_thread_that_nobody_cuts_is_refused():
    with pytest.raises(QuantityError):
        read("M9.7 through")


def test_a_class_belongs_to_a_thread_alone():
    assert thread_class(Scanned("6H", "mm", ()), {"what": "tapped hole"})
    assert not thread_class(Scanned("6H", "mm", ()), {"what": "hole"})
