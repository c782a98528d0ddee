"""One page of the help: title, sort, captioned lines, and the pages that it leads to."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QGridLayout, QWidget

from jobsheet.gui.forms.page_link import PageLink
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.review.pages.one_page import Page

#: Captions stand beside what they caption.
CAPTION = 120
translate = QCoreApplication.translate


class PageView(QWidget):
    """It shows what it is given; a link in it asks the window around for its page."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        now = look()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(now.px(18), now.px(14), now.px(18), now.px(14))
        self._grid.setHorizontalSpacing(now.px(12))
        self._grid.setVerticalSpacing(now.px(7))
        self._grid.setColumnMinimumWidth(0, now.px(CAPTION))
        self._grid.setColumnStretch(1, 1)
        self.setAutoFillBackground(True)
        ground = self.palette()
        ground.setColor(self.backgroundRole(), now.colour("paper"))
        self.setPalette(ground)
        self.links: list[Label] = []

    def put(self, page: Page, leads: list[Page]) -> None:
        """Show a page in the place of the one before."""
        for row in range(self._grid.rowCount()):
            self._grid.setRowStretch(row, 0)
        while (item := self._grid.takeAt(0)) is not None:
            if (old := item.widget()) is not None:
                old.hide()
                old.deleteLater()
        self.links = []
        now = look()
        self.setAccessibleName(page.title)
        self._grid.addWidget(self._label(page.title, now.title, "ink"), 0, 0, 1, 2)
        self._grid.addWidget(self._label(page.sort, now.caption, "pencil"), 1, 0, 1, 2)
        row = 2
        for caption, said in page.lines:
            self._put_line(row, caption, said)
            row += 1
        for lead in leads:
            if not self.links:
                self._grid.addWidget(
                    self._label(translate("Help", "See"), now.caption_bold, "pencil"), row, 0
                )
            link = self._dressed(PageLink(lead.title, lead.id, self), now.body, "blue")
            self._grid.addWidget(link, row, 1)
            self.links.append(link)
            row += 1
        self._grid.setRowStretch(row, 1)

    def _put_line(self, row: int, caption: str, said: str) -> None:
        """A caption in pencil and what is said beside it; over both columns where it has none."""
        now = look()
        if not caption:
            self._grid.addWidget(self._label(said, now.body, "ink"), row, 0, 1, 2)
            return
        name = self._label(caption, now.caption_bold, "pencil")
        self._grid.addWidget(name, row, 0, QtCore.Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(self._label(said, now.body, "ink"), row, 1)

    def _label(self, words: str, font: QFont, tone: str) -> Label:
        """One text, wrapped; it can be chosen and copied."""
        label = self._dressed(Label(words, self), font, tone)
        label.setTextInteractionFlags(QtCore.Qt.TextInteractionFlag.TextSelectableByMouse)
        return label

    @staticmethod
    def _dressed(label: Label, font: QFont, tone: str) -> Label:
        label.setFont(font)
        made = label.palette()
        made.setColor(label.foregroundRole(), look().colour(tone))
        label.setPalette(made)
        return label
