"""A check of the head's tram, as a fix writes it."""

from __future__ import annotations

#: How far the indicator swings and what it may show (common practice); in inches no more than in millimetres.
TEXTS = {
    "mm": {"swing": "150 mm", "allowed": "0.02 mm"},
    "in": {"swing": "6 in", "allowed": "0.0007 in"},
}


def tram_texts(units: str, minutes: str) -> dict[str, str]:
    """The fields of such a step in a job of these units."""
    return {**TEXTS[units], "minutes": minutes}
