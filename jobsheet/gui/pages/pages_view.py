"""A column of pages, as wide as the view: what the preview of sheets and of a capability card shows."""

from __future__ import annotations

from itertools import accumulate

from PySide6 import QtCore
from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QAbstractScrollArea, QWidget

from jobsheet.gui.pages.pdf_pages import PdfPages

#: Round the column, and between two pages [px].
MARGIN = 6
GAP = 3
#: One turn of the wheel or press of an arrow [px].
STEP = 20
#: Pictures that are kept; a view shows two or three pages at once.
KEPT = 6


class PagesView(QAbstractScrollArea):
    """Shows the pages in sight, each drawn when it is first seen and as finely as the screen can show."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.pages: PdfPages | None = None
        self._places: list[QRect] = []
        self._pictures: dict[tuple[int, QSize], QImage] = {}
        # Always there: a bar that came and went would change the width that the pages are fitted to.
        self.setVerticalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalScrollBar().setSingleStep(STEP)

    def show_pdf(self, pdf: bytes) -> None:
        """Show these pages; whoever was reading page three stays there."""
        if self.pages is not None:
            self.pages.close()
        self.pages = PdfPages(pdf)
        self._pictures.clear()
        self._lay_out()

    def let_go(self) -> None:
        """Nobody looks at the pages any more: their file and their pictures take several megabytes."""
        if self.pages is not None:
            self.pages.close()
        self.pages = None
        self._pictures.clear()
        self._places = []

    def show_none(self) -> None:
        """No page at all."""
        self.let_go()
        self._lay_out()

    @property
    def count(self) -> int:
        """How many pages there are."""
        return len(self.pages) if self.pages is not None else 0

    def place(self, index: int) -> QRect:
        """Where a page lies in the viewport just now, in sight or not."""
        return self._places[index].translated(0, -self.verticalScrollBar().value())

    def _lay_out(self) -> None:
        """Fit every page to the width, one under another."""
        width = max(1, self.viewport().width() - 2 * MARGIN)
        sizes = self.pages.sizes if self.pages is not None else ()
        heights = [max(1, round(width * size.height() / size.width())) for size in sizes]
        tops = accumulate((height + GAP for height in heights), initial=MARGIN)
        self._places = [QRect(MARGIN, top, width, height) for top, height in zip(tops, heights, strict=False)]
        whole = self._places[-1].bottom() + 1 + MARGIN if self._places else 0
        in_sight = self.viewport().height()
        bar = self.verticalScrollBar()
        bar.setRange(0, max(0, whole - in_sight))
        bar.setPageStep(in_sight)
        self.viewport().update()

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802  named by the toolkit
        """Fit the pages anew, and keep what stands at the top edge there."""
        bar = self.verticalScrollBar()
        share = bar.value() / bar.maximum() if bar.maximum() else 0.0
        self._lay_out()
        bar.setValue(round(share * bar.maximum()))
        super().resizeEvent(event)

    def scrollContentsBy(self, dx: int, dy: int) -> None:  # noqa: ARG002, N802
        """Nothing to move: the pages in sight are painted from their pictures."""
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """The pages that the event touches."""
        painter = QPainter(self.viewport())
        painter.fillRect(event.rect(), self.palette().brush(QPalette.ColorRole.Dark))
        for index in range(self.count):
            place = self.place(index)
            if place.intersects(event.rect()):
                painter.drawImage(place, self._picture(index, place.size()))

    def _picture(self, index: int, size: QSize) -> QImage:
        """A page in the dots of this screen, remembered while it is near."""
        dots = size * self.devicePixelRatioF()
        image = self._pictures.get((index, dots))
        if image is None and self.pages is not None:
            while len(self._pictures) >= KEPT:
                del self._pictures[next(iter(self._pictures))]
            image = self._pictures[index, dots] = self.pages.picture(index, dots)
        return image or QImage()
