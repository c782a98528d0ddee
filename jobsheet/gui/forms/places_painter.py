"""Paints a table of places: heads, frames, dials, the row in hand, and what was understood of it."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QRectF
from PySide6.QtGui import QPainter, QPen

from jobsheet.gui.forms.place_table import PlaceTable
from jobsheet.gui.forms.places_layout import BOX, DIAL, NUMBER, SHOWN, Layout
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import Look

translate = QCoreApplication.translate


def paint_places(field: PlaceTable, now: Look, at: Layout) -> None:
    """All that is not a box of its own."""
    with QPainter(field.ground) as painter:
        _head(painter, now, field, at)
        for row, place in at.rows:
            _row(painter, now, field, row, place)
        _frames(painter, now, field, at)
        for words, place in at.problems:
            signs.draw(
                painter,
                "problem-caret",
                now.tokens.vermmark,
                place.left(),
                place.top() + now.px(8),
                now.px(13),
            )
            ink.paragraph(painter, now, place.adjusted(now.px(16), 0, 0, 0), words, now.caption_bold, "verm")
        ink.write(
            painter, now, at.under.adjusted(now.px(NUMBER), 0, 0, 0), under(field), now.caption, "pencil"
        )


def _head(painter: QPainter, now: Look, field: PlaceTable, at: Layout) -> None:
    """Title and how many, the keys at the right, and the captions of the columns."""
    title = field.entry.title
    ink.write(painter, now, at.head, title, now.label, "pencil")
    behind = at.head.adjusted(now.width(title, now.label) + now.px(10), 0, 0, 0)
    wide = ink.write(painter, now, behind, field.understood, now.caption, "pencil")
    keys = translate("Places", "Ctrl + V pastes a list · Alt + Up moves a row · Ctrl + Del takes it out")
    room = behind.adjusted(wide + now.px(16), 0, 0, 0)
    if now.width(keys, now.caption) <= room.width():
        ink.write(painter, now, room, keys, now.caption, "pencil", ink.RIGHT)
    left, top = now.px(NUMBER), at.captions.top()
    captions = [(f"X {field.unit}", BOX), (f"Y {field.unit}", BOX)]
    if field.has_dials():
        captions += [
            (translate("Places", "X turns + line"), DIAL),
            (translate("Places", "Y turns + line"), DIAL),
        ]
    for words, box in captions:
        place = QRect(left, top, now.px(box) - now.px(6), at.captions.height())
        ink.write(painter, now, place, words, now.caption, "pencil", ink.RIGHT)
        left += now.px(box)


def _row(painter: QPainter, now: Look, field: PlaceTable, row: int, place: QRect) -> None:
    """The number, and the dials in pencil; the row in hand lies on blue."""
    here = row == field.hand
    if here:
        ink.fill(painter, place.adjusted(0, 0, 0, -1), now.colour("chosen"))
    number = QRect(0, place.top(), now.px(NUMBER - 8), place.height())
    new = row >= len(field.rows)
    ink.write(
        painter,
        now,
        number,
        str(row + 1),
        now.label if new else now.bold,
        "pencil" if new else "ink",
        ink.RIGHT,
    )
    left = now.px(NUMBER + 2 * BOX)
    if new:
        hint = QRect(left + now.px(8), place.top(), place.right() - left - now.px(8), place.height())
        words = translate("Places", "Enter adds a row")
        ink.write(painter, now, hint, words, now.caption, "pencil")
        return
    token = "ink" if here else "pencil"
    for words in field.words[row].dials:
        dial = QRect(left, place.top(), now.px(DIAL - 6), place.height())
        ink.write(painter, now, dial, words, now.body, token, ink.RIGHT)
        left += now.px(DIAL)


def _frames(painter: QPainter, now: Look, field: PlaceTable, at: Layout) -> None:
    """Round every box: heavier where it cannot be read, blue where the cursor
    is, dashed where nothing is yet.
    """
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(now.colour("paper"))
    last: list[tuple[QPen, QRect]] = []
    for box, frame in at.frames:
        row = field.row_of(box)
        if box.hasFocus():
            last.append((QPen(now.colour("bluemark"), now.px(3)), frame))
        elif field.is_wrong(box):
            last.append((QPen(now.colour("vermmark"), now.px(2)), frame))
        else:
            pen = QPen(now.colour("edge"), 1)
            if row is not None and row >= len(field.rows):
                pen.setStyle(QtCore.Qt.PenStyle.DashLine)
            _frame(painter, pen, frame)
    for pen, frame in last:
        _frame(painter, pen, frame)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)


def _frame(painter: QPainter, pen: QPen, frame: QRect) -> None:
    half = pen.widthF() / 2
    painter.setPen(pen)
    painter.drawRect(QRectF(frame).adjusted(half, half, -half, -half))


def under(field: PlaceTable) -> str:
    """The line under the rows: what was just done, what was understood of the
    row in hand, or which rows are shown.
    """
    if field.note:
        return field.note
    count = len(field.rows)
    if 0 <= field.hand < count:
        words = field.words[field.hand]
        if words.half:
            return words.half
        if words.problem is None and words.understood[0]:
            x, y = words.understood
            return (
                x if x == y and not words.dials[0] else translate("Places", "X {x} · Y {y}").format(x=x, y=y)
            )
    if count + 1 > SHOWN:
        last = min(field.first + SHOWN, count)
        return translate("Places", "{first} to {last} of {count} places; the arrow keys go on").format(
            first=field.first + 1, last=last, count=count
        )
    return "" if count else field.entry.hint
