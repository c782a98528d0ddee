"""Never more than two seconds of work unwritten: while somebody types on and on, at
a signal, at a fault, behind a box.
"""

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import msgspec
import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QMessageBox

from jobsheet.gui.desk import journal
from jobsheet.gui.forms import ask
from jobsheet.gui.start.guard import Guard
from jobsheet.storage.job_file import job_from_text

#: What may be lost [s].
MOST = 2.0
TYPIST = Path(__file__).with_name("typist.py")


class Typing:
    """One program that types, in a home of its own."""

    def __init__(self, home):
        self.home, self.told = home, home / "told"
        home.mkdir(parents=True)
        self.program = subprocess.Popen(
            [sys.executable, str(TYPIST), str(self.told)],
            env={**os.environ, "JOBSHEET_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"},
            stderr=subprocess.DEVNULL,
        )

    def wait_for_keys(self):
        """Until it types; when it began."""
        until = time.monotonic() + 60
        while not (self.told.exists() and self.told.stat().st_size):
            assert self.program.poll() is None
            assert time.monotonic() < until
            time.sleep(0.02)
        return float(self.told.read_text().split(" ", 1)[0])

    def end(self, by):
        """End it; when that was."""
        self.program.send_signal(by)
        ended = time.monotonic()
        self.program.wait(30)
        return ended

    def lost(self, ended):
        """How old the first key is that the journal does not hold [s]; a blank alone is an empty field."""
        lines = self.told.read_text().splitlines()
        keys = [(float(when), text) for when, _, text in (line.partition(" ") for line in lines)]
        kept = self.kept()
        known = max(
            (index for index, (_, text) in enumerate(keys) if (text if text.strip() else "") == kept),
            default=-1,
        )
        assert kept is None or known >= 0, f"{kept!r} is in the journal, and nobody typed it"
        return ended - keys[known + 1][0] if known + 1 < len(keys) else 0.0

    def kept(self):
        """The text in the journal, or None."""
        files = list((self.home / "journal").glob("*.json"))
        if not files:
            return None
        entry = msgspec.json.decode(files[0].read_bytes(), type=journal.Entry)
        return job_from_text(entry.job, "journal").find("drill")[1].fields.note


def kill_round(tmp_path, rounds, seed):
    """So many at once, each killed at its own instant; what each lost [s]."""
    dice = random.Random(seed)
    typing = [Typing(tmp_path / f"{seed}-{number}") for number in range(rounds)]
    ends = sorted((one.wait_for_keys() + dice.uniform(0.5, 5), index) for index, one in enumerate(typing))
    lost = {}
    for when, index in ends:
        time.sleep(max(0.0, when - time.monotonic()))
        one = typing[index]
        lost[seed, index] = one.lost(one.end(signal.SIGKILL))
    return lost


def test_killed_while_typing_without_a_pause(tmp_path):
    lost = kill_round(tmp_path, 4, 12)
    assert max(lost.values()) <= MOST, lost


@pytest.mark.long
def test_killed_two_hundred_times(tmp_path, capsys):
    lost = {}
    for seed in range(100):
        lost |= kill_round(tmp_path, 2, seed)
        assert max(lost.values()) <= MOST, lost
    with capsys.disabled():
        print(f"\nkilled {len(lost)} times while typing: at most {max(lost.values()):.2f} s lost")


def test_a_signal_to_end_loses_nothing(tmp_path):
    one = Typing(tmp_path / "home")
    one.wait_for_keys()
    time.sleep(0.3)
    one.end(signal.SIGTERM)
    assert one.program.returncode == 128 + signal.SIGTERM
    assert one.kept() == one.told.read_text().splitlines()[-1].partition(" ")[2]


def test_a_fault_is_written_before_it_is_told(window, type_in, monkeypatch, qtbot):
    window.open_key("face-rough")
    box = type_in(window, "depth", "0.35 m").box
    there = []
    monkeypatch.setattr(ask, "tell", lambda *_args: there.append("told"))
    monkeypatch.setattr(sys, "__excepthook__", lambda *_args: there.append(len(journal_files())))
    Guard()(ZeroDivisionError, ZeroDivisionError("a fault"), None)
    qtbot.wait(20)
    assert there == [1]  # no box over a text that somebody types
    qtbot.keyClick(box, Qt.Key.Key_Tab)
    qtbot.waitUntil(lambda: "told" in there)
    assert there == [1, "told"]


def test_a_box_keeps_nobody_from_writing(window, type_in):
    window.open_key("face-rough")
    type_in(window, "depth", "0.35")
    box, there = QMessageBox(window), []
    QTimer.singleShot(1500, lambda: (there.extend(journal_files()), box.done(0)))
    box.exec()
    assert there


def journal_files():
    """What the journal holds."""
    return list(journal.folder().glob("*.json"))
