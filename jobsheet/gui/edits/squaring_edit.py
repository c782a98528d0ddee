"""*Square all six faces*: asks for the finished sizes and, if one likes, the cutter, and
puts set-ups and steps in as one edit.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QGridLayout, QLineEdit, QWidget

from jobsheet.edit.squaring import SquareAllSix
from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.model.job import Job

translate = QCoreApplication.translate

NAMES = ("length", "width", "height", "cutter")


class SquaringBox(QDialog):
    """Four lines; it stays until the block can be squared or the box is put away,
    and says what is wrong below them.
    """

    def __init__(self, job: Job, square: Callable[[SquareAllSix], str], parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Squaring", "Square all six faces"))
        self._square = square
        self.lines: dict[str, QLineEdit] = {}
        grid = QGridLayout(self)
        head = translate(
            "Squaring",
            "The finished sizes, with their limits where the drawing has some. Set-ups and steps for all six faces stand"
            " first in the plan; one undo takes them out again.",
        )
        grid.addWidget(Label(head, self), 0, 0, 1, 3)
        stock = job.stock
        beside = [
            translate("Squaring", "stock {size}").format(size=quantity.text)
            for quantity in (stock.length, stock.width, stock.height)
        ]
        titles = (
            translate("Squaring", "Finished length"),
            translate("Squaring", "Finished width"),
            translate("Squaring", "Finished height"),
            translate("Squaring", "Cutter for the faces"),
        )
        notes = (
            *beside,
            translate("Squaring", "empty: the largest at hand that this machine carries"),
        )
        for row, (name, title, note) in enumerate(zip(NAMES, titles, notes, strict=True), 1):
            line = QLineEdit(self)
            line.setAccessibleName(title)
            line.setAccessibleDescription(note)
            self.lines[name] = line
            for place, widget in enumerate((Label(title, self), line, Label(note, self))):
                grid.addWidget(widget, row, place)
        for place, share in enumerate((3, 4, 4)):
            grid.setColumnStretch(place, share)
        self.problem = Label("", self)
        grid.addWidget(self.problem, 5, 0, 1, 3)
        kinds = QDialogButtonBox.StandardButton
        self.buttons = QDialogButtonBox(kinds.Ok | kinds.Cancel, self)
        self.buttons.accepted.connect(self.accept)
        self.buttons.rejected.connect(self.reject)
        grid.addWidget(self.buttons, 6, 0, 1, 3)
        self.resize(look().px(560), self.sizeHint().height())

    def accept(self) -> None:
        """Square the block, or say why not and keep what was typed."""
        texts = {name: line.text().strip() for name, line in self.lines.items()}
        QApplication.setOverrideCursor(QtCore.Qt.CursorShape.WaitCursor)
        try:
            sentence = self._square(SquareAllSix(**texts))
        finally:
            QApplication.restoreOverrideCursor()
        if not sentence:
            super().accept()
            return
        self.problem.say(sentence)
        wrong = next((name for name in NAMES if f"inished {name}" in sentence), "cutter")
        self.lines[wrong].setFocus()
        self.lines[wrong].selectAll()


class SquaringEdit:
    """The insertion, from the menu."""

    def __init__(self, hand: Hand, rows: OpenRows) -> None:
        self._hand = hand
        self._rows = rows

    def ask(self) -> SquaringBox:
        """Open the box."""
        box = SquaringBox(self._hand.desk.job, self._done, self._hand.parent)
        box.open()
        return box

    def _done(self, command: SquareAllSix) -> str:
        """Put it in; a sentence where that cannot be."""
        hand = self._hand
        try:
            hand.desk.do(command)
        except JobsheetError as error:
            return str(error)
        self._rows.close()
        first = hand.desk.job.set_ups[0]
        hand.show(first.key)
        hand.say(translate("Squaring", "Squared in six set-ups; {assumed}.").format(assumed=first.note))
        return ""
