"""Putting a job on the desk and saving it: open, save, and the question
before anything unsaved is put away.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QObject, QTime, QTimer, Signal
from PySide6.QtWidgets import QWidget

from jobsheet.edit.history import History
from jobsheet.errors import CannotWrite, ChangedOutside, JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.journal import Journal
from jobsheet.gui.desk.journal_keeping import JournalKeeping
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job
from jobsheet.remembered import forget_the_plan
from jobsheet.storage.disk_answers import AT_ONCE, SILENT, DiskAnswers
from jobsheet.storage.job_file import job_digest, read_job
from jobsheet.storage.job_writing import save_job

translate = QCoreApplication.translate
#: A disk that did not answer is asked again after this [ms].
AGAIN = 500


class Files(QObject):
    """Everything between the desk and the disk; who shows it hears by signals."""

    #: Another job lies on the desk.
    laid = Signal()
    #: It is a new one, to be filled in.
    begun = Signal()
    #: It is a new part that was made from another: what hangs on that is to be looked at.
    made = Signal()
    #: How the job stands to its file is another now.
    written = Signal()
    #: A sentence for the person.
    said = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._parent = parent
        self.disk = DiskAnswers()
        self.keeping = JournalKeeping(desk, Journal(), self.said.emit, self)

    # --- putting a job on the desk ---

    def may_put_away(self) -> bool:
        """Whether the job on the desk may go: it is saved, or the person says so."""
        if not self._worth_asking():
            return True
        part = self._desk.job.part
        answer = ask.save_changes(self._parent, part.number or part.name or translate("Files", "New job"))
        if answer == "save":
            return self.save()
        return answer == "throw away"

    def _worth_asking(self) -> bool:
        """A sample that nobody has changed is no loss; a new job was typed."""
        history, begun = self._desk.history, self._desk.path is None and not self._desk.named
        made = history.can_undo or bool(history.drafts) or begun
        return self._desk.recovered or (history.changed and made)

    def lay(self, history: History, path: Path | None, named: str, digest: str | None) -> None:
        """Put a job on the desk, and have it shown."""
        desk = self._desk
        forget_the_plan()
        self.keeping.forget()
        desk.path, desk.named, desk.digest = path, named, digest
        desk.recovered, desk.saved_at = False, ""
        desk.made_from = desk.exercise = None
        desk.take(history)
        self.laid.emit()

    def _lay_unsaved(self, job: Job, named: str = "") -> None:
        """Put a job on the desk that no file holds; `named` proposes a name for it."""
        history = History(job)
        history.mark_unsaved()
        self.lay(history, None, named, None)

    def begin(self, job: Job) -> bool:
        """Put a new job on the desk, where the one that lies there may go."""
        if not self.may_put_away():
            return False
        self._lay_unsaved(job)
        self.keeping.write()  # what was typed into the four lines is no less than what is typed later
        self.begun.emit()
        return True

    def begin_exercise(self, job: Job, asked: Job) -> bool:
        """Put the drawing of an exercise on the desk, without a step, where
        the job that lies there may go.
        """
        if not self.may_put_away():
            return False
        self._lay_unsaved(job)
        self._desk.exercise = asked
        self.keeping.write()
        return True

    def begin_from(self, job: Job, other: Job) -> bool:
        """Put a new part on the desk that was made from another one, where the job that lies there may go."""
        if not self.may_put_away():
            return False
        self._lay_unsaved(job)
        self._desk.made_from = other
        self.keeping.write()
        self.made.emit()
        return True

    def open(self) -> None:
        """Ask which job, and open it."""
        desk = self._desk
        if self.may_put_away():
            path = ask.open_path(self._parent, desk.path.parent if desk.path else Path.home())
            if path is not None:
                self.open_path(path)

    def open_path(self, path: Path) -> bool:
        """Open a job; what is wrong with its file is said with the line."""
        from jobsheet.gui.desk.opening import is_sample

        if is_sample(path):
            return self.open_sample(path, asked=True)
        from jobsheet.storage.pdf_jobs import is_pdf

        try:
            if is_pdf(path):
                return self._open_paper(path)
            digest = job_digest(path)
            job = read_job(path)
        except JobsheetError as error:
            ask.tell(self._parent, str(error))
            return False
        from jobsheet.storage.kept.closed_plans import job_of

        if (whose := job_of(path)) is not None:
            return self._open_closed(job, whose)
        self.lay(History(job, str(path)), path, "", digest)
        self.ask_for_drawing()
        return True

    def ask_for_drawing(self) -> None:
        """At which revision the drawing is, of a job that is taken out again; once its disk
        answers, for nobody waits for that.
        """
        path = self._desk.path
        if path is None:
            return
        if not self.disk.within(path, AT_ONCE):
            QTimer.singleShot(
                AGAIN, self, lambda: self.ask_for_drawing() if self._desk.path == path else None
            )
            return
        from jobsheet.gui.desk.closing import ask_for_drawing

        if said := ask_for_drawing(self._desk, path, self._parent):
            self.said.emit(said)

    def _open_closed(self, job: Job, whose: Path) -> bool:
        """Open a plan that is closed: it is not written over, the job on the desk gets a file of its own."""
        self._lay_unsaved(job, whose.name)
        self.said.emit(
            translate(
                "Files", "This plan of {name} is closed: it stays as it is, and what lies here is a copy."
            ).format(name=whose.name)
        )
        return True

    def _open_paper(self, path: Path) -> bool:
        """Open a job out of printed sheets: paper is not written over, the job gets a file of its own."""
        from jobsheet.gui.desk.paper_opening import job_on_paper

        job = job_on_paper(self._parent, path)
        if job is None:
            return False
        self._lay_unsaved(job, f"{path.stem}.yaml")
        return True

    def open_recent(self, name: str) -> bool:
        """Open one of the last jobs."""
        return self.may_put_away() and self.open_path(Path(name))

    def open_sample(self, path: Path, *, asked: bool = False) -> bool:
        """Open a shipped sample as a copy that is saved somewhere else."""
        if not asked and not self.may_put_away():
            return False
        try:
            job = read_job(path)
        except JobsheetError as error:
            ask.tell(self._parent, str(error))
            return False
        self._lay_unsaved(job, path.name)
        return True

    # --- saving ---

    def save(self) -> bool:
        """Save where the job lies; ask where, the first time."""
        path = self._desk.path
        return self._write(path, self._desk.digest) if path is not None else self.save_as()

    def save_as(self) -> bool:
        """Ask where, and save there."""
        desk = self._desk
        from jobsheet.storage.exporting_files import file_name

        name = desk.named or file_name(desk.job.part.number, ".yaml")
        folder = desk.path.parent if desk.path else Path.home()
        path = ask.save_path(self._parent, desk.path or folder / name)
        return path is not None and self._write(path, None)

    def _photographs_along(self, old: Path | None, new: Path) -> tuple[str, ...]:
        """The photographs of the job come to lie beside its file; a sentence for each that does not."""
        if not self._desk.job.photographs:
            return ()
        from jobsheet.storage.photos.kept_photographs import places, taken_along

        return taken_along(self._desk.job, places(old), places(new))

    def _runs_along(self, old: Path | None, new: Path) -> tuple[str, ...]:
        """What happened with the job comes to lie beside its file; a sentence where it does not."""
        if old is None or old == new:
            return ()
        from jobsheet.storage.records.run_log import runs_along

        return tuple(filter(None, (runs_along(self._desk.job.part.number, old, new),)))

    def _beside_another(self, path: Path, sentence: str) -> bool:
        """Somebody else saved there meanwhile: put both together, write over it, or save
        elsewhere; theirs is kept in any case.
        """
        from jobsheet.gui.desk.saved_by_two import over_theirs, with_theirs

        answer = ask.changed_outside(self._parent, sentence)
        if answer == "save as":
            return self.save_as()
        if answer not in ("both", "overwrite"):
            return False
        stands = (with_theirs if answer == "both" else over_theirs)(self._desk, path, self._parent)
        return stands is not None and self._write(path, stands)

    def _write(self, path: Path, expected: str | None) -> bool:
        """Write the file, unless it is not the one that was opened; a plan that was printed
        or made gets its next number first.
        """
        from jobsheet.gui.desk.closing import next_plan
        from jobsheet.storage.kept.kept_before import keep_before, read_before

        if not self.disk.within(path, SILENT):
            self.keeping.write()
            words = translate(
                "Files",
                "{folder} does not answer: the job is not saved. What you typed is kept on this computer; save again when the folder is back, or now under another name.",
            )
            ask.tell(self._parent, words.format(folder=path.parent.name or str(path.parent)))
            return False
        desk, stood = self._desk, read_before(path)
        if path == desk.path and not next_plan(desk, path, self._parent):
            return False
        try:
            digest = save_job(desk.job, path, expected)
        except ChangedOutside as error:
            return self._beside_another(path, str(error))
        except CannotWrite as error:
            ask.tell(self._parent, str(error))
            return False
        before = keep_before(path, stood, digest)
        left = (*self._photographs_along(desk.path, path), *self._runs_along(desk.path, path))
        desk.path, desk.digest, desk.named, desk.recovered = path, digest, "", False
        desk.saved_at = QTime.currentTime().toString("HH:mm")
        desk.history.mark_saved(str(path))
        if desk.history.drafts:
            self.said.emit(
                translate(
                    "Files", "Saved with the last good values: a text that cannot be read is not in the file."
                )
            )
            self.keeping.write()
        else:
            self.keeping.forget()
            words = translate("Files", "Saved as {name}.")
            if before is not None:
                words = translate("Files", "Saved as {name}; what stood there before is {before} beside it.")
            said = words.format(name=path.name, before=before.name if before is not None else "")
            self.said.emit(" ".join((said, *left)))
        self.written.emit()
        return True
