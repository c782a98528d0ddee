"""The title block as on a drawing: cells with a caption, and the one filled button of the window."""

from __future__ import annotations

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.tokens import SEVERITIES

HIGH = 56
SIDE = 16
#: Which cells stay when there is less room: the last ones go first.
PRIORITY = ("part", "review", "machine", "material", "file", "time")

translate = QCoreApplication.translate


class CellText(Struct, frozen=True):
    """What one cell shows; `counts` are open remarks by severity, drawn with their marks."""

    caption: str
    value: str = ""
    counts: tuple[tuple[str, str], ...] = ()
    tone: str = "ink"

    def spoken(self) -> str:
        """The cell as a screen reader says it."""
        counts = ", ".join(words for _, words in self.counts)
        return translate("TitleBlock", "{caption}: {value}").format(
            caption=self.caption, value=counts or self.value
        )


class Cell(QAbstractButton):
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
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:  # noqa: N802
        """What the longer of caption and value needs."""
        now = look()
        font = now.head if self.name == "part" else now.body
        value = now.width(self.shown.value, font)
        if self.shown.counts:
            value = sum(now.width(words, now.body) + now.px(38) for _, words in self.shown.counts)
        return QSize(max(now.width(self.shown.caption, now.caption), value) + 2 * now.px(SIDE), now.px(HIGH))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Caption over value, a hairline at the right."""
        now = look()
        side = now.px(SIDE)
        with QPainter(self) as painter:
            if self.isDown() or self.underMouse():
                ink.fill(painter, self.rect(), now.colour("field"))
            inside = self.width() - 2 * side
            caption = QRect(side, now.px(7), inside + side, now.px(16))
            ink.write(painter, now, caption, self.shown.caption, now.caption, "pencil")
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


class TitleBlock(QWidget):
    """Part, machine, material and stock, time, review, file; *Print sheets…*."""

    pressed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("TitleBlock", "Title block"))
        self.cells = {
            name: Cell(name, self) for name in ("part", "machine", "material", "time", "review", "file")
        }
        for name, cell in self.cells.items():
            cell.clicked.connect(lambda _=False, name=name: self.pressed.emit(name))
        self.print_button = Button(translate("TitleBlock", "Print sheets…"), self, Manner.FILLED)
        self.print_button.clicked.connect(lambda: self.pressed.emit("print"))

    def put(self, cells: dict[str, CellText]) -> None:
        """Show these cells; one without a value is left out."""
        for name, shown in cells.items():
            self.cells[name].put(shown)
        self._arrange()

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Place the cells again."""
        self._arrange()

    def _arrange(self) -> None:
        """As many cells as fit, by their importance, in their order."""
        now = look()
        hint = self.print_button.sizeHint()
        self.print_button.setGeometry(
            self.width() - hint.width() - now.px(10),
            (self.height() - hint.height()) // 2,
            hint.width(),
            hint.height(),
        )
        room = self.print_button.x() - now.px(8)
        needs = {name: cell.sizeHint().width() for name, cell in self.cells.items()}
        kept: set[str] = set()
        used = 0
        for name in PRIORITY:
            shown = self.cells[name].shown
            if not (shown.value or shown.counts):
                continue
            if used + needs[name] <= room or not kept:
                kept.add(name)
                used += min(needs[name], room)
        left = 0
        for name, cell in self.cells.items():
            cell.setVisible(name in kept)
            if name in kept:
                wide = min(needs[name], room - left)
                cell.setGeometry(left, 0, wide, self.height())
                left += wide

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, a heavy rule above and an ink line below."""
        now = look()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, 2)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)
