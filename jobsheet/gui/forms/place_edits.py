"""What a hand does in a table of places: typing, and the keys that walk, insert, take out, move and paste.

Every change is told as the whole list with the name of what was done, so that it is one step of undo.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.place_table import PlaceTable
from jobsheet.gui.forms.places_layout import SHOWN
from jobsheet.operations import place_rows as rows_
from jobsheet.operations.pasted_places import pasted

translate = QCoreApplication.translate


class PlaceEdits:
    """The edits of one table."""

    def __init__(self, field: PlaceTable) -> None:
        self._field = field
        #: What the step of undo is called that is typed at, and in which box that is.
        self._what = ""
        self._typing_at = (-1, "")

    def left(self) -> None:
        """Another box has the cursor: what is typed next is another step."""
        self._what = ""

    # --- typing ---

    def typed_in(self, row: int, axis: str, text: str) -> None:
        """Something was typed into a box of a row."""
        new = row >= len(self._field.rows)
        pieces, name = rows_.with_cell(self._field.pieces, row, axis, text)
        if self._typing_at != (row, axis):
            self._what, self._typing_at = "", (row, axis)
        if not self._what or name:
            self._what = (
                translate("Places", "add place {number}")
                if new
                else translate("Places", "change place {number}, {axis}")
            ).format(number=row + 1, axis=axis.upper())
        self.do(pieces, self._what, (name,), by_key=True)

    def do(self, pieces: rows_.Pieces, what: str, names: tuple[str, ...], *, by_key: bool = False) -> None:
        """Another list: told at once, as one step that names itself."""
        names = tuple(name for name in names if name)
        if not by_key:
            self._field.note = ""
        if names:
            fine = (
                translate("Places", "0.001 mm")
                if self._field.units == "mm"
                else translate("Places", "0.0001 in")
            )
            written = translate("Places", " and ").join(names)
            what = self._what = translate("Places", "write {made} out as places, {what}").format(
                made=written, what=what
            )
            self._field.note = translate(
                "Places", "{made}: plain places now, to {fine}; Undo brings it back."
            ).format(made=written, fine=fine)
        note, self._field.pieces = self._field.note, pieces
        self._field.told.emit(self._field.entry.name, rows_.text_of(pieces), what, by_key)
        self._field.note = note
        self._field.fill()

    # --- keys of the table ---

    def asked(self, row: int, axis: str, asked: str) -> None:
        """A key of the table in a box of a row."""
        if asked in ("tab", "back"):
            self._tab(row, axis, forward=asked == "tab")
        elif asked == "enter":
            self._enter(row, axis)
        elif asked in ("above", "below"):
            self._field.go(row + (1 if asked == "below" else -1), axis)
        elif asked in ("up", "down"):
            self._move(row, axis, 1 if asked == "down" else -1)
        elif asked == "insert":
            self._insert(row)
        elif asked == "out":
            self.take_out(row, axis)
        elif asked == "paste":
            self._paste(row)

    def _tab(self, row: int, axis: str, *, forward: bool) -> None:
        """To the next box; at the edge of what is shown the rows move on."""
        cell = self._field.cell(row, axis)
        hidden = (
            self._field.first + len(self._field.cells) <= len(self._field.rows)
            if forward
            else self._field.first > 0
        )
        edge = row == (self._field.first + SHOWN - 1 if forward else self._field.first) and axis == (
            "y" if forward else "x"
        )
        if hidden and edge:
            self._field.go(row + (1 if forward else -1), "x" if forward else "y")
        elif cell is not None:
            cell.go_on(forward=forward)

    def _enter(self, row: int, axis: str) -> None:
        """Down to the next row; from an x that has no y yet to that; from the
        empty last row on to the next field.
        """
        count = len(self._field.rows)
        if row >= count:
            self._leave()
            return
        typed = self._field.rows[row]
        self._field.settle()
        if axis == "x" and len(self._field.rows) == count and not typed.y.strip():
            self._field.go(row, "y")
        else:
            self._field.go(row + 1 + len(self._field.rows) - count, "x" if axis == "y" else axis)

    def _leave(self) -> None:
        """To what comes after the table and its maker."""
        stop: QWidget | None = self._field.last_stop()
        while stop is not None and (
            self._field.holds(stop)
            or not (stop.focusPolicy() & QtCore.Qt.FocusPolicy.TabFocus and stop.isVisible())
        ):
            stop = stop.nextInFocusChain()
        if stop is not None:
            stop.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def _move(self, row: int, axis: str, by: int) -> None:
        pieces, names = rows_.moved(self._field.pieces, row, by)
        if pieces == self._field.pieces:
            return
        words = (
            translate("Places", "move place {number} up")
            if by < 0
            else translate("Places", "move place {number} down")
        )
        self._what = ""
        self.do(pieces, words.format(number=row + 1), names)
        self._field.go(row + by, axis)

    def _insert(self, row: int) -> None:
        """An empty row before this one: it counts once something is typed in it."""
        if row >= len(self._field.rows):
            return
        pieces, name = rows_.inserted(self._field.pieces, row)
        if name:
            self.do(pieces, translate("Places", "insert a place"), (name,))
        else:
            self._field.pieces = pieces
            self._field.fill()
        self._field.go(row, "x")
        self._what = translate("Places", "insert place {number}").format(number=row + 1)
        self._typing_at = (row, "x")

    def take_out(self, row: int, axis: str = "x") -> None:
        """A row less."""
        if row >= len(self._field.rows):
            return
        pieces, name = rows_.taken_out(self._field.pieces, row)
        self.do(pieces, translate("Places", "take out place {number}").format(number=row + 1), (name,))
        self._field.go(min(row, len(self._field.rows)), axis)

    def _paste(self, row: int) -> None:
        """Lines of two numbers go below the row, or into it where it is empty."""
        new = self.lines_pasted()
        before = self._field.rows[row] if row < len(self._field.rows) else None
        at = row + (1 if before is not None and (before.x + before.y).strip() else 0)
        pieces, name = rows_.inserted(self._field.pieces, at, new)
        self.put_pasted(pieces, name, at + len(new) - 1, len(new))

    def lines_pasted(self) -> rows_.Pieces:
        """What lies ready to be pasted, a row for each line."""
        found = pasted(QGuiApplication.clipboard().text(), self._field.units)
        return tuple(rows_.Single(pasted.x, pasted.y) for pasted in found)

    def put_pasted(self, pieces: rows_.Pieces, name: str, last: int, count: int) -> None:
        """A list with what was pasted; the cursor goes to the last of it."""
        self.do(pieces, translate("Places", "paste {count} places").format(count=count), (name,))
        self._field.settle()
        self._field.go(last, "x")

    def put_in(self, text: str, replacing: str) -> None:
        """What the maker has written: in the place of what it made before."""
        pieces = rows_.put_in(self._field.pieces, text, replacing, self._field.units)
        self.do(pieces, translate("Places", "put in {made}").format(made=text), ())
