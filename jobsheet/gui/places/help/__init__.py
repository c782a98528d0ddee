"""The pages of the help: found by words, opened by F1 on what has the focus. What a page says is written in
`review/pages/`. Begin with `help_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> object:
    from jobsheet.gui.places.help.help_window import show_help

    return show_help(visit)


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Help", "Help")),
    ways=(
        Way(
            id="help",
            text=str(QT_TRANSLATE_NOOP("Actions", "&Help on this")),
            keys=("F1",),
            told=str(QT_TRANSLATE_NOOP("Actions", "help on what has the focus")),
            opens_on="job",
            menu="help",
            order=100,
            open=_open,
        ),
    ),
)
