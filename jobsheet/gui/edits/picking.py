"""The list of what the cabinet has for a field: opened by Down or F4 in it, written like anything that is typed.

Imported when it is first asked for; the text of the field stays free.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtWidgets import QMenu

from jobsheet.errors import JobsheetError
from jobsheet.gui.column.open_row import OpenRow
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.forms.plain_words import entry
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import menu_style
from jobsheet.reckoning.cabinet.cabinet_picks import Pick, picks
from jobsheet.storage.cabinet_file import cabinet_for

translate = QCoreApplication.translate


def offer(desk: Desk, row: OpenRow, name: str) -> QMenu | None:
    """Open the list under a field of the open row; None where it has no such field."""
    field = row.form.fields.get(name)
    if field is None:
        return None
    found, nothing = _found(desk, row.key, name)
    menu = QMenu(row)
    menu.setAccessibleName(translate("Picking", "From the cabinet"))
    menu.setStyleSheet(menu_style(look()))
    menu.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
    if not found:
        menu.addAction(entry(nothing)).setEnabled(False)
    for one in found:
        action = menu.addAction(_words(one))
        action.setEnabled(not one.away)
        action.triggered.connect(lambda _=False, text=one.text: _write(row, desk, name, text))
    first = next((action for action in menu.actions() if action.isEnabled()), None)
    if first is not None:
        menu.setActiveAction(first)
    below = QPoint(0, field.box.geometry().bottom() + look().px(8))
    menu.popup(field.mapToGlobal(below))
    return menu


def _found(desk: Desk, key: str, name: str) -> tuple[tuple[Pick, ...], str]:
    """What there is to choose, or why there is nothing."""
    try:
        cabinet = cabinet_for(desk.job.workshop)
    except JobsheetError as error:
        return (), str(error).replace("\n", " ")
    if cabinet is None:
        return (), translate("Picking", "There is no cabinet yet: Machine, Cabinet… begins one.")
    _, operation = desk.job.find(key)
    return picks(desk.job, operation, name, cabinet), translate(
        "Picking", "The cabinet has nothing that does this."
    )


def _words(one: Pick) -> str:
    """The line, and at the right why it is not there or what is known of it."""
    beside = translate("Picking", "not there now: {where}").format(where=one.away) if one.away else one.note
    return f"{entry(one.shown)}\t{entry(beside)}" if beside else entry(one.shown)


def _write(row: OpenRow, desk: Desk, name: str, text: str) -> None:
    """Write a line into the field: a step of its own in the history."""
    desk.history.break_merge()
    row.typed.emit(name, text)
    desk.history.break_merge()
