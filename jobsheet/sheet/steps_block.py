"""The steps: box, number, what to do with its note, cutter, and the figures that are set at the machine."""

from __future__ import annotations

import math

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.remembered import remembered
from jobsheet.report.blocks import DialRow, Measures, NoteLine, Step, Steps
from jobsheet.sheet.laid import Laid, Moved, across, lay, lays, text_lines
from jobsheet.sheet.plain_blocks import note_line, wide
from jobsheet.sheet.styles import BOX, STEP_ROW, STYLES
from jobsheet.sheet.wrapping import fitted, wrap

#: Widths from the right edge: share, depth, pace, spindle; what is left is for what to do.
LOAD, DEPTH, PACE, SPINDLE, GAP = 62.0, 54.0, 46.0, 46.0, 6.0
NUMBER = 40.0
DO = 46.0
EDGE = 2.2
#: Words of a row of readings, the least room of one reading with its box, and the height of a line of them.
CAPTION, READING, LINE = 112.0, 74.0, 17.0
#: Words beside the last row of readings are so wide.
BESIDE = 208.0
#: The box beside a reading.
SMALL_BOX = 11.0


@lays(Steps)
def _steps(block: Steps, room: float) -> Laid:
    captions, y = _captions(room) if block.captions else ([], 0.0)
    items: list[Item | Moved] = [*captions]
    for index, row in enumerate(block.rows):
        if index:
            items.append(across(room, y))
        laid = _step(row, room)
        items.append(Moved(laid.items, 0.0, y))
        y += laid.height
    return Laid(tuple(items), y)


def _edges(room: float) -> tuple[float, float, float, float]:
    """Right ends of spindle, pace and depth, and the left of the share."""
    load = room - LOAD
    depth = load - GAP
    pace = depth - DEPTH - GAP
    return pace - PACE - GAP, pace, depth, load


def _captions(room: float) -> tuple[list[Item], float]:
    spindle, pace, depth, load = _edges(room)
    items: list[Item] = [
        Text(0.0, 8.5, "done", "caption"), Text(NUMBER, 8.5, "step", "caption", "end"), Text(DO, 8.5, "do · cutter, place, fluid", "caption"),
        Text(spindle, 8.5, "rpm", "caption", "end"), Text(pace, 8.5, "pace", "caption", "end"), Text(depth, 8.5, "depth, stop", "caption", "end"),
        Text(load, 8.5, "load", "caption"), across(room, 12),
    ]  # fmt: skip
    return items, 12.0


@remembered(128)
def _step(row: Step, room: float) -> Laid:
    spindle, pace, depth, load = _edges(room)
    by_hand = not any((row.pace, row.depth, row.share))
    narrow = (load if by_hand else spindle - SPINDLE) - GAP - DO
    items, bottom = text_lines(wrap(row.do, "step", narrow), "step", DO, EDGE)
    low = EDGE
    if by_hand and row.spindle and not row.spindle[0].isdigit():
        items.append(Text(load, EDGE + 11, row.spindle, "body"))
    else:
        narrow = min(narrow, spindle - SPINDLE - GAP - DO) if row.spindle else narrow
        items, bottom = text_lines(wrap(row.do, "step", narrow), "step", DO, EDGE)
        for text, note, right, wide_ in (
            (row.spindle, row.spindle_note, spindle, SPINDLE), (row.pace, row.pace_note, pace, PACE), (row.depth, row.depth_note, depth, DEPTH),
        ):  # fmt: skip
            more, below = _figure(text, note, right, wide_)
            items += more
            low = max(low, below)
    more, below = _load(row, load)
    items += more
    low = max(low, below)
    notes, beside = _apart(row, room)
    words = [row.cutter, row.note]
    if notes and not notes[-1].sign and not beside:
        words.append(notes[-1].text)
        notes = notes[:-1]
    more, bottom = _note(" · ".join(filter(None, words)), bottom, low, narrow, room - DO)
    items += more
    more, bottom = _notes(notes, max(bottom, low), DO, room)
    items += more
    for dial_row in row.dials:
        top = bottom + 1
        more, bottom = _dials(dial_row, top, room)
        items += more
    if beside:
        more, low = text_lines(beside, "note", room - BESIDE, top)
        items += more
        bottom = max(bottom, low)
    measured: tuple[Moved, ...] = ()
    if row.measures:
        laid = lay(Measures(row.measures), room - DO)
        measured = (Moved(laid.items, DO, bottom),)
        bottom += laid.height
    height = max(bottom + EDGE, STEP_ROW)
    square = Line(box(0.5, EDGE + 1, BOX - 1, BOX - 1), "outline", closed=True)
    number, size = fitted(row.number, "field", NUMBER - BOX - 4, 7.5)
    more, _ = text_lines(number, "field", NUMBER, EDGE + 1.2, anchor="end", size=size)
    if row.stops:
        # The word gives way before the numbers run into what stands beside them.
        fits = 9.5 + wide(row.stops, "small bold") <= DO - 2
        stops = row.stops if fits else row.stops.removeprefix("stop ")
        more += [
            *mark_at("hazard", 8.0, 0.0, EDGE + BOX + 2),
            Text(9.5, EDGE + BOX + 9, stops, "small bold"),
        ]
    return Laid((square, *more, *items, *measured), height)


def _apart(row: Step, room: float) -> tuple[tuple[NoteLine, ...], tuple[str, ...]]:
    """The notes, and the lines of the last of them where it is a reminder that has
    room beside the last row of readings.
    """
    if not row.dials or not row.notes or row.notes[-1].sign or len(row.dials[-1].readings) > 2:
        return row.notes, ()
    lines = wrap(row.notes[-1].text, "note", BESIDE)
    taken = CAPTION + len(row.dials[-1].readings) * _each(row.dials[-1])
    if len(lines) > 3 or DO + taken > room - BESIDE:
        return row.notes, ()
    return row.notes[:-1], lines


def _each(row: DialRow) -> float:
    """The room of one reading with its box and what its line is off."""
    widest = max(
        wide(text, "dial") + (wide(beside, "small") + 3 if beside else 0)
        for text, beside in zip(row.readings, row.beside or ("",) * len(row.readings), strict=True)
    )
    return max(READING, SMALL_BOX + 5 + widest + 8)


def _load(row: Step, left: float) -> tuple[list[Item], float]:
    """The sign of its verdict with the share, what governs, and what was not tried."""
    items: list[Item] = []
    bottom = EDGE
    if row.share:
        items += mark_at(row.verdict, 9.5, left, EDGE + 2.2)
        items.append(Text(left + 13, EDGE + 10.6, row.share, "body"))
        said = (*wrap(row.governs, "small", LOAD), *wrap(row.odds, "small", LOAD))
        items_of, bottom = text_lines(said, "small", left, EDGE + 13.5)
        items += items_of
    if row.untried:
        items += mark_at("not tried", 7.5, left, bottom + 1)
        more, bottom = text_lines(wrap(row.untried, "small", LOAD - 10), "small", left + 10, bottom)
        items += more
    return items, bottom


def _notes(notes: tuple[NoteLine, ...], top: float, left: float, room: float) -> tuple[list[Item], float]:
    items: list[Item] = []
    for beside in notes:
        more, top = note_line(beside, "note", left, top, room - left)
        items += more
        top += 0.8
    return items, top


def _dials(row: DialRow, top: float, room: float) -> tuple[list[Item], float]:
    """The words of a row of readings, and each with its box in the type that is read from
    afar, over as many lines as it takes.
    """
    items, words = text_lines(wrap(row.caption, "caption", CAPTION - 6), "caption", DO, top)
    left = DO + CAPTION
    each = _each(row)
    in_line = max(1, int((room - left + 8) // each))
    for index, text in enumerate(row.readings):
        x, y = left + index % in_line * each, top + index // in_line * LINE
        items.append(Line(box(x, y + 3.5, SMALL_BOX, SMALL_BOX), "outline", closed=True))
        items.append(Text(x + SMALL_BOX + 5, y + 14.5, text, "dial"))
        if row.beside:
            items.append(Text(x + SMALL_BOX + 8 + wide(text, "dial"), y + 14.5, row.beside[index], "small"))
    return items, max(words, top + math.ceil(len(row.readings) / in_line) * LINE)


def _note(note: str, top: float, low: float, narrow: float, room: float) -> tuple[list[Item], float]:
    """The note under what to do: in its column, or over the whole width below
    the figures where that is shorter.
    """
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
