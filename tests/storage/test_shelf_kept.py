"""Which folders are shelves: the last chosen, and those before it in their order."""

from __future__ import annotations

from pathlib import Path

from jobsheet.paths import own_folder
from jobsheet.storage.kept.shelf_kept import MOST, NAME, keep_shelf, shelf_folder, shelves


def test_the_last_chosen_is_the_shelf_and_others_keep_their_place(tmp_path):
    assert shelf_folder() is None
    assert shelves() == ()
    for name in ("a", "b", "a"):
        keep_shelf(tmp_path / name)
    assert shelf_folder() == tmp_path / "a"
    assert shelves() == (tmp_path / "a", tmp_path / "b")


def test_of_more_than_are_kept_the_first_goes():
    for number in range(MOST + 2):
        keep_shelf(Path(f"/shelf/{number}"))
    assert shelves() == tuple(Path(f"/shelf/{number}") for number in range(2, MOST + 2))


def test_a_broken_file_is_as_good_as_none():
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / NAME).write_text("{", encoding="utf-8")
    assert shelf_folder() is None
    assert shelves() == ()
