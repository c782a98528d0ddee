"""A new part from another: what hangs on the change, to be looked at line by line. The edit itself is in
`edit/made_from.py`. Begin with `made_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.made.made_window import MadeWindow

    MadeWindow(visit).show()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Made", "What hangs on the change")),
    ways=(
        Way(
            id="made",
            text=str(QT_TRANSLATE_NOOP("Actions", "What hangs on the chan&ge…")),
            told=str(QT_TRANSLATE_NOOP("Actions", "what is to be looked at in a part made from another")),
            opens_on="job",
            menu="file",
            order=65,
            open=_open,
        ),
    ),
)
