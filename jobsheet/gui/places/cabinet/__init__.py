"""The person's own cabinet: cutters, gauges and holders with their places. How a line of it is read belongs
to `storage/`. Begin with `cabinet_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.cabinet.cabinet_window import open_cabinet

    open_cabinet(visit)


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("CabinetWindow", "Your cabinet")),
    ways=(
        Way(
            id="cabinet",
            text=str(QT_TRANSLATE_NOOP("Actions", "Ca&binet…")),
            opens_on="own",
            order=60,
            open=_open,
        ),
    ),
)
