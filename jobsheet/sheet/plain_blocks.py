"""Headings, paragraphs, notes, ticks, pictures and lines to write on."""

from __future__ import annotations

import math
import re

from jobsheet.drawing.drawn import Item, Line, Photo, Text
from jobsheet.drawing.making import box
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.report.blocks import (
    Blanks,
    Box,
    Columns,
    Facts,
    Gap,
    Heading,
    Measures,
    NoteLine,
    NoteLines,
    Outcomes,
    Photograph,
    Picture,
    Rule,
    Signature,
    Ticks,
    Words,
    Worked,
    Writing,
)
from jobsheet.sheet.fonts import printable, width
from jobsheet.sheet.laid import Laid, Moved, across, lays, stacked, text_lines
from jobsheet.sheet.styles import BOX, GUTTER, MARK, STYLES
from jobsheet.sheet.wrapping import fitted, wrap

#: From one line to write on to the next, and the height of a row of short ones.
WRITING, BLANK = 19.0, 19.0
#: Blanks for what was found, and for each number that is written between two cuts.
FOUND, BETWEEN_CUTS = 70.0, 40.0
#: The least room of a short line behind its caption.
LEAST_BLANK = 26.0
#: Ticks begin on stops so far apart: they stand under one another where they can.
TICK = 26.0


def wide(text: str, style: str) -> float:
    """How wide a text is in a style."""
    return width(printable(text), STYLES[style].size, bold=STYLES[style].bold)


@lays(Rule)
def _rule(block: Rule, room: float) -> Laid:
    return Laid((across(room, 1.2, block.weight),), 2.4)


@lays(Gap)
def _gap(block: Gap, _room: float) -> Laid:
    return Laid((), block.points)


@lays(Heading)
def _heading(block: Heading, room: float) -> Laid:
    lines, size = fitted(block.text, "head", room, 9.0)
    items, bottom = text_lines(lines, "head", 0.0, 0.0, size=size)
    if block.beside:
        left = wide(block.text, "head") + 7
        if len(lines) == 1 and left + wide(block.beside, "caption") <= room:
            items.append(Text(left, 10.5, block.beside, "caption"))
        else:
            more, bottom = text_lines(wrap(block.beside, "caption", room), "caption", 0.0, bottom)
            items += more
    return Laid(tuple(items), bottom + 1.0)


@lays(Words)
def _words(block: Words, room: float) -> Laid:
    items, bottom = text_lines(wrap(block.text, block.style, room), block.style, 0.0, 0.0)
    return Laid(tuple(items), bottom)


@lays(Facts)
def _facts(block: Facts, room: float) -> Laid:
    items: list[Item] = []
    y = 0.0
    for caption, text in block.rows:
        left = max(wide(caption, "caption") + 5, 32.0)
        items.append(Text(0.0, y + 8.6, caption, "caption"))
        first = wrap(text, "label", max(room - left, 40.0))
        more, y = text_lines(first, "label", left, y)
        items += more
        y += 1.6
    return Laid(tuple(items), y)


@lays(Picture)
def _picture(block: Picture, room: float) -> Laid:
    head = _heading(Heading(block.title, block.caption), room) if block.title else Laid((), 0.0)
    shift = max(0.0, (room - block.drawing.width) / 2)
    drawing = Moved(block.drawing.items, shift, head.height)
    return Laid((*head.items, drawing), head.height + block.drawing.height)


@lays(Photograph)
def _photograph(block: Photograph, room: float) -> Laid:
    """As large as its height and the room allow, with its words below."""
    scale = min(room / block.wide, block.most / block.high)
    width, height = block.wide * scale, block.high * scale
    lines = wrap(block.words, "caption", room) if block.words else ()
    words, bottom = text_lines(lines, "caption", 0.0, height + 2)
    return Laid((Photo(0.0, 0.0, width, height, block.content), *words), bottom)


@lays(Ticks)
def _ticks(block: Ticks, room: float) -> Laid:
    """One after the other in lines, as many in a line as have room; words
    that are wider than the room wrap.
    """
    items: list[Item] = []
    x, y, high = 0.0, 1.0, 0.0
    line = STYLES["label"].leading
    for words in block.items:
        need = BOX + 5 + wide(words, "label")
        if x and x + need > room:
            x, y, high = 0.0, y + high + 2.6, 0.0
        lines = wrap(words, "label", room - BOX - 5)
        items.append(Line(box(x + 0.5, y + 0.5, BOX - 1, BOX - 1), "outline", closed=True))
        more, bottom = text_lines(lines, "label", x + BOX + 5, y + (BOX - line) / 2)
        items += more
        high = max(high, BOX, bottom - y)
        x = (math.floor((x + need + 8) / TICK) + 1) * TICK
    return Laid(tuple(items), y + high + 1.6 if block.items else 0.0)


@lays(NoteLines)
def _notes(block: NoteLines, room: float) -> Laid:
    items: list[Item] = []
    y = 1.0
    for note in block.lines:
        more, y = note_line(note, block.style, 0.0, y, room)
        items += more
        y += 3.0
    return Laid(tuple(items), y)


def note_line(note: NoteLine, style: str, x: float, y: float, room: float) -> tuple[list[Item], float]:
    """A note with its sign before it, and the blank for initials under it; items and lower edge."""
    if note.bold:
        style = "note bold" if style in ("note", "note bold") else "label bold"
    size = min(MARK, STYLES[style].size + 1)
    items: list[Item] = list(mark_at(note.sign, size, x, y + 0.4)) if note.sign else []
    left = x + (size + 4 if note.sign else 0)
    more, bottom = text_lines(wrap(note.text, style, room - (left - x)), style, left, y)
    items += more
    if note.initials:
        asked = f"{note.initials}:"
        items.append(Text(left, bottom + 11, asked, "label"))
        start = left + wide(asked, "label") + 5
        if note.given:
            items.append(Text(start, bottom + 11, note.given, "label bold"))
        else:
            items.append(Line(((start, bottom + 12), (min(start + 90, x + room), bottom + 12)), "row"))
        bottom += 15
    return items, bottom


@lays(Box)
def _box(block: Box, room: float) -> Laid:
    inside = stacked(block.blocks, room - 18)
    height = inside.height + 14
    frame = Line(box(0.8, 0.8, room - 1.6, height - 1.6), "frame", closed=True)
    return Laid((frame, Moved(inside.items, 9.0, 7.0)), height)


@lays(Columns)
def _columns(block: Columns, room: float) -> Laid:
    count = len(block.parts)
    inside = room - GUTTER * (count - 1)
    items: list[Item | Moved] = []
    x = 0.0
    edges = []
    parts = [stacked(blocks, inside * share) for blocks, share in zip(block.parts, block.shares, strict=True)]
    height = max(laid.height for laid in parts)
    for blocks, share, laid in zip(block.parts, block.shares, parts, strict=True):
        edges.append(x)
        spare = int((height - laid.height) // WRITING)
        whole = stacked(_more_lines(blocks, spare), inside * share) if spare else laid
        items.append(Moved(whole.items, x, 0.0))
        x += inside * share + GUTTER
    for index in block.ruled:
        at = edges[index] - GUTTER / 2
        items.append(Line(((at, 0.0), (at, height)), "row"))
    return Laid(tuple(items), height)


def _more_lines(blocks: tuple[object, ...], lines: int) -> tuple[object, ...]:
    """The same blocks, with lines to write on down to where the neighbour ends."""
    return tuple(
        Writing(block.lines + lines, block.caption) if isinstance(block, Writing) else block
        for block in blocks
    )


@lays(Writing)
def _writing(block: Writing, room: float) -> Laid:
    """Lines with small words on them; words that are wider than the room go on on the next line."""
    said = wrap(block.caption, "caption", room) if block.caption else ()
    count = max(block.lines, len(said))
    lines = (across(room, (index + 1) * WRITING - 1) for index in range(count))
    words = (Text(0.0, (index + 1) * WRITING - 5, line, "caption") for index, line in enumerate(said))
    return Laid((*words, *lines), count * WRITING)


@lays(Blanks)
def _blanks(block: Blanks, room: float) -> Laid:
    return Laid(tuple(_short_lines(block.captions, 0.0, room, 0.0)), BLANK)


@lays(Outcomes)
def _outcomes(block: Outcomes, room: float) -> Laid:
    """Steps with their boxes, as many in a line as have room; the short lines behind them, or
    below where they would be too short.
    """
    items: list[Item] = [Text(0.0, 12.0, block.head, "head")] if block.head else []
    x, y = (wide(block.head, "head") + 12 if block.head else 0.0), 1.0
    for number in block.steps:
        need = wide(number, "label bold") + 4 + BOX
        if x and x + need > room:
            x, y = 0.0, y + BOX + 4
        items.append(Text(x, y + BOX - 3, number, "label bold"))
        items.append(Line(box(x + need - BOX + 0.5, y + 0.5, BOX - 1, BOX - 1), "outline", closed=True))
        x += need + 10
    if not block.captions:
        return Laid(tuple(items), y + BOX + 1)
    if room - x < sum(wide(caption, "caption") + LEAST_BLANK for caption in block.captions):
        x, y = 0.0, y + BOX + 1
    return Laid((*items, *_short_lines(block.captions, x, room, y + BOX - BLANK + 1)), y + BOX + 2)


def _short_lines(captions: tuple[str, ...], left: float, right: float, y: float) -> list[Item]:
    each = (right - left + 10) / len(captions)
    items: list[Item] = []
    for index, caption in enumerate(captions):
        x = left + index * each
        items.append(Text(x, y + BLANK - 5, caption, "caption"))
        items.append(Line(((x, y + BLANK - 2), (x + each - 10, y + BLANK - 2)), "row"))
    return items


@lays(Signature)
def _signature(block: Signature, room: float) -> Laid:
    items, bottom = text_lines(wrap(block.text, "body", room * 0.5), "body", 0.0, 1.0)
    height = max(bottom, BLANK) + 2
    return Laid((*items, *_short_lines(block.captions, room * 0.56, room, height - BLANK)), height)


@lays(Measures)
def _measures(block: Measures, room: float) -> Laid:
    """Under its step: the size, its limits, a blank for what was found; then how,
    and what is written between two cuts.
    """
    items: list[Item] = []
    y = 0.0
    for row in block.rows:
        base = y + 14.5
        what = wrap(row.what, "label bold", room * 0.34)
        more, bottom = text_lines(what, "label bold", 0.0, base - 8.7)
        items += more
        x = max((wide(line, "label bold") for line in what), default=0.0) + (8 if row.what else 0)
        if row.low:
            x = _limits(items, row.low, row.high, x, base)
        if row.again:
            bottom = _again(items, row.again, x + 4, base, room)
        elif row.low:
            items.append(Text(x + 6, base, "found", "caption"))
            start = x + 6 + wide("found", "caption") + 4
            items.append(Line(((start, base + 1), (min(start + FOUND, room), base + 1)), "row"))
            x = start + FOUND + 8
        for words in row.boxes:
            if x + BOX + 5 + wide(words, "body") > room:
                x, base = 0.0, base + BOX + 3
            items.append(Line(box(x, base - BOX + 3.5, BOX - 1, BOX - 1), "outline", closed=True))
            items.append(Text(x + BOX + 5, base, words, "body"))
            x += BOX + 12 + wide(words, "body")
        y = max(base + 4.5, bottom + 2)
        if row.how and not row.again and x + wide(row.how, "caption") + 6 <= room:
            items.append(Text(x + 6, base, row.how, "caption"))
        elif row.how:
            more, y = text_lines(wrap(row.how, "caption", room), "caption", 0.0, y)
            items += more
    return Laid(tuple(items), y)


def _again(items: list[Item], words: str, x: float, base: float, room: float) -> float:
    """Words with lines to write on where they have underscores; what has no room goes
    on in the next line. The lower edge.
    """
    for index, piece in enumerate(words.split("___")):
        if index:
            if x + BETWEEN_CUTS > room:
                x, base = 0.0, base + 17
            items.append(Line(((x, base + 1), (x + BETWEEN_CUTS, base + 1)), "row"))
            x += BETWEEN_CUTS + 4
        if text := piece.strip(" "):
            if x + wide(text, "caption") > room:
                x, base = 0.0, base + 17
            items.append(Text(x, base, text, "caption"))
            x += wide(text, "caption") + 3
    return base + 2


def _limits(items: list[Item], low: str, high: str, x: float, base: float) -> float:
    """The limits as two figures."""
    for text, style in ((low, "number"), ("to" if high else "", "label"), (high, "number")):
        if text:
            items.append(Text(x, base, text, style))
            x += wide(text, style) + 4
    return x


_GREEK = {
    "pi": "π", "phi": "φ", "kappa": "κ", "gamma": "γ", "eta": "η", "mu": "µ", "alpha": "α", "beta": "β", "rho": "ρ", "sigma": "σ",
    "lambda": "λ", "delta": "δ", "tau": "τ", "omega": "ω", "epsilon": "ε", "theta": "θ", "psi": "ψ",
}  # fmt: skip
_WORD = re.compile(rf"(?<![A-Za-z])({'|'.join(_GREEK)})(?![A-Za-z])")


def symbols(text: str) -> str:
    """A formula as one writes it: Greek letters, a raised 2 and 3, a real minus sign."""
    text = _WORD.sub(lambda match: _GREEK[match[1]], text)
    text = re.sub(r"\^2(?![\d.])", "²", text)
    text = re.sub(r"\^3(?![\d.])", "³", text)
    return re.sub(r"(?<=[\s(])-(?=[\s\w(])", "−", text).replace(" * ", " · ")


@lays(Worked)
def _worked(block: Worked, room: float) -> Laid:
    items, y = text_lines(wrap(block.title, "label bold", room), "label bold", 0.0, 2.0)
    for text, style, indent in (
        (symbols(block.expression), "body", 14.0),
        (symbols(block.numbers), "note", 14.0),
        (symbols(block.result), "label bold", 14.0),
        *((f"Caveat: {caveat}", "note bold", 14.0) for caveat in block.caveats),
        (f"Source: {block.source}" if block.source else "", "caption", 14.0),
    ):
        if text:
            more, y = text_lines(wrap(text, style, room - indent), style, indent, y)
            items += more
    return Laid(tuple(items), y + 3)
