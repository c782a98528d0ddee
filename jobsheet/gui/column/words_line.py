"""A line of words under the form: a reminder, or what the printed sheet will say."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import INDENT
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate


REMINDER = 30


class WordsLine(QWidget):
    """A caption and a text: a reminder, or what the sheet will print."""

    def __init__(self, caption: str, text: str, parent: QWidget, *, quiet: bool) -> None:
        super().__init__(parent)
        self._caption, self._quiet = caption, quiet
        self.text = text
        self.put(text)

    def put(self, text: str) -> None:
        """Show a text."""
        self.text = text
        self.setAccessibleName(
            translate("Remarks", "{caption}: {text}").format(caption=self._caption, text=text)
        )
        self.update()

    def arrange(self, width: int) -> int:
        """The height needed."""
        now = look()
        wide = width - now.px(INDENT) - now.px(14)
        return max(now.px(REMINDER), ink.paragraph_height(now, self.text, now.body, wide) + now.px(13))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """One line above, the caption in pencil, the words."""
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            caption = QRect(now.px(14), now.px(6), now.px(INDENT - 18), now.px(18))
            ink.write(painter, now, caption, self._caption, now.label, "pencil")
            wide = self.width() - now.px(INDENT) - now.px(14)
            text = QRect(now.px(INDENT), now.px(6), wide, self.height())
            ink.paragraph(painter, now, text, self.text, now.body, "pencil" if self._quiet else "ink")
