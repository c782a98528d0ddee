"""Something asked of a slow disk: the window goes on, and is told of the answer or of the error."""

from __future__ import annotations

import threading

import pytest
from PySide6.QtCore import QObject

from jobsheet.errors import CommandError
from jobsheet.gui.desk.aside.asked_aside import Aside


@pytest.fixture
def parent(qapp):
    return QObject()


def _told(aside):
    told = []
    aside.done.connect(lambda: told.append(threading.current_thread()))
    return told


def test_an_answer_is_told_in_the_thread_of_the_window(qtbot, parent):
    aside = Aside(parent, lambda: ["plate"])
    told = _told(aside)
    qtbot.waitUntil(lambda: bool(told))
    assert (aside.answer, aside.over, told) == (["plate"], True, [threading.main_thread()])


def test_one_that_is_silent_is_not_there_at_once(qtbot, parent):
    answer = threading.Event()
    aside = Aside(parent, lambda: answer.wait(30))
    told = _told(aside)
    assert not aside.at_once()
    assert not aside.over
    answer.set()
    qtbot.waitUntil(lambda: bool(told))
    assert aside.at_once()


@pytest.mark.parametrize("error", [OSError("the share is gone"), ValueError("odd"), RuntimeError("gone")])
def test_an_error_is_the_answer(qtbot, parent, error):
    def ask():
        raise error

    aside = Aside(parent, ask)
    told = _told(aside)
    qtbot.waitUntil(lambda: bool(told))
    assert aside.answer is error


def test_a_sentence_of_the_program_is_an_answer_too(qtbot, parent):
    def ask():
        raise CommandError("the shelf cannot be read")

    aside = Aside(parent, ask)
    told = _told(aside)
    qtbot.waitUntil(lambda: bool(told))
    assert "cannot be read" in str(aside.answer)
