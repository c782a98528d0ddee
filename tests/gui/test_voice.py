"""What threads have to tell is called in the window's own thread, where it still is there."""

from __future__ import annotations

import threading

from jobsheet.gui.desk.aside.voice import Voice, voice


def test_what_a_thread_tells_is_called_in_the_thread_of_the_window(qtbot):
    made, called = Voice(), []
    thread = threading.Thread(
        target=lambda: made.told.emit(lambda: called.append(threading.current_thread()))
    )
    thread.start()
    thread.join()
    assert called == [], "not before the window comes to it"
    qtbot.waitUntil(lambda: bool(called))
    assert called == [threading.main_thread()]


def test_whom_it_is_for_may_be_gone(qtbot):
    made, called = Voice(), []

    def gone():
        raise RuntimeError("Internal C++ object already deleted.")

    made.told.emit(gone)
    made.told.emit(lambda: called.append(1))
    qtbot.waitUntil(lambda: called == [1])


def test_there_is_one_of_the_program(qapp):
    assert voice() is voice()
