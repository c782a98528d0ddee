"""Who writes is said in signs that a file's name may have; a program has
ended only where that can be known.
"""

from __future__ import annotations

import os
import platform
import subprocess
import sys

import pytest

from jobsheet.storage.locks.who_writes import computer, has_ended, person


@pytest.mark.parametrize(
    ("said", "wanted"), [("bench-2", "bench-2"), ("a/b.c d", "abcd"), ("", "computer"), ("x" * 99, "x" * 40)]
)
def test_a_computer_has_a_name_that_a_file_may_have(monkeypatch, said, wanted):
    monkeypatch.setattr(platform, "node", lambda: said)
    assert computer() == wanted


def test_a_person_without_a_name_is_somebody(monkeypatch):
    import getpass

    assert person()
    monkeypatch.setattr(getpass, "getuser", lambda: "")
    assert person() == "Somebody"


def test_a_program_has_ended_only_where_it_is_of_this_computer_and_gone():
    done = subprocess.run(
        [sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, text=True, check=True
    )
    gone = done.stdout.strip()
    assert has_ended(("B", computer(), gone, "14:03"))
    assert not has_ended(("B", computer(), str(os.getpid()), "14:03"))
    assert not has_ended(("B", "another", gone, "14:03"))
    assert not has_ended(("B", computer(), "9" * 30, "14:03"))
    assert not has_ended(("nonsense",))


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the list of programs is that of Linux")
def test_one_that_was_killed_and_not_asked_after_has_ended():
    one = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])
    said = ("B", computer(), str(one.pid), "14:03")
    assert not has_ended(said)
    one.kill()
    os.waitid(os.P_PID, one.pid, os.WEXITED | os.WNOWAIT)  # it has ended, and stays in the list
    assert has_ended(said)
    one.wait()
