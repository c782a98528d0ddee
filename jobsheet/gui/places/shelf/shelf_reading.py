"""Reads what has changed on the shelf beside the window, which goes on; with an index of its own, for one belongs to one thread."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QThread, Signal

from jobsheet.errors import JobsheetError
from jobsheet.shelf.shelf_index import Index, Read


class Reading(QThread):
    """One look at a folder: `went` as it goes, `done` at the end with a sentence where it could not be read."""

    went = Signal(int, int)
    done = Signal(str)

    def __init__(self, folder: Path, parent: QObject) -> None:
        super().__init__(parent)
        self._folder = folder
        self._wanted = True

    def stop(self) -> None:
        """Come to an end soon, and wait for it; what was read so far stays found."""
        self._wanted = False
        self.wait()

    def run(self) -> None:
        """In the thread."""
        try:
            index = Index(self._folder)
            try:
                index.refresh(self._told)
            finally:
                index.close()
        except JobsheetError as error:
            words = str(error)
            self.done.emit(f"{words[:1].upper()}{words[1:]}".rstrip(".") + ".")
            return
        self.done.emit("")

    def _told(self, read: Read) -> bool:
        self.went.emit(read.looked, read.of)
        return self._wanted
