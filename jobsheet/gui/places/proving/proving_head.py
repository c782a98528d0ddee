"""The head of the proving place: which machine, limit, cutter and work, and the buttons."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.title_cell import Cell, CellText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.proving_desk import ProvingDesk

translate = QCoreApplication.translate


class ProvingHead(QWidget):
    """Cells as on a drawing, and the buttons."""

    another_wanted = Signal()
    print_wanted = Signal()
    close_wanted = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.cells = [Cell(name, self) for name in ("part", "limit", "cutter", "work")]
        for cell in self.cells:
            cell.setEnabled(False)
        self.another = Button(translate("Proving", "Start another ladder"), self)
        self.another.clicked.connect(self.another_wanted)
        self.sheet = Button(translate("Proving", "Print the sheet…"), self)
        self.sheet.clicked.connect(self.print_wanted)
        self.back = Button(translate("Proving", "Back to the job"), self)
        self.back.clicked.connect(self.close_wanted)

    def put(self, desk: ProvingDesk) -> None:
        """Which machine, which limit, which cutter, which work."""
        ladder = desk.ladder
        if ladder is None:
            shown = [CellText(translate("Proving", "Proving"), translate("Proving", "a new ladder"))]
        else:
            about = (
                translate("Proving", "chatter")
                if desk.about == "chatter"
                else translate("Proving", "spindle torque")
            )
            shown = [
                CellText(translate("Proving", "Proving"), ladder.machine.title),
                CellText(translate("Proving", "Limit"), f"{about}, {ladder.process}"),
                CellText(translate("Proving", "Cutter"), ladder.cutter.text),
                CellText(
                    translate("Proving", "Work"),
                    ", ".join(part for part in (ladder.inside, ladder.material, ladder.holding) if part),
                ),
            ]
        for cell, text in zip(
            self.cells, [*shown, *(CellText("") for _ in range(4 - len(shown)))], strict=True
        ):
            cell.put(text)
        self.another.setVisible(ladder is not None)
        self.sheet.setVisible(ladder is not None and not ladder.refused)
        self.arrange()

    def resizeEvent(self, _event: QResizeEvent) -> None:  # noqa: N802
        """Place the cells again."""
        self.arrange()

    def arrange(self) -> None:
        """Buttons at the right, cells as far as they fit."""
        now = look()
        right = self.width() - now.px(10)
        for button in (self.back, self.another, self.sheet):
            if button.isHidden():
                continue
            hint = button.sizeHint()
            right -= hint.width()
            button.setGeometry(right, (self.height() - hint.height()) // 2, hint.width(), hint.height())
        left = 0
        for cell in self.cells:
            wide = cell.sizeHint().width()
            fits = bool(cell.shown.value) and left + wide <= right
            cell.setVisible(fits)
            if fits:
                cell.setGeometry(left, 0, wide, self.height())
                left += wide

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, a heavy rule above and an ink line below."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, 2)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)
