"""Buttons and fields to be hit with a thumb: at least 56 high, type 20; a digit before
the words where a key says the same.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QRect, QRectF, QSize
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QLineEdit, QWidget

from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

#: The least height of what is pressed or typed into, and what is between two [px at 100 %].
HIGH, GAP = 56, 8


class BigButton(Pressable):
    """A word, with its digit before it; pressed down for good where it is chosen,
    filled where it is the one thing to do.
    """

    def __init__(
        self, text: str, parent: QWidget, *, digit: str = "", filled: bool = False, tick: bool = False
    ) -> None:
        super().__init__(parent)
        self.setText(text)
        self.setAccessibleName(f"{digit} {text}".strip())
        self.digit = digit
        self._filled, self._tick = filled, tick
        self.number = False
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)

    def choose(self, chosen: bool) -> None:
        """Show whether it is chosen."""
        self.setCheckable(True)
        self.setChecked(chosen)
        self.update()

    def say(self, text: str) -> None:
        """Other words."""
        if text != self.text():
            self.setText(text)
            self.setAccessibleName(f"{self.digit} {text}".strip())
            self.updateGeometry()
            self.update()

    def why_not(self, reason: str) -> None:
        """Dashed, with the reason; an empty one makes it work again."""
        self.setEnabled(not reason)
        hover(self, reason)
        self.setAccessibleDescription(reason)
        self.update()

    def _font(self) -> QFont:
        now = look()
        if self.number:
            return now.dial
        bold = self._filled or (self.isChecked() and not self._tick)
        return now.title if bold else now.large

    def sizeHint(self) -> QSize:  # noqa: N802
        """The words with some room."""
        now = look()
        wide = now.width(self.text(), now.title) + now.px(36)
        if self.digit:
            wide += now.width(self.digit, now.title) + now.px(12)
        if self._tick:
            wide += now.px(36)
        return QSize(wide, now.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Box, digit, words; with focus a ring inside the edge, so that nothing of it is cut off."""
        now = look()
        chosen = self.isChecked() and not self._tick
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            box = QRectF(self.rect()).adjusted(1, 1, -1, -1)
            ground, tone = "field", "ink"
            if chosen:
                ground, tone = "ink", "paper"
            elif self._filled and self.isEnabled():
                ground, tone = "blue", "onblue"
            elif not self.isEnabled():
                tone = "pencil"
            painter.setBrush(now.colour("chosen" if self.isDown() and ground == "field" else ground))
            pen = QPen(now.colour("edge" if ground == "field" else ground), now.px(2))
            if not self.isEnabled():
                pen.setDashPattern([3, 2])
            painter.setPen(pen)
            painter.drawRoundedRect(box, now.px(3), now.px(3))
            if self.hasFocus():
                painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(now.colour("onblue" if ground == "blue" else "bluemark"), now.px(3)))
                painter.drawRoundedRect(box.adjusted(4, 4, -4, -4), now.px(2), now.px(2))
            self._write(painter, tone)

    def _write(self, painter: QPainter, tone: str) -> None:
        """The digit at the left and the words behind it, or the words in the
        middle; smaller where they have no room.
        """
        now, side = look(), look().px(14)
        place = self.rect().adjusted(side, 0, -side // 2, 0)
        if self._tick:
            self._paint_tick(painter)
            ink.write(painter, now, place.adjusted(now.px(36), 0, 0, 0), self.text(), now.large, tone)
            return
        if not self.digit:
            ink.write(
                painter, now, self.rect().adjusted(4, 0, -4, 0), self.text(), self._font(), tone, ink.CENTRE
            )
            return
        wide = ink.write(painter, now, place, self.digit, now.title, tone if self.isChecked() else "pencil")
        place.setLeft(place.left() + wide + now.px(12))
        fonts = (
            (now.title, now.head, now.bold) if self.isChecked() else (now.large, now.middle, now.plain_head)
        )
        font = next((font for font in fonts if now.width(self.text(), font) <= place.width()), fonts[-1])
        ink.write(painter, now, place, self.text(), font, tone)

    def _paint_tick(self, painter: QPainter) -> None:
        """A box, ticked or not."""
        now = look()
        box = QRectF(now.px(14), (self.height() - now.px(24)) / 2, now.px(24), now.px(24))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(now.colour("ink"), now.px(2)))
        painter.drawRect(box)
        if self.isChecked():
            painter.setPen(QPen(now.colour("ink"), now.px(4)))
            low = box.bottomLeft() + QtCore.QPointF(box.width() * 0.42, -box.height() * 0.2)
            painter.drawLine(box.topLeft() + QtCore.QPointF(box.width() * 0.2, box.height() * 0.5), low)
            painter.drawLine(low, box.topRight() + QtCore.QPointF(-box.width() * 0.15, box.height() * 0.2))


class BigField(QLineEdit):
    """A line to type into; the edge is blue where the hand is, and stays
    vermilion where the text cannot be read.
    """

    def __init__(self, name: str, parent: QWidget, *, number: bool = False) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self._number = number
        self._wrong = False
        self.setAlignment(QtCore.Qt.AlignmentFlag.AlignRight if number else QtCore.Qt.AlignmentFlag.AlignLeft)
        self.dress()

    def dress(self) -> None:
        """The look of the moment."""
        now = look()
        self.setFont(now.dial if self._number else now.large)
        t, px = now.tokens, now.px
        edge = t.vermmark if self._wrong else t.edge
        self.setStyleSheet(
            f"QLineEdit {{ background: {t.field}; color: {t.ink}; border: {px(2)}px solid {edge}; border-radius: {px(3)}px;"
            f" padding: 0 {px(10)}px; }} QLineEdit:focus {{ border: {px(3)}px solid {t.bluemark}; }}"
        )

    def put(self, text: str) -> None:
        """Show a text; one that the cursor is in is never rewritten."""
        if not self.hasFocus() and self.text() != text:
            self.setText(text)

    def wrong(self, why: str) -> None:
        """Say why the text cannot be read; empty where it can."""
        hover(self, why)
        self.setAccessibleDescription(why)
        if bool(why) != self._wrong:
            self._wrong = bool(why)
            self.dress()


def sheet(painter: QPainter, widget: QWidget) -> None:
    """Paper with a hairline round it."""
    now = look()
    painter.fillRect(widget.rect(), now.colour("paper"))
    ink.frame(painter, widget.rect(), now.colour("rule"))


def heading(painter: QPainter, place: QRect, title: str, beside: str) -> None:
    """What a sheet asks, and in pencil how it is answered."""
    now = look()
    wide = ink.write(painter, now, place, title, now.title)
    ink.write(painter, now, place.adjusted(wide + now.px(14), 0, 0, 0), beside, now.plain_head, "pencil")
