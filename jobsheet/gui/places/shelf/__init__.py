"""The shelf: the jobs of a folder, found again by words and sizes. How it is read and sought belongs to
`jobsheet/shelf`. Begin with `shelf_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.shelf.shelf_window import ShelfWindow

    ShelfWindow(visit).open()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Shelf", "The shelf")),
    ways=(
        Way(
            id="shelf",
            text=str(QT_TRANSLATE_NOOP("Actions", "The s&helf…")),
            keys=("Ctrl+Shift+O",),
            told=str(QT_TRANSLATE_NOOP("Actions", "the shelf: find a job again")),
            opens_on="own",
            menu="file",
            order=70,
            open=_open,
        ),
    ),
)
