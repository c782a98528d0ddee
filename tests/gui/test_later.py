"""What comes after the figures and when the hand rests: in this order, never before the first painting."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QObject

from jobsheet.gui.window import later
from jobsheet.gui.window.later import Later


@pytest.fixture
def made(qapp, monkeypatch):
    monkeypatch.setattr(later, "REST", 5)
    monkeypatch.setattr(later, "MEANT", 20)
    parent = QObject()
    one = Later(parent)
    one.lives, one.told = parent, []
    one.painted.connect(lambda: one.told.append("painted"))
    one.rested.connect(lambda: one.told.append("rested"))
    one.meant.connect(lambda: one.told.append("meant"))
    return one


def test_before_the_first_painting_nothing_comes(made):
    made.soon()
    assert not made.waiting


def test_after_it_what_is_asked_for_comes_once(qtbot, made):
    made.begin()
    made.begin()
    made.soon()
    assert made.waiting
    qtbot.waitUntil(lambda: not made.waiting)
    assert made.told == ["painted"]


def test_a_key_holds_back_the_rest_and_what_is_typed_is_meant_later(qtbot, made):
    made.begin()
    qtbot.waitUntil(lambda: not made.waiting)
    made.rest()
    made.typing()
    qtbot.waitUntil(lambda: not made.waiting)
    assert made.told == ["painted", "meant", "painted"]


def test_a_field_that_is_left_is_meant_at_once_and_only_once(qtbot, made):
    made.begin()
    made.typing()
    made.commit()
    assert made.told == ["meant"]
    made.commit()
    qtbot.waitUntil(lambda: not made.waiting)
    assert made.told == ["meant", "painted"]


def test_when_the_hand_rests_it_is_told(qtbot, made):
    made.rest()
    qtbot.waitUntil(lambda: not made.waiting)
    assert made.told == ["rested"]
