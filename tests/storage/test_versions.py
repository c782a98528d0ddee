"""Formats of files: a known one is read, one that is not said or newer is refused with what to write."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.errors import DocumentError
from jobsheet.storage.versions import CURRENT, up_to_date, what_is_wrong


def test_a_file_of_today_is_left_as_it_is():
    root = parse(f"format: {CURRENT}\nunits: mm\n", "job")
    assert up_to_date(root, "job") is root
    text = parse("just words", "job")
    assert up_to_date(text, "job") is text


@pytest.mark.parametrize(
    ("text", "says"), [("units: mm\n", f"write format: {CURRENT}"), (f"format: {CURRENT + 1}\n", "newer than this program"), ("format: two\n", "is not a format"), ("format: 0\n", "is not a format"), ("format: ²\n", "is not a format"), ("format: 99999999\n", "is not a format")]
)  # fmt: skip
def test_a_format_that_is_not_known_is_refused_by_its_line(text, says):
    with pytest.raises(DocumentError, match=says) as caught:
        up_to_date(parse(text, "job"), "job")
    assert caught.value.problems[0].line == 1


def test_every_format_up_to_today_s_is_read():
    assert [what_is_wrong(str(number), CURRENT) for number in range(1, CURRENT + 1)] == [""] * CURRENT
