"""What went wrong and stops nobody is kept in a log, once for each place."""

from __future__ import annotations

import pytest

from jobsheet.gui.desk import problems_log


@pytest.fixture(autouse=True)
def nothing_kept(monkeypatch):
    monkeypatch.setattr(problems_log, "_KEPT", set())


def _fails():
    raise ZeroDivisionError("asked at half a number")


def test_what_fails_is_absent_and_what_does_not_is_there(home):
    assert problems_log.or_absent(lambda: 7, None) == 7
    assert not (home / "problems.log").exists()
    assert problems_log.or_absent(_fails, "absent") == "absent"
    assert "ZeroDivisionError: asked at half a number" in (home / "problems.log").read_text()


def test_what_fails_at_every_key_is_written_once(home):
    for _ in range(5):
        problems_log.or_absent(_fails, None)
    assert (home / "problems.log").read_text().count("Traceback") == 1


def test_more_than_so_many_are_not_written(home, monkeypatch):
    monkeypatch.setattr(problems_log, "MOST", 0)
    problems_log.or_absent(_fails, None)
    assert not (home / "problems.log").exists()


def test_an_error_that_was_never_raised_and_a_folder_that_cannot_be_made_stop_nobody(home):
    problems_log.keep(ValueError("never raised"))
    assert "never raised" in (home / "problems.log").read_text()
    (home / "problems.log").unlink()
    home.rmdir()
    home.write_text("a file where the folder should be")
    assert problems_log.or_absent(_fails, 1) == 1


def test_an_end_that_was_asked_for_goes_through(home):
    def ended():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        problems_log.or_absent(ended, None)
