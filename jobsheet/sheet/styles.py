"""Every size, weight and tone that is printed; nothing else in the sheet has a number for them."""

from __future__ import annotations

from typing import NamedTuple

MM = 72 / 25.4


class Style(NamedTuple):
    """Type: size [points], weight, tone."""

    size: float
    bold: bool = False
    ink: str = "ink"

    @property
    def leading(self) -> float:
        """From one base line to the next."""
        return self.size * 1.22


STYLES: dict[str, Style] = {
    "title": Style(15, bold=True),
    "head": Style(11, bold=True),
    "step": Style(12),
    "dial": Style(15, bold=True),
    "number": Style(11, bold=True),
    "field": Style(11),
    "body": Style(10),
    "label": Style(9),
    "label bold": Style(9, bold=True),
    "note": Style(8.5, ink="pencil"),
    "note bold": Style(8.5, bold=True),
    "caption": Style(8, ink="pencil"),
    "strong": Style(8, bold=True),
    "mark": Style(8.5, bold=True),
    "size": Style(9),
    "small": Style(7, ink="pencil"),
    "legend": Style(7.7),
    "foot": Style(7.5),
    "stamp": Style(28, bold=True),
}

#: The stroke of outlined letters: seen at once, and what stands under them can still be read.
OUTLINE = 0.55
#: Grey of each ink, 0 black to 1 white; captions are 77 % black.
INKS: dict[str, float] = {
    "ink": 0.0, "pencil": 0.23, "paper": 1.0, "edge": 0.4, "rule": 0.72, "band": 0.88, "bluemark": 0.0, "purplemark": 0.0, "vermmark": 0.0,
}  # fmt: skip

#: Paper by name: width and height [points].
PAPERS: dict[str, tuple[float, float]] = {"a4": (210 * MM, 297 * MM), "letter": (612.0, 792.0)}
SIDE, TOP, BOTTOM = 15 * MM, 13 * MM, 12 * MM

BOX = 5.2 * MM
STEP_ROW = 10.2 * MM
TABLE_ROW = 6.9 * MM
#: Between columns that stand side by side, and between two blocks.
GUTTER, BETWEEN = 14.0, 2.5
MARK = 9.5
#: The smallest type that text is shrunk to before it wraps.
SMALLEST = 7.0
