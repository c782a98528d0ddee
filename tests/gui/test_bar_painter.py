"""The share bar: its fence stands at 0.74 of the width whatever the capacity is,
and the bar ends at the share.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage, QPainter

from jobsheet.gui.ink import look
from jobsheet.gui.ink.bar_painter import FENCE, not_known, paint_share_bar
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.model.figure import Limit

WIDE, HIGH = 200, 40


@pytest.fixture(autouse=True)
def light(qapp):
    """Whatever a test before left."""
    look.apply("light")


def _limit(**more):
    usual = {
        "name": "spindle-torque", "title": "Torque", "demand": 5.0, "capacity": 10.0, "unit": "N m", "share": 0.5, "verdict": "cut before",
        "low": 10.0, "high": 10.0,
    }  # fmt: skip
    return Limit(**(usual | more))


def _painted(limit, *, governs=False):
    image = QImage(WIDE + 10, HIGH, QImage.Format.Format_RGB32)
    image.fill(look.look().colour("paper"))
    with QPainter(image) as painter:
        paint_share_bar(painter, look.look(), QRect(0, 0, WIDE, HIGH), limit, governs=governs)
    return image


def _filled(image, colour, y=HIGH // 2):
    return [x for x in range(WIDE) if image.pixelColor(x, y).name() == colour]


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
@pytest.mark.parametrize("capacity", [0.2, 10.0, 4000.0])
def test_the_bar_ends_at_its_share_of_the_way_to_the_fence(qapp, share, capacity):
    limit = _limit(share=share, capacity=capacity, low=capacity, high=capacity, demand=share * capacity)
    ink = look.look().colour(VERDICTS["cut before"][2]).name()
    filled = _filled(_painted(limit), ink, HIGH // 2 + 2)
    inside = [x for x in filled if x < FENCE * WIDE - 4]
    assert max(inside) == pytest.approx(min(share * FENCE * WIDE, FENCE * WIDE - 4), abs=2)


def test_each_verdict_is_to_be_told_apart(qapp):
    pictures = [bytes(_painted(_limit(verdict=one)).constBits()) for one in VERDICTS]
    assert len(set(pictures)) == len(VERDICTS)


def test_the_one_that_governs_is_taller_and_never_longer(qapp):
    ink = look.look().colour(VERDICTS["cut before"][2]).name()
    small, tall = _painted(_limit()), _painted(_limit(), governs=True)
    column = [sum(image.pixelColor(30, y).name() == ink for y in range(HIGH)) for image in (small, tall)]
    assert column[0] < column[1]
    assert max(_filled(small, ink)[:80]) == max(_filled(tall, ink)[:80])


def test_the_band_is_seen_where_the_capacity_is_not_known_for_sure(qapp):
    band = look.look().colour("band").name()
    assert not _filled(_painted(_limit(share=0.1)), band)
    shown = _filled(_painted(_limit(share=0.1, low=7.0, high=13.0)), band)
    assert min(shown) == pytest.approx(0.7 * FENCE * WIDE, abs=2)
    assert max(shown) == pytest.approx(1.3 * FENCE * WIDE, abs=3)


def test_of_what_nothing_is_known_an_empty_outline_and_words(qapp):
    image = _painted(_limit(capacity=0.0, low=0.0, high=0.0, share=0.0, verdict="not tried"))
    assert not_known() == "try first"
    assert any(image.pixelColor(x, HIGH // 2).lightness() < 200 for x in range(WIDE - 60, WIDE))


def test_what_was_tried_stands_under_the_line_and_nothing_else_does(qapp):
    bare = _painted(_limit())
    tried = _painted(_limit(evidence=((0.3, True), (0.6, False), (9.0, True))))
    other = {x for x in range(WIDE) for y in range(HIGH) if bare.pixel(x, y) != tried.pixel(x, y)}
    assert other
    assert all(min(abs(x - share * FENCE * WIDE) for share in (0.3, 0.6)) <= 4 for x in other)
