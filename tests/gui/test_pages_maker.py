"""Pages are made one after the other beside the interface, and what nobody waits for any more is not made."""

from __future__ import annotations

import threading
from queue import SimpleQueue

from jobsheet.errors import CommandError
from jobsheet.gui.pages.pages_maker import Maker, Question


def test_answers_come_in_the_order_of_the_questions_from_one_thread():
    maker, answers, where = Maker(), SimpleQueue(), []

    def make(number):
        where.append(threading.current_thread())
        return number

    for number in range(3):
        maker.ask(Question(lambda number=number: make(number), answers))
    assert [answers.get(timeout=30) for _ in range(3)] == [0, 1, 2]
    assert len(set(where)) == 1
    assert where[0] is not threading.main_thread()
    maker._end()


def test_one_that_is_not_wanted_any_more_is_not_made():
    maker, answers, made, go = Maker(), SimpleQueue(), [], threading.Event()
    maker.ask(Question(lambda: go.wait(30), answers))
    dropped = Question(lambda: made.append(1), answers)
    maker.ask(dropped)
    dropped.wanted = False
    maker.ask(Question(lambda: "last", answers))
    go.set()
    assert [answers.get(timeout=30) for _ in range(2)] == [True, "last"]
    assert made == []
    maker._end()


def test_what_fails_answers_with_a_sentence_and_the_thread_goes_on():
    maker, answers = Maker(), SimpleQueue()

    def refuse():
        raise CommandError("There is nothing to print.")

    maker.ask(Question(refuse, answers))
    maker.ask(Question(lambda: "pages", answers))
    first, second = (answers.get(timeout=30) for _ in range(2))
    assert "nothing to print" in first
    assert second == "pages"
    maker._end()


def test_a_maker_that_was_never_asked_has_no_thread():
    maker = Maker()
    assert maker._thread is None
    maker._end()


def test_pages_that_nobody_asked_for_are_made_once():
    maker, made, done = Maker(), [], threading.Event()
    maker.warm(lambda: made.append("first"))
    maker.warm(lambda: made.append("second"))
    maker.ask(Question(done.set, SimpleQueue()))
    assert done.wait(30)
    assert made == ["first"]
    maker._end()
