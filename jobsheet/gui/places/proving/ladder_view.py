"""The ladder, drawn as one and climbed from the bottom: done rungs with what happened, the
current one open, the rest dashed.
"""

from __future__ import annotations

from collections.abc import Mapping

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.record_line import paint_mark
from jobsheet.limits.verdict import in_words
from jobsheet.model.trials import OUTCOMES, SLIPPED, Trial
from jobsheet.operations.entry import Entry
from jobsheet.reckoning.ladder.ladders import Ladder, Rung

ROW, HEAD, SIDE = 46, 26, 46
_NOTHING = "nothing"

translate = QCoreApplication.translate


def _entries() -> tuple[Entry, ...]:
    """What is written down beside what happened."""
    return (
        Entry(name="seconds", title=translate("Ladder", "Seconds"), asks="time", low="0.1 s", high="24 h", optional=True),
        Entry(name="heard", title=translate("Ladder", "Heard"), asks="text", optional=True),
        Entry(name="seen", title=translate("Ladder", "Seen"), asks="text", optional=True),
        Entry(
            name="tachometer", title=translate("Ladder", "Tachometer"), asks="spindle speed", low="1 rpm", high="60000 rpm",
            optional=True,
        ),
        Entry(
            name="slipped", title=translate("Ladder", "If it slipped"), asks="choice", choices=(_NOTHING, *SLIPPED), optional=True
        ),
    )  # fmt: skip


class LadderView(QWidget):
    """Shows a ladder; a digit, or pressing it, says what happened on the current rung."""

    happened = Signal(int)
    height_changed = Signal()

    def __init__(self, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self._units = units
        self.ladder: Ladder | None = None
        self._done: Mapping[int, Trial] = {}
        self._current: Rung | None = None
        self.texts: dict[str, str] = {}
        self._tops: list[tuple[Rung, int, int]] = []
        self.form = Form(_entries(), units, translate("Ladder", "What was seen and heard"), self)
        self.form.fields["seconds"].unit = "s"
        self.form.typed.connect(self._typed)
        self.form.height_changed.connect(self.height_changed)
        self.buttons: list[Button] = []
        for number, outcome in enumerate(OUTCOMES, 1):
            button = Button(f"{number}  {outcome}", self, Manner.PLAIN)
            button.setAccessibleName(
                translate("Ladder", "{number}: {outcome}").format(number=number, outcome=outcome)
            )
            button.clicked.connect(lambda _=False, number=number: self.happened.emit(number))
            self.buttons.append(button)

    def put(self, ladder: Ladder | None, done: Mapping[int, Trial], current: Rung | None) -> None:
        """Show a ladder as far as it was climbed."""
        if ladder is not self.ladder or current is not self._current:
            self.texts = {}
            self.form.put({name: Shown(_NOTHING if name == "slipped" else "") for name in self.form.fields})
        self.ladder, self._done, self._current = ladder, dict(done), current
        for widget in (self.form, *self.buttons):
            widget.setVisible(current is not None)
        self.setAccessibleName(self._spoken())
        self.height_changed.emit()
        self.update()

    def _spoken(self) -> str:
        if self.ladder is None:
            return translate("Ladder", "No ladder yet")
        said = [
            f"{rung.size}: {self._done[rung.number].outcome if rung.number in self._done else translate('Ladder', 'not cut')}"
            for rung in self.ladder.rungs
        ]
        return translate("Ladder", "Ladder from the bottom: {rungs}").format(rungs="; ".join(said))

    def _typed(self, name: str, text: str) -> None:
        self.texts[name] = text
        self._show_fields()

    def _show_fields(self) -> None:
        shown = {}
        for entry in _entries():
            text = self.texts.get(entry.name, _NOTHING if entry.name == "slipped" else "")
            try:
                if entry.asks != "choice" and text.strip():
                    entry.read(self._read_text(entry.name, text), self._units)
                shown[entry.name] = Shown(text)
            except QuantityError as problem:
                shown[entry.name] = Shown(text, "", problem)
        self.form.put(shown)
        self.height_changed.emit()

    @staticmethod
    def _read_text(name: str, text: str) -> str:
        """A bare number of seconds is seconds."""
        bare = text.strip().replace(",", ".").replace(".", "", 1).isdigit()
        return f"{text} s" if name == "seconds" and bare else text

    def number(self, name: str) -> float | None:
        """What was written into a field, in SI; None where nothing was.

        Raises
        ------
        QuantityError
            Where it cannot be read.
        """
        text = self.texts.get(name, "")
        if not text.strip():
            return None
        entry = next(entry for entry in _entries() if entry.name == name)
        value = entry.read(self._read_text(name, text), self._units)
        return float(value.value)

    @property
    def slipped(self) -> str:
        """What slipped, or nothing."""
        return self.texts.get("slipped", "").replace(_NOTHING, "")

    def note(self) -> str:
        """What was heard and seen, in one line."""
        parts = [
            translate("Ladder", "heard {words}").format(words=self.texts["heard"])
            if self.texts.get("heard")
            else "",
            translate("Ladder", "seen {words}").format(words=self.texts["seen"])
            if self.texts.get("seen")
            else "",
        ]
        return "; ".join(part for part in parts if part)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """1 to 8 say what happened."""
        digit = event.key() - QtCore.Qt.Key.Key_0
        if self._current is not None and 1 <= digit <= len(OUTCOMES):
            self.happened.emit(int(digit))
            return
        super().keyPressEvent(event)

    # --- placing ---

    def arrange(self, width: int) -> int:
        """Place the rungs, the bottom one first at the foot; the height needed."""
        if self.ladder is None:
            return 0
        now = look()
        self.resize(width, self.height())
        top = now.px(HEAD)
        inside = width - 2 * now.px(SIDE)
        self._tops = []
        for rung in reversed(self.ladder.rungs):
            high = now.px(ROW)
            if self._current is not None and rung.number == self._current.number:
                high = self._arrange_open(now.px(SIDE), top, inside)
            self._tops.append((rung, top, high))
            top += high
        return top + now.px(30)

    def _arrange_open(self, left: int, top: int, width: int) -> int:
        now = look()
        at = top + now.px(48)
        columns = 4 if width > now.px(440) else 2
        gap = now.px(6)
        high = now.px(40)
        hints = [button.sizeHint().width() for button in self.buttons]
        for row in range(0, len(self.buttons), columns):
            # Even, but for one whose words need more.
            wide = (width - gap * (columns - 1)) // columns
            broad = [max(hint, wide) for hint in hints[row : row + columns]]
            over = sum(broad) + gap * (columns - 1) - width
            narrow = [index for index, one in enumerate(broad) if one == wide]
            for index in narrow:
                broad[index] -= max(0, over) // max(1, len(narrow))
            x = left
            for button, one in zip(self.buttons[row : row + columns], broad, strict=True):
                button.setGeometry(x, at + row // columns * high, one, high)
                x += one + gap
        at += high * ((len(self.buttons) + columns - 1) // columns) + now.px(6)
        needed = self.form.arrange(width, 3 if width > now.px(440) else 2)
        self.form.setGeometry(left, at, width, needed)
        return at + needed + now.px(8) - top

    # --- painting ---

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Two stiles, the rungs between them."""
        now = look()
        if self.ladder is None:
            return
        with QPainter(self) as painter:
            side, width = now.px(SIDE), self.width()
            captions = self._columns(width)
            words = (
                self.ladder.grows if self.ladder.grows != "size" else translate("Ladder", "size"),
                translate("Ladder", "may end badly"),
                translate("Ladder", "handle"),
                translate("Ladder", "what happened"),
            )
            ends = (*captions[1:], width)
            for x, end, word in zip(captions, ends, words, strict=True):
                box = QRect(x, 0, end - x - now.px(4), now.px(HEAD))
                ink.write(painter, now, box, word, now.caption, "pencil")
            bottom = self.height()
            for x in (
                side - now.px(22),
                side - now.px(16),
                width - side + now.px(16),
                width - side + now.px(22),
            ):
                ink.upright(painter, now.colour("ink"), x, now.px(HEAD), bottom)
            for rung, top, high in self._tops:
                self._paint_rung(
                    painter, rung, QRect(side - now.px(22), top, width - 2 * side + now.px(44), high)
                )

    def _columns(self, width: int) -> tuple[int, int, int, int]:
        now = look()
        side = now.px(SIDE)
        inside = width - 2 * side
        return side, side + round(inside * 0.26), side + round(inside * 0.54), side + round(inside * 0.74)

    def _paint_rung(self, painter: QPainter, rung: Rung, place: QRect) -> None:
        now = look()
        done = self._done.get(rung.number)
        current = self._current is not None and rung.number == self._current.number
        if current:
            painter.fillRect(place, now.colour("chosen"))
        high = now.px(44)
        tone = "ink" if done is not None or current else "pencil"
        size, asks, hand, what = self._columns(self.width())
        number, _, unit = rung.size.rpartition(" ")
        if not number or self.ladder is None or self.ladder.grows == "size":
            number, unit = rung.size, ""
        font = now.title if len(number) < 9 else now.bold
        row = QRect(size, place.top(), place.width(), high)
        wide = ink.write(painter, now, row, number, font, tone)
        ink.write(painter, now, row.translated(wide + now.px(6), 0), unit, now.body, "pencil")
        room = hand - asks - now.px(6)
        words = ink.fitting(now, self._risks(rung), now.body, room)
        ink.write(painter, now, QRect(asks, place.top(), room, high), words, now.body, tone)
        turn = rung.figures.shown("seconds_a_turn")
        paces = (
            (translate("Ladder", "{seconds} a turn").format(seconds=turn), turn)
            if turn
            else (rung.pace or rung.spindle, f"{rung.seconds:.0f} s" if rung.seconds else rung.spindle)
        )
        room = what - hand - now.px(6)
        pace = ink.fitting(now, paces, now.body, room)
        ink.write(painter, now, QRect(hand, place.top(), room, high), pace, now.body, tone)
        right = QRect(what, place.top(), place.right() - what - now.px(8), high)
        if done is not None:
            self._paint_outcome(painter, right, done)
        elif current:
            texts = (translate("Ladder", "What happened?"), translate("Ladder", "open"))
            ink.write(painter, now, right, ink.fitting(now, texts, now.bold, right.width()), now.bold, "blue")
        else:
            ink.write(painter, now, right, translate("Ladder", "not cut"), now.body, "pencil")
        foot = place.bottom()
        if done is not None or current:
            ink.horizontal(
                painter, now.colour("ink"), place.left(), place.right(), foot - now.px(2), now.px(3)
            )
        else:
            pen = QPen(now.colour("pencil"), 1.6 * now.scale)
            pen.setDashPattern([3, 2])
            painter.setPen(pen)
            painter.drawLine(place.left(), foot, place.right(), foot)

    @staticmethod
    def _risks(rung: Rung) -> tuple[str, ...]:
        """How likely it ends badly, and what it asks of the motor; the first of
        these for which there is room.
        """
        chance, torque = in_words(rung.chance), rung.figures.limit("spindle-torque")
        if torque is None:
            return (chance,)
        share = translate("Ladder", "motor {share} %").format(share=max(1, round(torque.share * 100)))
        return (f"{chance}, {share}", chance)

    @staticmethod
    def _paint_outcome(painter: QPainter, place: QRect, trial: Trial) -> None:
        now = look()
        paint_mark(painter, now, trial.outcome, place.left(), place.center().y())
        words = QRect(place.left() + now.px(24), place.top(), place.width() - now.px(24), place.height())
        ink.write(painter, now, words, trial.outcome, now.bold)
