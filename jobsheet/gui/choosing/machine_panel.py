"""The panel of machines: moving through it only looks; at the right what would no longer fit,
the worst first; a button decides.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.panel import FOOT, HEAD, Panel
from jobsheet.gui.choosing.row_list import RowList
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
WIDE, LEFT, MOST, ROW = 1010, 410, 5, 28
#: A machine is looked at when no arrow has come for so long [ms]: no key waits for it.
PAUSE = 40
_KEYS = QtCore.Qt.Key
_STEPS: dict[int, int] = {_KEYS.Key_Up: -1, _KEYS.Key_Down: 1, _KEYS.Key_Home: -1000, _KEYS.Key_End: 1000}


class Misfit(Struct, frozen=True, kw_only=True):
    """One step that does not fit: its number, icon and title, what was planned, and what gives out."""

    number: int
    icon: str
    title: str
    planned: str
    why: str

    def spoken(self) -> str:
        """As a screen reader says it."""
        return f"{self.number} {self.title}, {self.planned}: {self.why}"


class Looked(Struct, frozen=True, kw_only=True):
    """What comes of the job on one machine: words for its row and for the right
    side, and the steps that do not fit.
    """

    title: str
    row: str
    sign: tuple[str, str]
    head: str
    more: str = ""
    misfits: tuple[Misfit, ...] = ()
    #: Why the job cannot be planned for it just now; empty where it can.
    why_not: str = ""


class MachinePanel(Panel):
    """The list at the left, what comes of the blue one at the right."""

    #: It is decided for that one.
    taken = Signal(str)
    new_wanted = Signal()
    card_wanted = Signal(str)

    def __init__(
        self,
        ground: QWidget,
        hang: Callable[[], tuple[int, int]],
        machines: tuple[Listed, ...],
        planned: str,
        look_at: Callable[[str], Looked],
    ) -> None:
        super().__init__(ground, hang, translate("Choosing", "Machine"))
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self._look_at = look_at
        self._known: dict[str, Looked] = {}
        self.list = RowList(self, translate("Choosing", "Machines"), split=0.5)
        self.plan = Button("", self, Manner.FILLED)
        self.new = Button(translate("Choosing", "New machine…"), self, Manner.LINK)
        self.card = Button("", self, Manner.LINK)
        self.list.looked.connect(self._looked)
        self.list.taken.connect(lambda one: self._pressed(one.key))
        self.plan.clicked.connect(self._take)
        self.new.clicked.connect(lambda: self._go(self.new_wanted))
        self.card.clicked.connect(self._open_card)
        self._next = QTimer(self)
        self._next.setInterval(PAUSE)
        self._next.timeout.connect(self._look_further)
        self.list.put(machines, -1)
        self.list.choose(planned)
        self._next.start()

    def help_topic(self) -> str:
        """The page of the field that is filled."""
        return "field:job/machine"

    @property
    def chosen(self) -> str:
        """The machine that is looked at."""
        return self.list.chosen.key if self.list.chosen is not None else ""

    @property
    def seen(self) -> Looked | None:
        """What comes of it, once it is known."""
        return self._known.get(self.chosen)

    # --- looking ---

    def _looked(self, listed: Listed | None) -> None:
        """Another one is blue."""
        if listed is None:
            return
        self._name_buttons()
        self._next.start()
        self.update()

    def _look_further(self) -> None:
        """The blue one first, then the others, one at a time, so that no key waits."""
        wanted = [self.chosen, *(listed.key for listed in self.list.things)]
        key = next((key for key in wanted if key and key not in self._known), "")
        if not key:
            self._next.stop()
            return
        seen = self._known[key] = self._look_at(key)
        listed = next(listed for listed in self.list.things if listed.key == key)
        self.list.change(
            key, Listed(key=key, title=seen.title, under=listed.under, fact=seen.row, sign=seen.sign)
        )
        if key == self.chosen:
            self._name_buttons()
            self.update()

    def _name_buttons(self) -> None:
        listed, seen = self.list.chosen, self.seen
        title = listed.title if listed is not None else ""
        self.plan.setText(translate("Choosing", "Plan it for {machine}").format(machine=title))
        self.plan.setAccessibleName(self.plan.text())
        self.plan.why_not(seen.why_not if seen is not None else "")
        self.card.setText(translate("Choosing", "Open the card of {machine}").format(machine=title))
        self.card.setAccessibleName(self.card.text())
        self.setAccessibleDescription(self._spoken())
        self.arrange()

    def _spoken(self) -> str:
        """What a screen reader says of the blue one."""
        listed, seen = self.list.chosen, self.seen
        parts = [listed.title if listed is not None else ""]
        if seen is not None:
            parts += [seen.head, seen.more, *(misfit.spoken() for misfit in seen.misfits)]
        return ". ".join(part for part in parts if part)

    # --- deciding ---

    def _pressed(self, key: str) -> None:
        """A press on a row looks at it, as the arrows do."""
        self.list.choose(key)
        self.setFocus()

    def _take(self) -> None:
        key = self.chosen
        if key and self.plan.isEnabled():
            self.leave(back=True)
            self.taken.emit(key)

    def _go(self, signal: QtCore.SignalInstance) -> None:
        self.leave(back=False)
        signal.emit()

    def _open_card(self) -> None:
        key = self.chosen
        self.leave(back=False)
        self.card_wanted.emit(key)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802  named by the toolkit
        """Arrows look, Enter decides, a letter jumps to a name, Esc leaves."""
        key = event.key()
        if key in _STEPS:
            self.list.step(_STEPS[key])
        elif key in (_KEYS.Key_Return, _KEYS.Key_Enter):
            self._take()
        elif event.text().isalnum():
            self.list.jump(event.text())
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The ring comes."""
        super().focusInEvent(event)
        self.update()

    # --- where everything stands ---

    def size_wanted(self) -> tuple[int, int]:
        """As high as five machines with what is offered under them."""
        now = look()
        return now.px(WIDE), now.px(HEAD + FOOT + 40) + 5 * now.px(47)

    def _left(self) -> int:
        now = look()
        return min(now.px(LEFT), self.width() // 2)

    def arrange(self) -> None:
        """List and links at the left, the button under the steps at the right."""
        now, left = look(), self._left()
        head, foot = now.px(HEAD), now.px(FOOT)
        links = self.new.sizeHint().height() * (1 if self._links_fit(left) else 2)
        room = self.height() - head - links - foot
        high = min(self.list.needs(MOST), room)
        self.list.setGeometry(2, head, left - 3, high)
        top = head + high + now.px(3)
        hint = self.new.sizeHint()
        self.new.setGeometry(now.px(10), top, hint.width(), hint.height())
        wide = min(self.card.sizeHint().width(), left - now.px(16))
        below = top if self._links_fit(left) else top + hint.height()
        x = left - wide - now.px(8) if self._links_fit(left) else now.px(10)
        self.card.setGeometry(x, below, wide, hint.height())
        hint = self.plan.sizeHint()
        wide = min(hint.width(), self.width() - left - now.px(24))
        self.plan.setGeometry(
            left + now.px(12), self.height() - foot + (foot - hint.height()) // 2, wide, hint.height()
        )

    def _links_fit(self, left: int) -> bool:
        return self.new.sizeHint().width() + self.card.sizeHint().width() < left - look().px(24)

    def paint(self, painter: QPainter) -> None:
        """Title, the line between, what comes of it."""
        now, left = look(), self._left()
        used = ink.write(painter, now, QRect(now.px(14), now.px(6), left, now.px(38)), self.title, now.head)
        words = translate("Choosing", "looked at here, not yet changed")
        place = QRect(now.px(28) + used, now.px(6), left - used - now.px(32), now.px(38))
        ink.write(painter, now, place, words, now.caption, "pencil")
        ink.horizontal(painter, now.colour("rule"), 0, left, now.px(HEAD) - 1)
        ink.upright(painter, now.colour("ink"), left, 0, self.height())
        keys = translate("Choosing", "Enter decides · Esc leaves · a letter jumps")
        foot = QRect(now.px(14), self.height() - now.px(34), left - now.px(20), now.px(24))
        ink.write(painter, now, foot, keys, now.caption, "pencil")
        self._paint_seen(
            painter, QRect(left + now.px(16), 0, self.width() - left - now.px(30), self.height())
        )

    def _paint_seen(self, painter: QPainter, place: QRect) -> None:
        """Head, steps, how many more."""
        now, seen = look(), self.seen
        if seen is None:
            return
        line = QRect(place.left(), now.px(8), place.width(), now.px(24))
        ink.write(painter, now, line, seen.head, now.head)
        line = QRect(place.left(), now.px(31), place.width(), now.px(18))
        ink.write(painter, now, line, seen.more, now.caption, "pencil")
        top, foot = now.px(56), self.height() - now.px(FOOT + 22)
        shown = 0
        for misfit in seen.misfits:
            if top + now.px(ROW) > foot:
                break
            self._paint_misfit(painter, QRect(place.left(), top, place.width(), now.px(ROW)), misfit)
            top += now.px(ROW)
            shown += 1
        if left_out := len(seen.misfits) - shown:
            words = translate("Choosing", "{count} more do not fit").format(count=left_out)
            line = QRect(place.left(), top + now.px(2), place.width(), now.px(20))
            ink.write(painter, now, line, words, now.caption, "pencil")

    @staticmethod
    def _paint_misfit(painter: QPainter, place: QRect, misfit: Misfit) -> None:
        now, high = look(), place.height()
        number = QRect(place.left(), place.top(), now.px(30), high)
        ink.write(painter, now, number, str(misfit.number), now.body, "pencil", ink.RIGHT)
        middle = place.top() + high / 2
        signs.draw(painter, misfit.icon, now.tokens.ink, place.left() + now.px(36), middle, now.px(20))
        left = place.left() + now.px(64)
        room = place.right() - left
        tight = room < now.px(520)
        why_wide = room * (52 if tight else 46) // 100
        planned = 0 if tight else min(now.px(72), room // 5)
        why = QRect(place.right() - why_wide, place.top(), why_wide, high)
        title = QRect(left, place.top(), why.left() - left - planned - now.px(12), high)
        ink.write(painter, now, title, misfit.title, now.body)
        if planned:
            set_at = QRect(title.right() + now.px(6), place.top(), planned, high)
            ink.write(painter, now, set_at, misfit.planned, now.body, "pencil")
        signs.draw(painter, "verdict-beyond", now.tokens.vermmark, why.left(), middle, now.px(16))
        ink.write(painter, now, why.adjusted(now.px(22), 0, 0, 0), misfit.why, now.body)
        ink.horizontal(painter, now.colour("rule"), place.left(), place.right(), place.bottom())
