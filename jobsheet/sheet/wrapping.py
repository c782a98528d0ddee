"""Text into the room it has: broken at blanks, in long words where there is none, or made smaller."""

from __future__ import annotations

from jobsheet.remembered import remembered
from jobsheet.sheet.fonts import printable, width
from jobsheet.sheet.styles import SMALLEST, STYLES


@remembered(512)
def wrap(text: str, style: str, room: float, size: float | None = None) -> tuple[str, ...]:
    """The lines of a text in a style; no line is wider than the room, nothing is lost but blanks."""
    asked = STYLES[style]
    size = asked.size if size is None else size
    lines: list[str] = []
    for part in printable(text).split("\n"):
        lines += _lines(part.split(), size, asked.bold, room)
    return tuple(lines)


def _lines(words: list[str], size: float, bold: bool, room: float) -> list[str]:
    lines: list[str] = []
    line = ""
    for word in words:
        trial = f"{line} {word}" if line else word
        if width(trial, size, bold=bold) <= room:
            line = trial
            continue
        if line:
            lines.append(line)
        *full, line = _broken(word, size, bold, room)
        lines += full
    return [*lines, line] if line or not lines else lines


def _broken(word: str, size: float, bold: bool, room: float) -> list[str]:
    """A word that is wider than the room, in pieces that are not; at a hyphen or
    slash if there is one near the end.
    """
    pieces = []
    while width(word, size, bold=bold) > room and len(word) > 1:
        end = 1
        while end < len(word) and width(word[: end + 1], size, bold=bold) <= room:
            end += 1
        soft = max(word.rfind(mark, 1, end) for mark in "-/_")
        if soft >= end * 0.5:
            end = soft + 1
        pieces.append(word[:end])
        word = word[end:]
    return [*pieces, word]


@remembered(512)
def shrunk(text: str, style: str, room: float, smallest: float = SMALLEST) -> float:
    """The size at which a text stands in one line, not below the smallest."""
    asked = STYLES[style]
    wide = width(printable(text), asked.size, bold=asked.bold)
    return asked.size if wide <= room else max(smallest, asked.size * room / wide)


def fitted(text: str, style: str, room: float, smallest: float = SMALLEST) -> tuple[tuple[str, ...], float]:
    """Lines and size: one line if it can be shrunk to fit, else wrapped at the smallest size."""
    size = shrunk(text, style, room, smallest)
    if width(printable(text), size, bold=STYLES[style].bold) <= room + 0.01:
        return (printable(text),), size
    return wrap(text, style, room, size), size
