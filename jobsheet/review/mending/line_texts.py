"""The line of a cutter, of tolerances or of a gauge with one part of it changed, as a fix writes it."""

from __future__ import annotations

import re

from jobsheet.catalog.tools.measuring import PARTS, instrument_named
from jobsheet.model.quantity import Cutter


def in_a_collet(text: str) -> str:
    """Held in a collet, where a drill chuck held it."""
    return re.sub("in (?:a |the )?drill chuck", "in a collet", text, flags=re.IGNORECASE)


def with_stick_out(text: str, size: str) -> str:
    """So far out, a size with its unit."""
    parts = [part.strip() for part in text.split(",")]
    made = [
        f"{size} out" if re.search(r"\bout\b|stick-?out", part, re.IGNORECASE) else part for part in parts
    ]
    return ", ".join(made)


def with_spiral_flute(text: str) -> str:
    """A tap with a spiral flute in the place of a spiral point."""
    return re.sub("spiral point", "spiral flute", text, flags=re.IGNORECASE)


def in_high_speed_steel(text: str) -> str:
    """The same cutter of high-speed steel."""
    return re.sub(r"\b(solid )?carbide( inserts)?\b", "HSS", text, flags=re.IGNORECASE)


def without_angle(text: str) -> str:
    """Without the angle of its point."""
    return re.sub(r",\s*[\d.,]+\s*(?:°|deg(?:rees)?)", "", text)


def with_micrometer(text: str) -> str:
    """A line of tolerances that names a micrometer."""
    return re.sub(r"\bgauge\s+[^;]+", "gauge micrometer", text)


def with_instrument(text: str, instrument: str) -> str:
    """A line of what is measured with another instrument in the place of the one
    it names, however that is spelt.
    """

    def other(part: re.Match[str]) -> str:
        words = part[0].strip()
        return part[0].replace(words, instrument) if instrument_named(words) else part[0]

    return PARTS.sub(other, text)


def with_diameter(cutter: Cutter, size: str) -> str:
    """The line of a cutter with another diameter, its place left out: it is another tool.
    Nothing where that cannot be written.
    """
    text = re.sub(rf",\s*{re.escape(cutter.place)}\s*$", "", cutter.text) if cutter.place else cutter.text
    if not cutter.size or cutter.size not in text:
        return ""
    head, _, rest = text.partition(cutter.size)
    rest = re.sub(r"^\s*(mm|in)\b", "", rest)
    return f"{head}{size}{rest}"
