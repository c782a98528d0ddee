"""The title block as on a drawing: cells with a caption, and the one filled button of the window."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.title_cell import Cell, CellText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
#: Which cells stay when there is less room: the last ones go first.
PRIORITY = ("part", "review", "machine", "material", "file", "time")


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
