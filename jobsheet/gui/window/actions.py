"""Actions as a table and menus as lists of their ids; each action calls a method by name. The ways to places add theirs."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from operator import attrgetter
from typing import TYPE_CHECKING

from msgspec import Struct
from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

if TYPE_CHECKING:
    from PySide6.QtGui import QAction
    from PySide6.QtWidgets import QMainWindow, QMenu

    from jobsheet.edit.history import History
    from jobsheet.gui.desk.place import Way

translate = QCoreApplication.translate


class Row(Struct, frozen=True):
    """One action: its id, its text, its keys, what it calls: a method of one of the parts."""

    id: str
    text: str
    keys: tuple[str, ...]
    slot: str
    checkable: bool = False


def _text(text: object) -> str:
    """The text as lupdate has marked it."""
    return str(text)


ACTIONS = (
    Row("new", _text(QT_TRANSLATE_NOOP("Actions", "&New")), ("Ctrl+N",), "files.new"),
    Row("open", _text(QT_TRANSLATE_NOOP("Actions", "&Open…")), ("Ctrl+O",), "files.open"),
    Row("save", _text(QT_TRANSLATE_NOOP("Actions", "&Save")), ("Ctrl+S",), "files.save"),
    Row("save-as", _text(QT_TRANSLATE_NOOP("Actions", "Save &as…")), ("Ctrl+Shift+S",), "files.save_as"),
    Row(
        "export",
        _text(QT_TRANSLATE_NOOP("Actions", "&Export sheets as PDF…")),
        ("Ctrl+E",),
        "exporting.export_pdf",
    ),
    Row(
        "print", _text(QT_TRANSLATE_NOOP("Actions", "&Print sheets…")), ("Ctrl+P",), "exporting.print_sheets"
    ),
    Row("quit", _text(QT_TRANSLATE_NOOP("Actions", "&Quit")), ("Ctrl+Q",), "close"),
    Row("undo", _text(QT_TRANSLATE_NOOP("Actions", "&Undo")), ("Ctrl+Z",), "edits.history.undo"),
    Row(
        "redo", _text(QT_TRANSLATE_NOOP("Actions", "&Redo")), ("Ctrl+Shift+Z", "Ctrl+Y"), "edits.history.redo"
    ),
    Row(
        "next",
        _text(QT_TRANSLATE_NOOP("Actions", "&Next remark or problem")),
        ("F8",),
        "edits.walking.next_remark",
    ),
    Row(
        "previous",
        _text(QT_TRANSLATE_NOOP("Actions", "&Previous remark or problem")),
        ("Shift+F8",),
        "edits.walking.previous_remark",
    ),
    Row(
        "bring-back",
        _text(QT_TRANSLATE_NOOP("Actions", "&Bring back what was set aside")),
        (),
        "edits.remarks.bring_back",
    ),
    Row(
        "edit-job",
        _text(QT_TRANSLATE_NOOP("Actions", "&Part, stock and machine")),
        ("F2",),
        "edits.rows.open_job",
    ),
    Row("add-set-up", _text(QT_TRANSLATE_NOOP("Actions", "&Add a set-up")), (), "edits.set_ups.add"),
    Row(
        "delete-set-up",
        _text(QT_TRANSLATE_NOOP("Actions", "&Delete this set-up")),
        (),
        "edits.set_ups.delete",
    ),
    Row(
        "set-up-up", _text(QT_TRANSLATE_NOOP("Actions", "Move this set-up &up")), (), "edits.set_ups.move_up"
    ),
    Row(
        "set-up-down",
        _text(QT_TRANSLATE_NOOP("Actions", "Move this set-up d&own")),
        (),
        "edits.set_ups.move_down",
    ),
    Row("renumber", _text(QT_TRANSLATE_NOOP("Actions", "&Renumber all steps")), (), "edits.steps.renumber"),
    Row("insert", _text(QT_TRANSLATE_NOOP("Actions", "&Add after this…")), ("Ins",), "edits.steps.ask_kind"),
    Row("duplicate", _text(QT_TRANSLATE_NOOP("Actions", "D&uplicate")), ("Ctrl+D",), "edits.steps.duplicate"),
    Row("delete", _text(QT_TRANSLATE_NOOP("Actions", "&Delete")), ("Del",), "edits.steps.delete"),
    Row("up", _text(QT_TRANSLATE_NOOP("Actions", "Move &up")), ("Alt+Up",), "edits.steps.move_up"),
    Row("down", _text(QT_TRANSLATE_NOOP("Actions", "Move d&own")), ("Alt+Down",), "edits.steps.move_down"),
    Row("toggle", _text(QT_TRANSLATE_NOOP("Actions", "&Open or close the row")), (), "edits.rows.toggle"),
    Row(
        "moment",
        _text(QT_TRANSLATE_NOOP("Actions", "The work &after, before, as stock")),
        ("F9",),
        "stages.next_moment",
    ),
    Row(
        "system", _text(QT_TRANSLATE_NOOP("Actions", "As the &system")), (), "looks.as_system", checkable=True
    ),
    Row("light", _text(QT_TRANSLATE_NOOP("Actions", "&Light")), (), "looks.light", checkable=True),
    Row("dark", _text(QT_TRANSLATE_NOOP("Actions", "&Dark")), (), "looks.dark", checkable=True),
    Row(
        "bench",
        _text(QT_TRANSLATE_NOOP("Actions", "&Bench size")),
        ("Ctrl+B",),
        "looks.bench_size",
        checkable=True,
    ),
    Row("keys", _text(QT_TRANSLATE_NOOP("Actions", "&Keys")), ("F1",), "told.show_keys"),
    Row("about", _text(QT_TRANSLATE_NOOP("Actions", "&About")), (), "told.show_about"),
)

#: Menus by id of their title; `-` is a line, a name in brackets a menu that is filled when it opens.
MENUS = (
    (_text(QT_TRANSLATE_NOOP("Actions", "&File")), ("new", "open", "[samples]", "-", "save", "save-as", "-", "export", "print", "-", "quit")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Edit")), ("undo", "redo", "-", "next", "previous", "bring-back")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Job")), ("edit-job", "-", "add-set-up", "set-up-up", "set-up-down", "delete-set-up", "-", "renumber")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Operation")), ("insert", "[kinds]", "duplicate", "delete", "-", "up", "down", "-", "toggle")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Machine")), ("[machines]",)),
    (_text(QT_TRANSLATE_NOOP("Actions", "&View")), ("moment", "-", "system", "light", "dark", "-", "bench")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Help")), ("keys", "about")),
)  # fmt: skip

_FILLED = {
    "[samples]": _text(QT_TRANSLATE_NOOP("Actions", "Open a s&ample")),
    "[kinds]": _text(QT_TRANSLATE_NOOP("Actions", "Add a &step")),
}


def make(
    window: QMainWindow, parts: object, ways: tuple[Way, ...], go: Callable[[Way], object]
) -> dict[str, QAction]:
    """All actions: those of the table call the methods of the parts, those of the places go there."""
    made = {row.id: _action(window, row.text, row.keys, partial(_call, parts, row.slot)) for row in ACTIONS}
    for row in ACTIONS:
        made[row.id].setCheckable(row.checkable)
    return made | {way.id: _action(window, way.text, way.keys, partial(go, way)) for way in ways}


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
    window.menuBar().setAccessibleName(translate("Actions", "Menu bar"))
    for title, _ in MENUS:
        window.menuBar().addAction(translate("Actions", title))


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
                inner = menu.addMenu(translate("Actions", _FILLED[id_]))
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
        actions[id_].setText(words.format(step=label) if can else plain)
