"""The list under a field: opened by Down, F4 or a press on its mark, and by what is typed;
taken like anything that is typed.

Imported when it is first asked for; the text of the field stays free.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, Qt, QTimer

from jobsheet.edit.finished_lines import OWNER
from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.under_list import UnderList
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.pick_sources import WAY, Source, several_of, source_of
from jobsheet.gui.forms.boxes import Line
from jobsheet.gui.forms.field import Field

translate = QCoreApplication.translate


class Picking:
    """One list at a time, or none."""

    def __init__(self, hand: Hand, write: Callable[[str, str, str], None]) -> None:
        self._hand = hand
        self._write = write
        self._owner = ""
        self._source: Source | None = None
        self.list: UnderList | None = None
        self._later = QTimer(hand.parent)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self._follow)
        self._typed_in: tuple[str, Field] | None = None

    # --- opening ---

    def ask(self, owner: str, field: Field) -> None:
        """List all there is, the first of them blue; of a line of the part what
        has the words in it that stand there.
        """
        source = self._read(owner, field)
        things = source.things
        if owner == OWNER and (text := field.box.text().strip()):
            things = source.found(text) or things
        self._show(field, (*things, *source.offers), blue=True)

    def typed(self, owner: str, field: Field) -> None:
        """A key came: the list follows when the figures have been painted; under a line of
        the part only where it hangs already.
        """
        if owner == OWNER and (self.list is None or self.list.field is not field):
            return
        self._typed_in = (owner, field)
        self._later.start()

    def _follow(self) -> None:
        """List what holds the words typed; nothing where the text is one of them already."""
        from shiboken6 import isValid

        if self._typed_in is None or not isValid(self._typed_in[1]):
            return
        owner, field = self._typed_in
        text = field.box.text().strip()
        if not field.box.hasFocus():
            return
        source = self._read(owner, field)
        found = self._found(source, field, text)
        if not text or not found or (len(found) == 1 and found[0].key == text):
            self.leave()
        else:
            unread = (owner, field.entry.name) in self._hand.desk.history.drafts
            self._show(field, found, blue=unread or field.problem is not None)

    @staticmethod
    def _found(source: Source, field: Field, text: str) -> tuple[Listed, ...]:
        if field.entry.asks == "material":
            from jobsheet.gui.edits.material_choice import materials_listed

            return materials_listed(text)
        if field.entry.asks == "several":
            return several_of(field.entry, text)
        return source.found(text)

    def _read(self, owner: str, field: Field) -> Source:
        """What the field can be filled with: looked up once for as long as a list hangs under it."""
        if self.list is not None and self.list.field is not field:
            self.leave()
        if self.list is None or self._source is None:
            self._owner, self._source = owner, source_of(self._hand.desk, owner, field.entry)
        return self._source

    def _show(self, field: Field, things: tuple[Listed, ...], *, blue: bool) -> None:
        """The list under that field, made where it is not there yet."""
        if self.list is None:
            words = translate("Picking", "{field}: to choose from").format(field=field.entry.title)
            self.list = UnderList(field, self._hand.ruled, words)
            self.list.taken.connect(self._take)
            self.list.closed.connect(self._gone)
        self.list.put(things, blue=blue)

    # --- going ---

    def leave(self) -> None:
        """Close the list."""
        if self.list is not None:
            self.list.leave()

    def _gone(self) -> None:
        self.list = self._source = None

    def _take(self, key: str) -> None:
        """Write what was taken into the field, as a step of its own in the history; or go where it leads."""
        under = self.list
        if under is None:
            return
        field = under.field
        under.leave()
        if key.startswith(WAY):
            self._hand.go(key.removeprefix(WAY))
            return
        history = self._hand.desk.history
        history.break_merge()
        self._write(self._owner, field.entry.name, key)
        history.break_merge()
        field.let_go()
        if field.entry.asks == "several" and isinstance(field.box, Line):  # another may follow behind a comma
            field.box.end(False)
        if self._owner == OWNER and isinstance(field.box, Line):
            self._go_to_sizes(field.box)
        self._later.stop()

    def _go_to_sizes(self, box: Line) -> None:
        """The sizes of an example are typed over next; behind a datum another may follow."""
        from jobsheet.gui.edits.line_choice import sizes_in

        box.setFocus(Qt.FocusReason.OtherFocusReason)  # a list is taken from by the mouse too
        if (at := sizes_in(self._hand.desk.job, box.text())) is None:
            box.end(False)
        else:
            box.setSelection(at[0], at[1] - at[0])
