"""Every text that a person typed into a job, with the field it stands in."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from jobsheet.holdings.all_holdings import entries_of
from jobsheet.model.job import Job
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.remembered import remembered
from jobsheet.report.wording import TYPED_ORDER
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout
from jobsheet.storage.plan_mark import plan_mark

#: Letters and figures that run from right to left (Unicode Standard Annex 9, table 4).
_FROM_RIGHT = ("R", "AL", "AN")


@remembered(2)
def typed_order(job: Job) -> tuple[str, ...]:
    """That right-to-left writing is printed as it was typed, where a text of the job has any; else nothing.

    The lines are broken and set from left to right: putting such writing in order takes the
    whole of Annex 9, and joined letters.
    """
    texts = (text for _, text in texts_of(job) if not text.isascii())
    runs = any(unicodedata.bidirectional(letter) in _FROM_RIGHT for text in texts for letter in text)
    return (TYPED_ORDER,) if runs else ()


def texts_of(job: Job) -> Iterator[tuple[str, str]]:
    """Field and text, in the order of the file."""
    yield from _group("part", layout.PART, job.part)
    yield from _group("job", layout.JOB, job)
    yield from _group("stock", stock_entries(job.stock), job.stock)
    for letter, _ in job.datums:
        yield "datums", letter
    for line in (job.finished.sizes, *job.finished.features):
        if line:
            yield "finished part", line
    for aside in job.dismissed:
        yield from _group("set aside", layout.DISMISSED[2:], aside)
    for revision in job.revisions:
        yield from _group(f"plan {plan_mark(revision.number)}", layout.REVISION[1:], revision)
    for shown in job.photographs:
        yield from _group("photograph", layout.PHOTOGRAPH[1:2], shown)
    for set_up in job.set_ups:
        where = f"set-up {set_up.number}"
        yield from _group(where, layout.SET_UP, set_up)
        yield from _group(f"{where}, holding", entries_of(set_up.holding), set_up.holding)
        yield from _group(f"{where}, zero", layout.ZERO, set_up.zero)
        for operation in set_up.operations:
            yield from _group(f"step {operation.number}", kind_of(operation.kind).entries, operation.fields)


def _group(where: str, entries: tuple[Entry, ...], value: object) -> Iterator[tuple[str, str]]:
    for entry in entries:
        text = entry.text(getattr(value, entry.name))
        if text:
            yield f"{where}, {entry.title.lower()}", text
