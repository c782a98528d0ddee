"""A shelf read strictly: what is broken with its line, what is there twice, and nothing of a good one."""

from __future__ import annotations

import shutil

from jobsheet.shelf.checking import Wrong, checked
from jobsheet.shelf.shelf_index import Index


def wrong(shelf):
    index = Index(shelf)
    index.refresh()
    try:
        found = list(checked(index))
    finally:
        index.close()
    return [one for one in found if isinstance(one, Wrong)], [
        one for one in found if not isinstance(one, Wrong)
    ]


def test_a_good_shelf_has_nothing_wrong_and_every_file_is_counted(shelf):
    found, counted = wrong(shelf)
    assert found == []
    assert counted == list(range(1, len(list(shelf.rglob("*.yaml"))) + 1))


def test_a_broken_file_is_named_with_its_line(shelf):
    path = shelf / "hm-100-drilled-plate-b1.yaml"
    path.write_text(path.read_text(encoding="utf-8") + "wobble: 3\n", encoding="utf-8")
    found, _ = wrong(shelf)
    assert [one.path for one in found] == [path.name]
    assert found[0].line == len(path.read_text(encoding="utf-8").splitlines())
    assert str(found[0]).startswith(f"{path.name}, line ")


def test_the_very_same_file_is_there_once_too_often(shelf):
    shutil.copy(shelf / "hm-103-pivot-block.yaml", shelf / "old" / "pivot.yaml")
    found, _ = wrong(shelf)
    assert any("the very same file is there again: old/pivot.yaml" in one.sentence for one in found)
