"""Actions as a table and menus as lists of their ids; each action calls a method by
name. The ways to places add theirs.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from operator import attrgetter
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication

from jobsheet.gui.forms.plain_words import entry
from jobsheet.gui.window.action_table import ACTIONS, FILLED, MENUS

if TYPE_CHECKING:
    from PySide6.QtGui import QAction
    from PySide6.QtWidgets import QMainWindow, QMenu

    from jobsheet.edit.history import History
    from jobsheet.gui.desk.place import Way

translate = QCoreApplication.translate


def make(
    window: QMainWindow, parts: object, ways: tuple[Way, ...], go: Callable[[Way], object]
) -> dict[str, QAction]:
    """All actions: those of the table call the methods of the parts, those of the places go there."""
    made = {row.id: _action(window, row.text, row.keys, partial(_call, parts, row.slot)) for row in ACTIONS}
    for row in ACTIONS:
        made[row.id].setCheckable(row.checkable)
    for name in {row.one_of for row in ACTIONS} - {""}:
        _exclusive(window, [made[row.id] for row in ACTIONS if row.one_of == name])
    made |= {way.id: _action(window, way.text, way.keys, partial(go, way)) for way in ways}
    for way in ways:
        if way.menu == "help":  # F1 in the windows of the places too
            made[way.id].setShortcutContext(QtCore.Qt.ShortcutContext.ApplicationShortcut)
    return made


def _exclusive(window: QMainWindow, some: list[QAction]) -> None:
    """Say that one of them alone is chosen: the menu draws it so, and a screen reader hears it."""
    from PySide6.QtGui import QActionGroup

    group = QActionGroup(window)
    for action in some:
        group.addAction(action)


def _call(parts: object, slot: str) -> None:
    """Call a method by its name, such as `edits.steps.add`."""
    attrgetter(slot)(parts)()


def _action(window: QMainWindow, text: str, keys: tuple[str, ...], do: Callable[[], object]) -> QAction:
    from PySide6.QtGui import QAction, QKeySequence

    action = QAction(translate("Actions", text), window)
    action.setShortcuts([QKeySequence(key) for key in keys])
    action.triggered.connect(lambda _=False: do())
    window.addAction(action)
    return action


def bar(window: QMainWindow) -> None:
    """The titles of the menu bar; what is in the menus comes after the first painting."""
    titles = window.menuBar()
    titles.setAccessibleName(translate("Actions", "Menu bar"))
    for title, _ in MENUS:
        titles.addAction(translate("Actions", title))


def dress(window: QMainWindow) -> None:
    """Give the menus the look of the moment."""
    from jobsheet.gui.ink.look import look
    from jobsheet.gui.ink.style_sheets import menu_style

    window.menuBar().setStyleSheet(menu_style(look()))


def fill(window: QMainWindow, actions: dict[str, QAction], fill_menu: Callable[[str, QMenu], None]) -> None:
    """The menus; those whose content can change are filled when they open."""
    from PySide6.QtWidgets import QMenu

    titles = window.menuBar()
    for action, (_, ids) in zip(titles.actions(), MENUS, strict=True):
        menu = QMenu(window)
        action.setMenu(menu)
        for id_ in ids:
            if id_ == "-":
                menu.addSeparator()
            elif id_ == "[machines]":
                menu.aboutToShow.connect(lambda name=id_, menu=menu: fill_menu(name, menu))
            elif id_.startswith("["):
                inner = menu.addMenu(translate("Actions", FILLED[id_]))
                inner.aboutToShow.connect(lambda name=id_, menu=inner: fill_menu(name, menu))
            else:
                menu.addAction(actions[id_])


def name_history(actions: dict[str, QAction], history: History) -> None:
    """Say in the menu what would be taken back, and what done again."""
    for id_, can, label, words, plain in (
        ("undo", history.can_undo, history.undo_label, translate("Window", "&Undo: {step}"), translate("Window", "&Undo")),
        ("redo", history.can_redo, history.redo_label, translate("Window", "&Redo: {step}"), translate("Window", "&Redo")),
    ):  # fmt: skip
        actions[id_].setEnabled(can)
        actions[id_].setText(words.format(step=entry(label)) if can else plain)
