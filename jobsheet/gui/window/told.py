"""What the menu Help tells: the keys, and what this program is; each is a page of the help."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.desk.place import Way

translate = QCoreApplication.translate


class Told:
    """Two pages, and the words of the first."""

    def __init__(self, ways: tuple[Way, ...], open_help: Callable[[str], None]) -> None:
        self._ways = ways
        self._open = open_help

    def _places(self) -> str:
        """The keys of the places, a line each; single keys go before joined ones."""
        lines = [
            (len(key.split("+")), f"{key.replace('+', ' + ')}: {translate('Actions', way.told)}\n")
            for way in self._ways
            for key in way.keys[:1]
        ]
        return "".join(line for _, line in sorted(lines, key=lambda line: line[0]))

    def keys(self) -> str:
        """The keys, a line each."""
        words = translate(
            "RowEdits",
            "F1: help on what has the focus\nUp, Down: choose a row\nEnter: open it\nEsc: close it\nPage Up, Page Down: step through the rows\n"
            "Shift + Up, Shift + Down: choose several\nShift + click, Ctrl + click: the same with the mouse\nCtrl + A: choose all steps\n"
            "Alt + Up, Alt + Down: move what is chosen\nIns, Shift + Ins: put in a step below, above\nCtrl + D: duplicate\nDel: take out\n"
            "Ctrl + X, Ctrl + C, Ctrl + V: cut, copy, paste steps\nMenu key, Shift + F10: what can be done to what is chosen\nF5, then a digit: how the chosen step went today, F5 and Backspace: take it back\n"
            "Ctrl + Down, Ctrl + Up: next or previous remark or problem\n{places}F9: the work after, before, as stock\nF8: leave the field, or the chosen steps, as recommended\nF2: part, stock and machine\nF3: the machine, Alt + A: the material\nCtrl + Z, Ctrl + Shift + Z: undo, redo\n"
            "In the places of holes – Enter, Up, Down: down a row, or up\nTab: from X to Y\nIns: put in a row above\n"
            "Ctrl + Del, or Del in an empty box: take the row out\nAlt + Up, Alt + Down: move the row\nCtrl + V: paste lines of two numbers",
        )
        return words.format(places=self._places())

    def show_keys(self) -> None:
        """All keys on one page."""
        self._open("keys")

    def show_about(self) -> None:
        """What this program is for, its version, and the log of problems."""
        self._open("about")
