"""What a machine will carry, learned from its trials. What it shows is reckoned in `reckoning/answers/`.
Begin with `capability_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.capability.capability_window import CapabilityWindow

    CapabilityWindow(visit.desk, visit.parent).open()


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Capability", "What a machine will carry")),
    ways=(
        Way(
            id="capability",
            text=str(QT_TRANSLATE_NOOP("Actions", "What will it carr&y?…")),
            keys=("F7",),
            told=str(QT_TRANSLATE_NOOP("Actions", "what it will carry")),
            opens_on="machine",
            order=30,
            open=_open,
        ),
    ),
)
