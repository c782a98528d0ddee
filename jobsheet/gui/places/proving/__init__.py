"""The place where a machine is proved: the ladder, what was entered on it, what the machine has shown and
what to conclude. Reckoning belongs to `jobsheet/proving`. Begin with `proving_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.proving.proving_window import ProvingWindow

    ProvingWindow(visit).show()


_TOLD = (
    (QT_TRANSLATE_NOOP("PlaceHelp", "What the job needs"), QT_TRANSLATE_NOOP("PlaceHelp", "stands first where steps of it were not tried or are tight: a digit, or Enter, begins the ladder that settles them")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Before the first rung"), QT_TRANSLATE_NOOP("PlaceHelp", "the stop notes are read and both people give their initials; those print on the sheet too")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "1 to 8"), QT_TRANSLATE_NOOP("PlaceHelp", "what happened on the open rung; it is in the record at once")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Narrow it"), QT_TRANSLATE_NOOP("PlaceHelp", "after an end: a second ladder in smaller steps; how many cuts it takes, and what is known after it, stand beside it")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + T"), QT_TRANSLATE_NOOP("PlaceHelp", "all that was recorded of the machine, ordinary work too; Esc: back to the chart")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Up, Down"), QT_TRANSLATE_NOOP("PlaceHelp", "go through the record")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Enter, Del"), QT_TRANSLATE_NOOP("PlaceHelp", "strike a line out with a reason, or give it back. What is struck stays to be read.")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Does not fit the others"), QT_TRANSLATE_NOOP("PlaceHelp", "a cut that the others speak against: a slip of the pen is struck, what was so counts and is not asked again, and where the machine changed the older cuts say less")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + M"), QT_TRANSLATE_NOOP("PlaceHelp", "the machine changed: gibs, belt, bearings, vice, motor or something else, on which day")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + Z"), QT_TRANSLATE_NOOP("PlaceHelp", "take back the last thing that was done here: an outcome, a strike, a mark")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + P"), QT_TRANSLATE_NOOP("PlaceHelp", "the proving sheet as a PDF")),
)  # fmt: skip


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
    told=tuple((str(key), str(said)) for key, said in _TOLD),
)
