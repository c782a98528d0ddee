"""The sheets of the job on the desk as a PDF; the makers of pages are
imported when somebody asks for pages.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QCoreApplication

from jobsheet.errors import CommandError
from jobsheet.model.prints import WHOLE, Prints
from jobsheet.model.remark import Note

if TYPE_CHECKING:
    from pathlib import Path

    from jobsheet.gui.desk.desk import Desk
    from jobsheet.model.job import Job
    from jobsheet.model.shop import Shop
    from jobsheet.reckoning.ladder.ladders import Ladder
    from jobsheet.reckoning.reckoner import Reckoned
    from jobsheet.report.plan import Initials

translate = QCoreApplication.translate


class MadeSheets(NamedTuple):
    """The bytes of a PDF, and sentences on pages that were wanted and that the job has none of."""

    pdf: bytes
    left_out: tuple[str, ...]


def stop_notes(desk: Desk) -> tuple[Note, ...]:
    """The notes that somebody has to read and initial before these sheets are used, once each."""
    from jobsheet.review.notes.notes import notes_for

    if desk.reckoned is None:
        return ()
    notes = notes_for(desk.job, desk.reckoned)
    head = [note for some in notes.set_ups.values() for note in some if note.level == "stop"]
    return tuple(dict.fromkeys([*notes.stops, *head]))


def make_sheets(
    desk: Desk,
    *,
    paper: str = "a4",
    working: bool = False,
    initials: tuple[Initials, ...] = (),
    wanted: Prints = WHOLE,
) -> MadeSheets:
    """The sheets as a PDF that carries the job, with a sentence for each kind of page that it has none of.

    Raises
    ------
    CommandError
        If machine or material are not there, so that nothing can be reckoned, or
        if no page comes of what is wanted.
    """
    return sheets_to_make(desk, paper=paper, working=working, initials=initials, wanted=wanted)()


def sheets_to_make(
    desk: Desk,
    *,
    paper: str = "a4",
    working: bool = False,
    initials: tuple[Initials, ...] = (),
    wanted: Prints = WHOLE,
) -> Callable[[], MadeSheets]:
    """As `make_sheets`, of the desk as it is now, for any thread to make: what is
    called needs neither desk nor toolkit.
    """
    if desk.reckoned is None:
        sentence = translate("Sheets", "There are no figures to print: {why}").format(why=desk.problem)
        raise CommandError(sentence)
    reckoned = None if desk.reckoner.behind else desk.reckoned  # paper shows what is recommended now
    return partial(_made, desk.job, reckoned, desk.reckoner.shop, desk.path, paper, working, initials, wanted)


def _made(
    planned: Job, reckoned: Reckoned | None, shop: Shop, path: Path | None,
    paper: str, working: bool, initials: tuple[Initials, ...], wanted: Prints,
) -> MadeSheets:  # fmt: skip
    from jobsheet.clock import today
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.reckoning.run_words import last_times
    from jobsheet.report.job_sheet import job_sheet
    from jobsheet.review.engine import reviewed
    from jobsheet.review.notes.notes import notes_for
    from jobsheet.review.plan.solid_facts import facts_of
    from jobsheet.sheet.pages import fits_on
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.job_writing import write_job
    from jobsheet.storage.kept.closed_plans import job_of, newer_than
    from jobsheet.storage.photos.kept_photographs import places, shots_of

    if reckoned is None:
        reckoned = Reckoner(shop, learns=True).reckon(planned)
    job = reckoned.job
    whose = (job_of(path) or path) if path is not None else None
    read = reviewed(job, reckoned, facts_of(job, reckoned))
    document = job_sheet(
        job,
        reckoned,
        notes_for(job, reckoned),
        read.open,
        find_card(job.machine),
        not_checked=read.not_checked,
        acknowledged=initials,
        fits=fits_on(paper),
        working=working,
        name=whose.stem if whose is not None else (job.part.number or "job"),
        source=write_job(planned).encode(),
        wanted=wanted,
        shots=shots_of(job, places(whose)),
        printed_on=today(),
        last_times=last_times(job, whose),
        superseded=newer_than(path) if path is not None else "",
    )
    return MadeSheets(make_pdf((document,), paper), document.left_out)


def proving_pdf(
    ladder: Ladder, initials: tuple[str, str, str], *, trainee: bool = False, paper: str = "a4"
) -> bytes:
    """The proving sheet of a ladder as a PDF; the initials of operator,
    second person and person in charge.
    """
    from jobsheet.report.proving_sheet import Initialled, proving_sheet
    from jobsheet.sheet.pdf import make_pdf

    operator, second, in_charge = initials
    given = Initialled(operator=operator, second=second, in_charge=in_charge)
    return make_pdf((proving_sheet(ladder, initials=given, trainee=trainee),), paper)
