"""The printed code, read back from the page by a reader that knows nothing of us (zxing-cpp)."""

from __future__ import annotations

import numpy as np
import pypdfium2
import pytest
import zxingcpp

from jobsheet.drawing.drawn import Line
from jobsheet.sheet.pdf import picture_pdf
from jobsheet.sheet.printed_code import SIDE, printed_code

#: As `lessons-and-shelf` gives it: 28 signs of the short alphabet, level Q,
#: version 2, 33 modules with the margin.
SHORT = "JS1:HM-103:C:3:D495-6QV9-7Y6"


def read(text, dots):
    """What a reader makes of the printed page at so many dots to the inch."""
    page = pypdfium2.PdfDocument(picture_pdf(printed_code(text), "code"))[0]
    picture = page.render(scale=dots / 72, grayscale=True).to_numpy()
    return zxingcpp.read_barcodes(np.ascontiguousarray(picture.squeeze()))


@pytest.mark.parametrize("text", [SHORT, "JS1:Grundplatte 2/µ-ä:A:12:D495-6QV9-7Y6", "JS1:" + "W" * 80])
@pytest.mark.parametrize("dots", [150, 300])
def test_it_is_read_from_the_page(text, dots):
    (found,) = read(text, dots)
    assert found.text == text
    assert found.format == zxingcpp.BarcodeFormat.QRCode
    assert found.ec_level == "Q"


def test_it_is_twenty_millimetres_with_four_modules_of_white():
    drawing = printed_code(SHORT)
    assert drawing.width == drawing.height == pytest.approx(20 / 25.4 * 72)
    xs = [x for item in drawing.items for x, _ in item.points]
    ys = [y for item in drawing.items for _, y in item.points]
    module = SIDE / 33
    assert min(xs) == pytest.approx(4 * module)
    assert max(xs) == pytest.approx(SIDE - 4 * module)
    assert min(ys) == pytest.approx(4 * module)
    assert all(isinstance(item, Line) and item.fill == "ink" for item in drawing.items)
