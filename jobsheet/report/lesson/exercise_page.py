"""What every page of an exercise has: a title block that is no plan's, a foot that says it is for no machine, and pages filled in turn."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from msgspec import Struct

from jobsheet.model.job import Job
from jobsheet.report.blocks import Document, Page, StopBand, TitleCell
from jobsheet.report.for_use.chosen_pages import numbered

FOOT = "An exercise, not a set-up sheet: do not cut from it."
#: Over every page that has mistakes on purpose.
PLANTED = "EXERCISE, PLANTED MISTAKES, NOT FOR THE MACHINE"


class Head(Struct, frozen=True, kw_only=True):
    """What stands in the title block; `key` has what only the one who marks may know, and is empty on a worksheet."""

    job: Job
    exercise: str
    sheet: int
    machine: str
    key: str = ""
    planted: bool = False
    #: What the page is, where it is neither worksheet nor key.
    called: str = ""


def title(head: Head) -> tuple[tuple[TitleCell, ...], ...]:
    """Exercise, sheet, page; part, machine, and a place for a number: no name is asked."""
    part = head.job.part
    named = " ".join(word for word in (part.number, part.name) if word) or "Part without a name"
    last = (
        TitleCell(caption="Slips and figures from class seed", text=head.key, share=0.29)
        if head.key
        else TitleCell(caption="Your number, date", share=0.29)
    )
    return (
        (
            TitleCell(caption="Exercise", text=head.exercise, share=0.47, strong=True),
            TitleCell(
                caption="Sheet",
                text=f"{head.called or ('Key' if head.key else 'Worksheet')} {head.sheet}",
                share=0.37,
                strong=True,
            ),
            TitleCell(caption="Page", share=0.16, strong=True, page=True),
        ),
        (
            TitleCell(
                caption="Part",
                text=f"{named}, revision {part.revision}" if part.revision else named,
                share=0.47,
            ),
            TitleCell(caption="Machine", text=head.machine, share=0.24),
            last,
        ),
    )


def pages(head: Head, groups: Sequence[tuple[object, ...]], fits: Callable[[Page], bool]) -> list[Page]:
    """Groups of blocks one after the other; a group that a page has no room left for begins the next one."""
    found: list[tuple[object, ...]] = [()]
    for group in groups:
        if found[-1] and not fits(_page(head, (*found[-1], *group))):
            found.append(())
        found[-1] = (*found[-1], *group)
    return [_page(head, blocks) for blocks in found]


def _page(head: Head, blocks: tuple[object, ...]) -> Page:
    band = StopBand(PLANTED, "", ()) if head.planted else None
    return Page(kind="exercise", about="cover", title=title(head), blocks=blocks, foot=(FOOT,), band=band)


def document(name: str, head: Head, made: list[Page]) -> Document:
    """The pages as a document that carries no file: an exercise is no plan, and a worksheet holds no answer."""
    words = f"{head.exercise}, {'key' if head.key else 'worksheet'} {head.sheet}"
    return Document(
        name=name, title=words, pages=numbered(made), source=b"", subject="An exercise, not for the machine"
    )
