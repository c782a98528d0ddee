"""The steps: box, number, what to do with its note, cutter, and the figures that are set at the machine."""

from __future__ import annotations

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import box, moved
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.remembered import remembered
from jobsheet.report.blocks import Step, Steps
from jobsheet.sheet.laid import Laid, across, lays, text_lines
from jobsheet.sheet.plain_blocks import note_line
from jobsheet.sheet.styles import BOX, STEP_ROW, STYLES
from jobsheet.sheet.wrapping import fitted, wrap

#: Widths from the right edge: share, depth, pace, spindle, cutter; what is left is for what to do.
LOAD, DEPTH, PACE, SPINDLE, CUTTER, GAP = 53.0, 54.0, 44.0, 46.0, 50.0, 6.0
NUMBER = 42.0
DO = 49.0
EDGE = 3.0


@lays(Steps)
def _steps(block: Steps, room: float) -> Laid:
    items, y = _captions(room)
    for index, row in enumerate(block.rows):
        if index:
            items.append(across(room, y))
        laid = _step(row, room)
        items += moved(laid.items, 0.0, y)
        y += laid.height
    return Laid(tuple(items), y)


def _edges(room: float) -> tuple[float, float, float, float, float]:
    """Right ends of cutter (its left), spindle, pace and depth, and the left of the share."""
    load = room - LOAD
    depth = load - GAP
    pace = depth - DEPTH - GAP
    spindle = pace - PACE - GAP
    cutter = spindle - SPINDLE - GAP - CUTTER
    return cutter, spindle, pace, depth, load


def _captions(room: float) -> tuple[list[Item], float]:
    cutter, spindle, pace, depth, load = _edges(room)
    items: list[Item] = [
        Text(0.0, 18, "done", "caption"), Text(NUMBER, 18, "step", "caption", "end"), Text(DO, 18, "do", "caption"),
        Text(cutter, 18, "cutter", "caption"), Text(spindle, 8.5, "spindle", "caption", "end"), Text(spindle, 18, "rpm", "caption", "end"),
        Text(pace, 18, "pace", "caption", "end"), Text(depth, 8.5, "depth", "caption", "end"), Text(depth, 18, "or stop", "caption", "end"),
        Text(load, 18, "load", "caption"), across(room, 21.5),
    ]  # fmt: skip
    return items, 21.5


@remembered(128)
def _step(row: Step, room: float) -> Laid:
    cutter, spindle, pace, depth, load = _edges(room)
    items, bottom = text_lines(wrap(row.do, "step", cutter - DO - GAP), "step", DO, EDGE)
    more, low = text_lines(wrap(row.cutter, "label", CUTTER), "label", cutter, EDGE + 2.5)
    items += more
    for text, note, right, wide_ in (
        (row.spindle, row.spindle_note, spindle, SPINDLE), (row.pace, row.pace_note, pace, PACE), (row.depth, row.depth_note, depth, DEPTH),
    ):  # fmt: skip
        more, below = _figure(text, note, right, wide_)
        items += more
        low = max(low, below)
    under = EDGE + 4.2
    if row.share:
        items += mark_at(row.verdict, 9.5, load, EDGE + 4.2)
        items.append(Text(load + 13, EDGE + 12.6, row.share, "body"))
        more, below = text_lines(
            (*wrap(row.governs, "small", LOAD), *wrap(row.odds, "small", LOAD)), "small", load, EDGE + 16.5
        )
        items += more
        low, under = max(low, below), below
    if row.untried:
        top = under + 1
        items += mark_at("not tried", 7.5, load, top)
        more, below = text_lines(wrap(row.untried, "small", LOAD), "small", load, top + 8)
        items += more
        low = max(low, below)
    more, bottom = _note(row.note, bottom, low, cutter - DO - GAP, room - DO)
    items += more
    bottom = max(bottom, low) + EDGE
    bottom = max(bottom, STEP_ROW)
    if row.notes:
        bottom -= EDGE - 1
        for beside in row.notes:
            more, bottom = note_line(beside, "note", DO, bottom, room - DO)
            items += more
            bottom += 0.8
        bottom += EDGE
    height = bottom
    square = Line(box(0.5, EDGE + 3, BOX - 1, BOX - 1), "outline", closed=True)
    number, size = fitted(row.number, "field", NUMBER - BOX - 4, 6.0)
    more, _ = text_lines(number, "field", NUMBER, EDGE + 3.2, anchor="end", size=size)
    return Laid((square, *more, *items), height)


def _note(note: str, top: float, low: float, narrow: float, room: float) -> tuple[list[Item], float]:
    """The note under what to do: in its column, or over the whole width below the figures where that is shorter."""
    if not note:
        return [], top
    beside = text_lines(wrap(note, "note", narrow), "note", DO, top)
    below = text_lines(wrap(note, "note", room), "note", DO, max(top, low))
    return below if below[1] < max(beside[1], low) else beside


def _figure(text: str, note: str, right: float, room: float) -> tuple[list[Item], float]:
    """A figure in the type that is read from afar, its unit small under it; words (`stopped`) are smaller."""
    if not text:
        return [], 0.0
    style = "dial" if any(character.isdigit() for character in text) else "body"
    lines, size = fitted(text, style, room - 2, 9.0)
    top = EDGE + (0.0 if style == "dial" else 3.0)
    items, bottom = text_lines(lines, style, right, top, anchor="end", size=size)
    bottom = max(bottom, EDGE + STYLES["dial"].leading - 1.5)
    more, bottom = text_lines(
        wrap(note, "small", room) if note else (), "small", right, bottom - 1.0, anchor="end"
    )
    return items + more, bottom
