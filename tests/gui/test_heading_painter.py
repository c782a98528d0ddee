"""The heading of a set-up: its title before the margin, its zero in it; two lines where it is narrow."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage, QPainter

from jobsheet.gui.column.heading_painter import HeadingPainter
from jobsheet.gui.column.measures import columns
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink import look


@pytest.fixture(autouse=True)
def light(qapp):
    """Whatever a test before left."""
    look.apply("light")


def _inks(view, width, high):
    now = look.look()
    image = QImage(width, high, QImage.Format.Format_RGB32)
    with QPainter(image) as painter:
        HeadingPainter(painter, now, columns(now, width), high, chosen=False, focused=False).paint(view)
    return {(x, y) for x in range(width) for y in range(high - 1) if image.pixelColor(x, y).lightness() < 150}


def _view(**more):
    return HeadingView(
        **({"key": "s", "number": 1, "title": "Set-up 1: top up", "holding": "", "zero": ""} | more)
    )


@pytest.mark.parametrize("width", [1000, 1500])
def test_the_zero_stands_in_the_margin_and_all_else_before_it(qapp, width):
    at = columns(look.look(), width)
    bare = _inks(_view(), width, 36)
    zero = _inks(_view(zero="zero left front"), width, 36) - bare
    held = _inks(_view(holding="vice", device="vice"), width, 36) - bare
    assert zero
    assert all(x > at.margin for x, _ in zero)
    assert held
    assert all(x < at.margin for x, _ in held)


def test_where_it_is_narrow_the_zero_stands_under_the_title_at_the_right(qapp):
    bare = _inks(_view(), 700, 56)
    zero = _inks(_view(zero="zero left front"), 700, 56) - bare
    assert zero
    assert min(y for _, y in zero) > 28
    assert min(x for x, _ in zero) > 350
    assert max(y for _, y in bare) < 32
