"""Keeps what is unsaved in the crash journal once the hand rests."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QObject, QTimer

from jobsheet.gui.desk import journal
from jobsheet.gui.desk.desk import Desk
from jobsheet.storage.job_writing import write_job

translate = QCoreApplication.translate
#: How long after the last edit the journal is written [ms].
QUIET = 800


class JournalKeeping:
    """Between the desk and its journal."""

    def __init__(
        self, desk: Desk, kept: journal.Journal, say: Callable[[str], None], parent: QObject
    ) -> None:
        self._desk = desk
        self._say = say
        self.journal = kept
        self._timer = QTimer(parent)
        self._timer.setSingleShot(True)
        self._timer.setInterval(QUIET)
        self._timer.timeout.connect(self.write)

    def later(self) -> None:
        """Keep what is unsaved once the hand rests."""
        self._timer.start()

    def write(self) -> None:
        """Keep what is unsaved now."""
        desk = self._desk
        self._timer.stop()
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
