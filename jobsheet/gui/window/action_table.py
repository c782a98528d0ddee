"""The actions as a table, and the menus as lists of their ids."""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QT_TRANSLATE_NOOP


class Row(Struct, frozen=True):
    """One action: its id, its text, its keys, what it calls: a method of one of the parts.

    Of those that are `one_of` the same, one alone is checked.
    """

    id: str
    text: str
    keys: tuple[str, ...]
    slot: str
    checkable: bool = False
    one_of: str = ""


def _text(text: object) -> str:
    """The text as lupdate has marked it."""
    return str(text)


ACTIONS = (
    Row("new", _text(QT_TRANSLATE_NOOP("Actions", "&New…")), ("Ctrl+N",), "panels.new_job"),
    Row(
        "make-from",
        _text(QT_TRANSLATE_NOOP("Actions", "New part &from this one…")),
        ("Ctrl+Shift+N",),
        "panels.make_from",
    ),
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
    Row("cut", _text(QT_TRANSLATE_NOOP("Actions", "Cu&t")), ("Ctrl+X",), "edits.clip.cut"),
    Row("copy", _text(QT_TRANSLATE_NOOP("Actions", "&Copy")), ("Ctrl+C",), "edits.clip.copy"),
    Row("paste", _text(QT_TRANSLATE_NOOP("Actions", "Pa&ste")), ("Ctrl+V",), "edits.clip.paste"),
    Row(
        "choose-all",
        _text(QT_TRANSLATE_NOOP("Actions", "Choose &all steps")),
        ("Ctrl+A",),
        "edits.clip.choose_all",
    ),
    Row(
        "next",
        _text(QT_TRANSLATE_NOOP("Actions", "&Next remark or problem")),
        ("Ctrl+Down",),
        "edits.walking.next_remark",
    ),
    Row(
        "previous",
        _text(QT_TRANSLATE_NOOP("Actions", "&Previous remark or problem")),
        ("Ctrl+Up",),
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
    Row(
        "choose-machine",
        _text(QT_TRANSLATE_NOOP("Actions", "Choose the &machine…")),
        ("F3",),
        "panels.machine",
    ),
    Row(
        "choose-material",
        _text(QT_TRANSLATE_NOOP("Actions", "Choose the ma&terial…")),
        ("Alt+A",),
        "panels.material",
    ),
    Row("add-set-up", _text(QT_TRANSLATE_NOOP("Actions", "&Add a set-up")), (), "edits.set_ups.add"),
    Row("square", _text(QT_TRANSLATE_NOOP("Actions", "S&quare all six faces…")), (), "edits.set_ups.square"),
    Row(
        "repeat-set-up",
        _text(QT_TRANSLATE_NOOP("Actions", "Repeat t&his set-up")),
        (),
        "edits.set_ups.repeat",
    ),
    Row("why", _text(QT_TRANSLATE_NOOP("Actions", "&Write why this order")), (), "edits.why.write"),
    Row(
        "revision",
        _text(QT_TRANSLATE_NOOP("Actions", "New re&vision of the plan…")),
        (),
        "edits.revisions.add",
    ),
    Row(
        "photograph",
        _text(QT_TRANSLATE_NOOP("Actions", "Add a photo&graph to this set-up…")),
        (),
        "edits.photographs.add",
    ),
    Row(
        "no-photograph",
        _text(QT_TRANSLATE_NOOP("Actions", "Ta&ke out a photograph…")),
        (),
        "edits.photographs.take_out",
    ),
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
    Row(
        "insert", _text(QT_TRANSLATE_NOOP("Actions", "&Insert below…")), ("Ins",), "edits.steps.insert_below"
    ),
    Row(
        "insert-above",
        _text(QT_TRANSLATE_NOOP("Actions", "Insert &above…")),
        ("Shift+Ins",),
        "edits.steps.insert_above",
    ),
    Row("duplicate", _text(QT_TRANSLATE_NOOP("Actions", "Dupli&cate")), ("Ctrl+D",), "edits.steps.duplicate"),
    Row("delete", _text(QT_TRANSLATE_NOOP("Actions", "&Delete")), ("Del",), "edits.steps.delete"),
    Row(
        "give-back",
        _text(QT_TRANSLATE_NOOP("Actions", "Leave as &recommended")),
        ("F8",),
        "edits.rows.give_back",
    ),
    Row("up", _text(QT_TRANSLATE_NOOP("Actions", "Move &up")), ("Alt+Up",), "edits.steps.move_up"),
    Row("down", _text(QT_TRANSLATE_NOOP("Actions", "Move dow&n")), ("Alt+Down",), "edits.steps.move_down"),
    Row("toggle", _text(QT_TRANSLATE_NOOP("Actions", "&Open or close the row")), (), "edits.rows.toggle"),
    Row(
        "how-it-went",
        _text(QT_TRANSLATE_NOOP("Actions", "&How it went today…")),
        ("F5",),
        "edits.runs.ask",
    ),
    Row(
        "moment",
        _text(QT_TRANSLATE_NOOP("Actions", "The work &after, before, as stock")),
        ("F9",),
        "stages.next_moment",
    ),
    Row(
        "system",
        _text(QT_TRANSLATE_NOOP("Actions", "As the &system")),
        (),
        "looks.as_system",
        checkable=True,
        one_of="scheme",
    ),
    Row(
        "light",
        _text(QT_TRANSLATE_NOOP("Actions", "&Light")),
        (),
        "looks.light",
        checkable=True,
        one_of="scheme",
    ),
    Row(
        "dark",
        _text(QT_TRANSLATE_NOOP("Actions", "&Dark")),
        (),
        "looks.dark",
        checkable=True,
        one_of="scheme",
    ),
    Row(
        "bench",
        _text(QT_TRANSLATE_NOOP("Actions", "&Bench size")),
        ("Ctrl+B",),
        "looks.bench_size",
        checkable=True,
    ),
    Row("keys", _text(QT_TRANSLATE_NOOP("Actions", "&Keys")), (), "told.show_keys"),
    Row("about", _text(QT_TRANSLATE_NOOP("Actions", "&About")), (), "told.show_about"),
)


#: Menus by id of their title; `-` is a line, a name in brackets a menu that is filled when it opens.
MENUS = (
    (_text(QT_TRANSLATE_NOOP("Actions", "&File")), ("new", "make-from", "made", "-", "open", "[recent]", "[samples]", "shelf", "plans", "lesson", "-", "save", "save-as", "-", "export", "print", "-", "quit")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Edit")), ("undo", "redo", "-", "cut", "copy", "paste", "choose-all", "-", "next", "previous", "bring-back")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Job")), ("edit-job", "choose-machine", "choose-material", "-", "add-set-up", "repeat-set-up", "square", "-", "set-up-up", "set-up-down", "delete-set-up", "-", "photograph", "no-photograph", "-", "why", "revision", "renumber")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Operation")), ("insert", "insert-above", "[kinds]", "duplicate", "delete", "give-back", "-", "up", "down", "-", "toggle", "how-it-went")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Machine")), ("[machines]",)),
    (_text(QT_TRANSLATE_NOOP("Actions", "&View")), ("moment", "-", "system", "light", "dark", "-", "bench")),
    (_text(QT_TRANSLATE_NOOP("Actions", "&Help")), ("help", "-", "keys", "about")),
)  # fmt: skip


FILLED = {
    "[recent]": _text(QT_TRANSLATE_NOOP("Actions", "Open &recent")),
    "[samples]": _text(QT_TRANSLATE_NOOP("Actions", "Open a sa&mple")),
    "[kinds]": _text(QT_TRANSLATE_NOOP("Actions", "Add a &step")),
}
