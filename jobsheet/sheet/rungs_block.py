"""The rungs of a proving sheet: what is set in the type that is read from
afar, and boxes for what happened.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.report.blocks import RungRow, RungRows
from jobsheet.sheet.laid import Laid, Moved, across, lays, text_lines
from jobsheet.sheet.plain_blocks import wide
from jobsheet.sheet.styles import STYLES
from jobsheet.sheet.wrapping import fitted, wrap

#: Height of a rung, and of the boxes in it: a hand writes in them at the machine.
ROW, INSET = 28.5, 2.5
NUMBER, GAP = 22.0, 6.0
#: Shares of what is left: size, spindle, pace, what it asks; and of the boxes for
#: seconds, heard, seen, outcome, initials.
PLANNED = (0.27, 0.185, 0.265, 0.28)
BOXES = (("seconds", 0.21), ("heard", 0.29), ("seen", 0.29), ("outcome", 0.21))
INITIALLED = (("seconds", 0.2), ("heard", 0.19), ("seen", 0.19), ("outcome", 0.22), ("initials", 0.2))
#: With boxes beside it what is planned takes so much of the width.
HALF = 0.62


@lays(RungRows)
def _rungs(block: RungRows, room: float) -> Laid:
    planned = room * (HALF if block.results else 1.0) - NUMBER
    edges = _edges(NUMBER, planned, PLANNED)
    boxes = _boxes(block, room)
    captions, y = _captions(block, edges, boxes)
    items: list[Item | Moved] = [*captions]
    for row in block.rows:
        items.append(across(room, y))
        items.append(Moved(_row(row, edges, boxes).items, 0.0, y))
        y += ROW
    items.append(across(room, y, "section"))
    return Laid(tuple(items), y + 2)


def _edges(left: float, room: float, shares: tuple[float, ...]) -> list[tuple[float, float]]:
    """Left edge and width of each column."""
    edges = []
    for share in shares:
        edges.append((left, room * share - GAP))
        left += room * share
    return edges


def _boxes(block: RungRows, room: float) -> list[tuple[str, float, float]]:
    """Caption, left edge and width of each box; none where nothing may be written."""
    if not block.results:
        return []
    named = INITIALLED if block.initials else BOXES
    whole = sum(share for _, share in named)
    left, wide_ = room * HALF, room * (1 - HALF)
    boxes = []
    for name, share in named:
        width = wide_ * share / whole
        boxes.append((name, left, width - 3))
        left += width
    return boxes


def _captions(
    block: RungRows, edges: list[tuple[float, float]], boxes: list[tuple[str, float, float]]
) -> tuple[list[Item], float]:
    items: list[Item] = [Text(0.0, 9, "rung", "caption")]
    for caption, (left, _) in zip((block.grows, "rpm", "pace", "bad end, motor"), edges, strict=True):
        items.append(Text(left, 9, caption, "caption"))
    items += [Text(left, 9, caption, "caption") for caption, left, _ in boxes]
    return items, 13.0


def _row(row: RungRow, edges: list[tuple[float, float]], boxes: list[tuple[str, float, float]]) -> Laid:
    items: list[Item] = [Text(2.0, 18, row.number, "number")]
    for (left, room), text, unit, note in zip(
        edges, (row.size, row.spindle, row.pace), (row.unit, "", ""), (row.size_note, row.spindle_note, row.pace_note),
        strict=False,
    ):  # fmt: skip
        items += _figure(text, unit, note, left, room)
    left, room = edges[3]
    lines = tuple(piece for text in row.asks for piece in wrap(text, "small", room))[:3]
    more, _ = text_lines(lines, "small", left, (ROW - len(lines) * STYLES["small"].leading) / 2)
    items += more
    for name, at, width in boxes:
        items.append(Line(box(at, INSET, width, ROW - 2 * INSET), "row", closed=True))
        if name == "seconds" and row.seconds:
            items.append(Text(at + width - 3, ROW - INSET - 3, row.seconds, "small", "end"))
    return Laid(tuple(items), ROW)


def _figure(text: str, unit: str, note: str, left: float, room: float) -> list[Item]:
    style = "dial" if any(character.isdigit() for character in text[:3]) and len(text) < 24 else "step"
    taken = wide(unit, "label") + 3 if unit else 0.0
    lines, size = fitted(text, style, max(room - taken, 20.0), 8.0)
    items, bottom = text_lines(lines[:2], style, left, 0.4, size=size)
    if unit:
        shown = wide(lines[0], style) * size / STYLES[style].size
        items.append(Text(left + shown + 3, 0.4 + size * 0.96, unit, "label"))
    if note:
        more, _ = text_lines(wrap(note, "small", room)[:2], "small", left, min(bottom, 18.2))
        items += more
    return items
