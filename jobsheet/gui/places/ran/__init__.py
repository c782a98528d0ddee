"""What happened at the machine, typed in beside it or afterwards: how each step went, sizes that were found,
minutes, what one would change. Rules of what is kept belong to `reckoning/runs_kept.py`. Begin with
`ran_window.py`; `ran_desk.py` holds what was said.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.ran.ran_window import RanWindow

    there = next(
        (ran_window for ran_window in visit.parent.findChildren(RanWindow) if ran_window.isVisible()), None
    )
    if there is None:
        RanWindow(visit).show()
    else:
        there.come(visit.on())


_TOLD = (
    (QT_TRANSLATE_NOOP("PlaceHelp", "1 to 8, 0"), QT_TRANSLATE_NOOP("PlaceHelp", "how the open step went; 0: it was not cut. The next step opens by itself.")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "A second digit"), QT_TRANSLATE_NOOP("PlaceHelp", "what slipped, and which layer it was, where the line is blue; 0: all layers")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Backspace"), QT_TRANSLATE_NOOP("PlaceHelp", "nothing is said of the open step")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Up, Down"), QT_TRANSLATE_NOOP("PlaceHelp", "another step: a wrong digit is typed over")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "R"), QT_TRANSLATE_NOOP("PlaceHelp", "what really ran: speed, depth of the layer, seconds; left empty, it ran as planned")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Tab"), QT_TRANSLATE_NOOP("PlaceHelp", "to the sizes, what you would change, the minutes; Esc: back to the steps")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Alt + Page Up, Alt + Page Down"), QT_TRANSLATE_NOOP("PlaceHelp", "the set-up before, the one after")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + Enter"), QT_TRANSLATE_NOOP("PlaceHelp", "keep it, half filled too: in a file beside the job, and steps with a force in the proof log of the machine, unless the tick is taken off")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Ctrl + Z"), QT_TRANSLATE_NOOP("PlaceHelp", "take back what is kept of this day: it stays on the screen, is mended and kept again. The file keeps both.")),
    (QT_TRANSLATE_NOOP("PlaceHelp", "Cut on"), QT_TRANSLATE_NOOP("PlaceHelp", "28 Nov, 2026-11-28, yesterday; Up and Down count days. One step on one day is one entry, however many passes.")),
)  # fmt: skip


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Ran", "What happened")),
    ways=(
        Way(
            id="ran",
            text=str(QT_TRANSLATE_NOOP("Actions", "What &happened…")),
            keys=("Ctrl+H",),
            told=str(QT_TRANSLATE_NOOP("Actions", "what happened at the machine")),
            opens_on="job",
            order=15,
            open=_open,
        ),
    ),
    told=tuple((str(key), str(said)) for key, said in _TOLD),
)
