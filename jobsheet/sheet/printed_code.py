"""A short text as a printed code that a telephone or a scanner reads (ISO/IEC 18004), as lines of a drawing.

Level Q bears a quarter of it dirty (SCA: scantrust.com, 7, 15, 25 and 30 % for L, M, Q and H); the version is what the text
needs. The quiet zone of four modules (KEY: keyence.com) belongs to the drawing, so that nothing is set too near.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing, Item, Line
from jobsheet.drawing.making import box
from jobsheet.remembered import remembered

#: Modules that stay white around it.
QUIET = 4
#: The side on paper, quiet zone and all [points]: 20 mm.
SIDE = 20 / 25.4 * 72


@remembered(16)
def printed_code(text: str, side: float = SIDE) -> Drawing:
    """The code of a text, in a square of that side [points]."""
    from reportlab.graphics.barcode.qrencoder import QRCode, QRErrorCorrectLevel

    code = QRCode(None, QRErrorCorrectLevel.Q)
    code.addData(text)
    code.make()
    count = code.getModuleCount()
    module = side / (count + 2 * QUIET)
    items: list[Item] = []
    for row in range(count):
        column = 0
        while column < count:
            begins = column
            while column < count and code.isDark(row, column):
                column += 1
            if column > begins:
                # One bar for what lies side by side, a hair higher than a row: no light shows between two rows.
                bar = box(
                    (begins + QUIET) * module,
                    (row + QUIET) * module,
                    (column - begins) * module,
                    1.02 * module,
                )
                items.append(Line(bar, 0.0, closed=True, fill="ink"))
            column += 1
    return Drawing(side, side, tuple(items))
