"""The jobs that were open last, the newest first and each once."""

from __future__ import annotations

import pytest

from jobsheet.paths import own_folder
from jobsheet.storage.kept.recent import MOST, NAME, Recent, last, recent, used


def test_the_newest_comes_first_and_each_stands_once(tmp_path):
    one, other = tmp_path / "one.yaml", tmp_path / "other.yaml"
    used(one, "One")
    used(other, "Other")
    used(one, "One, renamed")
    assert [(found.path, found.part) for found in recent()] == [
        (str(one), "One, renamed"),
        (str(other), "Other"),
    ]


def test_no_more_than_fit_a_menu_are_kept(tmp_path):
    for number in range(MOST + 3):
        used(tmp_path / f"{number}.yaml", "")
    assert len(recent()) == MOST
    assert recent()[0].path.endswith(f"{MOST + 2}.yaml")


def test_the_last_is_the_newest_that_is_still_there(tmp_path):
    there, gone = tmp_path / "there.yaml", tmp_path / "gone.yaml"
    there.write_text("x", encoding="utf-8")
    used(there, "")
    used(gone, "")
    assert [one.there for one in recent()] == [False, True]
    assert last() == there


@pytest.mark.parametrize("text", ["", "{", '{"path": 1}', '[{"part": "x"}]'])
def test_a_broken_file_is_as_good_as_none(text):
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / NAME).write_text(text, encoding="utf-8")
    assert recent() == ()
    assert last() is None


def test_a_file_of_more_than_fit_is_cut_and_none_is_the_last_where_all_are_gone(tmp_path):
    for number in range(MOST):
        used(tmp_path / f"{number}.yaml", "")
    assert len(recent()) == MOST
    assert last() is None
    lines = ",".join(f'{{"path": "/gone/{number}"}}' for number in range(MOST + 1))
    (own_folder() / NAME).write_text(f"[{lines}]", encoding="utf-8")
    assert [one.path for one in recent()] == [f"/gone/{number}" for number in range(MOST)]


def test_a_path_that_no_system_has_is_not_there():
    assert not Recent("a\0b").there


def test_a_folder_that_cannot_be_written_to_is_no_reason_to_stop(tmp_path, monkeypatch):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path / "file" / "own"))
    used(tmp_path / "a.yaml", "A")
    assert recent() == ()
