"""What stands in the fields of the finished part: the line as typed, and what was
understood of it or why it was not.
"""

from __future__ import annotations

from jobsheet.edit.finished_lines import line_number, value_of_line
from jobsheet.errors import QuantityError
from jobsheet.finished.lines_in_file import DATUMS
from jobsheet.gui.forms.shown import Shown
from jobsheet.model.job import Job


def line_shown(job: Job, name: str, draft: str | None = None) -> Shown:
    """One field of `job:finished`; nothing is read where nothing is written. Only the
    letters of the datums can be a draft.
    """
    if name == DATUMS.name:
        return _datums_shown(job, draft)
    text = value_of_line(job, name)
    if not text.strip():
        return Shown(text)
    from jobsheet.finished.feature_line import read_feature
    from jobsheet.finished.sizes_line import read_shape
    from jobsheet.finished.told_back import shape_told, told

    try:
        if line_number(name):
            return Shown(text, told(read_feature(text, job.units, job.datums), job.units))
        return Shown(text, shape_told(read_shape(text, job.units, job.datums), job.units))
    except QuantityError as problem:
        return Shown(text, "", problem.kept())


def _datums_shown(job: Job, draft: str | None) -> Shown:
    from jobsheet.finished.datums_line import datums_told, read_datums

    if draft is not None:
        try:
            read_datums(draft)
        except QuantityError as problem:
            return Shown(draft, "", problem.kept())
    return Shown(value_of_line(job, DATUMS.name) if draft is None else draft, datums_told(job.datums))
