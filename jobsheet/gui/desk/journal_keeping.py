"""Keeps what is unsaved in the crash journal once the hand rests, and offers what a crash left behind."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from types import MappingProxyType

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QObject, QTimer

from jobsheet.edit.history import History
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk import journal
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.job import Job
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job

translate = QCoreApplication.translate
#: How long after the last edit the journal is written [ms].
QUIET = 800


class LeftBehind(Struct, frozen=True):
    """A job that was not saved when the program ended: the file of the journal, its entry, and the job."""

    path: Path
    entry: journal.Entry
    job: Job

    @property
    def words(self) -> str:
        """What is said of it."""
        part = self.job.part
        name = part.number or part.name or translate("Files", "a job")
        return translate("Files", "{name} was not saved when the program ended last time.").format(name=name)

    def history(self) -> History:
        """The job with what was half typed, as something that is not saved."""
        history = History(self.job)
        drafts = {(owner, name): text for owner, name, text in self.entry.drafts}
        history.restore(self.job, MappingProxyType(drafts))
        history.mark_unsaved()
        return history

    def forget(self) -> None:
        """Throw it away."""
        self.path.unlink(missing_ok=True)


def left_behind() -> LeftBehind | None:
    """The newest that a crash or a power cut left behind and that can be read."""
    left = journal.left_behind()
    if not left:
        return None
    path, entry = left[0]
    try:
        return LeftBehind(path, entry, job_from_text(entry.job, entry.name or "journal"))
    except JobsheetError:
        return None


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
