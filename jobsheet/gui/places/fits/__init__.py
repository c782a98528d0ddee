"""Whether the job fits another machine, step by step, and the change itself. What fits is reckoned in
`reckoning/answers/`. Begin with `fits_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.fits.fits_window import FitsWindow

    FitsWindow(visit).open()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Fits", "The same job on another machine")),
    ways=(
        Way(
            id="fits",
            text=str(QT_TRANSLATE_NOOP("Actions", "&Would it fit on another machine?")),
            keys=("Ctrl+M",),
            told=str(QT_TRANSLATE_NOOP("Actions", "the job on another machine")),
            opens_on="job",
            order=10,
            open=_open,
        ),
    ),
)
