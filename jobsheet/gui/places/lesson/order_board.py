"""The board of a lesson: slips left, the learner's own order right, brackets
between what stands the wrong way round.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPointF, QRect, QRectF, QSize, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.signs import draw
from jobsheet.gui.ink.tokens import SEVERITIES
from jobsheet.gui.places.lesson.order_desk import Bracket, OrderDesk
from jobsheet.lessons.slips import Slip
from jobsheet.operations.registry import kind as kind_of

translate = QCoreApplication.translate
ROW, PAD, GAP = 44, 12, 8
#: Of the width for the slips; and for the brackets beside the order [px at 100 %].
SLIPS, GUTTER = 0.36, 84
HEAD = 30


class OrderBoard(QWidget):
    """One widget with the focus: letters place, Backspace gives back, Alt + arrows move, arrows
    choose. Pressing a slip places it too.
    """

    changed = Signal()
    tried = Signal()
    again = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.desk: OrderDesk | None = None
        self.at = 0

    def put(self, desk: OrderDesk) -> None:
        """Show this exercise."""
        if desk is not self.desk:
            self.desk = desk
            self.at = desk.next_place or 0
        self._said()
        self.update()

    def _said(self) -> None:
        desk = self.desk
        if desk is None:
            return
        placed = [
            f"{at}, {desk.slips[key].letter}, {desk.slips[key].words}"
            if key
            else f"{at}, {translate('Lesson', 'empty')}"
            for at, key in enumerate(desk.places, 1)
        ]
        self.setAccessibleName(f"{translate('Lesson', 'Your order')}: {'; '.join(placed)}")
        left = "; ".join(f"{slip.letter}, {slip.words}" for slip in desk.left)
        self.setAccessibleDescription(f"{translate('Lesson', 'Slips')}: {left}")

    def sizeHint(self) -> QSize:  # noqa: N802
        """As high as its places."""
        now = look()
        count = len(self.desk.places) if self.desk is not None else 9
        return QSize(now.px(900), now.px(HEAD) + count * now.px(ROW) + now.px(PAD))

    def minimumSizeHint(self) -> QSize:  # noqa: N802
        """No place is cut."""
        return QSize(look().px(560), self.sizeHint().height())

    # --- where things stand ---

    def _split(self) -> int:
        return round(self.width() * SLIPS)

    def slip_box(self, at: int) -> QRect:
        """The box of a slip that is left, by its place among them."""
        now = look()
        high = now.px(ROW)
        return QRect(
            now.px(PAD), now.px(HEAD) + at * high, self._split() - 2 * now.px(PAD), high - now.px(GAP)
        )

    def place_box(self, at: int) -> QRect:
        """The box of a place."""
        now = look()
        high, left = now.px(ROW), self._split() + now.px(PAD)
        return QRect(left, now.px(HEAD) + at * high, self.width() - left - now.px(GUTTER), high - now.px(GAP))

    # --- hands ---

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Letters, Backspace, arrows; with Ctrl Enter tries and L looks again."""
        desk, key = self.desk, event.key()
        keys, held = QtCore.Qt.Key, event.modifiers()
        if desk is None:
            return
        control = held & QtCore.Qt.KeyboardModifier.ControlModifier
        if control and key in (keys.Key_Return, keys.Key_Enter):
            self.tried.emit()
        elif control and key == keys.Key_L:
            self.again.emit()
        elif key in (keys.Key_Up, keys.Key_Down):
            by = -1 if key == keys.Key_Up else 1
            if held & QtCore.Qt.KeyboardModifier.AltModifier:
                self.at = desk.move(self.at, by)
                self._after()
            else:
                self.at = max(0, min(len(desk.places) - 1, self.at + by))
                self.update()
        elif key in (keys.Key_Backspace, keys.Key_Delete):
            if desk.give_back(self.at if desk.places[self.at] else self.at - 1):
                self.at = desk.next_place if desk.next_place is not None else self.at
                self._after()
        elif not control and event.text().isalpha():
            placed = desk.put(event.text(), self.at)
            if placed is not None:
                self.at = desk.next_place if desk.next_place is not None else placed
                self._after()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A slip goes to the chosen place or the next; a place is chosen."""
        desk, at = self.desk, event.position().toPoint()
        if desk is None:
            return
        self.setFocus()
        for place, slip in enumerate(desk.left):
            if self.slip_box(place).contains(at):
                if desk.put(slip.letter, self.at) is not None:
                    self.at = desk.next_place if desk.next_place is not None else self.at
                    self._after()
                return
        for place in range(len(desk.places)):
            if self.place_box(place).contains(at):
                self.at = place
                self.update()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Twice on a place gives its slip back."""
        desk = self.desk
        for place in range(len(desk.places) if desk is not None else 0):
            if (
                desk is not None
                and self.place_box(place).contains(event.position().toPoint())
                and desk.places[place]
            ):
                desk.give_back(place)
                self._after()

    def _after(self) -> None:
        self._said()
        self.update()
        self.changed.emit()

    # --- painting ---

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Slips, places, brackets."""
        now, desk = look(), self.desk
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            if desk is None:
                return
            ink.upright(painter, now.colour("ink"), self._split(), 0, self.height())
            head = now.px(HEAD)
            words = translate("Lesson", "Slips, {count} left").format(count=len(desk.left))
            ink.write(painter, now, QRect(now.px(PAD), 0, self._split(), head), words, now.head)
            right = QRect(self._split() + now.px(PAD), 0, self.width(), head)
            ink.write(painter, now, right, translate("Lesson", "Your order"), now.head)
            self._keys(painter)
            for at, slip in enumerate(desk.left):
                box = self.slip_box(at)
                painter.fillRect(box, now.colour("field"))
                ink.frame(painter, box, now.colour("edge"))
                self._slip(painter, box, slip)
            for at, key in enumerate(desk.places):
                self._place(painter, at, desk.slips[key] if key else None, fixed=key in desk.fixed)
            for depth, bracket in enumerate(desk.brackets):
                self._bracket(painter, bracket, depth)

    def _keys(self, painter: QPainter) -> None:
        """What the keys do, at the foot of the slips."""
        now = look()
        lines = (
            translate("Lesson", "a letter puts its slip into the place"),
            translate("Lesson", "Backspace gives it back"),
            translate("Lesson", "Alt + Up, Alt + Down move it"),
            translate("Lesson", "Ctrl + Enter tries, Ctrl + L looks again"),
        )
        line = now.px(18)
        top = self.height() - now.px(PAD) - line * len(lines)
        if self.slip_box(len(self.desk.left) if self.desk is not None else 0).top() < top:
            for at, words in enumerate(lines):
                box = QRect(now.px(PAD), top + at * line, self._split() - 2 * now.px(PAD), line)
                ink.write(painter, now, box, words, now.caption, "pencil")

    def _place(self, painter: QPainter, at: int, slip: Slip | None, *, fixed: bool) -> None:
        now, box = look(), self.place_box(at)
        aside = now.px(28)
        number = QRect(box.left(), box.top(), aside, box.height())
        ink.write(painter, now, number, f"{at + 1}", now.body, "pencil")
        inside = box.adjusted(aside, 0, 0, 0)
        chosen = at == self.at and self.hasFocus()
        if slip is None:
            pen = QPen(now.colour("blue" if at == self.at else "edge"), now.px(1))
            pen.setStyle(QtCore.Qt.PenStyle.DashLine)
            painter.setPen(pen)
            painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
            painter.drawRect(inside)
            if at == self.at:
                words = translate("Lesson", "press a slip's letter")
                ink.write(painter, now, inside.adjusted(now.px(10), 0, 0, 0), words, now.label, "pencil")
            return
        painter.fillRect(inside, now.colour("chosen" if chosen else "field"))
        ink.frame(painter, inside, now.colour("blue" if chosen else "rule"))
        self._slip(painter, inside, slip, tone="pencil" if fixed else "ink")

    def _slip(self, painter: QPainter, box: QRect, slip: Slip, tone: str = "ink") -> None:
        """Letter in a ring, icon, words."""
        now = look()
        ring = now.px(24)
        circle = QRectF(box.left() + now.px(8), box.center().y() - ring / 2 + 0.5, ring, ring)
        painter.setPen(QPen(now.colour(tone), 1.2))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.drawEllipse(circle)
        ink.write(
            painter,
            now,
            circle.toRect(),
            slip.letter,
            now.bold,
            tone,
            int(QtCore.Qt.AlignmentFlag.AlignCenter),
        )
        side = now.px(24)
        left = box.left() + now.px(42)
        draw(painter, f"op-{kind_of(slip.kind).icon}", now.colour(tone).name(), left, box.center().y(), side)
        words = QRect(
            left + side + now.px(8), box.top(), box.right() - left - side - now.px(12), box.height()
        )
        ink.write(painter, now, words, slip.words, now.body, tone)

    def _bracket(self, painter: QPainter, bracket: Bracket, depth: int) -> None:
        """From the row that stands too early to the one that should come before it, with a head at that."""
        now = look()
        _, word, mark = SEVERITIES[bracket.pair.severity]
        colour: QColor = now.colour(mark)
        upper, lower = self.place_box(bracket.upper), self.place_box(bracket.lower)
        start = upper.right() + now.px(4)
        edge = start + now.px(10) + depth * now.px(14)
        painter.setPen(QPen(colour, now.px(2.2)))
        top, bottom = upper.center().y(), lower.center().y()
        painter.drawPolyline(
            [QPointF(start, top), QPointF(edge, top), QPointF(edge, bottom), QPointF(start, bottom)]
        )
        tip, size = QPointF(start, top), now.px(5)
        painter.setBrush(colour)
        painter.drawPolygon(QPolygonF([tip, tip + QPointF(size, -size), tip + QPointF(size, size)]))
        words = QRect(
            edge + now.px(4), (top + bottom) // 2 - now.px(9), self.width() - edge - now.px(6), now.px(18)
        )
        ink.write(painter, now, words, bracket.pair.severity, now.caption_bold, word)
