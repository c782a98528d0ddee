"""DejaVu Sans, shipped and embedded: how wide text is, and which characters it lacks.

A character that the font lacks would print as an empty box without an error: it is printed as its
code instead, and the caller can say which they are.
"""

from __future__ import annotations

import unicodedata
from functools import cache
from typing import Any

from jobsheet.paths import resources
from jobsheet.remembered import remembered

REGULAR, BOLD = "DejaVuSans", "DejaVuSans-Bold"


@cache
def face(name: str) -> Any:
    """A face by name, registered with the PDF library."""
    from reportlab.pdfbase import pdfmetrics
    from reportlab.pdfbase.ttfonts import TTFont

    font = TTFont(name, str(resources() / "fonts" / f"{name}.ttf"))
    pdfmetrics.registerFont(font)
    return font.face


def font_name(*, bold: bool) -> str:
    """The registered name of a weight."""
    name = BOLD if bold else REGULAR
    face(name)
    return name


def missing_characters(text: str) -> list[str]:
    """The characters of a text that the font lacks, each once, in their order."""
    return list(dict.fromkeys(character for character in text if not _has(character)))


#: The last character of the first plane (Unicode).
LAST = 0xFFFF


@remembered(1024)
def _has(character: str) -> bool:
    if character in "\n\t\r" or character.isspace():
        return True
    # Controls and marks that turn the writing round have no picture of their own and change others.
    if unicodedata.category(character) in ("Cc", "Cf", "Cs", "Co", "Cn"):
        return False
    # Beyond the first plane the PDF library draws a picture that nobody can
    # search for or copy: its code says more.
    if ord(character) > LAST:
        return False
    return all(ord(character) in face(name).charToGlyph for name in (REGULAR, BOLD))


@remembered(1024)
def printable(text: str) -> str:
    """The text as it is printed: blanks of any kind as a blank, characters
    that the font lacks as their code.
    """
    if text.isascii() and text.isprintable():
        return text
    return text.translate(_PRINTED)


#: So many characters are remembered: more than any alphabet that the font has.
ROOM = 8192


class _Printed(dict[int, str]):
    """What is printed for a character, found once for each."""

    def __missing__(self, code: int) -> str:
        character = chr(code)
        if character.isspace():
            printed = "\n" if character == "\n" else " "
        else:
            printed = character if _has(character) else f"[U+{code:04X}]"
        if len(self) < ROOM:
            self[code] = printed
        return printed


_PRINTED = _Printed()


class _Widths(dict[str, float]):
    """Widths by character, looked up in the face once for each, so that a text is summed without a step of ours."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._face: dict[int, float] = face(name).charWidths

    def __missing__(self, character: str) -> float:
        found = self[character] = self._face.get(ord(character), 600.0)
        return found


@cache
def _widths(name: str) -> _Widths:
    return _Widths(name)


@remembered(1024)
def _units(text: str, bold: bool) -> float:
    return sum(map(_widths(BOLD if bold else REGULAR).__getitem__, text))


def width(text: str, size: float, *, bold: bool = False) -> float:
    """How wide a printable text is [points]."""
    return _units(text, bold) * size / 1000
