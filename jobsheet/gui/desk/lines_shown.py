"""What stands in the fields of the finished part: the line as typed, and what was understood of it or why it was not."""

from __future__ import annotations

from jobsheet.edit.finished_lines import line_number, value_of_line
from jobsheet.errors import QuantityError
from jobsheet.gui.forms.shown import Shown
from jobsheet.model.job import Job


def line_shown(job: Job, name: str) -> Shown:
    """One field of `job:finished`; nothing is read where nothing is written."""
    text = value_of_line(job.finished, name)
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
