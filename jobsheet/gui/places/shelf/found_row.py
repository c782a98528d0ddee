"""Paints one row of what was found: the finished part, number and name, where it was
found, machine, last made, how it went.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QColor, QPainter, QPixmap

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.gui.places.shelf.found_words import how_words, made_words, twins_words
from jobsheet.remembered import remembered
from jobsheet.shelf.shelf_questions import Hit
from jobsheet.shelf.worked_kept import Worked

translate = QCoreApplication.translate
ROW, PAD, PICTURE, HIGH = 66, 12, 92, 58
#: So many pictures are held: some screens of rows.
ROOM = 240
#: Shares of the width beside the picture: number and name, revision, machine, last made, how it went.
SHARES = (0.35, 0.06, 0.18, 0.20, 0.21)
#: Below this width [px at 100 %] how it went stands under when: name, revision, machine, both.
NARROW, FEWER = 640, (0.42, 0.06, 0.22, 0.30)


def columns(now: Look, width: int) -> list[tuple[int, int]]:
    """Left edge and width of each column after the picture."""
    shares = FEWER if width / now.scale < NARROW else SHARES
    left = now.px(PAD + PICTURE + PAD)
    room = max(0, width - left - now.px(PAD))
    found = []
    for share in shares:
        found.append((left, int(room * share)))
        left += int(room * share)
    return found


def paint_heads(painter: QPainter, now: Look, width: int, high: int) -> None:
    """What stands in the columns."""
    words = [
        translate("Shelf", "number, name, where found"),
        translate("Shelf", "rev."),
        translate("Shelf", "machine"),
        translate("Shelf", "last made"),
        translate("Shelf", "how it went"),
    ]
    first = QRect(now.px(PAD), 0, now.px(PICTURE), high)
    ink.write(painter, now, first, translate("Shelf", "finished part"), now.caption, "pencil")
    for (left, wide), said in zip(columns(now, width), words, strict=False):
        ink.write(painter, now, QRect(left, 0, wide - now.px(8), high), said, now.caption, "pencil")
    ink.horizontal(painter, now.colour("ink"), 0, width, high - 1)


def paint_row(
    painter: QPainter, now: Look, box: QRect, hit: Hit, machine: str, worked: Worked | None
) -> None:
    """One row in its box; the ground is painted already."""
    _picture(painter, now, box, worked)
    upper, lower, line = box.top() + now.px(9), box.top() + now.px(34), now.px(22)
    places = columns(now, box.width())
    cells = [QRect(left, upper, wide - now.px(8), line) for left, wide in places]
    below = [QRect(left, lower, wide - now.px(8), line) for left, wide in places]
    number = ink.write(painter, now, cells[0], hit.number or Path(hit.path).stem, now.head)
    ink.write(painter, now, cells[0].adjusted(number + now.px(8), 0, 0, 0), hit.name, now.body)
    if hit.twins:
        ink.write(painter, now, below[0], twins_words(hit), now.caption)
    else:
        _where(painter, now, below[0], hit)
    ink.write(painter, now, cells[1], hit.revision, now.head)
    ink.write(painter, now, cells[2], machine, now.body)
    ink.write(painter, now, below[2], hit.material, now.caption, "pencil")
    made, times = made_words(hit)
    ink.write(painter, now, cells[3], made, now.body, "ink" if hit.made else "pencil")
    how, detail = how_words(hit, worked)
    if len(places) < len(SHARES):
        _how(painter, now, below[3], hit, worked, f"{how}, {detail}" if detail else how)
        return
    ink.write(painter, now, below[3], times, now.caption, "pencil")
    _how(painter, now, cells[4], hit, worked, how)
    ink.write(painter, now, below[4].adjusted(now.px(20), 0, 0, 0), detail, now.caption, "pencil")


def _picture(painter: QPainter, now: Look, box: QRect, worked: Worked | None) -> None:
    """The finished part; a dashed line where it is not drawn yet, or cannot be."""
    left, high = box.left() + now.px(PAD), now.px(HIGH)
    top = box.top() + (box.height() - high) // 2
    if worked is None or worked.small is None:
        ink.horizontal(
            painter, now.colour("rule"), left + now.px(30), left + now.px(62), box.center().y(), now.px(1)
        )
        return
    painter.drawPixmap(left, top, _drawn(worked.small, now, painter.device().devicePixelRatio()))


@remembered(ROOM)
def _drawn(drawing: Drawing, now: Look, ratio: float) -> QPixmap:
    """Painted once: lines with soft edges cost more than the rest of the row."""
    made = QPixmap(round(now.px(PICTURE) * ratio), round(now.px(HIGH) * ratio))
    made.setDevicePixelRatio(ratio)
    made.fill(QColor(0, 0, 0, 0))
    scale = min(PICTURE / drawing.width, HIGH / drawing.height) / SCALE
    factor = scale * SCALE * now.scale
    left, top = now.px(PICTURE) - drawing.width * factor, now.px(HIGH) - drawing.height * factor
    with QPainter(made) as painter:
        paint(painter, now, drawing, left / 2, top / 2, scale)
    return made


def _how(painter: QPainter, now: Look, box: QRect, hit: Hit, worked: Worked | None, words: str) -> None:
    icon, tone, mark = VERDICTS.get(verdict_of(hit, worked), ("", "pencil", "pencil"))
    if icon:
        signs.draw(painter, icon, getattr(now.tokens, mark), box.left(), box.center().y() + 0.5, now.px(14))
    font = now.bold if icon and tone != "pencil" else now.body
    ink.write(painter, now, box.adjusted(now.px(20), 0, 0, 0), words, font, tone)


def verdict_of(hit: Hit, worked: Worked | None) -> str:
    """The word of how it went; of a job that was never made that of its plan, once it is worked."""
    return hit.how or (worked.verdict if worked is not None else "")


def _where(painter: QPainter, now: Look, box: QRect, hit: Hit) -> None:
    """The line in which it was found, what was asked for bold and underlined."""
    words, (start, end) = hit.where or hit.path, hit.mark if hit.where else (0, 0)
    left = box.left()
    for part, marked in ((words[:start], False), (words[start:end], True), (words[end:], False)):
        room = QRect(left, box.top(), max(0, box.right() - left), box.height())
        font = now.caption_bold if marked else now.caption
        wide = ink.write(painter, now, room, part, font, "ink" if marked else "pencil") if room.width() else 0
        if marked and wide:
            ink.horizontal(
                painter, now.colour("ink"), left, left + wide, box.center().y() + now.px(8), now.px(1.4)
            )
        left += wide
