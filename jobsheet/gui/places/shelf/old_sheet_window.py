"""Old sheets as they are: page after page, large enough to be read; arrows
and Page Down go on, Esc closes.
"""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtCore
from PySide6.QtCore import QBuffer, QCoreApplication, QIODevice, QSize
from PySide6.QtGui import QImage, QImageReader, QPixmap
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.storage.photos.old_sheets import OldSheets, Sheet, read_old_sheets, sheet_bytes

translate = QCoreApplication.translate
#: More pages of one sheet are counted, not shown; memory for a picture [MB], as for photographs.
MOST, MEMORY = 40, 300


class OldSheetWindow(QDialog):
    """Scans and photographs of one part, under one another."""

    def __init__(self, parent: QWidget, record: Path) -> None:
        super().__init__(parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        now = look()
        said: OldSheets = read_old_sheets(record)
        self.setWindowTitle(" ".join(word for word in (said.number, said.name) if word))
        self.resize(parent.size() * 0.95)
        self.pages: list[Label] = []
        self.problems: list[str] = []
        inside = QWidget(self)
        self._column = QVBoxLayout(inside)
        wide = self.width() - now.px(60)
        for sheet in said.sheets:
            self._show(sheet, record, wide)
        self._column.addStretch(1)
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(inside)
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        scroll.setAccessibleName(translate("Shelf", "The old sheets"))
        close = Button(translate("Shelf", "Close"), self)
        close.clicked.connect(self.reject)
        foot, whole = QHBoxLayout(), QVBoxLayout(self)
        foot.addWidget(close)
        foot.addStretch(1)
        whole.addWidget(scroll, 1)
        whole.addLayout(foot)
        scroll.setFocus()

    def _show(self, sheet: Sheet, record: Path, wide: int) -> None:
        try:
            pictures, left = _pages(sheet, sheet_bytes(record, sheet), wide)
        except (JobsheetError, OSError, RuntimeError) as error:
            self.problems.append(str(error))
            self._column.addWidget(Label(str(error), self))
            return
        for count, picture in enumerate(pictures, 1):
            page = Label("", self)
            page.setPixmap(QPixmap.fromImage(picture))
            words = translate("Shelf", "{sheet}, page {number}").format(sheet=sheet.shows, number=count)
            page.setAccessibleName(words)
            self._column.addWidget(Label(words, self))
            self._column.addWidget(page)
            self.pages.append(page)
        if left:
            words = translate(
                "Shelf", "Pages of {sheet} that are not shown here: {count}. Open its file to see them."
            )
            self._column.addWidget(Label(words.format(sheet=sheet.shows, count=left), self))


def _pages(sheet: Sheet, raw: bytes, wide: int) -> tuple[list[QImage], int]:
    """The pages of a sheet as pictures, as wide as there is room, and how many are not shown.

    Raises JobsheetError in one sentence.
    """
    if sheet.kind == "pdf":
        return _pdf_pages(sheet, raw, wide)
    QImageReader.setAllocationLimit(MEMORY)
    held = QBuffer()
    held.setData(raw)
    held.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(held, sheet.kind.encode())
    reader.setAutoTransform(True)
    picture = reader.read()
    if picture.isNull():
        raise JobsheetError(_damaged(sheet))
    smooth = QtCore.Qt.TransformationMode.SmoothTransformation
    return [picture.scaledToWidth(wide, smooth) if picture.width() > wide else picture], 0


def _pdf_pages(sheet: Sheet, raw: bytes, wide: int) -> tuple[list[QImage], int]:
    from jobsheet.gui.pages.pdf_pages import PdfPages

    try:
        pages = PdfPages(raw)
    except (RuntimeError, ValueError, OSError):
        raise JobsheetError(_damaged(sheet)) from None
    try:
        found = []
        for index, size in enumerate(pages.sizes[:MOST]):
            across = min(wide, round(size.width() * 2))
            high = max(1, round(across * size.height() / max(size.width(), 1)))
            found.append(pages.picture(index, QSize(across, high)))
        return found, max(0, len(pages.sizes) - MOST)
    finally:
        pages.close()


def _damaged(sheet: Sheet) -> str:
    words = translate("Shelf", "{sheet} is damaged: it cannot be drawn. Fetch it again from where it came.")
    return words.format(sheet=sheet.shows)
