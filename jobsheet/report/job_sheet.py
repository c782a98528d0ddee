"""A job as pages: cover, sheets of every set-up with their cards, safety notes, long texts, working."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from msgspec.structs import replace

from jobsheet.model.job import Job
from jobsheet.model.machine import Machine
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.prints import WHOLE, Prints
from jobsheet.model.remark import Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Document, Gap, Heading, Page, Rule, Words, words_of
from jobsheet.report.compact import compact
from jobsheet.report.cover import cover
from jobsheet.report.for_use.chosen_pages import chosen_pages, numbered
from jobsheet.report.heed.safety import MOST, rest
from jobsheet.report.heed.stops import band
from jobsheet.report.photograph_pages import attached, photograph_pages
from jobsheet.report.plan import CUT, Initials, Plan, courses
from jobsheet.report.positions_card import positions_cards
from jobsheet.report.set_up_sheet import larger, set_up_pages, set_up_parts
from jobsheet.report.texts import typed_order
from jobsheet.report.titles import short_title
from jobsheet.report.wording import FOOT
from jobsheet.report.working_page import working as working_blocks
from jobsheet.review.notes.notes import Notes
from jobsheet.storage.carried import carried_with
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.photos.kept_photographs import Shot


def always(_page: Page) -> bool:
    """Where nothing is measured, everything fits: pages then end by their number of rows alone."""
    return True


def job_sheet(
    job: Job,
    reckoned: Reckoned,
    notes: Notes,
    remarks: tuple[Remark, ...],
    card: Machine,
    *,
    not_checked: tuple[NotChecked, ...] = (),
    acknowledged: tuple[Initials, ...] = (),
    fits: Callable[[Page], bool] = always,
    working: bool = False,
    source: bytes | None = None,
    name: str = "job",
    wanted: Prints = WHOLE,
    shots: tuple[Shot, ...] = (),
    printed_on: str = "",
    last_times: Mapping[str, str] | None = None,
    superseded: str = "",
) -> Document:
    """All pages of a job.

    Parameters
    ----------
    not_checked : tuple of NotChecked
        What the review could not find out; it stands on the cover with the remarks
    acknowledged : tuple of Initials
        Stop notes that somebody read for this very print
    fits : callable
        Whether a page has room for all that it holds; `sheet/` knows
    working : bool
        Whether the pages that show how every figure came about are made too
    source : bytes or None
        The job's file as it is, to be carried inside; None writes it anew
    name : str
        The file's name without its ending
    wanted : Prints
        Which pages; without a word all that a bench needs
    shots : tuple of Shot
        The photographs of the job, with their bytes
    printed_on : str
        The day of printing, for the foot of every page; empty leaves it out
    last_times : mapping or None
        What happened the last time, in a line, by the key of the set-up
    superseded : str
        By what this plan is superseded, which every page says; empty where it is the one that counts

    Raises
    ------
    CommandError
        If there is not one page of what is wanted.
    """
    data = write_job(job).encode() if source is None else source
    plan = Plan(
        job=job, reckoned=reckoned, notes=notes, remarks=remarks, card=card, acknowledged=acknowledged, fits=fits,
        courses=courses(job, reckoned.settings), not_checked=not_checked, file=_file(name), code=check_code(data), measured=fits is not always,
        covered="whole" in wanted.pages, shots=shots, printed_on=printed_on,
        last_times=last_times or {}, superseded=superseded,
    )  # fmt: skip
    pages, left_out = chosen_pages(plan, wanted, _whole)
    if working:
        pages += _flow(plan, "working", "Working", working_blocks(plan))
    pages += _flow(plan, "long", "Texts in full", _long(plan, pages))
    inside, too_much = attached(shots)
    part = " ".join(word for word in (job.part.number, job.part.name) if word)
    return Document(
        name=name,
        title=f"{part or name}, set-up sheets",
        pages=numbered(pages),
        source=data,
        beside=(*carried_with(job), *inside),
        photographs={shot.photograph.content: shot.raw for shot in shots if shot.raw},
        open_stops=tuple(dict.fromkeys(note.id for note in plan.open_stops)),
        left_out=(*left_out, *too_much, *typed_order(job)),
    )


def _whole(plan: Plan) -> list[Page]:
    """All that a bench needs; photographs stand on the pages of their set-ups
    where that makes no more pages of it.
    """
    pages = _set_out(plan)
    if not plan.shots:
        return pages
    pages += photograph_pages(plan)
    plan.shown = False
    apart = [*_set_out(plan), *photograph_pages(plan)]
    return pages if len(pages) <= len(apart) else apart


def _set_out(plan: Plan) -> list[Page]:
    """Cover, set-ups, positions that have no room there, and what is still to be heeded."""
    pages, heeded = compact(plan)
    if pages:
        return pages if heeded else _with_safety(plan, pages)
    first, parts = cover(plan), set_up_parts(plan)
    pages = [*first, *set_up_pages(plan, parts)]
    for course in plan.courses:
        pages += positions_cards(plan, course)
    pages = _with_safety(plan, pages)
    # Drawings grow last: they take only what nothing else needs.
    for at, some in enumerate(parts, len(first)):
        pages[at] = larger(plan, some, pages[at])
    return pages


def _file(name: str) -> str:
    """The file's name at the foot of every page, its beginning where it is very long."""
    return f"{name}.yaml" if len(name) <= FILE else f"{name[:FILE]}{CUT}.yaml"


def _with_safety(plan: Plan, pages: list[Page]) -> list[Page]:
    """What is still to be heeded on the last page that has the room for most
    of it; else on one of its own.
    """
    # A plan without set-ups has nothing to cut by: what is true of any work stands on its cover.
    blocks = rest(plan, pages) if plan.courses else []
    if not blocks:
        return pages
    for at in range(len(pages) - 1, 0, -1) if plan.measured else ():
        for most in range(MOST, LEAST - 1, -2):
            joined = replace(pages[at], blocks=(*pages[at].blocks, Rule("frame"), *rest(plan, pages, most)))
            if plan.fits(joined):
                return [*pages[:at], joined, *pages[at + 1 :]]
    return [*pages, *_flow(plan, "safety", "Safety notes", blocks)]


def _long(plan: Plan, pages: list[Page]) -> list[object]:
    """Texts that were cut short on any of the pages, whole."""
    printed = "\n".join(words_of(tuple((page.title, page.blocks) for page in pages)))
    found: dict[str, str] = {where: text for (where, cut), text in plan.long.items() if cut in printed}
    blocks: list[object] = []
    for where, text in found.items():
        blocks += [
            Gap(4),
            Heading(f"{CUT} {where[:1].upper()}{where[1:]}"),
            *(Words(piece) for piece in _pieces(text)),
        ]
    return blocks


def _pieces(text: str, most: int = 1200) -> Iterator[str]:
    """A long text in pieces that each have room on a page."""
    while len(text) > most:
        blank = text.rfind(" ", 0, most)
        cut = blank if blank > most / 2 else most
        yield text[:cut]
        text = text[cut:].lstrip()
    yield text


def _flow(plan: Plan, kind: str, text: str, blocks: list[object]) -> list[Page]:
    """Blocks over as many pages as they need; a heading never stands alone at the end of one."""
    head = short_title(plan, "Sheet", text)

    def page(part: list[object]) -> Page:
        return Page(
            kind=kind, title=head, blocks=tuple(part), foot=(FOOT,), band=band(plan, ()), code=plan.mark
        )

    pages: list[Page] = []
    start = 0
    while start < len(blocks):
        end = start + 1
        while end < len(blocks) and end - start < FLOWING and plan.fits(page(blocks[start : end + 1])):
            end += 1
        if end < len(blocks):
            while end > start + 1 and isinstance(blocks[end - 1], (Heading, Gap)):
                end -= 1
        pages.append(page(blocks[start:end]))
        start = end
    return pages


#: So many letters of the file's name stand at the foot.
FILE = 40
#: Fewer notes than this are not worth the page that they share; they get one of their own.
LEAST = 10
#: Blocks of a flowing page where nothing is measured.
FLOWING = 60
