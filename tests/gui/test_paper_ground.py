"""The bench under a paper, and what scrolls on it: up and down only."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import look
from jobsheet.gui.papers.paper_ground import Ground, scrolling


def test_it_is_the_bench_of_the_look(qtbot):
    look.apply("light")
    ground = Ground()
    qtbot.addWidget(ground)
    ground.resize(20, 20)
    assert ground.grab().toImage().pixelColor(10, 10) == look.look().colour("bench")


def test_what_is_higher_than_its_room_scrolls_and_takes_no_focus(qtbot):
    look.apply("light")
    window, inside = QWidget(), QWidget()
    qtbot.addWidget(window)
    inside.resize(80, 500)
    area = scrolling(inside, window)
    area.resize(100, 100)
    window.show()
    assert area.verticalScrollBar().maximum() > 0
    assert area.horizontalScrollBarPolicy() == Qt.ScrollBarPolicy.ScrollBarAlwaysOff
    assert area.focusPolicy() == Qt.FocusPolicy.NoFocus
    assert area.widget() is inside
