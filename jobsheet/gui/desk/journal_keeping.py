"""Keeps what is unsaved in the crash journal: once the hand rests, and never two seconds late."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QObject

from jobsheet.gui.desk import journal
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.keeping_pace import Pace
from jobsheet.storage.job_writing import write_job

translate = QCoreApplication.translate


class JournalKeeping:
    """Between the desk and its journal."""

    def __init__(
        self, desk: Desk, kept: journal.Journal, say: Callable[[str], None], parent: QObject
    ) -> None:
        self._desk = desk
        self._say = say
        self.journal = kept
        self._pace = Pace(self.write, parent)

    def later(self) -> None:
        """Keep what is unsaved once the hand rests, or when it has waited long enough."""
        self._pace.edited()

    def forget(self) -> None:
        """Nothing is unsaved any more, or it is to be lost."""
        self._pace.done()
        self.journal.clear()

    def write(self) -> None:
        """Keep what is unsaved now."""
        desk = self._desk
        self._pace.done()
        if not desk.history.changed:
            self.journal.clear()
            return
        drafts = tuple((owner, name, text) for (owner, name), text in desk.history.drafts.items())
        kept = self.journal.write(
            journal.Entry(
                job=write_job(desk.job),
                drafts=drafts,
                path=str(desk.path or ""),
                name=desk.named,
                digest=desk.digest or "",
            )
        )
        if not kept:
            self._say(translate("Files", "The crash journal cannot be written: save often."))
