"""Text and lines as the sheet has them: small shorthands for painters."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6 import QtCore
from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPainterPath, QPen

from jobsheet.gui.ink.look import Look

_ALIGN = QtCore.Qt.AlignmentFlag
# Numbers, as a painter takes them.
LEFT = (_ALIGN.AlignLeft | _ALIGN.AlignVCenter).value
RIGHT = (_ALIGN.AlignRight | _ALIGN.AlignVCenter).value
CENTRE = _ALIGN.AlignCenter.value
WRAPPED = (_ALIGN.AlignLeft | _ALIGN.AlignTop).value | QtCore.Qt.TextFlag.TextWordWrap.value
#: Inside words too: only for a text with a word that fits no line.
BROKEN = WRAPPED | QtCore.Qt.TextFlag.TextWrapAnywhere.value
#: The longest word that fits a line anywhere, in letters.
WORD = 40


def fill(painter: QPainter, rect: QRect | QRectF, colour: QColor) -> None:
    """Fill a box."""
    painter.fillRect(rect, colour)


def frame(painter: QPainter, rect: QRect, colour: QColor) -> None:
    """A hairline round a box, inside it."""
    left, top, wide, high = rect.left(), rect.top(), rect.width(), rect.height()
    for side in (
        QRect(left, top, wide, 1),
        QRect(left, top + high - 1, wide, 1),
        QRect(left, top, 1, high),
        QRect(left + wide - 1, top, 1, high),
    ):
        fill(painter, side, colour)


def rounded(painter: QPainter, rect: QRectF, radius: float, colour: QColor) -> None:
    """A box with round corners, and a line of one pixel round it in the same colour."""
    path = QPainterPath()
    path.addRoundedRect(rect, radius, radius)
    painter.fillPath(path, QBrush(colour))
    painter.strokePath(path, QPen(colour))


def write(
    painter: QPainter,
    look: Look,
    rect: QRect,
    text: str,
    font: QFont,
    tone: str = "ink",
    align: int = LEFT,
) -> int:
    """One line of text in a box, shortened with an ellipsis where it must be; its width."""
    if not text:
        return 0
    width = look.width(text, font)
    if width > rect.width():
        text = look.metrics(font).elidedText(text, QtCore.Qt.TextElideMode.ElideRight, rect.width())
        width = rect.width()
    painter.setFont(font)
    painter.setPen(look.colour(tone))
    painter.drawText(rect, align, text)
    return width


def fitting(look: Look, texts: Iterable[str], font: QFont, width: int) -> str:
    """The first of several wordings that has room; the last where none has."""
    text = ""
    for text in texts:
        if look.width(text, font) <= width:
            return text
    return text


def _wrapping(text: str) -> int:
    """How a text wraps."""
    long = len(text) > WORD and max(map(len, text.split()), default=0) > WORD
    return BROKEN if long else WRAPPED


def paragraph_height(look: Look, text: str, font: QFont, width: int) -> int:
    """How high a text stands when it is wrapped to a width."""
    if not text:
        return 0
    return look.metrics(font).boundingRect(QRect(0, 0, max(width, 1), 10_000), _wrapping(text), text).height()


def paragraph(painter: QPainter, look: Look, rect: QRect, text: str, font: QFont, tone: str = "ink") -> int:
    """A wrapped text from the top of a box; its height."""
    painter.setFont(font)
    painter.setPen(look.colour(tone))
    painter.drawText(rect, _wrapping(text), text)
    return paragraph_height(look, text, font, rect.width())


def horizontal(
    painter: QPainter, colour: QColor, left: float, right: float, y: float, thick: float = 1
) -> None:
    """A line across, filled so that it is sharp at any scale."""
    fill(painter, QRectF(left, y, right - left, thick), colour)


def upright(painter: QPainter, colour: QColor, x: float, top: float, bottom: float, thick: float = 1) -> None:
    """A line down."""
    fill(painter, QRectF(x, top, thick, bottom - top), colour)


def dotted_under(painter: QPainter, look: Look, left: float, right: float, y: float) -> None:
    """The dotted line under a figure that is being worked again, or is the last good one."""
    pen = QPen(look.colour("pencil"), look.px(2))
    pen.setDashPattern([1, 1.5])
    painter.setPen(pen)
    painter.drawLine(int(left), int(y), int(right), int(y))


def wavy_under(painter: QPainter, look: Look, left: float, right: float, y: float) -> None:
    """The wavy line under the part of a text that cannot be read."""
    step = look.px(3)
    painter.setPen(QPen(look.colour("vermmark"), max(1.2, look.scale * 1.2)))
    x, up = left, False
    while x < right:
        after = min(x + step, right)
        painter.drawLine(
            int(x), int(y + (0 if up else step / 2)), int(after), int(y + (step / 2 if up else 0))
        )
        x, up = after, not up
