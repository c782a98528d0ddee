"""Paints neutral drawings on a PDF page: the only place where strokes and letters become ink.

What is drawn is written as operators of the page (ISO 32000-1, tables 57, 59, 60, 74, 108) in one piece:
the PDF library writes them number by number, which was a quarter of a sheet's time. Fonts, photographs and
the file itself are the library's.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from io import BytesIO
from types import MappingProxyType
from typing import Any

from jobsheet.drawing.drawn import DASHES, WEIGHTS, Drawing, Ellipse, Line, Photo, Point, Text
from jobsheet.drawing.making import box
from jobsheet.sheet.fonts import font_name, printable, width
from jobsheet.sheet.styles import INKS, STYLES

#: Places are written to so many decimals [points]: a thirtieth of a micrometre.
DECIMALS = 4
#: How far the two inner points of a quarter of a circle lie along their tangents, drawn as one cubic curve.
KAPPA = 4 / 3 * (math.sqrt(2) - 1)
#: Bytes as they stand between the brackets of a text: what is no plain letter, a
#: bracket or a stroke as its octal code.
_ESCAPED = tuple(
    f"\\{chr(byte)}" if chr(byte) in "()\\" else chr(byte) if 32 <= byte < 127 else f"\\{byte:03o}"
    for byte in range(256)
)
_SHIFT = {"start": 0.0, "middle": 0.5, "end": 1.0}


def paint(
    canvas: Any,
    drawing: Drawing,
    left: float,
    top: float,
    scale: float = 1.0,
    photographs: Mapping[str, bytes] = MappingProxyType({}),
) -> None:
    """Put a drawing with its upper left corner at a place of the page, y counted up as
    the PDF does; photographs by content.
    """
    canvas.saveState()
    canvas.translate(left, top)
    if scale != 1.0:
        canvas.scale(scale, scale)
    canvas.setLineJoin(0)
    pen = _Pen(canvas)
    for item in drawing.items:
        if isinstance(item, Line):
            pen.line(item)
        elif isinstance(item, Ellipse):
            pen.ellipse(item)
        elif isinstance(item, Photo):
            _photo(canvas, pen, item, photographs.get(item.content, b""))
        else:
            pen.text(item)
    pen.put_down()
    canvas.restoreState()


def number(value: float) -> str:
    """A number as a page has it; never with an exponent, and nought without a sign."""
    return f"{round(value, DECIMALS) + 0.0:.9g}"


def _points(points: tuple[Point, ...]) -> str:
    """The corners of a path, the first moved to, from there on with lines; y
    counts down here and up on the page.
    """
    flat = [round(one, DECIMALS) + 0.0 for x, y in points for one in (x, -y)]
    return (f"%.9g %.9g m{' %.9g %.9g l' * (len(points) - 1)}") % tuple(flat)


class _Pen:
    """Writes what is drawn; says width, dash, tone and type again only where they change."""

    def __init__(self, canvas: Any) -> None:
        self._canvas = canvas
        self._written: list[str] = []
        self._now: dict[str, str] = {}
        self._fonts: dict[bool, Any] = {}

    def put_down(self) -> None:
        """Onto the page with what was written so far."""
        if self._written:
            self._canvas.addLiteral("\n".join(self._written))
        self._written, self._now = [], {}

    def _set(self, operator: str, value: str) -> None:
        if self._now.get(operator) != value:
            self._now[operator] = value
            self._written.append(f"{value} {operator}")

    def _ready(self, item: Line | Ellipse) -> str:
        """Set width, dash and tones; the operator that ends the path, without its closing."""
        wide = WEIGHTS[item.weight] if isinstance(item.weight, str) else item.weight
        if wide > 0:
            self._set("w", number(wide))
            self._set("G", number(INKS[item.ink]))
            self._set("d", f"[{' '.join(map(number, DASHES[item.dash]))}] 0" if item.dash else "[] 0")
        if item.fill:
            self._set("g", number(INKS[item.fill]))
        return ("B" if item.fill else "S") if wide > 0 else "f" if item.fill else "n"

    def line(self, item: Line) -> None:
        """Strokes from point to point."""
        end = self._ready(item)
        self._written.append(f"{_points(item.points)}{' h' if item.closed else ''} {end}")

    def ellipse(self, item: Ellipse) -> None:
        """Four curves, one a quarter."""
        end = self._ready(item)
        cos, sin = math.cos(item.turn), math.sin(item.turn)
        # The half axes on the page, where y counts up.
        ax, ay, bx, by = item.a * cos, -item.a * sin, item.b * sin, item.b * cos
        x, y = item.x, -item.y
        flat = [x + ax, y + ay]
        for ux, uy, vx, vy in (
            (ax, ay, bx, by),
            (bx, by, -ax, -ay),
            (-ax, -ay, -bx, -by),
            (-bx, -by, ax, ay),
        ):
            flat += (x + ux + KAPPA * vx, y + uy + KAPPA * vy, x + vx + KAPPA * ux, y + vy + KAPPA * uy, x + vx, y + vy)  # fmt: skip
        curves = " %.9g %.9g %.9g %.9g %.9g %.9g c" * 4
        self._written.append(
            f"%.9g %.9g m{curves} h {end}" % tuple(round(one, DECIMALS) + 0.0 for one in flat)
        )

    def text(self, item: Text) -> None:
        """Words on their base line."""
        style = STYLES[item.style]
        size = item.size or style.size
        words = printable(item.words).replace("\n", " ")
        if not words:
            return
        shift = _SHIFT[item.anchor]
        x = item.x - shift * width(words, size, bold=style.bold) if shift else item.x
        self._set("g", number(INKS[item.ink or style.ink]))
        self._written.append(f"BT 1 0 0 1 {number(x)} {number(-item.y)} Tm")
        font, document = self._font(style.bold), self._canvas._doc  # noqa: SLF001 - as `attachment.py` has it
        for subset, codes in font.splitString(words, document):
            self._set("Tf", f"{font.getSubsetInternalName(subset, document)} {number(size)}")
            self._written.append(f"({''.join(map(_ESCAPED.__getitem__, codes))}) Tj")
        self._written.append("ET")

    def _font(self, bold: bool) -> Any:
        if bold not in self._fonts:
            from reportlab.pdfbase import pdfmetrics

            self._fonts[bold] = pdfmetrics.getFont(font_name(bold=bold))
        return self._fonts[bold]


def _photo(canvas: Any, pen: _Pen, item: Photo, raw: bytes) -> None:
    """In its box, its whole; a frame with words where it cannot be drawn."""
    from jobsheet.sheet.photograph import fitted_grey

    made = fitted_grey(item.content, raw, item.width, item.height)
    if isinstance(made, str):
        pen.line(Line(box(item.x, item.y, item.width, item.height), "thin", "pencil", closed=True))
        pen.text(Text(item.x + 3, item.y + 10, made, "caption"))
        return
    from reportlab.lib.utils import ImageReader

    pen.put_down()
    picture, width, height = made
    x, y = item.x + (item.width - width) / 2, item.y + (item.height - height) / 2
    canvas.drawImage(ImageReader(BytesIO(picture)), x, -(y + height), width, height)
