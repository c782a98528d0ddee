"""Which pages are printed: a box for each kind, and for which steps there is a card."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.ink.look import look
from jobsheet.model.prints import PRINTS, Prints, prints

translate = QCoreApplication.translate


class PageChoice(QWidget):
    """The kinds of pages, ticked as this workshop always wants them; whoever prints may choose others."""

    changed = Signal()
    #: A key in the box for steps: what it means is asked when the hand rests.
    typed = Signal()

    def __init__(self, usual: Prints, parent: QWidget) -> None:
        super().__init__(parent)
        now = look()
        self.boxes: dict[str, QCheckBox] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(now.px(4))
        names = {
            "whole": translate("Print", "The whole sheet"),
            "route": translate("Print", "Route list: every step on one page"),
            "positions": translate("Print", "Positions cards"),
            "step": translate("Print", "Step cards, half a page each"),
            "blank": translate("Print", "Blank form of this machine"),
        }
        for name in PRINTS:
            box = QCheckBox(names[name], self)
            box.setAccessibleName(names[name])
            box.setChecked(name in usual.pages)
            box.toggled.connect(self._toggled)
            self.boxes[name] = box
            column.addWidget(box)
            if name == "step":
                column.addLayout(self._which())
        self._show_steps()

    def _which(self) -> QHBoxLayout:
        """The steps, under their box and a little to the right."""
        self.steps = QLineEdit(self)
        self.steps.setMaxLength(200)
        self.steps.setPlaceholderText(translate("Print", "every step; or 40, 50"))
        self.steps.setAccessibleName(translate("Print", "Steps that get a card; empty for every step"))
        self.steps.textEdited.connect(lambda _text: self.typed.emit())
        row = QHBoxLayout()
        row.addSpacing(look().px(22))
        row.addWidget(self.steps)
        return row

    def _toggled(self, _on: bool) -> None:
        self._show_steps()
        self.changed.emit()

    def _show_steps(self) -> None:
        self.steps.setEnabled(self.boxes["step"].isChecked())

    def wanted(self) -> Prints:
        """What is ticked.

        Raises
        ------
        QuantityError
            If what is typed for the steps is no numbers.
        """
        names = [name for name, box in self.boxes.items() if box.isChecked()]
        typed = self.steps.text().replace(",", " ").split() if "step" in names else []
        for word in typed:
            if not word.isascii() or not word.isdigit():
                raise QuantityError(
                    translate("Print", "“{word}” is no number of a step; write 40, or 40, 50.").format(
                        word=word
                    )
                )
        return prints(names, tuple(int(word) for word in typed))
