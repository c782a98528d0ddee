"""A neutral drawing as SVG text: the open standard for line pictures, with the
weights and dashes of the sheet.
"""

from __future__ import annotations

import math
from xml.sax.saxutils import escape

from jobsheet.drawing.drawn import DASHES, WEIGHTS, Drawing, Ellipse, Item, Line, Photo, Text
from jobsheet.drawing.making import box

_TONES = {"ink": "#000000", "pencil": "#3b3b3b", "paper": "#ffffff", "edge": "#666666", "band": "#e0e0e0"}
_SIZES = {"caption": 8.0, "small": 7.0, "size": 9.0, "label": 9.0, "strong": 8.0, "mark": 8.5}


def svg_text(drawing: Drawing, title: str = "") -> str:
    """The whole file; sizes are points, 72 to an inch."""
    wide, high = drawing.width, drawing.height
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}pt" height="{high:g}pt" viewBox="0 0 {wide:g} {high:g}">',
        f"<title>{escape(title)}</title>",
        f'<rect width="{wide:g}" height="{high:g}" fill="#ffffff"/>',
        *(_item(item) for item in drawing.items),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def _tone(name: str) -> str:
    return _TONES.get(name, "#000000")


def _dash(name: str) -> str:
    return " ".join(f"{part:g}" for part in DASHES[name])


def _stroke(item: Line | Ellipse) -> str:
    wide = WEIGHTS[item.weight] if isinstance(item.weight, str) else item.weight
    fill = _tone(item.fill) if item.fill else "none"
    if wide <= 0:
        return f'fill="{fill}" stroke="none"'
    dash = f' stroke-dasharray="{_dash(item.dash)}"' if item.dash else ""
    return f'fill="{fill}" stroke="{_tone(item.ink)}" stroke-width="{wide:g}"{dash}'


def _item(item: Item) -> str:
    if isinstance(item, Line):
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in item.points)
        return f'<{"polygon" if item.closed else "polyline"} points="{points}" {_stroke(item)}/>'
    if isinstance(item, Ellipse):
        turn = (
            f' transform="rotate({math.degrees(item.turn):.3f} {item.x:.2f} {item.y:.2f})"'
            if item.turn
            else ""
        )
        place = f'cx="{item.x:.2f}" cy="{item.y:.2f}" rx="{item.a:.2f}" ry="{item.b:.2f}"'
        return f"<ellipse {place}{turn} {_stroke(item)}/>"
    if isinstance(item, Photo):
        return _item(Line(box(item.x, item.y, item.width, item.height), "thin", closed=True))
    return _words(item)


def _words(item: Text) -> str:
    size = item.size or _SIZES.get(item.style, 9.0)
    bold = ' font-weight="bold"' if item.style in ("strong", "mark", "label bold", "head", "title") else ""
    tone = _tone(item.ink or ("pencil" if item.style in ("caption", "small", "note") else "ink"))
    place = f'x="{item.x:.2f}" y="{item.y:.2f}" text-anchor="{item.anchor}"'
    return f'<text {place} font-family="DejaVu Sans" font-size="{size:g}"{bold} fill="{tone}">{escape(item.words)}</text>'
