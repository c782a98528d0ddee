"""Asks whether the workshop has what the plan asks for."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.errors import DocumentError
from jobsheet.model.remark import Remark
from jobsheet.reckoning.cabinet.cabinet_look import look_through
from jobsheet.review.rule import View, remark, rule
from jobsheet.storage.cabinet_file import cabinet_for


@rule("in-the-cabinet", "What the plan asks for is in the cabinet", "rework")
def in_the_cabinet(view: View) -> Iterator[Remark]:
    """A tool that the cabinet lacks, or that is away, is replaced at the machine by another one that nobody reckoned.

    It is asked only where there is a cabinet that concerns the job: the person's own, or that of the workshop which
    the job names. Of what a cabinet has no section for nothing is said.

    Because: Speed, feed and depth were planned for this tool; with the next best one the sheet is no longer true.
    Not so: drill 5.5 planned, 5.0 and 6.0 in the drawer
    So: a drill that is there, or the missing one bought first
    From: common practice
    """
    first = tuple(operation.key for _, operation in view.job.operations())[:1]
    try:
        cabinet = cabinet_for(view.job.workshop)
    except DocumentError as error:
        count = len(error.problems)
        more = f" (and {count - 1} more)" if count > 1 else ""
        message = f"{error.name} cannot be used, so nothing is looked up in it: {error.problems[0]}{more}"
        yield remark(view, "in-the-cabinet", message, *first)
        return
    if cabinet is None:
        return
    for look in look_through(view.job, cabinet):
        if look.lacking:
            steps = look.need.operations or (() if look.need.set_up else first)
            yield remark(
                view, "in-the-cabinet", look.sentence.rstrip("."), *steps, set_up="" if look.need.operations else look.need.set_up
            )  # fmt: skip
