"""What the open job needs proved, before anything else is offered: a row a ladder, one key starts it."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.reckoning.ladder.job_needs import Need
from jobsheet.reckoning.ladder.ladder_expected import words_of
from jobsheet.reckoning.ladder.rung import Ladder

translate = QCoreApplication.translate
PAD, HEAD = 14, 30
#: So many rows have a digit.
DIGITS = 9


def steps_words(steps: tuple[int, ...]) -> str:
    """`step 60`, `steps 60, 70 and 90`."""
    numbers = [str(number) for number in sorted(set(steps))]
    if len(numbers) == 1:
        return translate("Needs", "step {number}").format(number=numbers[0])
    return translate("Needs", "steps {some} and {last}").format(
        some=", ".join(numbers[:-1]), last=numbers[-1]
    )


class NeedRow(Pressable):
    """One ladder: what it settles, how many cuts, how large; or why there is none."""

    moved = Signal(int)

    def __init__(self, number: int, need: Need, parent: QWidget) -> None:
        super().__init__(parent)
        self.need, self._number = need, number
        self.head, self.under = self._words()
        ladder = need.ladder is not None and bool(need.ladder.rungs)
        self.setEnabled(ladder)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus if ladder else QtCore.Qt.FocusPolicy.NoFocus)
        self.setCursor(
            QtCore.Qt.CursorShape.PointingHandCursor if ladder else QtCore.Qt.CursorShape.ArrowCursor
        )
        self.setAccessibleName(
            f"{number}: {self.head}. {self.under}" if ladder else f"{self.head}. {self.under}"
        )

    def _words(self) -> tuple[str, str]:
        need = self.need
        what = translate("Needs", "{process} with {cutter}").format(
            process=need.process, cutter=need.cutter_kind
        )
        steps, ladder = steps_words(need.steps), need.ladder
        if ladder is None or not ladder.rungs:
            return f"{what}, {steps}", need.why
        count = len(ladder.rungs)
        if ladder.inside:
            return self._in_itself(what, ladder)
        settle = (
            translate("Needs", "{what}: one cut settles {steps}")
            if count == 1
            else translate("Needs", "{what}: {count} cuts settle {steps}")
        ).format(what=what, count=count, steps=steps)
        first, last = ladder.rungs[0].size, ladder.rungs[-1].size
        way = {"depth": translate("Needs", " deep"), "width": translate("Needs", " wide")}.get(
            ladder.grows, ""
        )
        far = (
            f"{first}{way}"
            if count == 1
            else translate("Needs", "{first} to {last}{way}").format(first=first, last=last, way=way)
        )
        cost = words_of(ladder.expected).partition(". ")[0] if ladder.expected is not None else ""
        under = ", ".join(part for part in (ladder.cutter.text, ladder.material, far) if part)
        return settle, f"{under}. {cost}." if cost else f"{under}."

    def _in_itself(self, what: str, ladder: Ladder) -> tuple[str, str]:
        """A ladder of the layers of one step."""
        head = translate(
            "Needs", "{what}: {count} growing layers of step {number}, in the part itself"
        ).format(what=what, count=len(ladder.rungs), number=self.need.steps[0])
        far = translate("Needs", "{first} to {last} deep").format(
            first=ladder.rungs[0].size, last=max(ladder.rungs, key=lambda rung: rung.asked[0].share).size
        )
        return head, f"{ladder.cutter.text}, {ladder.material}, {far}."

    def needed(self, width: int) -> int:
        """The height for a width."""
        now = look()
        room = width - now.px(PAD + 30 + 8)
        high = ink.paragraph_height(now, self.head, now.bold, room)
        return high + ink.paragraph_height(now, self.under, now.caption, room) + now.px(14)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Up and Down go through the ladders; a digit is for all of them."""
        if event.key() in (QtCore.Qt.Key.Key_Up, QtCore.Qt.Key.Key_Down):
            self.moved.emit(1 if event.key() == QtCore.Qt.Key.Key_Down else -1)
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: object) -> None:  # noqa: N802
        """Chosen."""
        super().focusInEvent(event)  # type: ignore[arg-type]
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The digit, what it settles, how."""
        now = look()
        with QPainter(self) as painter:
            if self.hasFocus():
                painter.fillRect(self.rect(), now.colour("chosen"))
            left = now.px(PAD + 30)
            room = self.width() - left - now.px(8)
            if self.isEnabled():
                digit = QRect(now.px(PAD), now.px(4), now.px(24), now.px(22))
                painter.setPen(now.colour("edge"))
                painter.drawRect(digit.adjusted(0, 0, -1, -1))
                ink.write(painter, now, digit, str(self._number), now.bold, "ink", ink.CENTRE)
            box = QRect(left, now.px(6), room, self.height())
            tone = "ink" if self.isEnabled() else "pencil"
            box.translate(0, ink.paragraph(painter, now, box, self.head, now.bold, tone) + now.px(1))
            ink.paragraph(painter, now, box, self.under, now.caption, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
            if self.hasFocus():
                painter.setPen(now.colour("bluemark"))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))


class NeedsView(QWidget):
    """The ladders that the open job asks for."""

    chosen = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.rows: list[NeedRow] = []
        self._needs: tuple[Need, ...] = ()
        self.job = ""
        self.hide()

    def put(self, needs: tuple[Need, ...], job: str) -> None:
        """Show them; nothing where nothing is open."""
        if needs is not self._needs:
            self._needs = needs
            for row in self.rows:
                row.hide()
                row.deleteLater()
            self.rows = [NeedRow(number, need, self) for number, need in enumerate(needs, 1)]
            for row in self.rows:
                row.clicked.connect(lambda _=False, row=row: self.chosen.emit(row.need.ladder))
                row.moved.connect(lambda far, row=row: self._go(row, far))
                row.show()
        self.job = job
        self.setAccessibleName(self._head())
        self.update()

    def _head(self) -> str:
        return translate("Needs", "What {job} needs proved").format(
            job=self.job or translate("Needs", "this job")
        )

    def _go(self, row: NeedRow, far: int) -> None:
        able = [need_row for need_row in self.rows if need_row.isEnabled()]
        able[(able.index(row) + far) % len(able)].setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def focus_first(self) -> bool:
        """To the first ladder that can be begun; whether there is one."""
        able = next((row for row in self.rows if row.isEnabled()), None)
        if able is not None:
            able.setFocus(QtCore.Qt.FocusReason.TabFocusReason)
        return able is not None

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """A digit begins the ladder of that number."""
        digit = event.key() - QtCore.Qt.Key.Key_0
        if 1 <= digit <= min(DIGITS, len(self.rows)) and self.rows[digit - 1].isEnabled():
            self.rows[digit - 1].click()
            return
        super().keyPressEvent(event)

    def arrange(self, width: int) -> int:
        """Rows from the top; the height needed."""
        top = look().px(HEAD)
        for row in self.rows:
            high = row.needed(width)
            row.setGeometry(0, top, width, high)
            top += high
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The heading on the ground of what comes first."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            head = QRect(now.px(PAD), 0, self.width(), now.px(HEAD))
            wide = ink.write(painter, now, head, self._head(), now.bold)
            hint = translate("Needs", "its digit, or Enter, begins a ladder")
            rest = QRect(
                head.x() + wide + now.px(10), 0, self.width() - head.x() - wide - now.px(14), now.px(HEAD)
            )
            ink.write(painter, now, rest, hint, now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)
