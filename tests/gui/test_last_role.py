"""The role of last time stands there again; a file that is broken is as good as none."""

from __future__ import annotations

import pytest

from jobsheet.gui.desk.last_role import LONGEST, NAME, keep_role, last_role


def test_before_the_first_there_is_none_and_what_is_kept_comes_back(home):
    assert last_role() == ""
    keep_role("Apprentice A, with the Trainer")
    assert last_role() == "Apprentice A, with the Trainer"
    assert (home / NAME).read_text() == "Apprentice A, with the Trainer\n"


def test_the_same_one_again_writes_nothing(home):
    keep_role("Trainer")
    before = (home / NAME).stat().st_mtime_ns
    keep_role("Trainer")
    assert (home / NAME).stat().st_mtime_ns == before


@pytest.mark.parametrize(
    ("kept", "role"),
    [
        (b"", ""),
        (b"\xff\xfe\x00", ""),
        (b" Apprentice \n\n A \t", "Apprentice A"),
        (b"x" * 900, "x" * LONGEST),
    ],
)
def test_whatever_stands_in_the_file_is_one_short_line_or_nothing(home, kept, role):
    home.mkdir()
    (home / NAME).write_bytes(kept)
    assert last_role() == role


def test_a_folder_that_cannot_be_made_is_no_reason_to_stop(home):
    home.write_text("a file where the folder should be")
    keep_role("Trainer")
    assert last_role() == ""
