"""Rungs and sizes as they are said."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.reckoning.ladder.ladders import Ladder, Rung

translate = QCoreApplication.translate


def length_text(value: float, units: str) -> str:
    """A size to plan to, rounded down as one sets it."""
    if units == "in":
        return f"{int(value / 0.0254 * 1000 + 1e-6) / 1000:.3f} in"
    return f"{int(value * 1e3 * 20 + 1e-6) / 20:.2f}".rstrip("0").rstrip(".") + " mm"


def size_of(rung: Rung, grows: str) -> float | None:
    """What grew, as a number."""
    value = getattr(rung.fields, grows, None)
    return float(value.value) if value is not None and value.value is not None else None


def named(ladder: Ladder, rung: Rung) -> str:
    """The rung by what grew."""
    words = {"depth": translate("Proving", "{size} deep"), "width": translate("Proving", "{size} wide")}
    return words.get(ladder.grows, "{size}").format(size=rung.size)
