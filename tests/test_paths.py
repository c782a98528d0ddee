"""Where things lie: what is shipped, one's own folder, and what is no file."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from jobsheet.paths import no_file, own_folder, resources, sample_jobs


def test_what_is_shipped_is_there():
    assert (resources() / "sources.yaml").is_file()
    assert list(sample_jobs().glob("*.yaml"))


def test_one_s_own_folder_is_the_one_that_is_named_and_follows_at_once(monkeypatch, tmp_path):
    monkeypatch.setenv("JOBSHEET_HOME", str(tmp_path / "mine"))
    assert own_folder() == tmp_path / "mine"
    assert not own_folder().exists()
    monkeypatch.delenv("JOBSHEET_HOME")
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    assert own_folder() == tmp_path / "config" / "jobsheet"


@pytest.mark.parametrize(
    ("platform", "expected"),
    [("darwin", "Library/Application Support/jobsheet"), ("win32", "AppData/Roaming/jobsheet"), ("linux", ".config/jobsheet")],
)  # fmt: skip
def test_without_a_word_it_lies_where_each_system_keeps_such_things(
    monkeypatch, tmp_path, platform, expected
):
    for name in ("JOBSHEET_HOME", "APPDATA", "XDG_CONFIG_HOME"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(sys, "platform", platform)
    monkeypatch.setattr(Path, "home", lambda: tmp_path)
    assert own_folder() == tmp_path / expected


def test_what_lies_in_place_of_a_file_is_named(tmp_path):
    (tmp_path / "file").write_text("x", encoding="utf-8")
    assert (
        no_file(tmp_path / "file")
        == no_file(tmp_path / "nothing")
        == no_file(tmp_path / "file" / "below")
        == ""
    )
    assert no_file(tmp_path) == "a folder"
    assert no_file(Path(os.devnull)) == "a device"
