"""Facts of one thing as caption and words, with blocks of lines under their
headings: painted, nothing in it is typed.
"""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look

PAD, CAPTION = 14, 92


class Facts(Struct, frozen=True, kw_only=True):
    """What is shown of one thing: its title, facts as caption and words, and blocks of lines under a heading."""

    title: str = ""
    facts: tuple[tuple[str, str], ...] = ()
    blocks: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = ()
    problem: str = ""
    #: Stands left of the facts.
    picture: Drawing | None = None


class FactsShown(QWidget):
    """Painted from the top."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.facts = Facts()

    def put(self, facts: Facts) -> None:
        """Show these."""
        self.facts = facts
        lines = [facts.title, *(f"{caption} {words}" for caption, words in facts.facts), facts.problem]
        lines += [f"{heading}: {' '.join(words)}" for heading, rows in facts.blocks for words in rows]
        self.setAccessibleName("\n".join(line for line in lines if line))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Title, facts, and the blocks under their rules."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            box = QRect(now.px(PAD), now.px(PAD), self.width() - 2 * now.px(PAD), self.height())
            box.translate(0, ink.paragraph(painter, now, box, self.facts.title, now.title) + now.px(8))
            self._facts(painter, box)
            for heading, rows in self.facts.blocks:
                box.translate(0, now.px(8))
                ink.horizontal(painter, now.colour("ink"), 0, self.width(), box.top())
                box.translate(0, now.px(6))
                box.translate(0, ink.paragraph(painter, now, box, heading, now.head) + now.px(4))
                for caption, words in rows:
                    self._line(painter, box, caption, words)
            if self.facts.problem:
                box.translate(0, now.px(10))
                ink.paragraph(painter, now, box, self.facts.problem, now.body, "verm")

    def _facts(self, painter: QPainter, box: QRect) -> None:
        """The facts, beside the picture where there is one; the box goes on under both."""
        now, drawing = look(), self.facts.picture
        beside, foot = QRect(box), 0
        if drawing is not None:
            scale = SCALE * now.scale
            paint(painter, now, drawing, box.left(), box.top())
            beside.setLeft(box.left() + round(drawing.width * scale) + now.px(PAD))
            foot = box.top() + round(drawing.height * scale)
        for caption, words in self.facts.facts:
            self._line(painter, beside, caption, words)
        box.translate(0, max(beside.top(), foot) - box.top())

    def _line(self, painter: QPainter, box: QRect, caption: str, words: str) -> None:
        now = look()
        aside = now.px(CAPTION) if caption else 0
        ink.write(painter, now, QRect(box.left(), box.top(), aside, now.px(20)), caption, now.label, "pencil")
        beside = QRect(box.left() + aside, box.top(), box.width() - aside, box.height())
        box.translate(0, max(now.px(20), ink.paragraph(painter, now, beside, words, now.body)) + now.px(2))
