"""How a run ended, as a mark: a punched ring for clean, a cross where something gave
out, a dashed ring for nothing yet.
"""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPen

from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.model.what_ran import NOT_CUT

CLEAN = "clean"


def draw_outcome(
    painter: QPainter, outcome: str, left: float, middle: float, size: float, tone: str = "ink"
) -> None:
    """The mark with its left edge and its middle line at a place, `size` [px at 100 %];
    an empty outcome is not entered yet.
    """
    now = look()
    if outcome in ("", CLEAN):
        name, tone = ("verdict-cut-before", tone) if outcome else ("verdict-not-tried", "pencil")
        signs.draw(painter, name, getattr(now.tokens, tone), left, middle, now.px(size))
    elif outcome == NOT_CUT:
        ink.horizontal(
            painter,
            now.colour("pencil"),
            left + now.px(size) * 0.2,
            left + now.px(size) * 0.8,
            middle,
            now.px(2),
        )
    else:
        painter.setPen(QPen(now.colour(tone), size * 0.135 * now.scale))
        reach, x = round(now.px(size) * 0.32), round(left + now.px(size) / 2)
        y = round(middle)
        painter.drawLine(x - reach, y - reach, x + reach, y + reach)
        painter.drawLine(x - reach, y + reach, x + reach, y - reach)
