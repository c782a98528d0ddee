"""What is fetched while the hand rests: piece by piece, the pages last, and only once."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.window import warming
from jobsheet.gui.window.later import Later


def begun(qtbot, monkeypatch, pieces):
    """One that has begun, with these pieces; what was done in what order."""
    parent, done = QWidget(), []
    qtbot.addWidget(parent)
    monkeypatch.setattr(warming, "WAIT", 1)
    monkeypatch.setattr(
        warming, "_pieces", lambda _ratio: iter([lambda name=name: done.append(name) for name in pieces])
    )
    made = warming.Warming(Later(parent), parent, lambda: done.append("pages"))
    made.begin()
    return made, parent, done


def test_the_pages_come_when_all_else_was_fetched(qtbot, monkeypatch):
    *kept, done = begun(qtbot, monkeypatch, ["kinds", "icons"])
    qtbot.waitUntil(lambda: len(done) == 3)
    assert done == ["kinds", "icons", "pages"]
    assert kept


def test_it_begins_once(qtbot, monkeypatch):
    made, parent, done = begun(qtbot, monkeypatch, ["kinds"])
    qtbot.waitUntil(lambda: len(done) == 2)
    made.begin()
    qtbot.wait(20)
    assert done == ["kinds", "pages"]
    assert parent is not None


def test_it_stands_still_while_the_hand_is_at_work(qtbot, monkeypatch):
    made, parent, done = begun(qtbot, monkeypatch, ["kinds"])
    made._later.typing()
    qtbot.wait(30)
    assert done == []
    made._later.commit()
    made._later._soon.stop()
    qtbot.waitUntil(lambda: len(done) == 2)
    assert parent is not None


def test_the_print_place_finds_its_modules_there(window, qtbot):
    """In the real window: what its first pages need was fetched before anybody pressed."""
    import sys

    from jobsheet.gui.pages.pages_maker import MAKER

    qtbot.waitUntil(lambda: MAKER._warm)
    qtbot.waitUntil(lambda: "jobsheet.sheet.pdf" in sys.modules)
    assert "jobsheet.gui.pages.print_window" in sys.modules
    assert window.isVisible()
