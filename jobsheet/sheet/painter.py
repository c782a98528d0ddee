"""Paints neutral drawings on a PDF page: the only place where strokes and letters become ink."""

from __future__ import annotations

import math
from collections.abc import Mapping
from io import BytesIO
from types import MappingProxyType
from typing import Any

from jobsheet.drawing.drawn import DASHES, WEIGHTS, Drawing, Ellipse, Line, Photo, Text
from jobsheet.drawing.making import box
from jobsheet.sheet.fonts import font_name, printable, width
from jobsheet.sheet.styles import INKS, STYLES


def paint(
    canvas: Any,
    drawing: Drawing,
    left: float,
    top: float,
    scale: float = 1.0,
    photographs: Mapping[str, bytes] = MappingProxyType({}),
) -> None:
    """Put a drawing with its upper left corner at a place of the page, y counted up as the PDF does; photographs by content."""
    canvas.saveState()
    canvas.translate(left, top)
    if scale != 1.0:
        canvas.scale(scale, scale)
    canvas.setLineJoin(0)
    for item in drawing.items:
        if isinstance(item, Line):
            _line(canvas, item)
        elif isinstance(item, Ellipse):
            _ellipse(canvas, item)
        elif isinstance(item, Photo):
            _photo(canvas, item, photographs.get(item.content, b""))
        else:
            _text(canvas, item)
    canvas.restoreState()


def _pen(canvas: Any, weight: str | float, dash: str, ink: str) -> bool:
    """Set the pen; False where there is nothing to stroke."""
    wide = WEIGHTS[weight] if isinstance(weight, str) else weight
    if wide <= 0:
        return False
    canvas.setLineWidth(wide)
    canvas.setStrokeGray(INKS[ink])
    canvas.setDash(list(DASHES[dash]) if dash else [])
    return True


def _line(canvas: Any, item: Line) -> None:
    stroke = _pen(canvas, item.weight, item.dash, item.ink)
    if item.fill:
        canvas.setFillGray(INKS[item.fill])
    path = canvas.beginPath()
    first, *others = item.points
    path.moveTo(first[0], -first[1])
    for x, y in others:
        path.lineTo(x, -y)
    if item.closed:
        path.close()
    canvas.drawPath(path, stroke=int(stroke), fill=int(bool(item.fill)))


def _ellipse(canvas: Any, item: Ellipse) -> None:
    stroke = _pen(canvas, item.weight, item.dash, item.ink)
    if item.fill:
        canvas.setFillGray(INKS[item.fill])
    canvas.saveState()
    canvas.translate(item.x, -item.y)
    if item.turn:
        canvas.rotate(-math.degrees(item.turn))
    canvas.ellipse(-item.a, -item.b, item.a, item.b, stroke=int(stroke), fill=int(bool(item.fill)))
    canvas.restoreState()


def _photo(canvas: Any, item: Photo, raw: bytes) -> None:
    """In its box, its whole; a frame with words where it cannot be drawn."""
    from jobsheet.sheet.photograph import fitted_grey

    made = fitted_grey(item.content, raw, item.width, item.height)
    if isinstance(made, str):
        _line(canvas, Line(box(item.x, item.y, item.width, item.height), "thin", "pencil", closed=True))
        _text(canvas, Text(item.x + 3, item.y + 10, made, "caption"))
        return
    from reportlab.lib.utils import ImageReader

    picture, width, height = made
    x, y = item.x + (item.width - width) / 2, item.y + (item.height - height) / 2
    canvas.drawImage(ImageReader(BytesIO(picture)), x, -(y + height), width, height)


def _text(canvas: Any, item: Text) -> None:
    style = STYLES[item.style]
    size = item.size or style.size
    words = printable(item.words).replace("\n", " ")
    if not words:
        return
    shift = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    x = item.x - shift * width(words, size, bold=style.bold)
    canvas.setFillGray(INKS[item.ink or style.ink])
    text = canvas.beginText(x, -item.y)
    text.setFont(font_name(bold=style.bold), size)
    text.textOut(words)
    canvas.drawText(text)
