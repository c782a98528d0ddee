"""What goes in circles is given back by the window's own thread, whoever makes the values that make it time."""

from __future__ import annotations

import gc
import threading
import weakref

import pytest
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from jobsheet.gui.start import collecting
from jobsheet.gui.start.collecting import Collecting, look


@pytest.fixture
def collector(qapp):
    """As the program has it; afterwards as Python has it."""
    limits, parent = gc.get_threshold(), QObject()
    made = Collecting(parent)
    yield made
    made._timer.stop()
    gc.set_threshold(*limits)
    gc.enable()


class Piece(QWidget):
    """A piece of a window that knows itself, so that only a look for circles lets it go."""

    def __init__(self) -> None:
        super().__init__()
        self.itself = self


def gone_in(piece):
    """Fills with the thread that lets the piece go."""
    threads = []
    weakref.finalize(piece, lambda: threads.append(threading.get_ident()))
    return threads


def test_a_thread_that_makes_many_values_lets_no_piece_of_the_window_go(collector):
    collector.begin()
    gc.collect()
    gc.set_threshold(50, 2, 2)
    gone = gone_in(Piece())
    thread = threading.Thread(target=lambda: [[number] for number in range(5000)])
    thread.start()
    thread.join()
    assert gone == []
    look()
    assert gone == [threading.get_ident()]


def test_it_is_looked_for_while_the_window_waits(collector, qtbot, monkeypatch):
    monkeypatch.setattr(collecting, "EVERY", 10)
    collector._timer.setInterval(10)
    collector.begin()
    gc.set_threshold(1, 1, 1)
    gone = gone_in(Piece())
    qtbot.waitUntil(lambda: gone == [threading.get_ident()])


def test_nothing_is_looked_through_before_its_time(collector):
    collector.begin()
    gc.collect()
    gc.set_threshold(100_000, 10, 10)
    gone = gone_in(Piece())
    look()
    assert gone == []


def test_what_was_there_at_the_start_is_looked_through_no_more(collector):
    collector.begin()
    frozen = gc.get_freeze_count()
    assert frozen > 0
    collector.begin()
    assert gc.get_freeze_count() <= frozen
