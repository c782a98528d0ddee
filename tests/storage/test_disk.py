"""Files on the disk: never half written, and known by their content."""

from __future__ import annotations

import os
import socket
import time
from pathlib import Path

import pytest

from jobsheet.errors import CannotWrite, DocumentError
from jobsheet.storage import disk
from jobsheet.storage.disk import write_file
from jobsheet.storage.job_file import read_job


def test_half_of_a_pair_cannot_be_written(tmp_path):
    with pytest.raises(CannotWrite, match=r"U\+D800"):
        write_file(tmp_path / "one.yaml", "a: \ud800\n")
    assert not list(tmp_path.iterdir())


def test_a_disk_that_gives_back_something_else_does_not_replace_the_old_one(tmp_path, monkeypatch):
    path = tmp_path / "one.txt"
    write_file(path, "old")
    monkeypatch.setattr(disk, "_beside", lambda folder, name, raw: _short(folder, raw))
    with pytest.raises(CannotWrite, match="gives back something else"):
        write_file(path, "new words")
    assert [one.read_text() for one in tmp_path.iterdir()] == ["old"]


def _short(folder, raw):
    made = folder / ".one.txt.aaaaaaaa.new"
    made.write_bytes(raw[:-1])
    return made


def test_what_a_crash_left_is_swept_only_where_it_is_ours_and_old(tmp_path):
    names = (".plate.yaml.ab12_xyz.new", "plate.yaml.ab12_xyz.new", ".plate.new", ".young.yaml.ab12_xyz.new")
    for name in names:
        (tmp_path / name).write_text("x")
        if "young" not in name:
            os.utime(tmp_path / name, (time.time() - 7200,) * 2)
    (tmp_path / ".dir.ab12_xyz.new").mkdir()
    write_file(tmp_path / "one.txt", "x")
    assert {one.name for one in tmp_path.iterdir()} == {*names[1:], ".dir.ab12_xyz.new", "one.txt"}


@pytest.mark.parametrize("make", ["fifo", "socket", "folder", "device"])
def test_what_is_no_file_is_refused_before_it_is_opened(tmp_path, make, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "one.yaml"
    if make == "fifo":
        os.mkfifo(path)
    elif make == "folder":
        path.mkdir()
    elif make == "device":
        path = Path("/dev/zero")
    else:
        with socket.socket(socket.AF_UNIX) as listening:
            listening.bind("one.yaml")
    said = {"fifo": "a pipe", "socket": "a socket", "folder": "a folder", "device": "a device"}[make]
    with pytest.raises(DocumentError, match=said):
        read_job(path)
    for expected in (None, "0" * 16):
        with pytest.raises(CannotWrite, match=said):
            write_file(path, "x", expected)


def test_a_name_that_is_too_long_is_a_sentence(tmp_path):
    with pytest.raises(CannotWrite, match="cannot be written"):
        write_file(tmp_path / ("n" * 256), "x")
    with pytest.raises(DocumentError, match="cannot be opened"):
        read_job(tmp_path / ("n" * 256))


def test_a_full_name_of_letters_of_several_bytes_can_be_written(tmp_path):
    path = tmp_path / ("ä" * 125 + ".yaml")
    write_file(path, "x")
    assert path.read_text() == "x"
