"""Open, save and export, the question before anything unsaved is put away, and the crash journal."""

from __future__ import annotations

from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QTime, QTimer

from jobsheet.edit.history import History
from jobsheet.errors import CannotWrite, ChangedOutside, JobsheetError
from jobsheet.gui.desk import journal
from jobsheet.gui.forms import ask
from jobsheet.storage.job_file import job_digest, job_from_text, read_job, save_job, write_job

if TYPE_CHECKING:
    from jobsheet.gui.window.window import Window

translate = QCoreApplication.translate
#: How long after the last edit the journal is written [ms].
QUIET = 800


class Files:
    """Everything between the desk and the disk."""

    def __init__(self, window: Window) -> None:
        self._window = window
        self.journal = journal.Journal()
        self._timer = QTimer(window)
        self._timer.setSingleShot(True)
        self._timer.setInterval(QUIET)
        self._timer.timeout.connect(self.write_journal)

    # --- putting a job on the desk ---

    def may_put_away(self) -> bool:
        """Whether the job on the desk may go: it is saved, or the person says so."""
        desk = self._window.desk
        if not self._worth_asking():
            return True
        part = desk.job.part
        answer = ask.save_changes(self._window, part.number or part.name or translate("Files", "New job"))
        if answer == "save":
            return self.save()
        return answer == "throw away"

    def _worth_asking(self) -> bool:
        """A sample or new job that nobody has changed is no loss."""
        history = self._window.desk.history
        return self._window.desk.recovered or (history.changed and (history.can_undo or bool(history.drafts)))

    def _lay(self, history: History, path: Path | None, named: str, digest: str | None) -> None:
        """Put a job on the desk and show it."""
        desk = self._window.desk
        self.journal.clear()
        desk.path, desk.named, desk.digest = path, named, digest
        desk.recovered, desk.saved_at = False, ""
        self._window.bench.column.ruled.open(None)
        desk.take(history)
        self._window.show_job()
        sheet = self._window.bench.column.ruled
        sheet.choose(next(iter(sheet.by_key), ""))
        self._window.edits.forget()
        self._window.show_later()

    def new(self) -> None:
        """An empty job on the same machine."""
        if self.may_put_away():
            from jobsheet.storage.job_file import blank_job

            job = self._window.desk.job
            self._lay(History(blank_job(job.machine, job.material)), None, "", None)
            self._window.edit_job()

    def open(self) -> None:
        """Ask which job, and open it."""
        desk = self._window.desk
        if self.may_put_away():
            path = ask.open_path(self._window, desk.path.parent if desk.path else Path.home())
            if path is not None:
                self.open_path(path)

    def open_path(self, path: Path) -> bool:
        """Open a job; what is wrong with its file is said with the line."""
        from jobsheet.gui.desk.opening import is_sample

        if is_sample(path):
            return self.open_sample(path, asked=True)
        try:
            digest = job_digest(path)
            job = read_job(path)
        except JobsheetError as error:
            ask.tell(self._window, str(error))
            return False
        self._lay(History(job, str(path)), path, "", digest)
        return True

    def open_sample(self, path: Path, *, asked: bool = False) -> bool:
        """Open a shipped sample as a copy that is saved somewhere else."""
        if not asked and not self.may_put_away():
            return False
        try:
            job = read_job(path)
        except JobsheetError as error:
            ask.tell(self._window, str(error))
            return False
        history = History(job)
        history.mark_unsaved()
        self._lay(history, None, path.name, None)
        return True

    # --- saving ---

    def save(self) -> bool:
        """Save where the job lies; ask where, the first time."""
        path = self._window.desk.path
        return self._write(path, self._window.desk.digest) if path is not None else self.save_as()

    def save_as(self) -> bool:
        """Ask where, and save there."""
        desk = self._window.desk
        name = desk.named or f"{desk.job.part.number or 'job'}.yaml".replace("/", "-")
        folder = desk.path.parent if desk.path else Path.home()
        path = ask.save_path(self._window, desk.path or folder / name)
        return path is not None and self._write(path, None)

    def _write(self, path: Path, expected: str | None) -> bool:
        """Write the file, unless it is not the one that was opened."""
        desk = self._window.desk
        try:
            digest = save_job(desk.job, path, expected)
        except ChangedOutside as error:
            answer = ask.changed_outside(self._window, str(error))
            if answer == "overwrite":
                return self._write(path, None)
            return self.save_as() if answer == "save as" else False
        except CannotWrite as error:
            ask.tell(self._window, str(error))
            return False
        desk.path, desk.digest, desk.named, desk.recovered = path, digest, "", False
        desk.saved_at = QTime.currentTime().toString("HH:mm")
        desk.history.mark_saved(str(path))
        drafts = len(desk.history.drafts)
        if drafts:
            self._window.say(
                translate(
                    "Files", "Saved with the last good values: a text that cannot be read is not in the file."
                )
            )
            self.write_journal()
        else:
            self.journal.clear()
            self._window.say(translate("Files", "Saved as {name}.").format(name=path.name))
        self._window.refresh_title()
        return True

    # --- sheets ---

    def export_pdf(self) -> bool:
        """The sheets as a PDF that carries the job."""
        from jobsheet.gui.pages.job_pdf import make_sheets

        try:
            pdf = make_sheets(self._window.desk)
        except JobsheetError as error:
            ask.tell(self._window, str(error))
            return False
        return self.write_sheets(pdf)

    def write_sheets(self, pdf: bytes) -> bool:
        """Ask where, and put the sheets there."""
        desk = self._window.desk
        name = f"{desk.job.part.number or 'job'}.pdf".replace("/", "-")
        folder = desk.path.parent if desk.path else Path.home()
        path = ask.export_path(self._window, folder / name)
        if path is None:
            return False
        from jobsheet.storage.writing import write_file

        try:
            write_file(path, pdf)
        except JobsheetError as error:
            ask.tell(self._window, str(error))
            return False
        self._window.say(translate("Files", "Sheets written to {name}.").format(name=path.name))
        return True

    def print_sheets(self) -> None:
        """Show the sheets as they will print."""
        if self._window.desk.reckoned is None:
            ask.tell(self._window, self._window.desk.problem)
            return
        from jobsheet.gui.pages.print_window import PrintWindow

        PrintWindow(self._window).open()

    # --- journal ---

    def journal_later(self) -> None:
        """Keep what is unsaved once the hand rests."""
        self._timer.start()

    def write_journal(self) -> None:
        """Keep what is unsaved now."""
        desk = self._window.desk
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
            self._window.say(translate("Files", "The crash journal cannot be written: save often."))

    def offer_recovered(self) -> None:
        """Offer what a crash or a power cut left behind."""
        left = journal.left_behind()
        if not left:
            return
        path, entry = left[0]
        try:
            job = job_from_text(entry.job, entry.name or "journal")
        except JobsheetError:
            return
        name = job.part.number or job.part.name or translate("Files", "a job")
        text = translate("Files", "{name} was not saved when the program ended last time.").format(name=name)
        sheet = self._window.bench.column.ruled

        def recover() -> None:
            if not self.may_put_away():
                return
            history = History(job)
            history.restore(job, MappingProxyType({(o, n): t for o, n, t in entry.drafts}))
            history.mark_unsaved()
            self._lay(history, Path(entry.path) if entry.path else None, entry.name, entry.digest or None)
            self._window.desk.recovered = True
            sheet.notice("", "", ())
            path.unlink(missing_ok=True)
            self.write_journal()
            self._window.refresh_title()

        def forget() -> None:
            path.unlink(missing_ok=True)
            sheet.notice("", "", ())

        sheet.notice(
            next(iter(sheet.by_key), ""),
            text,
            ((translate("Files", "Open it"), recover), (translate("Files", "Throw it away"), forget)),
        )
