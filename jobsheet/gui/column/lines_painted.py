"""Paints the closed lines that are to be seen again, whatever they are, each at its height."""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QRegion

from jobsheet.gui.column.heading_painter import HeadingPainter
from jobsheet.gui.column.line import Line, View
from jobsheet.gui.column.measures import HEADING, ROW, TWO_LINES, columns
from jobsheet.gui.column.row_painter import RowPainter
from jobsheet.gui.column.standing import Standing
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink.look import look


def height_at_100(line: Line, form: str) -> int:
    """The height of a closed line; where it is narrow holding and zero of a
    heading take a line of their own.
    """
    if line.widget is not None:
        return line.widget.height_at_100()
    if line.is_heading:
        return HEADING + 20 if form == "narrow" else HEADING
    return TWO_LINES if form == "narrow" else ROW


def paint_line(
    painter: QPainter, view: View, width: int, high: int, *, chosen: bool = False, focused: bool = False
) -> None:
    """Paint one from the painter's origin."""
    now = look()
    at = columns(now, width)
    if isinstance(view, HeadingView):
        HeadingPainter(painter, now, at, high, chosen=chosen, focused=focused).paint(view)
    else:
        RowPainter(painter, now, at, high, chosen=chosen, focused=focused).paint(view)


def paint_lines(
    painter: QPainter,
    standing: Standing,
    region: QRegion,
    width: int,
    *,
    opened: str,
    chosen: frozenset[str],
    focused: str,
) -> None:
    """Paint the rows and headings in a region, but not the one that is open: its form paints itself."""
    bounds = region.boundingRect()
    for line in standing.between(bounds.top(), bounds.top() + bounds.height()):
        if line.key == opened or not region.intersects(QRect(0, line.top, width, line.high)):
            continue
        if line.view is not None:
            marked, ring = line.key in chosen, line.key == focused
            painter.translate(0, line.top)
            paint_line(painter, line.view, width, line.high, chosen=marked, focused=ring)
            painter.translate(0, -line.top)
