"""The underlined letters of a menu: each stands for one entry, so that one press does it."""

from __future__ import annotations

from collections import Counter

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu


def letters(menu):
    for action in menu.actions():
        if action.isVisible() and not action.isSeparator():
            key = QKeySequence.mnemonic(action.text()).toString()
            yield key, action.text()


def menus(window):
    bar = window.menuBar()
    yield "the bar", list(letters(bar))
    for action in bar.actions():
        menu = action.menu()
        if isinstance(menu, QMenu):
            menu.aboutToShow.emit()
            yield action.text(), list(letters(menu))


def test_each_letter_of_a_menu_stands_for_one_entry(window, qtbot):
    twice = {}
    for name, found in menus(window):
        counts = Counter(key for key, _ in found if key)
        double = [text for key, text in found if counts[key] > 1]
        if double:
            twice[name] = double
    assert not twice, "; ".join(f"{name}: {entries}" for name, entries in twice.items())
