"""The column of pages: fitted to the width, drawn when first in sight, in the dots of the screen."""

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor

from jobsheet.gui.pages.pages_view import KEPT, MARGIN, PagesView
from jobsheet.gui.pages.pdf_pages import PdfPages

#: Points of A4, and where the mark stands on each page: a black square, 100 pt from left and bottom.
WIDTH, HEIGHT, MARK, SIDE = 595, 842, 100, 50


@pytest.fixture(scope="module")
def pdf():
    """Eight pages, each with a black square whose place is known."""
    import io

    from reportlab.pdfgen.canvas import Canvas

    held = io.BytesIO()
    canvas = Canvas(held, pagesize=(WIDTH, HEIGHT))
    for _ in range(8):
        canvas.rect(MARK, MARK, SIDE, SIDE, stroke=0, fill=1)
        canvas.showPage()
    canvas.save()
    return held.getvalue()


@pytest.fixture
def view(qtbot, pdf):
    view = PagesView()
    qtbot.addWidget(view)
    view.resize(400, 500)
    view.show_pdf(pdf)
    view.show()
    return view


def test_a_page_has_the_dots_that_were_asked_and_stands_upright(pdf):
    pages = PdfPages(pdf)
    assert len(pages) == 8
    picture = pages.picture(0, QSize(2 * WIDTH, 2 * HEIGHT))
    assert picture.size() == QSize(2 * WIDTH, 2 * HEIGHT)
    inside, below = 2 * (MARK + SIDE // 2), 2 * HEIGHT - 2 * (MARK + SIDE // 2)
    assert picture.pixelColor(inside, below) == QColor("black")
    assert picture.pixelColor(inside, 2 * (MARK + SIDE // 2)) == QColor("white")
    assert picture.pixelColor(1, 1) == QColor("white")
    pages.close()


def test_pages_are_as_wide_as_the_view_and_keep_their_shape(view):
    place = view.place(0)
    assert place.width() == view.viewport().width() - 2 * MARGIN
    assert place.height() == round(place.width() * HEIGHT / WIDTH)
    assert view.place(1).top() > place.bottom()


def test_only_pages_in_sight_are_drawn_and_few_are_kept(view):
    view.viewport().grab()
    assert {index for index, _ in view._pictures} == {0}
    bar = view.verticalScrollBar()
    for value in range(0, bar.maximum() + 1, bar.pageStep()):
        bar.setValue(value)
        view.viewport().grab()
        assert len(view._pictures) <= KEPT
    bar.setValue(bar.maximum())
    view.viewport().grab()
    assert 7 in {index for index, _ in view._pictures}
    assert view.place(7).bottom() <= view.viewport().height()


def test_new_pages_and_another_width_keep_the_place(view, pdf):
    bar = view.verticalScrollBar()
    bar.setValue(bar.maximum() // 2)
    at = bar.value()
    view.show_pdf(pdf)
    assert bar.value() == at
    share = at / bar.maximum()
    view.resize(700, 500)
    assert bar.value() / bar.maximum() == pytest.approx(share, abs=0.01)


def test_it_scrolls_with_keys(view, qtbot):
    from PySide6.QtCore import Qt

    qtbot.keyClick(view, Qt.Key.Key_PageDown)
    assert view.verticalScrollBar().value() == view.viewport().height()
    qtbot.keyClick(view, Qt.Key.Key_Down)
    assert view.verticalScrollBar().value() > view.viewport().height()


def test_calls_that_give_nothing_leave_its_count_alone():
    """The toolkit that is pinned counts right; 6.12.0 lost 460 references to None in 500 such calls."""
    import sys

    from PySide6.QtGui import QImage, QPainter, QPen

    image = QImage(10, 10, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    pen = QPen(QColor("black"))
    painter.setPen(pen)
    before = sys.getrefcount(None)
    for _ in range(500):
        painter.setPen(pen)
    lost = before - sys.getrefcount(None)
    painter.end()
    assert lost < 50
