"""The place where a machine is proved: the ladder, what was entered on it, what the machine has shown and what to
conclude. Reckoning belongs to `jobsheet/proving`. Begin with `proving_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.proving.proving_window import ProvingWindow

    ProvingWindow(visit).show()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Proving", "Proving")),
    ways=(
        Way(
            id="prove",
            text=str(QT_TRANSLATE_NOOP("Actions", "&Prove the machine…")),
            keys=("F6",),
            told=str(QT_TRANSLATE_NOOP("Actions", "prove the machine")),
            opens_on="machine",
            order=20,
            open=_open,
        ),
    ),
)
