"""A control that is pressed for its page of the help tells the window around it, whichever that is."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget


def ask_help(widget: QWidget, topic: str) -> None:
    """Have a page opened by the first window around that can; nothing where none can."""
    around: QWidget | None = widget
    while around is not None:
        can = getattr(around, "open_help", None)
        if callable(can):
            can(topic)
            return
        around = around.parentWidget()
