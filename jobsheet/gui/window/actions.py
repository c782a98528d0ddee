"""Actions as a table and menus as lists of their ids; each action calls a method by name."""

from __future__ import annotations

from operator import attrgetter
from typing import TYPE_CHECKING, Protocol

from msgspec import Struct
from PySide6.QtCore import QT_TRANSLATE_NOOP, QCoreApplication

if TYPE_CHECKING:
    from PySide6.QtGui import QAction
    from PySide6.QtWidgets import QMainWindow, QMenu

translate = QCoreApplication.translate


class Row(Struct, frozen=True):
    """One action: its id, its text, its keys, what it calls: a method of the window or of a part of it."""

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
        "files.export_pdf",
    ),
    Row("print", _text(QT_TRANSLATE_NOOP("Actions", "&Print sheets…")), ("Ctrl+P",), "files.print_sheets"),
    Row("quit", _text(QT_TRANSLATE_NOOP("Actions", "&Quit")), ("Ctrl+Q",), "close"),
    Row("undo", _text(QT_TRANSLATE_NOOP("Actions", "&Undo")), ("Ctrl+Z",), "edits.undo"),
    Row("redo", _text(QT_TRANSLATE_NOOP("Actions", "&Redo")), ("Ctrl+Shift+Z", "Ctrl+Y"), "edits.redo"),
    Row("next", _text(QT_TRANSLATE_NOOP("Actions", "&Next remark or problem")), ("F8",), "edits.next_remark"),
    Row(
        "previous",
        _text(QT_TRANSLATE_NOOP("Actions", "&Previous remark or problem")),
        ("Shift+F8",),
        "edits.previous_remark",
    ),
    Row(
        "bring-back",
        _text(QT_TRANSLATE_NOOP("Actions", "&Bring back what was set aside")),
        (),
        "edits.bring_back",
    ),
    Row("edit-job", _text(QT_TRANSLATE_NOOP("Actions", "&Part, stock and machine")), ("F2",), "edit_job"),
    Row("add-set-up", _text(QT_TRANSLATE_NOOP("Actions", "&Add a set-up")), (), "edits.add_set_up"),
    Row(
        "delete-set-up", _text(QT_TRANSLATE_NOOP("Actions", "&Delete this set-up")), (), "edits.delete_set_up"
    ),
    Row("set-up-up", _text(QT_TRANSLATE_NOOP("Actions", "Move this set-up &up")), (), "edits.move_set_up_up"),
    Row(
        "set-up-down",
        _text(QT_TRANSLATE_NOOP("Actions", "Move this set-up d&own")),
        (),
        "edits.move_set_up_down",
    ),
    Row("renumber", _text(QT_TRANSLATE_NOOP("Actions", "&Renumber all steps")), (), "edits.renumber"),
    Row("insert", _text(QT_TRANSLATE_NOOP("Actions", "&Add after this…")), ("Ins",), "edits.ask_kind"),
    Row("duplicate", _text(QT_TRANSLATE_NOOP("Actions", "D&uplicate")), ("Ctrl+D",), "edits.duplicate"),
    Row("delete", _text(QT_TRANSLATE_NOOP("Actions", "&Delete")), ("Del",), "edits.delete"),
    Row("up", _text(QT_TRANSLATE_NOOP("Actions", "Move &up")), ("Alt+Up",), "edits.move_up"),
    Row("down", _text(QT_TRANSLATE_NOOP("Actions", "Move d&own")), ("Alt+Down",), "edits.move_down"),
    Row("toggle", _text(QT_TRANSLATE_NOOP("Actions", "&Open or close the row")), (), "toggle_row"),
    Row(
        "fits",
        _text(QT_TRANSLATE_NOOP("Actions", "&Would it fit on another machine?")),
        ("Ctrl+M",),
        "show_fits",
    ),
    Row("prove", _text(QT_TRANSLATE_NOOP("Actions", "&Prove the machine…")), ("F6",), "prove"),
    Row(
        "capability", _text(QT_TRANSLATE_NOOP("Actions", "What will it &carry?…")), ("F7",), "show_capability"
    ),
    Row("card", _text(QT_TRANSLATE_NOOP("Actions", "Machine &card…")), (), "edit_card"),
    Row("new-card", _text(QT_TRANSLATE_NOOP("Actions", "&New machine…")), (), "new_card"),
    Row("cabinet", _text(QT_TRANSLATE_NOOP("Actions", "Ca&binet…")), (), "edit_cabinet"),
    Row(
        "moment",
        _text(QT_TRANSLATE_NOOP("Actions", "The work &after, before, as stock")),
        ("F9",),
        "next_moment",
    ),
    Row("system", _text(QT_TRANSLATE_NOOP("Actions", "As the &system")), (), "look_system", checkable=True),
    Row("light", _text(QT_TRANSLATE_NOOP("Actions", "&Light")), (), "look_light", checkable=True),
    Row("dark", _text(QT_TRANSLATE_NOOP("Actions", "&Dark")), (), "look_dark", checkable=True),
    Row(
        "bench", _text(QT_TRANSLATE_NOOP("Actions", "&Bench size")), ("Ctrl+B",), "bench_size", checkable=True
    ),
    Row("keys", _text(QT_TRANSLATE_NOOP("Actions", "&Keys")), ("F1",), "edits.show_keys"),
    Row("about", _text(QT_TRANSLATE_NOOP("Actions", "&About")), (), "edits.show_about"),
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


class Filler(Protocol):
    """Who fills a menu when it opens."""

    def fill_menu(self, name: str, menu: QMenu) -> None:
        """Put actions into the menu of that name."""


def make(window: QMainWindow) -> dict[str, QAction]:
    """All actions, connected to the window's methods."""
    from PySide6.QtGui import QAction, QKeySequence

    made: dict[str, QAction] = {}
    for row in ACTIONS:
        action = QAction(translate("Actions", row.text), window)
        action.setShortcuts([QKeySequence(key) for key in row.keys])
        action.setCheckable(row.checkable)
        action.triggered.connect(lambda _=False, slot=row.slot: attrgetter(slot)(window)())
        window.addAction(action)
        made[row.id] = action
    return made


def bar(window: QMainWindow) -> None:
    """The titles of the menu bar; what is in the menus comes after the first painting."""
    window.menuBar().setAccessibleName(translate("Actions", "Menu bar"))
    for title, _ in MENUS:
        window.menuBar().addAction(translate("Actions", title))


def fill(window: QMainWindow, actions: dict[str, QAction], filler: Filler) -> None:
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
                menu.aboutToShow.connect(lambda name=id_, menu=menu: filler.fill_menu(name, menu))
            elif id_.startswith("["):
                inner = menu.addMenu(translate("Actions", _FILLED[id_]))
                inner.aboutToShow.connect(lambda name=id_, menu=inner: filler.fill_menu(name, menu))
            else:
                menu.addAction(actions[id_])
