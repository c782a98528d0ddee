"""The ground of a closed line: paper or the tint of the chosen one, and the ring of focus over everything."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QImage, QPainter

from jobsheet.gui.column.line_ground import LineGround
from jobsheet.gui.column.measures import columns
from jobsheet.gui.ink import look

WIDE, HIGH = 1000, 31


@pytest.fixture(autouse=True)
def light(qapp):
    """Whatever a test before left."""
    look.apply("light")


def _painted(*, chosen=False, focused=False):
    image = QImage(WIDE, HIGH, QImage.Format.Format_RGB32)
    with QPainter(image) as painter:
        ground = LineGround(
            painter, look.look(), columns(look.look(), WIDE), HIGH, chosen=chosen, focused=focused
        )
        ground.begin()
        ground.margin_line()
        ground.finish()
    return image


@pytest.mark.parametrize(("chosen", "token"), [(False, "paper"), (True, "chosen")])
def test_the_chosen_one_has_its_tint_and_its_bar(qapp, chosen, token):
    image, now = _painted(chosen=chosen), look.look()
    assert image.pixelColor(200, 15) == now.colour(token)
    assert (image.pixelColor(1, 15) == now.colour("bluemark")) is chosen


def test_a_hairline_stands_under_it_and_a_line_of_ink_at_the_margin(qapp):
    image, now = _painted(), look.look()
    assert image.pixelColor(200, HIGH - 1) == now.colour("rule")
    assert image.pixelColor(columns(now, WIDE).margin, 15) == now.colour("ink")


def test_the_ring_of_focus_is_over_everything(qapp):
    image, now = _painted(focused=True), look.look()
    assert image.pixelColor(200, 1) == now.colour("bluemark")
    assert image.pixelColor(WIDE - 2, 15) == now.colour("bluemark")
    assert _painted().pixelColor(200, 1) == now.colour("paper")
