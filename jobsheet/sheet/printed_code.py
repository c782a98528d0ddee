"""A short text as a printed code that a telephone or a scanner reads (ISO/IEC 18004), as lines of a drawing.

Level Q bears a quarter of it dirty (SCA: scantrust.com, 7, 15, 25 and 30 % for L, M, Q and H); the
version is what the text needs. The quiet zone of four modules (KEY: keyence.com) belongs to the
drawing, so that nothing is set too near.
"""

from __future__ import annotations

import importlib
import sys
from functools import cache
from importlib.util import find_spec, module_from_spec, spec_from_file_location
from pathlib import Path
from typing import Any

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
    encoder = _encoder()
    code = encoder.QRCode(None, encoder.QRErrorCorrectLevel.Q)
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
                # One bar for what lies side by side, a hair higher than a row:
                # no light shows between two rows.
                bar = box(
                    (begins + QUIET) * module,
                    (row + QUIET) * module,
                    (column - begins) * module,
                    1.02 * module,
                )
                items.append(Line(bar, 0.0, closed=True, fill="ink"))
            column += 1
    return Drawing(side, side, tuple(items))


#: The PDF library's own maker of these codes, and where it lies.
_MODULE = "reportlab.graphics.barcode.qrencoder"


@cache
def _encoder() -> Any:
    """The maker of codes by itself where its file lies open: its package brings every other kind of code
    with it, a tenth of a first sheet.
    """
    library = find_spec("reportlab")
    places = library.submodule_search_locations if library is not None else None
    file = Path(next(iter(places or ("",))), *_MODULE.split(".")[1:]).with_suffix(".py")
    alone = spec_from_file_location("jobsheet_codes", file) if file.is_file() else None
    if _MODULE in sys.modules or alone is None or alone.loader is None:
        return importlib.import_module(_MODULE)
    made = module_from_spec(alone)
    alone.loader.exec_module(made)
    return made
