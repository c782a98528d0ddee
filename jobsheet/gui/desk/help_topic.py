"""Which page of the help belongs to a control: that of the nearest thing around it that has one.

A control says what it is about with a method `help_topic`; a field that has no page of its own is a page by
what it asks. Nothing else of a control has to be known.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.gui.forms.field import Field
from jobsheet.gui.forms.help_asked import ask_help

if TYPE_CHECKING:
    from jobsheet.review.pages.one_page import Page

#: Windows of a place are in its folder.
_PLACES = "jobsheet.gui.places."
translate = QCoreApplication.translate


def page_near(widget: QWidget | None, own: Iterable[Page] = ()) -> Page | None:
    """The page for what has the focus; `own` are pages beside those of the review, and the
    first of them is for anything else.
    """
    from jobsheet.review.pages.help_pages import page
    from jobsheet.review.pages.step_pages import field_page

    known = {page.id: page for page in own}
    while widget is not None:
        topic = _said_by(widget)
        if found := known.get(topic) or page(topic):
            return found
        if isinstance(widget, Field):
            around = widget.parentWidget()
            title = around.accessibleName() if around is not None else ""
            return field_page("", title or translate("Help", "this form"), widget.entry)
        widget = widget.parentWidget()
    return next(iter(known.values()), None)


def _said_by(widget: QWidget) -> str:
    """What a control itself is about."""
    said = getattr(widget, "help_topic", None)
    if callable(said):
        return str(said())
    module = type(widget).__module__
    here = module.startswith(_PLACES) and widget.isWindow()
    return f"place:{module.removeprefix(_PLACES).partition('.')[0]}" if here else ""


def answer_f1(window: QWidget) -> None:
    """F1 in a window that holds up the others: the key of the menu does not reach it."""
    QShortcut(QKeySequence("F1"), window).activated.connect(
        lambda: ask_help(QApplication.focusWidget() or window, "")
    )
