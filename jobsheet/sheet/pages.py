"""A page on paper: title block at the top, blocks from there down, legend and foot at the bottom."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec.structs import replace

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import box, moved
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.remembered import remembered
from jobsheet.report.blocks import Columns, Page, TitleCell, Writing
from jobsheet.sheet import rungs_block, steps_block, table_block
from jobsheet.sheet.laid import Laid, across, lay, stacked, text_lines
from jobsheet.sheet.plain_blocks import WRITING, wide
from jobsheet.sheet.styles import BETWEEN, BOTTOM, PAPERS, SIDE, TOP
from jobsheet.sheet.wrapping import fitted, wrap

#: Under the title block.
AFTER_TITLE = 6.0
#: Lines to write on that a page may gain at most.
MOST_LINES = 14

# Each of these modules registers how its block is laid.
_BLOCKS = (steps_block, table_block, rungs_block)


def fits_on(paper: str) -> Callable[[Page], bool]:
    """Whether a page has room on that paper, for `report/` to ask."""

    def fits(page: Page) -> bool:
        width, height = _inside(paper)
        return _needed(page, width) <= height + 0.01

    return fits


def _inside(paper: str) -> tuple[float, float]:
    width, height = PAPERS[paper]
    return width - 2 * SIDE, height - TOP - BOTTOM


def _needed(page: Page, width: float) -> float:
    body = sum(lay(block, width).height for block in page.blocks) + BETWEEN * max(0, len(page.blocks) - 1)
    return (
        _title(page.title, "999 of 999", width).height
        + AFTER_TITLE
        + body
        + _foot(page.legend, page.foot, width).height
    )


def drawn(page: Page, paper: str) -> tuple[Drawing, float]:
    """The page as one drawing inside the margins, and the scale that brings it onto the paper (1 but for monsters)."""
    width, height = _inside(paper)
    head = _title(page.title, f"{page.number} of {page.total}" if page.total else "", width)
    foot = _foot(page.legend, page.foot, width)
    start = head.height + AFTER_TITLE
    body = stacked(page.blocks, width)
    spare = height - start - body.height - foot.height
    if spare >= WRITING:
        body = stacked(_grown(page.blocks, int(min(spare // WRITING, MOST_LINES))), width)
    needed = start + body.height + foot.height
    whole = max(height, needed)
    items: list[Item] = []
    if page.stamp:
        items.append(
            Text(
                width / 2,
                start + (whole - start - foot.height) * 0.6,
                page.stamp,
                "stamp",
                "middle",
                outlined=True,
            )
        )
    items += head.items
    items += moved(body.items, 0.0, start)
    items += moved(foot.items, 0.0, whole - foot.height)
    return Drawing(width, whole, tuple(items)), min(1.0, height / needed)


def _grown(blocks: tuple[Any, ...], lines: int) -> tuple[Any, ...]:
    """The same blocks with more lines to write on in the first place for writing there is."""
    out = list(blocks)
    for index, block in enumerate(out):
        if isinstance(block, Writing):
            out[index] = replace(block, lines=block.lines + lines)
            return tuple(out)
        if isinstance(block, Columns):
            parts = tuple(_grown(part, lines) for part in block.parts)
            if parts != block.parts:
                out[index] = replace(block, parts=parts)
                return tuple(out)
    return blocks


@remembered(32)
def _title(rows: tuple[tuple[TitleCell, ...], ...], number: str, width: float) -> Laid:
    items: list[Item] = []
    y = 0.0
    for index, row in enumerate(rows):
        if index:
            items.append(across(width, y))
        laid = [_cell(cell, number, cell.share * width - 13) for cell in row]
        height = max(33.0 if any(cell.strong for cell in row) else 27.5, *(one.height for one in laid))
        x = 0.0
        for cell, one in zip(row, laid, strict=True):
            if x:
                items.append(Line(((x, y), (x, y + height)), "row"))
            items += moved(one.items, x + 7, y)
            x += cell.share * width
        y += height
    items.append(Line(box(0.8, 0.8, width - 1.6, y - 1.6), "frame", closed=True))
    return Laid(tuple(items), y)


def _cell(cell: TitleCell, number: str, room: float) -> Laid:
    items: list[Item] = [Text(0.0, 10.0, cell.caption, "caption")]
    text = number if cell.page else cell.text
    style = "title" if cell.strong else "field"
    lines, size = fitted(text, style, room, 9.5 if cell.strong else 8.0)
    more, bottom = text_lines(lines if text else (), style, 0.0, 12.0, size=size)
    return Laid((*items, *more), bottom + 3.0)


@remembered(256)
def _foot(legend: tuple[str, ...], sentences: tuple[str, ...], width: float) -> Laid:
    """Legend and deferring words; a gap above them, so that nothing stands too near."""
    items: list[Item] = []
    y = BETWEEN + 1
    items.append(across(width, y, "section"))
    y += 4
    if legend:
        x = 0.0
        for sign in legend:
            need = 11 + wide(sign, "legend") + 6.5
            if x + need - 6.5 > width:
                x, y = 0.0, y + 12.5
            items += mark_at(sign, 9.0, x, y)
            items.append(Text(x + 11, y + 7.7, sign, "legend"))
            x += need
        y += 13.5
    for sentence in sentences:
        more, y = text_lines(wrap(sentence, "foot", width), "foot", 0.0, y)
        items += more
    return Laid(tuple(items), y)
