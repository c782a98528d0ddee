"""Where a share knows no locks a file stands for one: one writer at a time, killed or
not, and a dead lock blocks nobody.
"""

from __future__ import annotations

import errno
import fcntl
import os
import random
import signal
import subprocess
import sys
import time

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage import one_writer as writers
from jobsheet.storage.locks.lock_file import DEAD, LockFile
from jobsheet.storage.one_writer import lock_of, one_writer


@pytest.fixture
def no_locks(monkeypatch):
    """As a share says it that knows none."""

    def refused(*_):
        raise OSError(errno.ENOTSUP, os.strerror(errno.ENOTSUP))

    monkeypatch.setattr(fcntl, "flock", refused)


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def test_one_of_two_has_it_and_it_says_whose_it_is(tmp_path, no_locks, monkeypatch):
    monkeypatch.setattr(writers, "PATIENCE", 0.05)
    path = tmp_path / "part.yaml"
    with one_writer(path):
        assert ".part.yaml.writing" in names(tmp_path)
        with pytest.raises(CannotWrite, match=r" on .+ \(since \d\d:\d\d\) is writing part.yaml"), one_writer(path):  # fmt: skip
            pass
    with one_writer(path):  # given back
        pass
    assert names(tmp_path) == []


def test_a_lock_of_a_program_that_has_ended_blocks_nobody(tmp_path, no_locks):
    path = tmp_path / "part.yaml"
    with one_writer(path):
        lines = (tmp_path / ".part.yaml.writing").read_text("utf-8").splitlines()
    done = subprocess.run(
        [sys.executable, "-c", "import os; print(os.getpid())"], capture_output=True, text=True, check=True
    )
    lines[2] = done.stdout.strip()
    (tmp_path / ".part.yaml.writing").write_text("\n".join(lines), encoding="utf-8")
    begun = time.monotonic()
    with one_writer(path):
        assert time.monotonic() - begun < 1
    assert names(tmp_path) == []


def test_a_lock_of_another_computer_is_dead_by_the_clock_of_the_share(tmp_path, no_locks, monkeypatch):
    monkeypatch.setattr(writers, "PATIENCE", 0.05)
    path, lock = tmp_path / "part.yaml", tmp_path / ".part.yaml.writing"
    lock.write_text("B\nbench-2\n1\n14:03\n", encoding="utf-8")
    with pytest.raises(CannotWrite, match=r"^B on bench-2 \(since 14:03\) is writing part.yaml"), one_writer(path):  # fmt: skip
        pass
    assert lock.exists()
    old = lock.stat().st_mtime - DEAD - 1
    os.utime(lock, (old, old))
    with one_writer(path):
        assert "bench-2" not in lock.read_text("utf-8")
    assert names(tmp_path) == []


def test_without_links_the_file_itself_is_the_lock(tmp_path, no_locks, monkeypatch):
    def refused(*_):
        raise PermissionError(errno.EPERM, "no links")

    monkeypatch.setattr(os, "link", refused)
    monkeypatch.setattr(writers, "PATIENCE", 0.05)
    with one_writer(tmp_path / "part.yaml"), pytest.raises(CannotWrite), one_writer(tmp_path / "part.yaml"):
        pass
    assert names(tmp_path) == []


def test_where_no_file_can_be_made_nobody_is_held_up(tmp_path):
    assert LockFile(tmp_path / "gone" / ".part.yaml.writing").taken()


#: Counts one up in a file, twenty times, a writer at a time: two at once lose a
#: count. What it has counted it says.
_COUNTS = """
import errno, fcntl, os, sys, time
from pathlib import Path
def refused(*_): raise OSError(errno.ENOTSUP, "no locks")
fcntl.flock = refused
from jobsheet.storage.one_writer import one_writer
path = Path(sys.argv[1])
for _ in range(20):
    with one_writer(path):
        n = int(path.read_text())
        time.sleep(0.001)
        new = path.with_name(f"{os.getpid()}.new"); new.write_text(str(n + 1)); new.replace(path)
        os.write(1, b".")
"""


def test_several_writers_lose_nothing_also_where_some_are_killed(tmp_path):
    path, draw = tmp_path / "count", random.Random(7)
    path.write_text("0", encoding="utf-8")
    hands = [
        subprocess.Popen([sys.executable, "-c", _COUNTS, str(path)], stdout=subprocess.PIPE) for _ in range(4)
    ]
    for one in hands[:2]:
        time.sleep(0.2 + draw.random() * 0.2)
        one.send_signal(signal.SIGKILL)
    said = sum(len(one.communicate(timeout=60)[0]) for one in hands)
    assert [one.returncode for one in hands[2:]] == [0, 0]
    # A writer that is killed between writing and saying so has counted one that it did not say.
    assert said <= int(path.read_text("utf-8")) <= said + 2
    assert not lock_of(path).exists()
