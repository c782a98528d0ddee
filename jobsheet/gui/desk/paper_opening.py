"""A printed sheet is opened: which of its jobs, and whose card counts where this computer has another."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms import ask
from jobsheet.model.job import Job
from jobsheet.storage import carried
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.pdf_jobs import jobs_inside, the_only

translate = QCoreApplication.translate


def job_on_paper(parent: QWidget, path: Path) -> Job | None:
    """The job that a person chose out of printed sheets, with the card that is to count; None where it was called off.

    Raises
    ------
    DocumentError
        Where there is no job inside, or it cannot be read.
    """
    inside = jobs_inside(path)
    name, text = inside[0] if len(inside) > 1 else the_only(path, inside)
    if len(inside) > 1:
        which = ask.which(
            parent, translate("Paper", "Several jobs lie inside these sheets."), [one for one, _ in inside]
        )
        if which is None:
            return None
        name, text = inside[which]
    return _with_card(parent, path, name, text)


def _with_card(parent: QWidget, path: Path, name: str, text: str) -> Job | None:
    """Nothing is asked where the card here is the very one that was printed, or none was."""
    with_it = carried.carried_in(path, text)
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
    return carried.planned_for(job_from_text(text, name), taken)
