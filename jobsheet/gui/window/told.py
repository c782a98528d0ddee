"""What the menu Help tells: the keys, and what this program is for."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.gui.desk.place import Way
from jobsheet.gui.forms import ask

translate = QCoreApplication.translate


class Told:
    """Two boxes."""

    def __init__(self, parent: QWidget, ways: tuple[Way, ...]) -> None:
        self._parent = parent
        self._ways = ways

    def _places(self) -> str:
        """The keys of the places, a line each; single keys go before joined ones."""
        lines = [
            (len(key.split("+")), f"{key.replace('+', ' + ')}: {translate('Actions', way.told)}\n")
            for way in self._ways
            for key in way.keys[:1]
        ]
        return "".join(line for _, line in sorted(lines, key=lambda one: one[0]))

    def show_keys(self) -> None:
        """The keys, in one box."""
        words = translate(
            "RowEdits",
            "Up, Down: choose a row\nEnter: open it\nEsc: close it\nPage Up, Page Down: step through the rows\n"
            "Shift + Up, Shift + Down: choose several\nShift + click, Ctrl + click: the same with the mouse\nCtrl + A: choose all steps\n"
            "Alt + Up, Alt + Down: move what is chosen\nIns, Shift + Ins: put in a step below, above\nCtrl + D: duplicate\nDel: take out\n"
            "Ctrl + X, Ctrl + C, Ctrl + V: cut, copy, paste steps\nMenu key, Shift + F10: what can be done to what is chosen\n"
            "Ctrl + Down, Ctrl + Up: next or previous remark or problem\n{places}F9: the work after, before, as stock\nF2: part, stock and machine\nF3: the machine, Alt + A: the material\nCtrl + Z, Ctrl + Shift + Z: undo, redo",
        )
        ask.tell(self._parent, words.format(places=self._places()))

    def show_about(self) -> None:
        """What this program is for."""
        ask.tell(
            self._parent,
            translate(
                "RowEdits",
                "Job sheets for manual milling machines.\nComputed for planning: start lighter; watch, listen and feel."
                "\nThe machine’s manual, your workshop’s rules and the law where you work come first.",
            ),
        )
