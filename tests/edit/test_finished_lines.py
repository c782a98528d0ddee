"""Lines of the finished part as fields: one more than there are, typed whether they
can be read or not, moved and struck.
"""

from __future__ import annotations

import pytest

from jobsheet.edit.finished_lines import (
    MoveLine,
    StrikeLine,
    entries_of_lines,
    entry_of_line,
    line_number,
    name_of_line,
    value_of_line,
    with_field,
)
from jobsheet.errors import CommandError, QuantityError
from jobsheet.finished.lines_in_file import MOST
from jobsheet.model.finished import Finished
from jobsheet.storage.job_file import blank_job


def lines(*features):
    job = blank_job("bench-mill-b-1")
    for number, text in enumerate(features, 1):
        job = with_field(job, name_of_line(number), text)
    return job


def test_behind_the_last_line_stands_an_empty_one():
    names = [entry.name for entry in entries_of_lines(Finished(features=("6 through", "x")))]
    assert names == ["datums", "sizes", "line_1", "line_2", "line_3"]
    assert len(entries_of_lines(Finished(features=("x",) * MOST))) == MOST + 2


def test_what_is_typed_is_kept_though_nobody_can_read_it():
    job = lines("6 through", "wobble")
    assert job.finished.features == ("6 through", "wobble")
    assert value_of_line(job, "line_2") == "wobble"
    assert value_of_line(job, "line_3") == ""


def test_fields_and_lines_are_counted_alike():
    assert [line_number(name_of_line(number)) for number in (0, 1, 17)] == [0, 1, 17]
    for name in ("sizes", "datums", "line_1"):
        assert entry_of_line(name).name == name
    for name in ("line_0", f"line_{MOST + 1}", "line_x", "width"):
        with pytest.raises(CommandError):
            entry_of_line(name)


def test_a_line_is_moved_and_struck_and_not_beyond_the_ends():
    job = lines("a", "b", "c")
    assert MoveLine(1, 2).apply(job).finished.features == ("b", "c", "a")
    assert StrikeLine(2).apply(job).finished.features == ("a", "c")
    for command in (MoveLine(1, -1), MoveLine(3, 1), StrikeLine(4), StrikeLine(0)):
        with pytest.raises(CommandError):
            command.apply(job)


def test_letters_of_the_datums_are_read_at_once():
    job = with_field(blank_job("bench-mill-b-1"), "datums", "A: bottom, B: front")
    assert job.datums == (("A", "bottom"), ("B", "front"))
    assert value_of_line(job, "datums") == "A: bottom, B: front"
    with pytest.raises(QuantityError):
        with_field(job, "datums", "A: sideways")
