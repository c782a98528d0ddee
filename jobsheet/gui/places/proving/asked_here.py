"""A question asked in place: a sentence, the fields that it needs, what is done then and how to leave it."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError, QuantityError, as_sentence
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.operations.entry import Entry

translate = QCoreApplication.translate
PAD = 12


class Question(QWidget):
    """One question at a time; what is not done is left with Esc and nothing is changed."""

    height_changed = Signal()
    #: It was answered or left.
    closed = Signal()

    def __init__(self, parent: QWidget, units: str) -> None:
        super().__init__(parent)
        self._units = units
        self._entries: tuple[Entry, ...] = ()
        self.form = Form((), units, "", self)
        self.texts: dict[str, str] = {}
        self.do = Button("", self, Manner.FILLED)
        self.do.clicked.connect(self._done)
        self.leave = Button(translate("Proving", "Leave it"), self)
        self.leave.clicked.connect(self.close_it)
        self._sentence: Callable[[dict[str, str]], str] = lambda _: ""
        self._act: Callable[[dict[str, str]], None] = lambda _: None
        self._problem = ""
        self.hide()

    def ask(
        self, sentence: Callable[[dict[str, str]], str], entries: Iterable[Entry], texts: dict[str, str], do: str,
        act: Callable[[dict[str, str]], None],
    ) -> None:  # fmt: skip
        """Ask; `sentence` is worded anew with each text, `act` is given the texts and raises
        JobsheetError where it cannot be done.
        """
        self._sentence, self._act, self._problem = sentence, act, ""
        self._entries, self.texts = tuple(entries), dict(texts)
        self.form.hide()
        self.form.deleteLater()
        self.form = Form(self._entries, self._units, do, self)
        self.form.typed.connect(self._typed)
        self.form.height_changed.connect(self.height_changed)
        self.form.show()
        self._put()
        self.do.setText(do)
        self.do.setAccessibleName(do)
        self.setAccessibleName(sentence(self.texts))
        self.setTabOrder(self.do, self.leave)
        self.show()
        self.height_changed.emit()
        if self._entries:
            self.form.focus_first()
            self.setTabOrder(list(self.form.fields.values())[-1].box, self.do)
        else:
            self.do.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter goes on from a list of choices as from any box."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.focusNextChild()
            return
        super().keyPressEvent(event)

    def close_it(self) -> None:
        """Nothing is done."""
        if self.isHidden():
            return
        self.hide()
        self.closed.emit()

    def _typed(self, name: str, text: str) -> None:
        self.texts[name] = text
        self._problem = ""
        self._put()
        self.height_changed.emit()
        self.update()

    def _put(self) -> None:
        shown = {}
        for entry in self._entries:
            text = self.texts.get(entry.name, "")
            problem = None
            if entry.asks not in ("choice", "text") and text.strip():
                try:
                    entry.read(text, self._units)
                except QuantityError as error:
                    problem = error
            shown[entry.name] = Shown(text, entry.hint, problem)
        self.form.put(shown)

    def _done(self) -> None:
        try:
            self._act({name: text.strip() for name, text in self.texts.items()})
        except JobsheetError as error:
            self._problem = as_sentence(error)
            self.setAccessibleDescription(self._problem)
            self.height_changed.emit()
            self.update()
            return
        self.close_it()

    def arrange(self, width: int) -> int:
        """Place everything for a width; the height needed."""
        now = look()
        pad = now.px(PAD)
        inside = width - 2 * pad
        top = now.px(8) + ink.paragraph_height(now, self._sentence(self.texts), now.bold, inside) + now.px(6)
        if self._entries:
            columns = min(len(self._entries), 3 if inside > now.px(560) else 2 if inside > now.px(380) else 1)
            high = self.form.arrange(inside, columns)
            self.form.setGeometry(pad, top, inside, high)
            top += high
        if self._problem:
            top += ink.paragraph_height(now, self._problem, now.body, inside) + now.px(4)
        left = pad - now.px(4)
        for button in (self.do, self.leave):
            hint = button.sizeHint()
            button.setGeometry(left, top, hint.width(), hint.height())
            left += hint.width()
        return top + self.do.sizeHint().height() + now.px(8)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The sentence on the ground of what is chosen, and why it cannot be done."""
        now = look()
        pad = now.px(PAD)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("chosen"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, 2)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)
            inside = self.width() - 2 * pad
            box = QRect(pad, now.px(8), inside, self.height())
            ink.paragraph(painter, now, box, self._sentence(self.texts), now.bold)
            if self._problem:
                high = ink.paragraph_height(now, self._problem, now.body, inside)
                at = QRect(pad, self.do.y() - high - now.px(4), inside, high)
                ink.paragraph(painter, now, at, self._problem, now.body, "verm")
