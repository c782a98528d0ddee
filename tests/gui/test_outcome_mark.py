"""How a run ended, as a mark: every end has one of its own, within its size."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor, QImage, QPainter

from jobsheet.gui.ink import look
from jobsheet.gui.ink.outcome_mark import draw_outcome
from jobsheet.model.what_ran import NOT_CUT


def _painted(outcome):
    look.apply("light")
    image = QImage(40, 40, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    with QPainter(image) as painter:
        draw_outcome(painter, outcome, 10, 20, 16)
    return image


def _marked(image):
    return {(x, y) for x in range(40) for y in range(40) if image.pixelColor(x, y).lightness() < 200}


@pytest.mark.parametrize("outcome", ["", "clean", NOT_CUT, "chatter"])
def test_a_mark_stands_within_its_size(qapp, outcome):
    marked = _marked(_painted(outcome))
    assert marked
    assert all(9 <= x <= 27 and 11 <= y <= 29 for x, y in marked)


def test_four_ends_are_four_marks_and_whatever_gave_out_is_a_cross(qapp):
    marks = [frozenset(_marked(_painted(one))) for one in ("", "clean", NOT_CUT, "chatter")]
    assert len(set(marks)) == 4
    assert _painted("chatter") == _painted("stalled")
