"""The pages of a PDF as pictures, for the preview and the printer."""

from __future__ import annotations

from PySide6.QtCore import QSize, QSizeF
from PySide6.QtGui import QImage


class PdfPages:
    """A PDF that stays open while its pages are looked at; `close` lets go of it."""

    def __init__(self, pdf: bytes) -> None:
        from pypdfium2 import PdfDocument  # late: loading the renderer takes some 60 ms

        self._document = PdfDocument(pdf)
        #: Size of every page [pt].
        self.sizes: tuple[QSizeF, ...] = tuple(
            QSizeF(*self._document.get_page_size(index)) for index in range(len(self._document))
        )

    def __len__(self) -> int:
        return len(self.sizes)

    def picture(self, index: int, dots: QSize) -> QImage:
        """One page on white, of exactly so many dots: a scale alone would round to a dot more or less."""
        from pypdfium2 import PdfBitmap, raw

        width, height = dots.width(), dots.height()
        page = self._document[index]
        bitmap = PdfBitmap.new_native(width, height, raw.FPDFBitmap_BGRx)
        try:
            bitmap.fill_rect((255, 255, 255, 255), 0, 0, width, height)
            raw.FPDF_RenderPageBitmap(bitmap, page, 0, 0, width, height, 0, 0)
            # The copy outlives the bitmap, whose memory the image would otherwise only borrow.
            form = QImage.Format.Format_RGB32
            return QImage(memoryview(bitmap.buffer), width, height, bitmap.stride, form).copy()
        finally:
            bitmap.close()
            page.close()

    def close(self) -> None:
        """Let go of the file."""
        self._document.close()
