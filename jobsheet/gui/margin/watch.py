"""The stopwatch: a length and the seconds it took give the real feed, and
with it what the cut really asks.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError, QuantityError
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.operations.entry import Entry
from jobsheet.operations.names import show

translate = QCoreApplication.translate

ENTRIES = (
    Entry(name="length", title="Wound so far", asks="length", low="1 mm", high="10 m"),
    Entry(name="seconds", title="In so many seconds", asks="time", low="0.1 s", high="24 h"),
)


class WatchView(QWidget):
    """Two fields and, as soon as both can be read, what they say; a button
    writes the real feed into the step.
    """

    taken = Signal(object)
    height_changed = Signal()

    def __init__(self, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Watch", "Stopwatch"))
        self._units = units
        self._texts = {"length": "", "seconds": ""}
        self._about: tuple[Operation, Setting] | None = None
        self.words: tuple[str, ...] = ()
        self._edits: tuple[tuple[str, str], ...] = ()
        self.form = Form(ENTRIES, units, translate("Watch", "Stopwatch"), self)
        # A watch counts seconds, where a bare number of minutes is the rule elsewhere.
        self.form.fields["seconds"].unit = "s"
        self.form.typed.connect(self._typed)
        self.form.height_changed.connect(self.height_changed)
        self.button = Button(translate("Watch", "Write the real feed in"), self, in_row=True)
        self.button.clicked.connect(lambda: self.taken.emit(self._edits))
        self.button.hide()

    def put(self, operation: Operation, setting: Setting | None) -> None:
        """Judge this step from now on."""
        self._about = (operation, setting) if setting is not None else None
        self._judge()

    def _typed(self, name: str, text: str) -> None:
        self._texts[name] = f"{text} s" if name == "seconds" and text.replace(".", "", 1).isdigit() else text
        self._judge()
        self.height_changed.emit()

    def _judge(self) -> None:
        """Read both fields and ask the watch; each says for itself what is wrong with it."""
        values: dict[str, float] = {}
        shown: dict[str, Shown] = {}
        for entry in ENTRIES:
            text = self._texts[entry.name]
            typed = text.removesuffix(" s") if entry.name == "seconds" else text
            try:
                value = entry.read(text, self._units) if text.strip() else None
            except QuantityError as problem:
                shown[entry.name] = Shown(typed, "", problem)
                continue
            shown[entry.name] = Shown(typed)
            if value is not None:
                values[entry.name] = value.value
        self.form.put(shown)
        self.words, self._edits = (), ()
        if len(values) == 2 and self._about is not None:
            self._ask(*self._about, values)
        self.button.setVisible(bool(self._edits))
        self.update()

    def _ask(self, operation: Operation, setting: Setting, values: dict[str, float]) -> None:
        from jobsheet.reckoning.answers.stopwatch_answer import stopwatch

        try:
            answer = stopwatch(operation, setting, seconds=values["seconds"], length=values["length"])
        except JobsheetError as error:
            words = str(error)
            self.words = (f"{words[:1].upper()}{words[1:]}.",)
            return
        each = (
            translate("Watch", "a tooth") if answer.each == "feed_per_tooth" else translate("Watch", "a turn")
        )
        first = f"{show('table_feed', answer.feed, self._units)}, {show(answer.each, answer.chip, self._units)} {each}"
        planned = answer.planned.value(answer.each)
        if planned:
            first += translate("Watch", ": {share} % of what is planned").format(
                share=round(answer.chip / planned * 100)
            )
        worst = answer.found.governing
        second = answer.found.problem
        if worst is not None:
            second = f"{worst.title} {worst.share * 100:.0f} %, {worst.verdict}. {worst.sentence}".strip()
        self.words = tuple(words for words in (first + ".", second) if words)
        self._edits = answer.edits

    def arrange(self, width: int) -> int:
        """Place fields and button; the height needed."""
        now = look()
        top = now.px(8)
        high = self.form.arrange(width, 2)
        self.form.setGeometry(0, top, width, high)
        top += high
        for words in self.words:
            top += ink.paragraph_height(now, words, now.body, width) + now.px(2)
        if not self.button.isHidden():
            hint = self.button.sizeHint()
            self.button.setGeometry(-now.px(4), top, hint.width(), hint.height())
            top += hint.height()
        return top + now.px(6)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """What the watch says."""
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            top = self.form.geometry().bottom() + 1
            for index, words in enumerate(self.words):
                box = QRect(0, top, self.width(), self.height())
                tone = "ink" if not index else "pencil"
                top += ink.paragraph(painter, now, box, words, now.body, tone) + now.px(2)
