"""The worker of the solids: what nobody waits for any more holds up nobody else."""

from __future__ import annotations

import time
from queue import SimpleQueue
from threading import Event

from jobsheet.gui.desk.stage_work import StageWork, Wanted
from jobsheet.stages import solids


def wanted(course, answers):
    return Wanted(1, course, (), "", "mm", "after", (None, None), answers)


def test_what_a_closed_window_asked_is_given_up(monkeypatch):
    began, made = Event(), []

    class Slow:
        def in_turn(self, _course):
            for stage in range(400):
                began.set()
                made.append(stage)
                time.sleep(0.01)
                yield stage

    monkeypatch.setattr(solids, "Modeller", Slow)
    worker = StageWork()
    closed, other = SimpleQueue(), SimpleQueue()
    worker.ask(wanted(["long"], closed))
    assert began.wait(5)
    worker.ask(wanted("no course", other))  # it waits behind the first
    worker.withdraw(closed)
    assert other.get(timeout=2).facts[0].about == "no course"
    assert len(made) < 400
    assert closed.empty()
    worker.finish()


def test_who_asks_again_is_answered(monkeypatch):
    worker = StageWork()
    answers = SimpleQueue()
    worker.withdraw(answers)
    worker.ask(wanted("no course", answers))
    assert answers.get(timeout=5).facts[0].about == "no course"
    worker.finish()
