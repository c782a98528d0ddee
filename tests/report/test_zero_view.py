"""The zero between the jaws, from above."""

from __future__ import annotations

import pytest

from jobsheet.report.zero_view import zero_picture

from .holdings_drawn import CARD, HIGH, WIDE, held, outlines, said


def test_what_hangs_over_is_drawn_over():
    """100 long, 30 over the left: from above the jaws begin at three tenths of its length."""
    set_up, lie = held(said("vice", above_jaws="8", over_left="30"), (100, 50, 20), fixed_jaw="rear")
    drawing = zero_picture(set_up, lie, (), (), WIDE, HIGH, machine=CARD)
    boxes = outlines(drawing)
    (work,) = [one for one in boxes if one.fill == "paper"]
    left, right = (ends(x for x, _ in work.points) for ends in (min, max))
    jaws = [one for one in boxes if one is not work]
    assert jaws
    assert all(
        (min(x for x, _ in one.points) - left) / (right - left) == pytest.approx(0.3, abs=0.01)
        for one in jaws
    )
