"""Old sheets are put on the shelf: which files, whose they are, and what is typed beside them."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.forms import ask
from jobsheet.storage.photos.old_sheets import OldSheets
from jobsheet.storage.photos.old_sheets_kept import put_on_shelf

translate = QCoreApplication.translate


def put_old_sheets(parent: QWidget, shelf: Path, today: str) -> str:
    """Ask, and keep them; a sentence of what is on the shelf now, empty where it was
    called off or went wrong, which is said.
    """
    files = ask.scans(parent, shelf)
    if not files:
        return ""
    said = ask.old_sheet(parent, len(files))
    if said is None:
        return ""
    number, name, words, drawer, who = said
    try:
        put_on_shelf(
            shelf,
            OldSheets(number=number, name=name, words=words, drawer=drawer, who=who, when=today),
            files,
        )
    except JobsheetError as error:
        ask.tell(parent, str(error))
        return ""
    words = translate("Shelf", "{number} is on the shelf: files: {count}.")
    return words.format(number=number, count=len(files))
