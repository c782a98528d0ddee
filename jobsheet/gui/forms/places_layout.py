"""Where everything of a table of places stands at a width: arithmetic, no painting."""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.place_table import PlaceTable
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.operations.place_rows import Made

#: So many rows are shown at a time, the empty one too: more would push what follows out of the window.
SHOWN = 9
#: Measures at 100 %: head with its captions, a row, the words of a generator, the
#: number, a box, a dial, the last line.
HEAD, CAPTIONS, ROW, LINE, NUMBER, BOX, DIAL, OUT, UNDER = 20, 18, 28, 32, 26, 92, 84, 62, 18
#: What the maker takes beside the table, and between them.
MAKER, BETWEEN = 330, 20

translate = QCoreApplication.translate


class Layout(Struct):
    """Boxes with their places, the rows that are shown, sentences under them, and what stands around."""

    width: int
    height: int
    head: QRect
    captions: QRect
    under: QRect
    maker: QRect
    boxes: list[tuple[QWidget, QRect]]
    frames: list[tuple[QWidget, QRect]]
    rows: list[tuple[int, QRect]]
    problems: list[tuple[str, QRect]]
    out: QRect


def table_width() -> int:
    """What the table itself takes [px]."""
    return look().px(NUMBER + 2 * BOX + 2 * DIAL + OUT)


def arranged(field: PlaceTable, width: int) -> Layout:
    """The places at a width."""
    now = look()
    beside = width >= table_width() + now.px(MAKER + BETWEEN)
    table = table_width() if beside else min(width, table_width())
    at = Layout(
        width,
        0, QRect(0, 0, width, now.px(HEAD)), QRect(0, now.px(HEAD), table, now.px(CAPTIONS)), QRect(), QRect(), [], [], [], [], QRect()
    )  # fmt: skip
    top = _rows(field, at, table, now.px(HEAD + CAPTIONS))
    at.under = QRect(0, top, table if beside else width, now.px(UNDER))
    top += now.px(UNDER)
    if beside:
        left = table + now.px(BETWEEN)
        high = field.beside.arrange(width - left)
        at.maker = QRect(left, now.px(HEAD), width - left, high)
        top = max(top, now.px(HEAD) + high)
    else:
        high = field.beside.arrange(width)
        at.maker = QRect(0, top + now.px(4), width, high)
        top += high + now.px(8)
    at.height = top
    return at


def _rows(field: PlaceTable, at: Layout, width: int, top: int) -> int:
    """Every row that is shown, the words of each generator above its own, a
    sentence under what cannot be read.
    """
    now = look()
    number, done = now.px(NUMBER), 0
    made = [index for index, piece in enumerate(field.pieces) if isinstance(piece, Made)]
    for row in range(field.first, min(field.first + len(field.cells), len(field.rows) + 1)):
        piece = field.rows[row].piece if row < len(field.rows) else len(field.pieces)
        while done < len(made) and made[done] <= piece:
            top = _line(field, at, done, width, top)
            done += 1
        place = QRect(0, top, width, now.px(ROW))
        at.rows.append((row, place))
        left = number
        for cell in field.cells[row - field.first]:
            frame = QRect(left, top + now.px(1), now.px(BOX), now.px(ROW - 2))
            at.frames.append((cell, frame))
            at.boxes.append((cell, frame.adjusted(now.px(6), now.px(4), -now.px(6), -now.px(4))))
            left += now.px(BOX) - 1
        if row == field.hand:
            at.out = QRect(width - now.px(OUT), top, now.px(OUT), now.px(ROW))
        top += now.px(ROW)
        words = field.words[row] if row < len(field.rows) else None
        if words is not None and words.problem is not None and not (words.half and row == field.hand):
            top = _sentence(at, str(words.problem), width, top)
    while done < len(made):
        top = _line(field, at, done, width, top)
        done += 1
    return top


def _line(field: PlaceTable, at: Layout, index: int, width: int, top: int) -> int:
    """The words of a generator, over the whole table."""
    now = look()
    frame = QRect(now.px(NUMBER), top + now.px(2), width - now.px(NUMBER), now.px(LINE - 4))
    line = field.lines[index]
    at.frames.append((line, frame))
    at.boxes.append((line, frame.adjusted(now.px(8), now.px(4), -now.px(8), -now.px(4))))
    top += now.px(LINE)
    made = [piece for piece in field.pieces if isinstance(piece, Made)][index]
    return _sentence(at, str(made.problem), width, top) if made.problem is not None else top


def _sentence(at: Layout, words: str, width: int, top: int) -> int:
    now = look()
    left = now.px(NUMBER)
    wide = width - left - now.px(16)
    high = ink.paragraph_height(now, words, now.caption_bold, wide) + now.px(3)
    at.problems.append((words, QRect(left, top, width - left, high)))
    return top + high
