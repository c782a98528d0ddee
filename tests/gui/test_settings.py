"""What the window remembers: light or dark and the size; a broken file is as good as none."""

from __future__ import annotations

import pytest

from jobsheet.gui.window.settings import NAME, Settings, read, write


def test_before_the_first_start_it_is_as_the_system_has_it():
    assert read() == Settings(scheme="system", bench=False)


def test_what_is_written_is_read():
    write(Settings(scheme="dark", bench=True))
    assert read() == Settings(scheme="dark", bench=True)


@pytest.mark.parametrize("kept", [b"", b"{", b"[]", b'{"scheme": 7}', b'{"bench": "yes"}', b"\xff"])
def test_a_broken_file_is_as_good_as_none(home, kept):
    home.mkdir()
    (home / NAME).write_bytes(kept)
    assert read() == Settings()


def test_what_a_later_program_adds_is_passed_over(home):
    home.mkdir()
    (home / NAME).write_bytes(b'{"scheme": "light", "bench": true, "more": 1}')
    assert read() == Settings(scheme="light", bench=True)


def test_a_folder_that_cannot_be_made_is_no_reason_to_stop(home):
    home.write_text("a file where the folder should be")
    write(Settings(scheme="dark"))
    assert read() == Settings()
