"""Opens the chosen file of the shelf once it answers: a job on the desk, old
sheets in a window of their own.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QObject, QTimer, Signal
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.aside.asked_aside import SILENT, Aside
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.storage.photos.old_sheets import is_old_sheet

translate = QCoreApplication.translate


class Fetching(QObject):
    """One file at a time; what was asked for last counts."""

    #: Its job lies on the desk.
    opened = Signal()
    #: A sentence while it is waited for.
    said = Signal(str)
    #: It has not answered for so long that its folder counts as away.
    silent = Signal()

    def __init__(self, visit: Visit, window: QWidget) -> None:
        super().__init__(window)
        self._visit = visit
        self._window = window
        self._asked: Aside | None = None

    def fetch(self, path: Path) -> None:
        """Ask for it, and open it when it is there."""
        asked = self._asked = Aside(self, path.read_bytes)
        if asked.at_once():
            self._open(asked, path)
            return
        self.said.emit(translate("Shelf", "Fetching {name}…").format(name=path.name))
        asked.done.connect(lambda: self._open(asked, path))
        QTimer.singleShot(SILENT, asked, lambda: None if asked.over else self.silent.emit())

    def _open(self, asked: Aside, path: Path) -> None:
        """Its file answers: open it, where nothing else was asked for meanwhile. What is
        wrong with it is said by who opens it.
        """
        if self._asked is not asked or not self._window.isVisible():
            return
        self._asked = None
        if is_old_sheet(path):
            self._show_sheets(path)
        elif self._visit.open_job(str(path)):
            self.opened.emit()

    def _show_sheets(self, path: Path) -> None:
        from jobsheet.gui.places.shelf.old_sheet_window import OldSheetWindow

        try:
            OldSheetWindow(self._window, path).open()
        except JobsheetError as error:
            ask.tell(self._window, str(error))
