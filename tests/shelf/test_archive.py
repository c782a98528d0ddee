"""A shelf as one archive: the same shelf gives the same bytes, and every sum is
right until something is changed.
"""

from __future__ import annotations

import hashlib
import zipfile

import pytest

from jobsheet.errors import CannotWrite, NoSuchEntry
from jobsheet.shelf.archive import export_shelf, sums_are_right


def test_everything_but_hidden_files_is_inside_with_its_sum(shelf, tmp_path):
    (shelf / ".hidden").write_text("x", encoding="utf-8")
    target = tmp_path / "shelf.zip"
    told = []
    count = export_shelf(shelf, target, told.append)
    assert told == list(range(1, count + 1))
    with zipfile.ZipFile(target) as archive:
        names = [name for name in archive.namelist() if name.startswith("data/")]
        assert len(names) == count == len(list(shelf.rglob("*.yaml")))
        manifest = archive.read("manifest-sha256.txt").decode()
        for name in names:
            assert f"{hashlib.sha256(archive.read(name)).hexdigest()}  {name}\n" in manifest
        assert b"BagIt-Version: 1.0" in archive.read("bagit.txt")
    assert sums_are_right(target) == ()


def test_the_same_shelf_is_the_same_archive_also_where_it_lies_in_it(shelf, tmp_path):
    one, other = tmp_path / "one.zip", shelf / "other.zip"
    export_shelf(shelf, one)
    export_shelf(shelf, other)
    assert one.read_bytes() == other.read_bytes()


def test_what_was_changed_is_named_and_what_is_no_archive_refused(shelf, tmp_path):
    target, spoilt = tmp_path / "shelf.zip", tmp_path / "spoilt.zip"
    export_shelf(shelf, target)
    with zipfile.ZipFile(target) as old, zipfile.ZipFile(spoilt, "w") as new:
        first = next(name for name in old.namelist() if name.startswith("data/"))
        for name in old.namelist():
            new.writestr(name, old.read(name) + (b"x" if name == first else b""))
    assert sums_are_right(spoilt) == (first,)
    with pytest.raises(NoSuchEntry):
        sums_are_right(shelf / "hm-100-drilled-plate-b1.yaml")


def test_a_disk_that_refuses_leaves_nothing_behind(shelf, tmp_path):
    with pytest.raises(CannotWrite, match="Choose another place"):
        export_shelf(shelf, tmp_path / "none" / "shelf.zip")
    assert not (tmp_path / "none").exists()
