"""Signs and icons from `resources/icons`, in the ink of their token: one pixmap a colour and size."""

from __future__ import annotations

import re
from functools import cache

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPixmap

from jobsheet import paths

_INK = re.compile(r'color="#[0-9A-Fa-f]{6}"')


@cache
def _source(name: str) -> str:
    """The drawing as it is shipped; empty where there is none of that name."""
    path = paths.resources() / "icons" / f"{name}.svg"
    return path.read_text(encoding="utf-8") if path.is_file() else ""


@cache
def pixmap(name: str, colour: str, size: int, ratio: float = 1.0) -> QPixmap:
    """The sign in that colour, `size` pixels high and wide."""
    from PySide6.QtCore import QByteArray
    from PySide6.QtSvg import QSvgRenderer

    made = QPixmap(round(size * ratio), round(size * ratio))
    made.fill(QColor(0, 0, 0, 0))
    source = _source(name)
    if source:
        renderer = QSvgRenderer(QByteArray(_INK.sub(f'color="{colour}"', source, count=1).encode()))
        with QPainter(made) as painter:
            renderer.render(painter, QRectF(0, 0, made.width(), made.height()))
    made.setDevicePixelRatio(ratio)
    return made


def draw(painter: QPainter, name: str, colour: str, left: float, middle: float, size: int) -> None:
    """Put a sign with its left edge and its middle line at a place."""
    ratio = painter.device().devicePixelRatio()
    painter.drawPixmap(QPointF(left, middle - size / 2), pixmap(name, colour, size, ratio))
