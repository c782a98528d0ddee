"""One cell of a title block, as on a drawing: a caption and what it says."""

from __future__ import annotations

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.tokens import SEVERITIES

translate = QCoreApplication.translate
HIGH = 56
#: The widest a cell asks to be: its words can be a person's own [px at 100 %].
WIDEST = 460
SIDE = 16
#: A value of so many letters may be shortened: then all of it stands in the tooltip.
LONG = 30
#: Under these hangs a panel to choose from.
HANGING = ("machine", "material")


class CellText(Struct, frozen=True):
    """What one cell shows; `counts` are open remarks by severity, drawn with their marks."""

    caption: str
    value: str = ""
    counts: tuple[tuple[str, str], ...] = ()
    tone: str = "ink"
    #: What is said on hover beside the value.
    more: str = ""

    def spoken(self) -> str:
        """The cell as a screen reader says it."""
        counts = ", ".join(words for _, words in self.counts)
        return translate("TitleBlock", "{caption}: {value}").format(
            caption=self.caption, value=counts or self.value
        )


class Cell(Pressable):
    """One cell; pressing it leads to what it is about."""

    def __init__(self, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.name = name
        self.shown = CellText("")
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)

    def put(self, shown: CellText) -> None:
        """Show a caption and a value."""
        if shown != self.shown:
            self.shown = shown
            self.setAccessibleName(shown.spoken())
            hover(
                self,
                "\n".join(
                    part for part in (shown.value if len(shown.value) > LONG else "", shown.more) if part
                ),
            )
            self.updateGeometry()
            self.update()

    def _caption(self) -> str:
        """With the mark that there is a list."""
        return f"{self.shown.caption} ▾" if self.name in HANGING else self.shown.caption

    def sizeHint(self) -> QSize:  # noqa: N802
        """What the longer of caption and value needs."""
        now = look()
        font = now.head if self.name == "part" else now.body
        value = now.width(self.shown.value, font)
        if self.shown.counts:
            value = sum(now.width(words, now.body) + now.px(38) for _, words in self.shown.counts)
        wide = max(now.width(self._caption(), now.caption), min(value, now.px(WIDEST)))
        return QSize(wide + 2 * now.px(SIDE), now.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Caption over value, a hairline at the right."""
        now = look()
        side = now.px(SIDE)
        with QPainter(self) as painter:
            if self.isDown() or self.underMouse():
                ink.fill(painter, self.rect(), now.colour("field"))
            inside = self.width() - 2 * side
            caption = QRect(side, now.px(7), inside + side, now.px(16))
            ink.write(painter, now, caption, self._caption(), now.caption, "pencil")
            value = QRect(side, now.px(23), inside + side // 2, now.px(22))
            if self.shown.counts:
                left = side
                for severity, words in self.shown.counts:
                    icon, word, mark = SEVERITIES[severity]
                    signs.draw(painter, icon, getattr(now.tokens, mark), left, value.center().y(), now.px(16))
                    place = QRect(left + now.px(22), value.top(), inside, value.height())
                    left += now.px(38) + ink.write(painter, now, place, words, now.body, word)
            else:
                font = now.head if self.name == "part" else now.body
                ink.write(painter, now, value, self.shown.value, font, self.shown.tone)
            ink.upright(painter, now.colour("rule"), self.width() - 1, 0, self.height())
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), now.px(3)))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))
