"""The stop notes of a ladder on the screen: read, and given initials for,
before a rung opens, as on paper.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.proving_desk import ProvingDesk
from jobsheet.operations.entry import Entry
from jobsheet.report.proving_sheet import Initialled, notes_of, unread

translate = QCoreApplication.translate
PAD = 14
#: Notes that are read beside those that ask for initials.
_EYES = "eyes-shielded"


def entries(*, in_charge: bool) -> tuple[Entry, ...]:
    """Whose initials are asked for."""
    say = translate
    both = (
        Entry(name="operator", title=say("Proving", "Operator, initials"), asks="text"),
        Entry(name="second", title=say("Proving", "Second person, initials"), asks="text"),
    )
    charge = (Entry(name="in_charge", title=say("Proving", "Person in charge, initials"), asks="text"),)
    return both + charge if in_charge else both


class StopNotes(QWidget):
    """What has to be read, a line for each of those present, and the button that opens the ladder."""

    #: All initials are there.
    given = Signal(object)
    height_changed = Signal()

    def __init__(self, parent: QWidget, units: str) -> None:
        super().__init__(parent)
        self._units = units
        self._desk: ProvingDesk | None = None
        self._ladder: object = None
        self.notes: tuple[str, ...] = ()
        self.texts: dict[str, str] = {}
        self.form = Form((), units, "", self)
        self.read = Button(translate("Proving", "Read: open the ladder"), self, Manner.FILLED)
        self.read.clicked.connect(self._give)
        self.hide()

    def put(self, desk: ProvingDesk) -> None:
        """Show the notes of a ladder that nobody has read yet; nothing where there is none."""
        ladder = desk.ladder
        self._desk = desk
        open_ = bool(desk.unread)
        if open_ and ladder is not None and ladder is not self._ladder:
            self._ladder = ladder
            noted = notes_of(ladder, trainee=desk.trainee)
            asked = [note for note in noted if note.level == "stop"]
            eyes = [note for note in noted if note.id == _EYES]
            self.notes = tuple(_plain(note.text) for note in (*asked, *eyes))
            charge = any("in charge" in note.initials for note in asked)
            self.texts = {}
            self.form.hide()
            self.form.deleteLater()
            self.form = Form(entries(in_charge=charge), self._units, translate("Proving", "Initials"), self)
            self.form.typed.connect(self._typed)
            self.form.show()
            fields = list(self.form.fields.values())
            self.setTabOrder(fields[-1].box, self.read)
            self.setAccessibleName(" ".join((translate("Proving", "Before the first rung."), *self.notes)))
            self._show_missing()
        self.setVisible(open_)

    def focus_first(self) -> None:
        """To the first line that is asked for."""
        self.form.focus_first()

    def initials(self) -> Initialled:
        """Who has given what so far."""
        text = {name: text.strip() for name, text in self.texts.items()}
        return Initialled(
            operator=text.get("operator", ""),
            second=text.get("second", ""),
            in_charge=text.get("in_charge", ""),
        )

    def _typed(self, name: str, text: str) -> None:
        self.texts[name] = text
        self.form.put({name: Shown(text) for name, text in self.texts.items()})
        self._show_missing()

    def _missing(self) -> bool:
        desk = self._desk
        if desk is None or desk.ladder is None:
            return True
        return bool(unread(desk.ladder, self.initials(), trainee=desk.trainee))

    def _show_missing(self) -> None:
        words = translate("Proving", "Initials of all who are named here first.")
        self.read.why_not(words if self._missing() else "")

    def _give(self) -> None:
        if not self._missing():
            self.given.emit(self.initials())

    def arrange(self, width: int) -> int:
        """Notes, lines and button for a width; the height needed."""
        now = look()
        pad = now.px(PAD)
        inside = width - 2 * pad
        top = now.px(8) + now.px(24)
        for words in self.notes:
            top += ink.paragraph_height(now, words, now.body, inside) + now.px(6)
        high = self.form.arrange(inside, min(len(self.form.fields), 3) or 1)
        self.form.setGeometry(pad, top, inside, high)
        top += high
        hint = self.read.sizeHint()
        self.read.setGeometry(pad - now.px(4), top, hint.width(), hint.height())
        return top + hint.height() + now.px(8)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The notes, whole; a heavy stroke at the left says that they stop the work."""
        now = look()
        pad = now.px(PAD)
        inside = self.width() - 2 * pad
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            painter.fillRect(QRect(0, 0, now.px(4), self.height()), now.colour("vermmark"))
            head = QRect(pad, now.px(6), inside, now.px(24))
            ink.write(painter, now, head, translate("Proving", "Before the first rung"), now.bold)
            box = QRect(pad, now.px(32), inside, self.height())
            for words in self.notes:
                box.translate(0, ink.paragraph(painter, now, box, words, now.body) + now.px(6))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)


def _plain(text: str) -> str:
    """A note of the sheet without what only paper has: its heading in front, its line to write on behind."""
    words = text.removeprefix("Printed before the table: ").replace(": ____", ".").replace("*", "")
    return f"{words[:1].upper()}{words[1:]}"
