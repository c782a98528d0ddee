"""Lines of the finished part that nobody compares are said, each once, with the reason."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.finished import Finished
from jobsheet.review.plan.not_compared import lines_not_compared

from .views_read import sample, view_of


def said(**lines):
    return list(lines_not_compared(view_of(replace(sample(100), finished=Finished(**lines)))))


def test_without_lines_nothing_is_said():
    assert said() == []


def test_a_line_that_cannot_be_read_is_named_by_its_number():
    (one,) = said(sizes="80 x 50 x 11.5", features=("wobble",))
    assert one.what == "Line 1 of the finished part"
    assert one.line == 1
    assert one.why
    assert not one.why.endswith(".")


def test_sizes_that_cannot_be_read_are_called_so():
    assert [one.what for one in said(sizes="80 x 50")] == ["Sizes of the finished part"]
