"""Right of the steps: sizes that were found, with their limits; digits to
press; minutes to set and to cut.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.ran.big_button import GAP, HIGH, BigButton, BigField, heading
from jobsheet.gui.places.ran.ran_asked import SizeAsked
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.reckoning.run_words import number_of

translate = QCoreApplication.translate
HEAD, SIDE, ROW = 50, 16, 64
KEYS = ("1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "erase")
#: The two times of a set-up, by the name of their field in an entry.
TIMES = ("setting_up", "cutting")


class RanSizes(QWidget):
    """What was measured, and how long it took."""

    said = Signal()
    moved = Signal(QRect)
    #: There are other fields.
    made = Signal()

    def __init__(self, desk: RanDesk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self.fields: dict[str, BigField] = {}
        self._sizes: tuple[SizeAsked, ...] = ()
        self.keys = [self._key(key) for key in KEYS]
        names = {
            "setting_up": translate("Ran", "Minutes to set"),
            "cutting": translate("Ran", "Minutes to cut"),
        }
        self.times = {name: BigField(names[name], self, number=True) for name in TIMES}
        self.less = {name: self._step_of(name, -1) for name in TIMES}
        self.more = {name: self._step_of(name, +1) for name in TIMES}
        for name, field in self.times.items():
            field.setAlignment(QtCore.Qt.AlignmentFlag.AlignCenter)
            field.textEdited.connect(lambda text, name=name: self._time(name, text))
            field.installEventFilter(self)
        self._last: BigField | None = None
        self._rows: list[tuple[SizeAsked, QRect]] = []
        self._minutes_top = 0

    def _key(self, key: str) -> BigButton:
        words = translate("Ran", "erase") if key == "erase" else key
        button = BigButton(words, self)
        button.number = key != "erase"
        button.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        button.setAutoRepeat(key == "erase")
        button.clicked.connect(lambda _=False, key=key: self._press(key))
        return button

    def _step_of(self, name: str, by: int) -> BigButton:
        button = BigButton("+" if by > 0 else "–", self)
        words = translate("Ran", "{minutes}: one more") if by > 0 else translate("Ran", "{minutes}: one less")
        button.setAccessibleName(
            words.format(minutes=self.times[name].accessibleName()) if hasattr(self, "times") else ""
        )
        button.number = True
        button.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        button.setAutoRepeat(True)
        button.clicked.connect(lambda _=False: self.count(name, by))
        return button

    # --- what is said ---

    def _press(self, key: str) -> None:
        """A key of the pad goes where the hand was last; to the first size where it was nowhere."""
        field = self._last or next(iter(self.fields.values()), self.times["setting_up"])
        if not field.hasFocus():
            field.setFocus()
            field.end(False)
        if key == "erase":
            field.backspace()
        else:
            field.insert(key)
        field.textEdited.emit(field.text())

    def _found(self, key: str, text: str) -> None:
        size = next((size_asked for size_asked in self._sizes if size_asked.key == key), None)
        if size is not None:
            self._desk.found(size, text)
            self.said.emit()

    def _time(self, name: str, text: str) -> None:
        self._desk.minutes(name, text)
        self.said.emit()

    def count(self, name: str, by: int) -> None:
        """One minute more or less; from what was planned where nothing is said yet."""
        asked, said = self._desk.asked, self._desk.said.minutes
        if asked is None:
            return
        value = getattr(said, name) if said is not None else None
        planned = asked.to_set if name == "setting_up" else asked.to_cut
        now = planned if value is None else max(0, round(value / 60) + by)
        self._desk.minutes(name, str(now))
        self.times[name].setText(str(now))
        self.said.emit()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Where the hand is; Enter and Down go on, Up goes back; in the minutes + and – count."""
        if event.type() == QEvent.Type.FocusIn and isinstance(watched, BigField):
            self._last = watched
            self.moved.emit(watched.geometry())
            self.update()
        elif event.type() == QEvent.Type.FocusOut:
            self.put()
        elif isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._walked(watched, event)
        return super().eventFilter(watched, event)

    def _walked(self, watched: QObject, event: QKeyEvent) -> bool:
        keys, key = QtCore.Qt.Key, event.key()
        name = next((of for of, field in self.times.items() if field is watched), "")
        if name and key in (keys.Key_Up, keys.Key_Plus, keys.Key_Down, keys.Key_Minus):
            self.count(name, 1 if key in (keys.Key_Up, keys.Key_Plus) else -1)
            return True
        if key in (keys.Key_Return, keys.Key_Enter, keys.Key_Down):
            self.focusNextChild()
            return True
        if key == keys.Key_Up:
            self.focusPreviousChild()
            return True
        return False

    # --- showing ---

    def put(self) -> None:
        """Show sizes and minutes as they are said."""
        asked = self._desk.asked
        sizes = asked.sizes if asked is not None else ()
        if sizes != self._sizes:
            self._make(sizes)
        for size in sizes:
            entry = self._desk.said.sizes.get(size.key)
            shown = (
                number_of(entry.found, self._desk.units)
                if entry is not None and entry.found is not None
                else ""
            )
            self._show(self.fields[size.key], ("size", size.key, ""), shown)
        minutes = self._desk.said.minutes
        for name, field in self.times.items():
            value = getattr(minutes, name) if minutes is not None else None
            self._show(field, ("minutes", "", name), f"{value / 60:g}" if value is not None else "")
        self.update()

    def _show(self, field: BigField, of: tuple[str, str, str], shown: str) -> None:
        text, why = self._desk.unread.get(of, (shown, ""))
        field.put(text)
        field.wrong(why)

    def _make(self, sizes: tuple[SizeAsked, ...]) -> None:
        """A field for each size of this set-up."""
        for field in self.fields.values():
            field.removeEventFilter(self)
            field.deleteLater()
        self._sizes, self._last, self.fields = sizes, None, {}
        for size in sizes:
            name = translate("Ran", "Found size {size}, limits {limits}").format(
                size=size.size, limits=size.words
            )
            field = BigField(name, self, number=True)
            field.textEdited.connect(lambda text, key=size.key: self._found(key, text))
            field.installEventFilter(self)
            field.show()
            self.fields[size.key] = field
        self.made.emit()

    def off(self, size: SizeAsked) -> str:
        """`0.02 over`, or nothing."""
        entry = self._desk.said.sizes.get(size.key)
        return (
            size.out_by(entry.found, self._desk.units)
            if entry is not None and entry.found is not None
            else ""
        )

    # --- placing and painting ---

    def arrange(self, width: int) -> int:
        """Sizes, digits, minutes, one under the other; the height needed."""
        now = look()
        side, gap, high, row = now.px(SIDE), now.px(GAP), now.px(HIGH), now.px(ROW)
        top = now.px(HEAD)
        self._rows = []
        wide = round((width - 2 * side) * 0.42)
        for size in self._sizes:
            self._rows.append((size, QRect(0, top, width, row)))
            self.fields[size.key].setGeometry(width - side - wide, top + (row - high) // 2, wide, high)
            top += row
        top += row if not self._sizes else 0
        top += gap
        each = (width - 2 * side - 2 * gap) // 3
        for at, button in enumerate(self.keys):
            line, column = divmod(at, 3)
            button.setGeometry(side + column * (each + gap), top + line * (high + gap), each, high)
        top += 4 * (high + gap)
        self._minutes_top = top
        return self._arrange_minutes(top, width) + now.px(34)

    def _arrange_minutes(self, top: int, width: int) -> int:
        now = look()
        side, gap, high = now.px(SIDE), now.px(GAP), now.px(HIGH)
        top += now.px(HEAD)
        half = (width - 2 * side - now.px(24)) // 2
        for at, name in enumerate(TIMES):
            left = side + at * (half + now.px(24))
            self.less[name].setGeometry(left, top, high, high)
            self.times[name].setGeometry(left + high + gap, top, half - 2 * high - 2 * gap, high)
            self.more[name].setGeometry(left + half - high, top, high, high)
        return top + high

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Headings, sizes with their limits, what is out of them."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            side = now.px(SIDE)
            inside = self.width() - 2 * side
            units = (
                translate("Ran", "limits in mm")
                if self._desk.units == "mm"
                else translate("Ran", "limits in inches")
            )
            heading(painter, QRect(side, 0, inside, now.px(HEAD)), translate("Ran", "Found sizes"), units)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD) - 1)
            for size, place in self._rows:
                self._paint_size(painter, size, place)
            if not self._rows:
                words = translate("Ran", "No size with a limit is made here.")
                ink.write(
                    painter,
                    now,
                    QRect(side, now.px(HEAD), inside, now.px(ROW)),
                    words,
                    now.plain_head,
                    "pencil",
                )
            foot = self._rows[-1][1].bottom() if self._rows else now.px(HEAD + ROW)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), foot)
            self._paint_minutes(painter, QRect(side, self._minutes_top, inside, now.px(HEAD)))

    def _paint_size(self, painter: QPainter, size: SizeAsked, place: QRect) -> None:
        now = look()
        field = self.fields[size.key]
        if field.hasFocus():
            painter.fillRect(place, now.colour("chosen"))
        left = now.px(SIDE)
        room = field.x() - left - now.px(10)
        off = self.off(size)
        half = place.height() // 2
        font = now.title if now.width(size.size, now.title) <= room else now.head
        ink.write(painter, now, QRect(left, place.top() + now.px(4), room, half - now.px(2)), size.size, font)
        below = QRect(left, place.top() + half, room, half - now.px(4))
        if off:
            signs.draw(painter, "problem-caret", now.tokens.vermmark, left, below.center().y(), now.px(16))
            ink.write(painter, now, below.adjusted(now.px(22), 0, 0, 0), off, now.head, "verm")
        else:
            words = translate("Ran", "{limits} · step {number}").format(limits=size.words, number=size.number)
            back = self._desk.back.get(("size", size.key), ())
            if back and size.key not in self._desk.said.sizes and back[-1].found is not None:
                number = number_of(back[-1].found, self._desk.units)
                words = translate("Ran", "{found} was taken back").format(found=number)
            ink.write(painter, now, below, words, now.plain_head, "pencil")
        ink.horizontal(painter, now.colour("rule"), 0, place.width(), place.bottom())

    def _paint_minutes(self, painter: QPainter, place: QRect) -> None:
        now = look()
        ink.horizontal(painter, now.colour("ink"), 0, self.width(), place.top())
        asked = self._desk.asked
        planned = (
            translate("Ran", "planned {set} to set, {cut} to cut").format(set=asked.to_set, cut=asked.to_cut)
            if asked is not None
            else ""
        )
        heading(painter, place, translate("Ran", "Minutes"), planned)
        for name, words in (("setting_up", translate("Ran", "set")), ("cutting", translate("Ran", "cut"))):
            box = self.times[name].geometry()
            under = QRect(box.left(), box.bottom() + now.px(2), box.width(), now.px(26))
            ink.write(painter, now, under, words, now.plain_head, "pencil", ink.CENTRE)
