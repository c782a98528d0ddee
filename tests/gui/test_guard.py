"""What nobody foresaw: one sentence, a log, and what is unsaved is written before."""

from __future__ import annotations

import pytest

from jobsheet.errors import CommandError
from jobsheet.gui.desk import keeping_pace, problems_log
from jobsheet.gui.forms import ask
from jobsheet.gui.start.guard import Guard


@pytest.fixture
def told(qapp, monkeypatch):
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    monkeypatch.setattr(problems_log, "_KEPT", set())
    return said


def _taken(guard, error):
    guard(type(error), error, None)


def test_something_unforeseen_is_said_and_kept(qtbot, told, home, capsys):
    guard = Guard()
    _taken(guard, ZeroDivisionError("by nought"))
    qtbot.waitUntil(lambda: bool(told))
    assert told == [
        "Something went wrong in the program (ZeroDivisionError). Your job is kept; save it under a new name."
    ]
    assert guard.broken
    assert "by nought" in (home / "problems.log").read_text()
    assert "ZeroDivisionError" in capsys.readouterr().err


def test_a_sentence_of_the_program_is_said_as_it_is_and_breaks_nothing(qtbot, told):
    guard = Guard()
    _taken(guard, CommandError("There is no such step."))
    qtbot.waitUntil(lambda: bool(told))
    assert told == ["There is no such step."]
    assert not guard.broken


def test_of_several_at_once_one_is_said_and_later_another(qtbot, told):
    guard = Guard()
    for _ in range(3):
        _taken(guard, CommandError("There is no such step."))
    qtbot.waitUntil(lambda: bool(told))
    assert len(told) == 1
    _taken(guard, CommandError("Again."))
    qtbot.waitUntil(lambda: len(told) == 2)


def test_what_is_unsaved_is_written_first(told, monkeypatch):
    order = []
    monkeypatch.setattr(keeping_pace, "write_all", lambda: order.append("written"))
    monkeypatch.setattr(problems_log, "keep", lambda _error: order.append("kept"))
    _taken(Guard(), ValueError("odd"))
    assert order == ["written", "kept"]
