"""Buttons as the sheet draws them: filled, plain, or a word in blue; all with the same ring of focus."""

from __future__ import annotations

from enum import Enum

from PySide6 import QtCore
from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QEnterEvent, QKeySequence, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look


class Manner(Enum):
    """How a button stands out."""

    FILLED = "filled"
    PLAIN = "plain"
    LINK = "link"


#: The widest a button grows for its words, which can be a person's own [px at 100 %].
WIDEST = 320
#: Words that fit it in any case, in letters.
SHORT = 36
#: Dead space round the shape, in which the ring of focus is drawn.
CLEAR = 4


class Button(Pressable):
    """A button with its name as text; `why_not` says why it cannot be pressed just now."""

    def __init__(
        self, text: str, parent: QWidget | None = None, manner: Manner = Manner.PLAIN, *, in_row: bool = False
    ) -> None:
        super().__init__(parent)
        self.setText(text)
        self.setAccessibleName(text)
        self._manner = manner
        self._shape = 28 if in_row or manner is Manner.LINK else 32
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)

    def setText(self, text: str) -> None:  # noqa: N802
        """Show words; no sign of them is a key, and what has no room stands in the tooltip."""
        super().setText(text)
        if "&" in text:
            self.setShortcut(QKeySequence())
        hover(self, self._too_long())

    def _too_long(self) -> str:
        return self.text() if len(self.text()) > SHORT else ""

    def why_not(self, reason: str) -> None:
        """Dash the button and say why; an empty reason makes it work again."""
        self.setEnabled(not reason)
        hover(self, reason or self._too_long())
        self.setAccessibleDescription(reason)
        self.update()

    def sizeHint(self) -> QSize:  # noqa: N802
        """The shape around the words, with the dead space."""
        now = look()
        font = now.body if self._manner is Manner.LINK else now.bold
        side = 4 if self._manner is Manner.LINK else 14
        width = min(now.width(self.text(), font), now.px(WIDEST)) + now.px(2 * side)
        return QSize(width + 2 * now.px(CLEAR), now.px(self._shape) + 2 * now.px(CLEAR))

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """Never shortened."""
        return self.sizeHint()

    def enterEvent(self, event: QEnterEvent) -> None:  # noqa: N802
        """Show that it can be pressed."""
        super().enterEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Shape, words and, with focus, a ring two pixels clear of the shape."""
        now = look()
        clear = now.px(CLEAR)
        box = QRectF(self.rect().adjusted(clear, clear, -clear, -clear))
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            word, font = "ink", now.body
            if self._manner is Manner.LINK:
                word = "blue" if self.isEnabled() else "pencil"
            elif self._manner is Manner.FILLED and self.isEnabled():
                word, font = "onblue", now.bold
                blue = now.colour("bluemark" if self.isDown() else "blue")
                ink.rounded(painter, box.adjusted(0.5, 0.5, -0.5, -0.5), now.px(3), blue)
            else:
                pressed = self.isDown() or self.isChecked()
                word = "pencil" if not self.isEnabled() else "blue" if pressed else "ink"
                painter.setBrush(now.colour("chosen" if pressed else "field"))
                pen = QPen(now.colour("bluemark" if pressed else "edge"), 1)
                if not self.isEnabled():
                    pen.setDashPattern([3, 2])
                painter.setPen(pen)
                painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), now.px(3), now.px(3))
            if self.hasFocus():
                painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
                painter.setPen(QPen(now.colour("bluemark"), 2))
                painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), now.px(4), now.px(4))
            text = self.rect().adjusted(clear, 0, -clear, 0)
            ink.write(painter, now, text, self.text(), font, word, ink.CENTRE)
            if self._manner is Manner.LINK and self.underMouse() and self.isEnabled():
                width = min(now.width(self.text(), font), text.width())
                left = (self.width() - width) / 2
                ink.horizontal(painter, now.colour("blue"), left, left + width, text.center().y() + now.px(8))
