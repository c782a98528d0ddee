"""What a line of the finished part can be: its forms with an example, or the next letter of a datum."""

from __future__ import annotations

from jobsheet.finished.datums_line import next_datums
from jobsheet.finished.forms_of_line import FEATURES, SHAPES
from jobsheet.finished.lines_in_file import DATUMS, SIZES
from jobsheet.gui.choosing.listed import Listed
from jobsheet.model.job import Job


def lines_listed(job: Job, name: str) -> tuple[Listed, ...]:
    """What can be written into one of these fields: what it is called, and
    under it the line as it is typed.
    """
    if name == DATUMS.name:
        return tuple(Listed(key=whole, title=one) for one, whole in next_datums(job.datums))
    forms = SHAPES if name == SIZES.name else FEATURES
    return tuple(
        Listed(key=text, title=line_form.title, under=text)
        for line_form, text in ((form, form.marked(job.units)[0]) for form in forms)
    )


def sizes_in(job: Job, text: str) -> tuple[int, int] | None:
    """Where the sizes of an example begin and end, which are typed over first; None where nothing is."""
    return next(
        (
            at
            for line_form in (*FEATURES, *SHAPES)
            for line, at in (line_form.marked(job.units),)
            if line == text
        ),
        None,
    )
