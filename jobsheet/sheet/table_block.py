"""Ruled tables: columns as wide as what stands in them, one of them takes the rest."""

from __future__ import annotations

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.report.blocks import Cell, Column, Table
from jobsheet.sheet.laid import Laid, Moved, across, lays, text_lines
from jobsheet.sheet.plain_blocks import wide
from jobsheet.sheet.styles import BOX, STYLES, TABLE_ROW
from jobsheet.sheet.wrapping import fitted, wrap

GAP = 7.0
#: No column but the wide one takes more than this share of a table that has a wide one.
MOST = 0.3


@lays(Table)
def _table(block: Table, room: float) -> Laid:
    widths, gap = _widths(block, room)
    edges = [sum(widths[:index]) + gap * index for index in range(len(widths))]
    captions, y = _captions(block.columns, edges, widths)
    items: list[Item | Moved] = [*captions, across(room, y)]
    top = y
    for row in block.rows:
        laid, height = _row(block.columns, row, edges, widths, block.high)
        items.append(Moved(tuple(laid), 0.0, y))
        y += height
        items.append(across(room, y))
    for column, edge in zip(block.columns, edges, strict=True):
        if column.ruled:
            items.append(Line(((edge - gap / 2, top), (edge - gap / 2, y)), "row"))
    if block.total:
        items.append(Line(((0.0, y), (room, y)), "section"))
        items.append(Text(0.0, y + 14, block.total[0], "number"))
        items.append(Text(room, y + 14, block.total[-1], "number", "end"))
        y += 19
    return Laid(tuple(items), y)


def _widths(block: Table, room: float) -> tuple[list[float], float]:
    """Width of each column, and the gap between two; whatever is left goes to
    the wide one, or to the gaps.
    """
    natural = []
    for index, column in enumerate(block.columns):
        need = max(wide(line, "caption") for line in column.caption.split("\n"))
        if column.tick:
            need = max(need, BOX)
        for row in block.rows:
            need = max(need, _need(row[index], column))
        natural.append(need)
    count = len(natural)
    flexible = [index for index, column in enumerate(block.columns) if column.wide]
    if flexible:
        widths = [min(need, MOST * room) for need in natural]
        others = sum(need for index, need in enumerate(widths) if index not in flexible)
        widths[flexible[0]] = room - others - GAP * (count - 1)
        return widths, GAP
    whole = sum(natural)
    if whole + GAP * (count - 1) > room:
        factor = (room - 4.0 * (count - 1)) / whole
        return [need * factor for need in natural], 4.0
    return natural, (room - whole) / max(count - 1, 1) if count > 1 else 0.0


def _need(cell: Cell, column: Column) -> float:
    need = wide(cell.text, column.style)
    if cell.small:
        need += 4 + max(wide(line, "small") for line in cell.small)
    return need


def _captions(
    columns: tuple[Column, ...], edges: list[float], widths: list[float]
) -> tuple[list[Item], float]:
    if not any(column.caption.strip() for column in columns):
        return [], 0.0
    lines = max(column.caption.count("\n") + 1 for column in columns)
    leading = STYLES["caption"].leading
    items: list[Item] = []
    for column, edge, room in zip(columns, edges, widths, strict=True):
        parts = column.caption.split("\n")
        x, anchor = (edge + room, "end") if column.align == "right" else (edge, "start")
        more, _ = text_lines(tuple(parts), "caption", x, (lines - len(parts)) * leading, anchor=anchor)
        items += more
    return items, lines * leading + 2


def _row(
    columns: tuple[Column, ...], row: tuple[Cell, ...], edges: list[float], widths: list[float], least: float
) -> tuple[list[Item], float]:
    laid = [_lines(cell, column, room) for cell, column, room in zip(row, columns, widths, strict=True)]
    height = max(TABLE_ROW, least, *(len(lines) * size * 1.22 + 3 for lines, size in laid))
    items: list[Item] = []
    for cell, column, edge, room, (lines, size) in zip(row, columns, edges, widths, laid, strict=True):
        if column.tick:
            if cell.tick:
                items.append(
                    Line(box(edge + 0.5, (height - BOX) / 2 + 0.5, BOX - 1, BOX - 1), "outline", closed=True)
                )
            continue
        x, anchor = (edge + room, "end") if column.align == "right" else (edge, "start")
        more, _ = text_lines(
            lines, column.style, x, (height - len(lines) * size * 1.22) / 2, anchor=anchor, size=size
        )
        items += more
        if cell.small:
            shown = max(
                (wide(line, column.style) * size / STYLES[column.style].size for line in lines), default=0.0
            )
            small = STYLES["small"]
            top = (height - len(cell.small) * small.leading) / 2
            more, _ = text_lines(cell.small, "small", edge + shown + (4 if shown else 0), top)
            items += more
    return items, height


def _lines(cell: Cell, column: Column, room: float) -> tuple[tuple[str, ...], float]:
    """The lines of a cell and their size: the wide column wraps, the others shrink first."""
    if cell.small:
        room -= 4 + max(wide(line, "small") for line in cell.small)
    size = STYLES[column.style].size
    if column.wide:
        return wrap(cell.text, column.style, room), size
    return fitted(cell.text, column.style, max(room, 12.0))
