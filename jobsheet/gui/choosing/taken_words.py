"""A title in a list that is typed into: bold, with the part that was typed underlined in ink."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QFont, QPainter

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look


def write_hit(
    painter: QPainter,
    place: QRect,
    text: str,
    hit: tuple[int, int],
    tone: str = "ink",
    font: QFont | None = None,
) -> int:
    """Write it; how wide it is."""
    now = look()
    font = font or now.bold
    wide = ink.write(painter, now, place, text, font, tone)
    start, end = hit
    if end > start:
        left = place.left() + now.width(text[:start], font)
        right = min(place.left() + now.width(text[:end], font), place.left() + wide)
        if right > left:
            under = place.top() + (place.height() + now.metrics(font).ascent()) // 2 + now.px(1)
            ink.horizontal(painter, now.colour(tone), left, right, under, max(1.0, now.scale * 1.5))
    return wide
