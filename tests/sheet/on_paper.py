"""What a PDF has on its pages, measured on the file itself by another library: every letter's size
and box, and pages as grey pictures.
"""

from __future__ import annotations

import ctypes
from typing import Any, NamedTuple

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium


class Letter(NamedTuple):
    """One letter: its size of type [points], its box from the left lower corner of the page [points]."""

    sign: str
    size: float
    left: float
    low: float
    right: float
    high: float


class Paper:
    """The pages of a PDF."""

    def __init__(self, data: bytes) -> None:
        self.file = pypdfium2.PdfDocument(data)

    def __len__(self) -> int:
        return len(self.file)

    def size(self, page: int) -> tuple[float, float]:
        """Width and height of a page [points]."""
        width, height = self.file[page].get_size()
        return width, height

    def letters(self, page: int) -> list[Letter]:
        """Every letter of a page in the order of its text; blanks and ends of lines are none."""
        text = self.file[page].get_textpage()
        found = []
        for index in range(text.count_chars()):
            sign = chr(pdfium.FPDFText_GetUnicode(text, index))
            if sign.isspace() or not sign.isprintable():
                continue
            left, right, low, high = (ctypes.c_double() for _ in range(4))
            if not pdfium.FPDFText_GetCharBox(text, index, left, right, low, high):
                continue
            size = pdfium.FPDFText_GetFontSize(text, index)
            found.append(Letter(sign, size, left.value, low.value, right.value, high.value))
        return found

    def grey(self, page: int, dots: float) -> Any:
        """A page as grey values, 0 black to 255 white, with so many dots an inch."""
        picture = self.file[page].render(scale=dots / 72, grayscale=True).to_numpy()
        return np.ascontiguousarray(picture.squeeze())


def sizes_of(words: str, letters: list[Letter]) -> list[float]:
    """The smallest size of type of each place on a page where these words stand, blanks left out."""
    text = "".join(letter.sign for letter in letters)
    wanted = "".join(words.split())
    found, at = [], text.find(wanted)
    while at >= 0:
        found.append(min(letter.size for letter in letters[at : at + len(wanted)]))
        at = text.find(wanted, at + 1)
    return found
