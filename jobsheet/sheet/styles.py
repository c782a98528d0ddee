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
    "step": Style(11.5),
    "dial": Style(14.2, bold=True),
    "number": Style(11, bold=True),
    "field": Style(11),
    "body": Style(10),
    "label": Style(9),
    "label bold": Style(9, bold=True),
    "note": Style(8, ink="pencil"),
    "note bold": Style(8, bold=True),
    "caption": Style(7.5, ink="pencil"),
    "strong": Style(8, bold=True),
    "mark": Style(8.5, bold=True),
    "size": Style(9),
    "small": Style(7.5, ink="pencil"),
    "small bold": Style(7.5, bold=True),
    "legend": Style(7.7),
    "foot": Style(7.5),
    "band": Style(12, bold=True),
}

#: Grey of each ink, 0 black to 1 white; captions are 77 % black.
INKS: dict[str, float] = {
    "ink": 0.0, "pencil": 0.23, "paper": 1.0, "edge": 0.4, "rule": 0.72, "band": 0.88, "bluemark": 0.0, "purplemark": 0.0, "vermmark": 0.0,
}  # fmt: skip

#: Paper by name: width and height [points].
PAPERS: dict[str, tuple[float, float]] = {"a4": (210 * MM, 297 * MM), "letter": (612.0, 792.0)}
SIDE, TOP, BOTTOM = 15 * MM, 10.5 * MM, 8.5 * MM

BOX = 4.6 * MM
STEP_ROW = 9.0 * MM
TABLE_ROW = 6.1 * MM
#: Between columns that stand side by side, and between two blocks.
GUTTER, BETWEEN = 14.0, 1.3
MARK = 9.5
#: The smallest type that text is shrunk to before it wraps.
SMALLEST = 7.5
