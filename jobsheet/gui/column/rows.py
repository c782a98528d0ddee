"""The closed rows of the sheet and the headings of its set-ups: one light widget each, painted by itself."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.measures import HEADING, ROW, Columns, columns
from jobsheet.gui.column.views import HeadingView, RowView
from jobsheet.gui.ink import ink, signs, waking
from jobsheet.gui.ink.look import Look, look
from jobsheet.gui.ink.spoken import severity_word
from jobsheet.gui.ink.tokens import SEVERITIES, VERDICTS

if TYPE_CHECKING:
    from PySide6.QtGui import QFocusEvent, QMouseEvent, QPaintEvent

translate = QCoreApplication.translate


class SheetLine(QWidget):
    """What rows and headings share: they can be chosen, opened, and have the column's one tab stop."""

    chosen = Signal(str)
    opened = Signal(str)

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = key
        self.is_chosen = False
        waking.when_awake(self._reach)

    def _reach(self) -> None:
        """The chosen line is the column's one tab stop; the others take a click."""
        policy = QtCore.Qt.FocusPolicy
        self.setFocusPolicy(policy.StrongFocus if self.is_chosen else policy.ClickFocus)

    def set_chosen(self, *, chosen: bool) -> None:
        """Take or lose the blue bar, and with it the tab stop of the column."""
        if chosen != self.is_chosen:
            self.is_chosen = chosen
            waking.when_awake(self._reach)
            self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The row under the keyboard is the chosen one."""
        super().focusInEvent(event)
        self.chosen.emit(self.key)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The ring goes; the bar and the tint stay."""
        super().focusOutEvent(event)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click opens."""
        if event.button() == QtCore.Qt.MouseButton.LeftButton and self.rect().contains(
            event.position().toPoint()
        ):
            self.opened.emit(self.key)

    def paint_ground(self, painter: QPainter, now: Look, tone: str = "paper") -> None:
        """Paper, tint and bar of the chosen one, and the ring when it has the focus."""
        ink.fill(painter, self.rect(), now.colour("chosen" if self.is_chosen else tone))
        if self.is_chosen:
            ink.fill(painter, QRect(0, 0, now.px(4), self.height()), now.colour("bluemark"))

    def paint_ring(self, painter: QPainter, now: Look) -> None:
        """The ring of focus, over everything."""
        if self.hasFocus() and waking.awake():
            painter.setPen(QPen(now.colour("bluemark"), now.px(3)))
            painter.drawRect(self.rect().adjusted(1, 1, -2, -2))


class RowLine(SheetLine):
    """One closed operation."""

    dragged = Signal(str, int)
    dropped = Signal(str, int)

    def __init__(self, view: RowView, parent: QWidget) -> None:
        super().__init__(view.key, parent)
        self.view: RowView | None = None
        self._pressed_at: int | None = None
        self._dragging = False
        self.put(view)

    def put(self, view: RowView) -> None:
        """Show a row."""
        if view != self.view:
            self.view = view
            self.setAccessibleName(view.spoken())
            self.setToolTip(view.spoken())
            self.update()

    def height_at_100(self, _form: str) -> int:
        """The height of a closed row."""
        return ROW

    def on_number(self, x: float) -> bool:
        """Whether a place is on the number, by which a row is taken hold of."""
        return x < columns(look(), self.width()).icon

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """On the number: the beginning of a drag, or of a click."""
        super().mousePressEvent(event)
        event.accept()
        if event.button() == QtCore.Qt.MouseButton.LeftButton and self.on_number(event.position().x()):
            self._pressed_at = round(event.position().y())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Drag once the hand has really moved."""
        if self._pressed_at is None:
            return
        moved = round(event.position().y()) - self._pressed_at
        if self._dragging or abs(moved) > look().px(6):
            self._dragging = True
            self.setCursor(QtCore.Qt.CursorShape.ClosedHandCursor)
            self.dragged.emit(self.key, self.mapToParent(event.position().toPoint()).y())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Drop, or open on a click."""
        dragging, self._dragging, self._pressed_at = self._dragging, False, None
        self.unsetCursor()
        if dragging:
            self.dropped.emit(self.key, self.mapToParent(event.position().toPoint()).y())
            return
        super().mouseReleaseEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Number, icon, what, cutter; in the margin speed, pace, depth, verdict."""
        now, view = look(), self.view
        if view is None:
            return
        at = columns(now, self.width())
        high = self.height()
        middle = (high - 1) / 2
        with QPainter(self) as painter:
            self.paint_ground(painter, now)
            self._paint_left(painter, now, view, at, high, middle)
            if at.form == "narrow":
                self._paint_share(painter, now, view, at, high, middle)
            else:
                ink.upright(painter, now.colour("ink"), at.margin, 0, high)
                self._paint_margin(painter, now, view, at, high, middle)
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), high - 1)
            self.paint_ring(painter, now)

    def _paint_left(
        self, painter: QPainter, now: Look, view: RowView, at: Columns, high: int, middle: float
    ) -> None:
        """Left of the line: what to do."""
        if view.severity:
            icon, _, mark = SEVERITIES[view.severity]
            signs.draw(painter, icon, getattr(now.tokens, mark), at.sign, middle, now.px(16))
        number = QRect(0, 0, at.number_right, high)
        ink.write(painter, now, number, str(view.number), now.body, "pencil", ink.RIGHT)
        signs.draw(painter, view.icon, now.tokens.ink, at.icon, middle, now.px(22))
        end = at.cutter - now.px(12) if at.cutter else at.margin - now.px(10)
        font = now.bold if self.is_chosen else now.body
        title = QRect(at.text, 0, end - at.text, high)
        if now.width(view.title, font) > title.width():
            self._paint_long(painter, now, title, view.title)
            used = title.width()
        else:
            used = ink.write(painter, now, title, view.title, font)
        remark = view.remark and translate("Rows", "{severity}: {remark}").format(
            severity=severity_word(view.severity), remark=view.remark
        )
        if remark and title.width() - used > now.px(60):
            place = title.adjusted(used + now.px(16), 0, 0, 0)
            ink.write(painter, now, place, remark, now.bold, SEVERITIES[view.severity][1])
        if at.cutter:
            place = QRect(at.cutter, 0, at.margin - at.cutter - now.px(8), high)
            ink.write(painter, now, place, view.cutter, now.body, "pencil")

    @staticmethod
    def _paint_long(painter: QPainter, now: Look, place: QRect, text: str) -> None:
        """A long title in two smaller lines; what is longer still is in the tooltip."""
        cut = text.rfind(" ", 0, max(1, round(len(text) * 0.55)) + 1)
        first, second = (text[:cut], text[cut + 1 :]) if cut > 0 else (text, "")
        half = place.height() // 2
        upper = QRect(place.left(), place.top() + 1, place.width(), half)
        lower = QRect(place.left(), place.top() + half - 1, place.width(), half)
        ink.write(painter, now, upper, first, now.caption)
        ink.write(painter, now, lower, second, now.caption)

    def _paint_margin(
        self, painter: QPainter, now: Look, view: RowView, at: Columns, high: int, middle: float
    ) -> None:
        """Right of the line: what the machine is asked for."""
        token = "pencil" if view.stale else "ink"
        left = at.margin
        for right, text, font in (
            (at.rpm_right, view.spindle, now.bold),
            (at.pace_right, view.pace, now.body),
            (at.depth_right, view.depth, now.body),
        ):
            place = QRect(left + now.px(4), 0, right - left - now.px(4), high)
            used = ink.write(painter, now, place, text, font, token, ink.RIGHT)
            if view.stale and used:
                ink.dotted_under(painter, now, right - used, right, high - now.px(6))
            left = right
        self._paint_share(painter, now, view, at, high, middle)

    def _paint_share(
        self, painter: QPainter, now: Look, view: RowView, at: Columns, high: int, middle: float
    ) -> None:
        """The verdict's mark with the share and what governs."""
        place = QRect(at.share, 0, self.width() - at.share - now.px(6), high)
        if view.problem:
            place.setLeft(at.mark)
            ink.write(painter, now, place, translate("Rows", "– cannot be worked out"), now.body, "verm")
            return
        known = VERDICTS.get(view.verdict)
        if known:
            signs.draw(painter, known[0], getattr(now.tokens, known[2]), at.mark, middle, now.px(16))
        ink.write(painter, now, place, view.share, now.body, "pencil" if view.stale else "ink")


class HeadingLine(SheetLine):
    """The heading of a set-up: number, face up, holding; in the margin its zero and minutes."""

    def __init__(self, view: HeadingView, parent: QWidget) -> None:
        super().__init__(view.key, parent)
        self.view: HeadingView | None = None
        self.put(view)

    def put(self, view: HeadingView) -> None:
        """Show a heading."""
        if view != self.view:
            self.view = view
            self.setAccessibleName(view.spoken())
            self.update()

    def height_at_100(self, form: str) -> int:
        """The height of a heading; where it is narrow its holding and zero take a line of their own."""
        return HEADING + 20 if form == "narrow" else HEADING

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """One line of text, and the line of the margin."""
        now, view = look(), self.view
        if view is None:
            return
        at = columns(now, self.width())
        high = self.height()
        with QPainter(self) as painter:
            self.paint_ground(painter, now)
            if at.form == "narrow":
                self._paint_narrow(painter, now, view, high)
            else:
                place = QRect(now.px(14), 0, at.margin - now.px(24), high)
                used = ink.write(painter, now, place, view.title, now.head)
                place.setLeft(place.left() + used + now.px(16))
                ink.write(painter, now, place, view.holding, now.body, "pencil")
                ink.upright(painter, now.colour("ink"), at.margin, 0, high)
                zero = QRect(at.margin + now.px(17), 0, self.width() - at.margin - now.px(26), high)
                ink.write(painter, now, zero, view.zero, now.body, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), high - 1)
            self.paint_ring(painter, now)

    def _paint_narrow(self, painter: QPainter, now: Look, view: HeadingView, high: int) -> None:
        """Two lines: the title, and under it holding and zero."""
        place = QRect(now.px(14), now.px(4), self.width() - now.px(28), now.px(28))
        ink.write(painter, now, place, view.title, now.head)
        place = QRect(now.px(14), now.px(30), self.width() - now.px(28), high - now.px(36))
        zero = ink.write(painter, now, place, view.zero, now.body, "pencil", ink.RIGHT)
        place.setRight(place.right() - zero - now.px(16))
        ink.write(painter, now, place, view.holding, now.body, "pencil")


class HeadsLine(QWidget):
    """The heads of the columns, above all rows; they do not scroll."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions in pencil and one ink line under them."""
        now = look()
        at = columns(now, self.width())
        high = self.height()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            font, pencil = now.caption, "pencil"
            step = QRect(0, 0, at.number_right, high - 2)
            ink.write(painter, now, step, translate("Rows", "step"), font, pencil, ink.RIGHT)
            ink.write(
                painter, now, QRect(at.text, 0, now.px(80), high - 2), translate("Rows", "do"), font, pencil
            )
            if at.cutter:
                place = QRect(at.cutter, 0, at.margin - at.cutter, high - 2)
                ink.write(painter, now, place, translate("Rows", "cutter and place"), font, pencil)
            if at.form != "narrow":
                ink.upright(painter, now.colour("ink"), at.margin, 0, high)
                wide = at.form == "wide"
                rpm = translate("Rows", "spindle rpm") if wide else translate("Rows", "rpm")
                for right, text in (
                    (at.rpm_right, rpm),
                    (at.pace_right, translate("Rows", "pace")),
                    (at.depth_right, translate("Rows", "depth")),
                ):
                    place = QRect(right - now.px(96), 0, now.px(96), high - 2)
                    ink.write(painter, now, place, text, font, pencil, ink.RIGHT)
                share = (
                    translate("Rows", "share of capacity, and what governs")
                    if wide
                    else translate("Rows", "share, and what governs")
                )
            else:
                share = translate("Rows", "share")
            place = QRect(at.mark, 0, self.width() - at.mark, high - 2)
            ink.write(painter, now, place, share, font, pencil)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), high - 2, 2)
