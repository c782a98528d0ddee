"""One sheet of a lesson as two documents: the worksheet, and the key for whoever marks."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Document, Page
from jobsheet.report.lesson.exercise_page import Head, document, pages
from jobsheet.report.lesson.order_key import key_groups
from jobsheet.report.lesson.order_worksheet import exercise_name, worksheet_groups

Fits = Callable[[Page], bool]


def order_documents(
    reckoned: Reckoned, level: int, seed: int, sheet: int, fits: Fits, machine: str = ""
) -> tuple[Document, Document]:
    """Worksheet and key of putting in order; raises as `order_exercise` does."""
    exercise = order_exercise(reckoned, level, seed, sheet)
    head = Head(job=reckoned.job, exercise=exercise_name(exercise), sheet=sheet, machine=machine)
    key = Head(
        job=reckoned.job, exercise=head.exercise, sheet=sheet, machine=machine,
        key=f"{seed}, sheet {sheet}, level {level}",
    )  # fmt: skip
    work = worksheet_groups(exercise, reckoned, ())
    return (
        document(f"worksheet {sheet}", head, pages(head, work, fits)),
        document(f"key {sheet}", key, pages(key, key_groups(exercise, ()), fits)),
    )
