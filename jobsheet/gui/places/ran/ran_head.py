"""The head of the bench entry: job and set-up, revision, machine, when it was cut and by
whom; the ways to the other set-ups.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.ran.big_button import GAP, HIGH, BigButton, BigField
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.reckoning.run_words import day_words

translate = QCoreApplication.translate
#: A line of the head: caption over value, or a field.
LINE, CAPTION, SIDE = 86, 22, 20


class RanHead(QWidget):
    """Facts as on a drawing, two fields, and buttons."""

    day_typed = Signal(str)
    day_moved = Signal(int)
    role_typed = Signal(str)
    set_up_wanted = Signal(str)
    close_wanted = Signal()

    def __init__(self, desk: RanDesk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self.day = BigField(translate("Ran", "Cut on"), self)
        self.day.editingFinished.connect(self._day)
        self.day.installEventFilter(self)
        self.earlier = self._button("–", translate("Ran", "a day earlier"))
        self.earlier.clicked.connect(lambda: self.day_moved.emit(-1))
        self.later = self._button("+", translate("Ran", "a day later"))
        self.later.clicked.connect(lambda: self.day_moved.emit(1))
        self.role = BigField(translate("Ran", "Cut by, as a role"), self)
        self.role.setPlaceholderText(translate("Ran", "a role"))
        self.role.textEdited.connect(self.role_typed)
        self.before = self._button("", "")
        self.before.clicked.connect(lambda: self._go(-1))
        self.after = self._button("", "")
        self.after.clicked.connect(lambda: self._go(1))
        self.close_it = self._button(translate("Ran", "Close"), translate("Ran", "Back to the job"))
        self.close_it.clicked.connect(self.close_wanted)
        self.earlier.number = self.later.number = True
        self._cells: list[tuple[QRect, str, str, bool]] = []

    def _button(self, text: str, name: str) -> BigButton:
        button = BigButton(text, self)
        button.setAccessibleName(name or text)
        button.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        return button

    def _day(self) -> None:
        if self.day.text() != day_words(self._desk.day, year=True):
            self.day_typed.emit(self.day.text())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Up and Down in the day count days."""
        if watched is self.day and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            keys = QtCore.Qt.Key
            if event.key() in (keys.Key_Up, keys.Key_Down):
                self.day_moved.emit(1 if event.key() == keys.Key_Up else -1)
                return True
        return super().eventFilter(watched, event)

    # --- set-ups ---

    def _beside(self, by: int) -> tuple[str, int] | None:
        """Key and number of the set-up before or after this one."""
        plan, asked = self._desk.plan, self._desk.asked
        if plan is None or asked is None:
            return None
        keys = [set_up.key for set_up in plan.job.set_ups]
        at = keys.index(asked.set_up.key) + by
        return (keys[at], plan.job.set_ups[at].number) if 0 <= at < len(keys) else None

    def _go(self, by: int) -> None:
        found = self._beside(by)
        if found is not None:
            self.set_up_wanted.emit(found[0])

    # --- showing ---

    def put(self) -> None:
        """Show which set-up, which day, who."""
        for button, by in ((self.before, -1), (self.after, 1)):
            found = self._beside(by)
            button.setVisible(found is not None)
            if found is not None:
                button.say(translate("Ran", "Set-up {number}").format(number=found[1]))
        words = day_words(self._desk.day, year=True)
        if self.day.text() != words:
            self.day.setText(words)
        self.role.put(self._desk.role)
        self.update()

    def _facts(self) -> list[tuple[str, str]]:
        """Captions and values that cannot be typed here."""
        plan, asked = self._desk.plan, self._desk.asked
        if plan is None or asked is None:
            return [(translate("Ran", "What happened"), translate("Ran", "no file yet"))]
        part = plan.job.part.number or plan.path.stem
        words = translate("Ran", "{part}, set-up {number} of {count}")
        title = words.format(part=part, number=asked.set_up.number, count=len(plan.job.set_ups))
        revision = str(plan.revision) if plan.revision else translate("Ran", "none")
        return [
            (translate("Ran", "What happened"), title),
            (translate("Ran", "Plan revision"), revision),
            (translate("Ran", "Machine"), self._desk.machine),
        ]

    def arrange(self, width: int) -> int:
        """Cells, fields and buttons from the left, in as many lines as they need; the height needed."""
        now = look()
        line, side = now.px(LINE), now.px(SIDE)
        left, top = 0, 0
        self._cells = []
        for at, (caption, value) in enumerate(self._facts()):
            font = now.title if not at else now.large
            wide = max(now.width(value, font), now.width(caption, now.plain_head)) + 2 * side
            wide = min(wide, width)
            if left + wide > width:
                left, top = 0, top + line
            self._cells.append((QRect(left, top, wide, line), caption, value, not at))
            left += wide
        left, top = self._place_fields(left, top, width)
        shown = [
            big_button for big_button in (self.before, self.after, self.close_it) if not big_button.isHidden()
        ]
        wide = sum(big_button.sizeHint().width() + now.px(GAP) for big_button in shown) + side // 2
        if left + wide > width:
            left, top = 0, top + line
        left = width - wide
        for button in shown:
            hint = button.sizeHint()
            button.setGeometry(left, top + (line - hint.height()) // 2, hint.width(), hint.height())
            left += hint.width() + now.px(GAP)
        return top + line

    def _place_fields(self, left: int, top: int, width: int) -> tuple[int, int]:
        """The day with its two buttons, then the role."""
        now = look()
        gap, side, high, line = now.px(GAP), now.px(SIDE) // 2, now.px(HIGH), now.px(LINE)
        narrow = now.px(46)
        for field, caption, wide, before, after in (
            (self.day, translate("Ran", "Cut on"), now.px(158), self.earlier, self.later),
            (self.role, translate("Ran", "Cut by"), now.px(150), None, None),
        ):
            whole = wide + 2 * side + (2 * (narrow + gap) if before is not None else 0)
            if left + whole > width:
                left, top = 0, top + line
            at = left + side
            self._cells.append((QRect(left + side - now.px(SIDE), top, whole, line), caption, "", False))
            below = top + line - high - now.px(5)
            if before is not None:
                before.setGeometry(at, below, narrow, high)
                at += narrow + gap
            field.setGeometry(at, below, wide, high)
            if after is not None:
                after.setGeometry(at + wide + gap, below, narrow, high)
            left += whole
        return left, top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Caption over value, a hairline at the right of each; ink under all of them."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            for place, caption, value, main in self._cells:
                left = place.left() + now.px(SIDE)
                ink.write(
                    painter,
                    now,
                    QRect(left, place.top() + now.px(3), place.width(), now.px(CAPTION)),
                    caption,
                    now.plain_head,
                    "pencil",
                )
                inside = QRect(
                    left, place.top() + now.px(CAPTION), place.width() - now.px(SIDE), now.px(LINE - CAPTION)
                )
                ink.write(painter, now, inside, value, now.title if main else now.large)
                if value:
                    ink.upright(painter, now.colour("rule"), place.right(), place.top(), place.bottom())
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - now.px(2), now.px(2))
