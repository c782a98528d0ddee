"""The sheets on screen and in a file; the makers of pages are imported when somebody asks for pages."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from jobsheet.gui.desk import Desk
    from jobsheet.gui.window import Window


def make_sheets(desk: Desk) -> bytes:
    """The sheets of the job as a PDF that carries the job."""
    from jobsheet.sheet.pdf import make_pdf

    return make_pdf(desk.job)


def show_sheets(window: Window) -> None:
    """The sheets as they will print."""
    del window
