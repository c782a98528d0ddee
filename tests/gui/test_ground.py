"""The bench under a place: of its colour, and everything on it is placed anew where it has another size."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.ground import Ground
from jobsheet.gui.ink import look


def test_another_size_places_everything_anew(qtbot):
    look.apply("light")
    window, placed = QWidget(), []
    qtbot.addWidget(window)
    window.show()
    ground = Ground(window, lambda: placed.append((ground.width(), ground.height())))
    ground.show()
    placed.clear()
    ground.resize(300, 200)
    ground.resize(300, 200)
    assert placed == [(300, 200)]


def test_it_is_the_bench_of_the_look(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    ground = Ground(window, lambda: None)
    ground.resize(20, 20)
    for scheme in ("dark", "light"):
        look.apply(scheme)
        assert ground.grab().toImage().pixelColor(10, 10) == look.look().colour("bench")
