"""Earlier plans: those of this job that were printed or made, looked at and brought back. How they are kept
belongs to `storage/kept/`. Begin with `plans_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.plans.plans_window import PlansWindow

    PlansWindow(visit).open()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Plans", "Earlier plans")),
    ways=(
        Way(
            id="plans",
            text=str(QT_TRANSLATE_NOOP("Actions", "Earl&ier plans…")),
            keys=("Ctrl+Shift+P",),
            told=str(QT_TRANSLATE_NOOP("Actions", "plans of this job that were printed or made")),
            opens_on="job",
            menu="file",
            order=75,
            open=_open,
        ),
    ),
)
