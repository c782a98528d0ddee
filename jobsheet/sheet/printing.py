"""From a job to the bytes of its sheets, in one call, for the command line and the window alike."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from jobsheet.model.job import Job
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.prints import WHOLE, Prints
from jobsheet.model.remark import Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Document
from jobsheet.report.for_use.blank_form import blank_form
from jobsheet.report.for_use.chosen_pages import numbered
from jobsheet.report.job_sheet import job_sheet
from jobsheet.report.plan import Initials
from jobsheet.report.texts import texts_of
from jobsheet.review.notes.notes import Notes
from jobsheet.sheet.fonts import missing_characters
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.card_files import find_card
from jobsheet.storage.photos.kept_photographs import Shot

#: Paper by name, A4 first.


class Lacking(Struct, frozen=True):
    """A character that the font lacks, and the field it stands in."""

    character: str
    where: str

    @property
    def code(self) -> str:
        """As it is printed on the sheet instead."""
        return f"U+{ord(self.character):04X}"


def document_for(
    job: Job,
    reckoned: Reckoned,
    notes: Notes,
    remarks: tuple[Remark, ...],
    *,
    not_checked: tuple[NotChecked, ...] = (),
    paper: str = "a4",
    acknowledged: tuple[Initials, ...] = (),
    working: bool = False,
    source: bytes | None = None,
    name: str = "job",
    wanted: Prints = WHOLE,
    shots: tuple[Shot, ...] = (),
    printed_on: str = "",
    last_times: Mapping[str, str] | None = None,
    superseded: str = "",
) -> Document:
    """The pages of a job, ended where that paper ends."""
    return job_sheet(
        job, reckoned, notes, remarks, find_card(job.machine), not_checked=not_checked, acknowledged=acknowledged,
        fits=fits_on(paper), working=working, source=source, name=name, wanted=wanted, shots=shots, printed_on=printed_on,
        last_times=last_times, superseded=superseded,
    )  # fmt: skip


def blank_document(machine: str, paper: str = "a4") -> Document:
    """The blank form of a machine, without any job; raises NoSuchEntry or DocumentError as its card does."""
    card = find_card(machine)
    pages = numbered(blank_form(card, fits_on(paper)))
    return Document(name=machine, title=f"{card.title}, blank form", pages=pages, source=b"")


def lacking(job: Job) -> tuple[Lacking, ...]:
    """Every character of a job that the font lacks, with the fields it stands in."""
    return tuple(
        Lacking(character, where) for where, text in texts_of(job) for character in missing_characters(text)
    )
