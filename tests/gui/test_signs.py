"""Signs in the ink of their token, and nothing where there is no drawing of that name."""

from __future__ import annotations

from PySide6.QtGui import QColor, QImage, QPainter

from jobsheet.gui.ink import signs


def _inks(picture):
    image = picture.toImage().convertToFormat(QImage.Format.Format_ARGB32)
    return {
        image.pixelColor(x, y).name()
        for x in range(image.width())
        for y in range(image.height())
        if image.pixelColor(x, y).alpha() == 255
    }


def test_a_sign_has_the_size_and_the_ink_that_was_asked(qapp):
    red = signs.pixmap("verdict-beyond", "#aa0000", 16)
    assert (red.width(), red.height()) == (16, 16)
    assert "#aa0000" in _inks(red)
    assert "#aa0000" not in _inks(signs.pixmap("verdict-beyond", "#0000aa", 16))


def test_a_fine_screen_has_more_dots_for_the_same_size(qapp):
    fine = signs.pixmap("verdict-beyond", "#000000", 16, 2.0)
    assert fine.width() == 32
    assert fine.deviceIndependentSize().width() == 16


def test_a_name_without_a_drawing_paints_nothing(qapp):
    assert _inks(signs.pixmap("no-such-sign", "#000000", 16)) == set()


def test_it_stands_with_its_left_edge_and_its_middle_where_it_was_put(qapp):
    image = QImage(60, 60, QImage.Format.Format_ARGB32)
    image.fill(QColor("white"))
    with QPainter(image) as painter:
        signs.draw(painter, "verdict-beyond", "#000000", 30, 40, 16)
    dark = [(x, y) for x in range(60) for y in range(60) if image.pixelColor(x, y).lightness() < 128]
    assert dark
    assert all(30 <= x < 46 and 32 <= y < 48 for x, y in dark)
