"""A catalogue file of one's own: read strictly, each problem with the line that is nearest to it."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.own_files import read_own, stamp
from jobsheet.errors import DocumentError


def test_a_problem_has_the_line_of_what_it_is_about_or_of_what_holds_it(tmp_path):
    path = tmp_path / "own.yaml"
    path.write_text("materials:\n  steel:\n    kc: 1500\n    also: [a, b]\n", encoding="utf-8")
    found = read_own(path)
    assert found.data == {"materials": {"steel": {"kc": "1500", "also": ["a", "b"]}}}
    assert found.problem(("materials", "steel", "kc"), "too much").line == 3
    missing = found.problem(("materials", "steel", "mc"), "write mc")
    assert (missing.line, missing.path) == (2, "materials → steel → mc")


def test_what_is_refused_in_any_file_is_refused_here(tmp_path):
    path = tmp_path / "own.yaml"
    path.write_text("a: &x 1\nb: *x\n", encoding="utf-8")
    with pytest.raises(DocumentError, match=r"own\.yaml cannot be used"):
        read_own(path)


def test_a_folder_is_known_by_its_files_and_when_they_changed(tmp_path):
    assert stamp(tmp_path / "none") == ()
    before = stamp(tmp_path)
    (tmp_path / "one.yaml").write_text("a: 1\n", encoding="utf-8")
    (tmp_path / ".hidden.yaml").write_text("a: 1\n", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("a", encoding="utf-8")
    first = stamp(tmp_path)
    assert before == ()
    assert [name for name, _, _ in first] == ["one.yaml"]
    (tmp_path / "one.yaml").write_text("a: 12\n", encoding="utf-8")
    assert stamp(tmp_path) != first
