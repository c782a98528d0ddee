"""A form made from entries: fields flow into equal columns, wide ones over two.

Nothing here knows a kind of operation. The same form serves a row, the heading of a set-up and the title
block, which are lists of entries too.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.field import Field
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink.look import look
from jobsheet.operations.entry import Entry

if TYPE_CHECKING:
    from jobsheet.gui.forms.places_field import PlacesField

ACROSS = 14
DOWN = 2
#: Fields whose places are rows: those of holes.
IN_ROWS = ("at",)
#: Fields that are lines of several, more of which come as they are typed: those of the finished part.
LINES = ("datums", "sizes", "line_")
#: No field that anything stands under.
NOTHING: Mapping[Field, int] = {}


class Form(QWidget):
    """The fields of one owner: an operation, a set-up or the job."""

    typed = Signal(str, str)
    #: A field of several parts: its name, its text, what was done in it, and
    #: whether by a key of which more may come.
    done = Signal(str, str, str, bool)
    height_changed = Signal()
    picks_wanted = Signal(str)
    #: A line of several goes up or down by so many; 0 strikes it.
    line_moved = Signal(str, int)

    def __init__(
        self, entries: Iterable[Entry], units: str, name: str, parent: QWidget, *, joined: bool = True
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.fields: dict[str, Field] = {}
        #: Whose fields they are, as the pages of the help call it.
        self.scope = ""
        #: The places of its holes, where it asks for them.
        self.rows: PlacesField | None = None
        self._units = units
        for entry in entries:
            self._add(entry, joined=joined)

    def _add(self, entry: Entry, *, joined: bool) -> Field:
        """One more field behind the others."""
        field = self._field(entry, self._units, joined=joined)
        field.typed.connect(self.typed)
        field.height_changed.connect(self.height_changed)
        field.picks_wanted.connect(self.picks_wanted)
        self.fields[entry.name] = field
        return field

    def follow(self, entries: Iterable[Entry]) -> None:
        """Ask more fields of the same sort behind the last, or fewer: those that stay are not
        made anew, the hand may be in one.
        """
        wanted = {entry.name: entry for entry in entries}
        for name in [name for name in self.fields if name not in wanted]:
            field = self.fields.pop(name)
            field.hide()
            field.deleteLater()
        for name, entry in wanted.items():
            if name not in self.fields:
                self._add(entry, joined=True).show()

    def _field(self, entry: Entry, units: str, *, joined: bool) -> Field:
        """The field of an entry: rows where it asks for the places of holes, else a box."""
        if entry.name.startswith(LINES):
            from jobsheet.gui.forms.line_field import LineField

            line = LineField(entry, units, self, joined=joined)
            line.moved.connect(self.line_moved)
            return line
        if entry.name not in IN_ROWS or entry.optional:
            return Field(entry, units, self, joined=joined)
        from jobsheet.gui.forms.places_field import PlacesField

        self.rows = PlacesField(entry, units, self, joined=joined)
        self.rows.done.connect(self.done)
        return self.rows

    def put(self, values: Mapping[str, Shown]) -> None:
        """Show these texts."""
        for name, value in values.items():
            field = self.fields.get(name)
            if field is not None:
                field.put(value.text, value.understood, value.problem)
                field.propose(value.proposed)

    def let_go(self) -> None:
        """Something typed is taken back: every box is written anew."""
        for field in self.fields.values():
            field.let_go()

    def field_in_hand(self) -> str:
        """The name of the field that the cursor is in, or nothing."""
        return next((name for name, field in self.fields.items() if field.holds_cursor()), "")

    def focus_first(self) -> None:
        """Put the cursor into the first field, as Tab would: what is typed then
        takes the place of what stands there.
        """
        first = next(iter(self.fields.values()), None)
        if first is not None:
            first.box.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def arrange(self, width: int, columns: int, below: Mapping[Field, int] = NOTHING) -> int:
        """Place the fields for a width; the height that they need, with the room that is
        to be left at the foot of some [px].
        """
        now = look()
        gap, top = now.px(ACROSS), 0
        one = (width - gap * (columns - 1)) / columns
        for row in self._lines(columns, one):
            column, high = 0, 0
            for field, span in row:
                # From edge to edge, so that no frame ends a pixel outside the form.
                left = round(column * (one + gap))
                wide = min(round(column * (one + gap) + one * span + gap * (span - 1)), width) - left
                needed = field.needed_height(wide) + below.get(field, 0)
                field.setGeometry(left, top, wide, needed)
                high = max(high, needed)
                column += span
            top += high + now.px(DOWN)
        return top

    def _lines(self, columns: int, one: float) -> list[list[tuple[Field, int]]]:
        """The fields line by line with their spans; the last text of a line takes what is left of it."""
        lines: list[list[tuple[Field, int]]] = [[]]
        used = 0
        for field in self.fields.values():
            span = field.span(columns, one)
            if used + span > columns:
                lines.append([])
                used = 0
            lines[-1].append((field, span))
            used += span
        for line in lines:
            spare = columns - sum(span for _, span in line)
            for index in range(len(line) - 1, -1, -1):
                field, span = line[index]
                if spare > 0 and field.may_grow():
                    line[index] = (field, span + spare)
                    break
        return lines
