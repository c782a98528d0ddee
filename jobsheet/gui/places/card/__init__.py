"""The machine card: one that there is, or a new one that is measured step by step. How a card is read and
bounded belongs to `storage/`. Begin with `card_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.card.card_window import open_card

    open_card(visit, visit.desk.job.machine)


def _begin(visit: Visit) -> None:
    from jobsheet.gui.places.card.card_window import new_card

    new_card(visit)


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("CardWindow", "Machine card")),
    ways=(
        Way(
            id="card",
            text=str(QT_TRANSLATE_NOOP("Actions", "Machine &card…")),
            opens_on="machine",
            order=40,
            open=_open,
        ),
        Way(
            id="new-card",
            text=str(QT_TRANSLATE_NOOP("Actions", "&New machine…")),
            opens_on="new",
            order=50,
            open=_begin,
        ),
    ),
)
