"""A shelf on a share that is slow, silent or gone: the window goes on, what was read before is
found, and nothing is lost in saving.
"""

from __future__ import annotations

import time

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest

from jobsheet.edit.commands import SetField
from jobsheet.gui.forms import ask
from jobsheet.gui.places.shelf import shelf_reading
from jobsheet.gui.places.shelf.shelf_window import ShelfWindow
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.shelf_questions import find
from jobsheet.storage.job_file import read_job
from jobsheet.storage.kept.shelf_kept import keep_shelf
from tests.shelf.share_stub import Share, many

JOBS = 300
#: No stop of the window may be longer [s] (issue); on a machine that does other things beside it only
#: what a share would do to it counts.
STOPS = pytest.mark.parametrize("stop", [0.25, pytest.param(0.050, marks=pytest.mark.long)])


@pytest.fixture
def folder(samples, tmp_path):
    there = tmp_path / "share"
    there.mkdir()
    many(there, (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8"), JOBS)
    keep_shelf(there)
    return there


@pytest.fixture
def share(folder, monkeypatch):
    monkeypatch.setattr(
        shelf_reading, "APART", False
    )  # a process of its own would not be held up: here a thread is
    made = Share(folder, monkeypatch)
    yield made
    made.gone, made.seconds = False, 0.0
    made.answer()


class Pulse:
    """A timer that the window should never miss: the longest that it stood still [s]."""

    def __init__(self, parent):
        self.longest, self._last = 0.0, time.perf_counter()
        self._timer = QTimer(parent)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.timeout.connect(self._beat)
        self._timer.start(2)

    def begin(self):
        self.longest, self._last = 0.0, time.perf_counter()

    def _beat(self):
        now = time.perf_counter()
        self.longest, self._last = max(self.longest, now - self._last), now


def opened(window):
    window.actions_by_id["shelf"].trigger()
    return next(one for one in window.findChildren(ShelfWindow) if one.isVisible())


def shut(window, share):
    share.gone, share.seconds = False, 0.0
    share.answer()
    for one in window.findChildren(ShelfWindow):
        one.close()


@STOPS
def test_a_slow_share_is_read_beside_the_window_which_never_stops(window, folder, share, qtbot, stop):
    share.seconds = 0.003
    pulse = Pulse(window)
    place = opened(window)
    QTest.qWait(150)  # its first painting is no stop by the share
    pulse.begin()
    for sign in "drilled":
        QTest.keyClick(place.line, sign)
        QTest.qWait(30)
    qtbot.waitUntil(lambda: place.found is not None and place.found.count == JOBS)
    assert share.asked > 2 * JOBS
    assert share.asked_by_the_window == 0
    assert pulse.longest < stop
    shut(window, share)


@STOPS
def test_a_silent_share_is_shown_as_away_what_was_read_is_found_and_it_comes_back(
    window, folder, share, qtbot, stop
):
    index = Index(folder)
    index.refresh()
    index.close()
    share.silence()
    pulse = Pulse(window)
    place = opened(window)
    QTest.qWait(150)
    pulse.begin()
    began = time.monotonic()
    qtbot.waitUntil(lambda: "does not answer" in place.said.text())
    assert 1.5 < time.monotonic() - began < 3.0
    for sign in "P-0123":
        QTest.keyClick(place.line, sign)
        QTest.qWait(10)
    assert [hit.number for hit in place.found.hits] == ["P-0123"]
    assert "does not answer" in place.said.text()
    QTest.keyClick(
        place.line, Qt.Key.Key_Return
    )  # it cannot be opened now, and the window does not hang on it
    assert place.isVisible()
    qtbot.waitUntil(lambda: "does not answer" in place.facts.facts.problem)
    assert pulse.longest < stop
    share.answer()
    qtbot.waitUntil(
        lambda: window.desk.job.part.number == "P-0123"
    )  # what was asked for is opened once it answers
    shut(window, share)


def test_a_share_that_is_gone_takes_nothing_out_of_the_index(window, folder, share, qtbot):
    index = Index(folder)
    index.refresh()
    share.gone = True
    place = opened(window)
    qtbot.waitUntil(lambda: bool(place.said.text()))
    share.gone = False
    assert find(index, "").count == JOBS
    index.close()
    shut(window, share)


def test_gone_in_the_middle_of_reading_it_keeps_what_it_knows(folder, share):
    index = Index(folder)
    index.refresh()
    count = 0

    def on_the_way():
        nonlocal count
        count += 1
        share.gone = count > 40
        return True

    index.refresh(alive=on_the_way)
    share.gone = False
    assert find(index, "").count == JOBS
    index.close()


def test_an_empty_folder_where_a_share_was_is_said_and_nothing_is_forgotten(folder, tmp_path):
    index = Index(folder)
    index.refresh()
    folder.rename(tmp_path / "elsewhere")
    folder.mkdir()  # the empty folder that a share was laid over
    with pytest.raises(Exception, match="300 jobs were in it: is it connected"):
        index.refresh()
    assert find(index, "").count == JOBS
    index.close()


def test_saving_to_a_share_that_is_gone_says_so_and_loses_nothing(show, folder, share, monkeypatch):
    path = folder / "00" / "p-0007.yaml"
    window = show(str(path))
    window.desk.do(SetField("face-rough", "depth", "0.5 mm"))
    before = path.read_bytes()
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    share.gone = True
    assert not window.parts.files.save()
    assert len(said) == 1
    assert "p-0007.yaml cannot be" in said[0]
    share.gone = False
    assert path.read_bytes() == before
    assert window.desk.history.changed
    assert window.desk.job.find("face-rough")[1].fields.depth.text == "0.5 mm"
    assert window.parts.files.save()
    assert read_job(path) == window.desk.job


def test_saving_to_a_silent_share_says_so_after_two_seconds_and_what_was_typed_is_kept(
    show, folder, share, monkeypatch
):
    path = folder / "00" / "p-0007.yaml"
    window = show(str(path))
    window.desk.do(SetField("face-rough", "depth", "0.5 mm"))
    before = path.read_bytes()
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    share.silence()
    began = time.monotonic()
    assert not window.parts.files.save()
    assert time.monotonic() - began < 4
    assert "does not answer: the job is not saved" in said[0]
    journals = list((folder.parent / "home" / "journal").glob("*.json"))
    assert any("0.5 mm" in one.read_text(encoding="utf-8") for one in journals)
    share.answer()
    assert path.read_bytes() == before
    assert window.parts.files.save()
    assert read_job(path) == window.desk.job


def test_the_hand_that_rests_does_not_wait_for_a_silent_share(show, folder, share):
    window = show(str(folder / "00" / "p-0007.yaml"))
    share.silence()
    began = time.monotonic()
    for _ in range(3):
        window.parts.when_rested()
    assert time.monotonic() - began < 2
    share.answer()
