"""Files that only grow: a record is whole by its closing line, and a changed one is noticed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.errors import DocumentError
from jobsheet.storage.records.closed_records import (
    add,
    blocks,
    bytes_of,
    closed,
    id_of,
    is_closed,
    note_lines,
    one_line,
)

LINES = ["machine: b-1", "outcome: clean"]


def test_a_record_is_closed_by_the_hash_of_its_lines():
    *lines, last, empty = closed(LINES).split("\n")
    assert lines == LINES
    assert empty == ""
    assert is_closed(last)
    assert last.endswith(id_of(LINES))
    assert id_of([*LINES, "x"]) != id_of(LINES)
    assert not is_closed("end: xyz")
    assert not is_closed("ending")


@given(st.text())
def test_any_text_is_one_line_and_any_note_comes_back(text):
    assert len((one_line(text) or "x").splitlines()) == 1
    assert all(line.startswith("note:") and len(line.splitlines()) == 1 for line in note_lines(text))


def test_blocks_lie_between_blank_lines_and_remarks_are_left_out():
    raw = "\ufeff# head\n\na: 1\r\nb: 2\n\n\n# x\nc: 3\n".encode()
    assert list(blocks(raw)) == [(3, ["a: 1", "b: 2"]), (8, ["c: 3"])]


def test_records_are_put_behind_those_that_are_there(tmp_path):
    path = tmp_path / "log.txt"
    add(path, "log", "# head\n", [closed(LINES)], lambda _data: None)
    add(path, "log", "# head\n", [closed(["a: 1"])], lambda _data: None)
    text = path.read_text(encoding="utf-8")
    assert text.startswith("# head\n")
    assert [block[:-1] for _, block in blocks(text.encode())] == [LINES, ["a: 1"]]


def test_what_is_refused_beforehand_leaves_the_file_as_it_was(tmp_path):
    path = tmp_path / "log.txt"
    add(path, "log", "# head\n", [closed(LINES)], lambda _data: None)
    before = path.read_bytes()

    def refuse(_data):
        raise DocumentError("log", ())

    with pytest.raises(DocumentError):
        add(path, "log", "# head\n", [closed(["a: 1"])], refuse)
    assert path.read_bytes() == before


def test_what_is_no_file_cannot_be_read(tmp_path):
    with pytest.raises(DocumentError, match="a folder"):
        bytes_of(tmp_path, "a log")
