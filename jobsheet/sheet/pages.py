"""A page on paper: title block at the top, blocks from there down, legend and foot at the bottom."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec.structs import replace

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.remembered import remembered
from jobsheet.report.blocks import Columns, Page, StopBand, StopCause, TitleCell, Writing
from jobsheet.sheet import rungs_block, steps_block, table_block
from jobsheet.sheet.laid import Laid, Moved, across, lay, settled, stacked, text_lines
from jobsheet.sheet.plain_blocks import WRITING, wide
from jobsheet.sheet.printed_code import SIDE as CODE_SIDE
from jobsheet.sheet.printed_code import printed_code
from jobsheet.sheet.styles import BETWEEN, BOTTOM, PAPERS, SIDE, STYLES, TOP
from jobsheet.sheet.wrapping import fitted, wrap

#: Under the title block.
AFTER_TITLE = 6.0
#: Between the band of stop notes and the title block; widths in it for steps and for initials with date.
AFTER_BAND, WHERE, SIGNED = 5.0, 104.0, 112.0
#: Room of the printed code beside the title block.
CODE = CODE_SIDE + 13.0
#: Lines to write on that a page may gain at most.
MOST_LINES = 14

# Each of these modules registers how its block is laid.
_BLOCKS = (steps_block, table_block, rungs_block)


def fits_on(paper: str) -> Callable[[Page], bool]:
    """Whether a page has room on that paper, for `report/` to ask."""

    def fits(page: Page) -> bool:
        width, height = _inside(paper, half=page.half)
        return _needed(page, width) <= height + 0.01

    return fits


def _inside(paper: str, *, half: bool = False) -> tuple[float, float]:
    width, height = PAPERS[paper]
    return width - 2 * SIDE, height / (2 if half else 1) - TOP - BOTTOM


def _needed(page: Page, width: float) -> float:
    body = sum(lay(block, width).height for block in page.blocks) + BETWEEN * max(0, len(page.blocks) - 1)
    return (
        _band(page.band, width).height
        + _head(page, "999 of 999", width).height
        + AFTER_TITLE
        + body
        + _foot(page.legend, page.foot, page.code, width).height
    )


def drawn(page: Page, paper: str) -> tuple[Drawing, float]:
    """The page as one drawing inside the margins, and the scale that brings it
    onto the paper (1 but for monsters).
    """
    width, height = _inside(paper, half=page.half)
    head = _head(page, f"{page.number} of {page.total}" if page.total else "", width)
    foot = _foot(page.legend, page.foot, page.code, width)
    above = _band(page.band, width)
    start = above.height + head.height + AFTER_TITLE
    body = stacked(page.blocks, width)
    spare = height - start - body.height - foot.height
    if spare >= WRITING:
        body = stacked(_grown(page.blocks, int(min(spare // WRITING, MOST_LINES))), width)
    needed = start + body.height + foot.height
    whole = max(height, needed)
    items = (
        *above.items,
        Moved(head.items, 0.0, above.height),
        Moved(body.items, 0.0, start),
        Moved(foot.items, 0.0, whole - foot.height),
    )
    return Drawing(width, whole, tuple(settled(items))), min(1.0, height / needed)


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


def _head(page: Page, number: str, width: float) -> Laid:
    """The title block; on the cover with the printed code beside it, and in
    clear below that what it checks by.
    """
    if not page.printed:
        return _title(page.title, number, width)
    title = _title(page.title, number, width - CODE)
    code = printed_code(page.printed)
    items: list[Item | Moved] = [*title.items, Moved(code.items, width - code.width + 5.0, -4.0)]
    items.append(Text(width, code.height + 2.0, "check code", "caption", "end"))
    items.append(Text(width, code.height + 11.0, page.printed.rpartition(":")[2], "caption", "end"))
    return Laid(tuple(items), max(title.height, code.height + 14.0))


@remembered(32)
def _title(rows: tuple[tuple[TitleCell, ...], ...], number: str, width: float) -> Laid:
    items: list[Item | Moved] = []
    y = 0.0
    for index, row in enumerate(rows):
        if index:
            items.append(across(width, y))
        laid = [_cell(cell, number, cell.share * width - 13) for cell in row]
        height = max(31.0 if any(cell.strong for cell in row) else 26.0, *(other.height for other in laid))
        x = 0.0
        for cell, one in zip(row, laid, strict=True):
            if x:
                items.append(Line(((x, y), (x, y + height)), "row"))
            items.append(Moved(one.items, x + 7, y))
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


@remembered(64)
def _band(band: StopBand | None, width: float) -> Laid:
    """The stop notes above the page: what nobody has read, and one row a cause with its line for initials."""
    if band is None:
        return Laid((), 0.0)
    items: list[Item] = []
    y = 0.0
    if band.head:
        items += mark_at("hazard", 13.0, 8.0, 5.0)
        items.append(Text(27.0, 16.5, band.head, "band"))
        left = 27.0 + wide(band.head, "band") + 10
        more, y = text_lines(wrap(band.reason, "note", width - left - 6), "note", left, 2.5)
        items += more
        y = max(y + 2.5, 23.0)
    for cause in band.causes:
        if y:
            items.append(across(width, y))
        items += _cause(cause, y, width)
        y += _cause_high(cause, width)
    items.append(Line(box(0.8, 0.8, width - 1.6, y - 1.6), "frame", closed=True))
    return Laid(tuple(items), y + AFTER_BAND)


def _cause_lines(cause: StopCause, width: float) -> tuple[tuple[str, ...], tuple[str, ...]]:
    return wrap(cause.text, "strong", width - 34 - WHERE - SIGNED), wrap(cause.where, "note", WHERE - 8)


def _cause_high(cause: StopCause, width: float) -> float:
    return max(21.0, *(len(lines) * 9.8 + 5 for lines in _cause_lines(cause, width)))


def _cause(cause: StopCause, y: float, width: float) -> list[Item]:
    """Number in its box, words, steps, and initials with date: given, or to be written."""
    text, where = _cause_lines(cause, width)
    items: list[Item] = [Line(box(8.0, y + 3.5, 14, 14), "outline", closed=True)]
    items.append(Text(15.0, y + 14, str(cause.number), "label bold", "middle"))
    more, _ = text_lines(text, "strong", 28.0, y + 3.0)
    items += more
    more, _ = text_lines(where, "note", width - SIGNED - 8, y + 3.5, anchor="end")
    items += more
    left = width - SIGNED
    if cause.given:
        return [*items, Text(left + 2, y + 14, cause.given, "label bold")]
    for at, size, caption in ((left, 68.0, cause.asked or "initials"), (left + 71.0, 36.0, "date")):
        items.append(Line(box(at, y + 3, size, 15), "outline", closed=True))
        lines, size_of = fitted(caption, "caption", size - 6)
        items.append(Text(at + 3, y + 13.5, lines[0], "caption", size=size_of))
    return items


@remembered(256)
def _foot(legend: tuple[str, ...], sentences: tuple[str, ...], code: str, width: float) -> Laid:
    """Legend, deferring words and check code; a gap above them, so that nothing stands too near."""
    items: list[Item] = []
    y = BETWEEN + 1
    items.append(across(width, y, "section"))
    y += 4
    x = 0.0
    if legend:
        for sign in legend:
            need = 11 + wide(sign, "legend") + 6.5
            if x + need - 6.5 > width:
                x, y = 0.0, y + 11.5
            items += mark_at(sign, 9.0, x, y)
            items.append(Text(x + 11, y + 7.7, sign, "legend"))
            x += need
        y += 11.5
    free = code
    if free and legend and x + wide(free, "legend") + 4 <= width:
        items.append(Text(width, y - 3.8, free, "legend", "end"))
        free = ""
    last = 0.0
    for sentence in sentences:
        lines = wrap(sentence, "foot", width)
        more, y = text_lines(lines, "foot", 0.0, y)
        items += more
        last = wide(lines[-1], "foot")
    if free:
        if last + wide(free, "legend") + 10 > width:
            y += STYLES["foot"].leading
        items.append(Text(width, y - 2.0, free, "legend", "end"))
    return Laid(tuple(items), y)
