"""A printed sheet is opened: which of its jobs, and whose card counts where this computer has another."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.errors import CannotWrite
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job
from jobsheet.storage import carried
from jobsheet.storage.card_files import planned_for
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.pdf_jobs import inside, the_only

translate = QCoreApplication.translate


def job_on_paper(parent: QWidget, path: Path) -> Job | None:
    """The job that a person chose out of printed sheets, with the card that is to
    count; None where it was called off.

    Raises
    ------
    DocumentError
        Where there is no job inside, or it cannot be read.
    """
    found = inside(path)
    if found.photographs:
        from jobsheet.storage.photos.kept_photographs import take_out_of_sheets

        try:
            take_out_of_sheets(found.photographs)
        except CannotWrite as error:
            ask.tell(parent, str(error))
    if len(found.jobs) > 1:
        names = [name for name, _ in found.jobs]
        which = ask.which(parent, translate("Paper", "Several jobs lie inside these sheets."), names)
        if which is None:
            return None
        name, text = found.jobs[which]
    else:
        name, text = the_only(path, found.jobs)
    return _with_card(parent, name, text, carried.carried_of(found.beside, text))


def _with_card(parent: QWidget, name: str, text: str, with_it: carried.Carried | None) -> Job | None:
    """Nothing is asked where the card here is the very one that was printed, or none was."""
    stands = carried.here(with_it) if with_it is not None else "same"
    if with_it is None or stands == "same":
        return job_from_text(text, name)
    if stands == "none":
        sentence = translate("Paper", "There is no card of {title} on this computer; these sheets carry it.")
    else:
        sentence = translate(
            "Paper",
            "The card of {title} on this computer is another than the one these sheets were planned for.",
        )
    answer = ask.whose_card(parent, sentence.format(title=with_it.title), there=stands == "other")
    if answer == "here":
        return job_from_text(text, name)
    if answer != "sheets":
        return None
    taken = carried.take_over(with_it)
    if taken.log_left:
        ask.tell(parent, taken.log_left)
    return planned_for(job_from_text(text, name), taken.name)
