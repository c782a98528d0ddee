"""A lesson at the screen: the steps of a set-up as slips, to be put in a right order. What is right is
decided in `lessons/`. Begin with `lesson_window.py`.
"""

from __future__ import annotations

from PySide6.QtCore import QT_TRANSLATE_NOOP

from jobsheet.gui.desk.place import Place, Visit, Way


def _open(visit: Visit) -> None:
    from jobsheet.gui.places.lesson.lesson_window import open_lesson

    open_lesson(visit)


PLACE = Place(
    title=str(QT_TRANSLATE_NOOP("Lesson", "A lesson from this job")),
    ways=(
        Way(
            id="lesson",
            text=str(QT_TRANSLATE_NOOP("Actions", "A &lesson from this job…")),
            keys=("Ctrl+Shift+L",),
            told=str(QT_TRANSLATE_NOOP("Actions", "a lesson: put the steps in order")),
            opens_on="job",
            menu="file",
            order=80,
            open=_open,
        ),
    ),
)
