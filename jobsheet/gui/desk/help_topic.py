"""Which page of the help belongs to a control: the nearest around it that has one.

A control says what it is about with a method `help_topic`; nothing else of it has to be known.
"""

from __future__ import annotations

from collections.abc import Container

from PySide6.QtWidgets import QWidget

#: Windows of a place are in its folder.
_PLACES = "jobsheet.gui.places."


def topic_of(widget: QWidget | None, own: Container[str] = ()) -> str:
    """The id of the page for what has the focus; `own` are pages beside those of the review. Nothing where none fits."""
    from jobsheet.review.pages.help_pages import page

    while widget is not None:
        topic = _said_by(widget)
        if topic and (topic in own or page(topic) is not None):
            return topic
        widget = widget.parentWidget()
    return "keys"


def _said_by(widget: QWidget) -> str:
    """What a control itself is about."""
    said = getattr(widget, "help_topic", None)
    if callable(said):
        return str(said())
    module = type(widget).__module__
    return (
        f"place:{module.removeprefix(_PLACES).partition('.')[0]}"
        if module.startswith(_PLACES) and widget.isWindow()
        else ""
    )
