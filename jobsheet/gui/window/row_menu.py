"""The menu of the right button and the menu key: what can be done to what is chosen, and nothing else."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from jobsheet.edit.numbering import in_words, numbers_of
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.forms.plain_words import entry
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import menu_style

translate = QCoreApplication.translate


def row_menu(parent: QWidget, hand: Hand, actions: dict[str, QAction]) -> QMenu:
    """The menu for what is chosen; its first line names it."""
    menu = QMenu(parent)
    menu.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
    menu.setStyleSheet(menu_style(look()))
    title, ids = _of_steps(hand) if hand.keys else _of_set_up(hand)
    menu.setAccessibleName(title)
    menu.addAction(entry(title)).setEnabled(False)
    for id_ in ("-", *ids):
        if id_ == "-":
            menu.addSeparator()
        elif id_ in actions:
            menu.addAction(actions[id_])
    return menu


def _of_steps(hand: Hand) -> tuple[str, tuple[str, ...]]:
    """What can be done to steps."""
    keys, job = hand.keys, hand.desk.job
    every = [operation for _, operation in job.operations()]
    steps = [operation for operation in every if operation.key in keys]
    numbers = in_words(numbers_of(steps))
    first, last = job.find(steps[0].key)[0], job.find(steps[-1].key)[0]
    moves = (
        *(("up",) if first is not job.set_ups[0] or steps[0] is not first.operations[0] else ()),
        *(("down",) if last is not job.set_ups[-1] or steps[-1] is not last.operations[-1] else ()),
    )
    one = ("toggle", "how-it-went") if len(steps) == 1 else ()
    ids = (
        *one,
        "insert",
        "insert-above",
        "-",
        "cut",
        "copy",
        "paste",
        "duplicate",
        "delete",
        *(("-", *moves) if moves else ()),
    )
    return numbers[:1].upper() + numbers[1:], ids


def _of_set_up(hand: Hand) -> tuple[str, tuple[str, ...]]:
    """What can be done to a set-up."""
    set_ups, set_up = hand.desk.job.set_ups, hand.set_up
    moves = (
        *(("set-up-up",) if set_up is not set_ups[0] else ()),
        *(("set-up-down",) if set_up is not set_ups[-1] else ()),
    )
    out = (
        ("cut", "copy", "paste", "repeat-set-up", "delete-set-up")
        if moves
        else ("copy", "paste", "repeat-set-up")
    )
    title = translate("RowEdits", "Set-up {number}").format(number=set_up.number)
    return title, (
        "toggle",
        "insert",
        "insert-above",
        "photograph",
        "-",
        *out,
        *(("-", *moves) if moves else ()),
    )
