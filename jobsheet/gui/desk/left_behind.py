"""What a crash or a power cut left behind: offered when the window opens,
thrown away when it is asked for.
"""

from __future__ import annotations

from pathlib import Path
from types import MappingProxyType

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.edit.history import History
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk import journal
from jobsheet.model.job import Job
from jobsheet.storage.job_file import job_from_text

translate = QCoreApplication.translate


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
    for path, entry in journal.left_behind():
        try:
            return LeftBehind(path, entry, job_from_text(entry.job, entry.name or "journal"))
        except JobsheetError:
            continue  # it stays where it is, and hides no other
    return None
