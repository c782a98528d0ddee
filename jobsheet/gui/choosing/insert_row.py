"""The row of a new step at the place where it will stand: type to find, what is likely,
and all kinds in the order of work.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.find_line import FindLine
from jobsheet.gui.choosing.kind_choice import SHORT, TALL, KindChoice, Offered
from jobsheet.gui.column.line import LineWidget
from jobsheet.gui.column.measures import columns
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
HEAD, CAPTION, FOOT = 44, 22, 10
FIELD, LIKELY = 300, 330
#: Between two groups of kinds.
ACROSS = 14


class Asked(Struct, frozen=True, kw_only=True):
    """What the row is for: number and place of the new step, what is likely there, all
    kinds by group, and how they are found.
    """

    number: int
    place: str
    likely: tuple[Offered, ...]
    groups: tuple[tuple[str, tuple[Offered, ...]], ...]
    find: Callable[[str], tuple[Offered, ...]]


class InsertRow(LineWidget):
    """It asks which kind, and says what was taken."""

    taken = Signal(object)
    left = Signal(bool)
    #: Another one is blue: it is to be in sight.
    reached = Signal(QWidget)

    def __init__(self, asked: Asked, parent: QWidget) -> None:
        super().__init__("insert", parent)
        self.asked = asked
        self.setAccessibleName(
            translate("Insert", "New step {number}, {place}").format(number=asked.number, place=asked.place)
        )
        self.line = FindLine(self)
        self.line.across = True
        self.line.setAccessibleName(translate("Insert", "Kind of the new step: type to find"))
        self.line.setPlaceholderText(translate("Insert", "type to find: tap, m6, edge, 10 slot…"))
        self.line.textEdited.connect(self._follow)
        self.line.moved.connect(self._move)
        self.line.taken.connect(self._take)
        self.line.left.connect(self.left)
        self.tall = [KindChoice(self, tall=True) for _ in range(3)]
        self.short = [[self._choice(offered) for offered in kinds] for _, kinds in asked.groups]
        for choice in self.choices():
            choice.clicked.connect(lambda _=False, one=choice: self.taken.emit(one.offered))
        self._found: tuple[Offered, ...] = ()
        self._captions: list[tuple[str, QRect]] = []
        self.chosen: KindChoice | None = None
        self._show(asked.likely)

    def _choice(self, offered: Offered) -> KindChoice:
        made = KindChoice(self, tall=False)
        made.put(offered)
        return made

    def choices(self) -> list[KindChoice]:
        """All of them, the likely or found ones first."""
        return [*self.tall, *(kind_choice for group in self.short for kind_choice in group)]

    # --- what was typed ---

    @property
    def typing(self) -> bool:
        """Whether something is typed."""
        return bool(self.line.text().strip())

    def _follow(self, text: str) -> None:
        """Show what is meant, the best of it first."""
        self._show(self.asked.find(text) if text.strip() else self.asked.likely)

    def _show(self, found: tuple[Offered, ...]) -> None:
        """The first three with their reasons; in the columns the others stay legible, in pencil."""
        self._found = found
        shown = self.tall[: len(found)]
        for choice, offered in zip(shown, found, strict=False):
            choice.put(offered)
        for choice in self.tall:
            choice.setVisible(choice in shown)
        meant = {offered.kind: offered for offered in found} if self.typing else {}
        for (_, kinds), group in zip(self.asked.groups, self.short, strict=True):
            for known, choice in zip(kinds, group, strict=True):
                texts = meant[known.kind].texts if known.kind in meant else ()
                choice.put(
                    Offered(kind=known.kind, icon=known.icon, title=known.title, texts=texts),
                    quiet=self.typing and known.kind not in meant,
                )
        self._choose(next(iter(self._ways()), None))
        self.update()

    # --- moving through it ---

    def _ways(self) -> list[KindChoice]:
        """What the arrows go through."""
        shown = self.tall[: len(self._found)]
        return [
            *shown,
            *(kind_choice for group in self.short for kind_choice in group if not kind_choice.quiet),
        ]

    def help_topic(self) -> str:
        """The page of the kind that is blue."""
        offered = self.chosen.offered if self.chosen is not None else None
        return f"kind:{offered.kind}" if offered is not None else ""

    def _choose(self, choice: KindChoice | None) -> None:
        """Make it the blue one, and say so to a screen reader."""
        self.chosen = choice
        for kind_choice in self.choices():
            kind_choice.mark(chosen=kind_choice is choice)
        offered = choice.offered if choice is not None else None
        self.line.setAccessibleDescription(offered.spoken() if offered is not None else self._nothing())
        self.line.across = not self.line.text() or choice not in self.tall
        if choice is not None and QAccessible.isActive() and self.line.hasFocus():
            QAccessible.updateAccessibility(QAccessibleEvent(choice, QAccessible.Event.Focus))

    def _move(self, across: int, down: int) -> None:
        """An arrow: down the list and the columns in their order, or across to the column beside."""
        self._go(across, down)
        if self.chosen is not None:
            self.reached.emit(self.chosen)

    def _go(self, across: int, down: int) -> None:
        ways = self._ways()
        if not ways or self.chosen not in ways:
            self._choose(ways[0] if ways else None)
            return
        if down:
            self._choose(ways[min(max(ways.index(self.chosen) + down, 0), len(ways) - 1)])
            return
        middle, here = self.chosen.geometry().center(), self.chosen.geometry()
        beside = [
            kind_choice
            for kind_choice in ways
            if (
                kind_choice.geometry().left() > here.right()
                if across > 0
                else kind_choice.geometry().right() < here.left()
            )
        ]
        if beside:
            self._choose(
                min(
                    beside,
                    key=lambda kind_choice: (
                        abs(kind_choice.geometry().center().y() - middle.y())
                        + abs(kind_choice.geometry().center().x() - middle.x()) // 2
                    ),
                )
            )

    def _take(self) -> None:
        """Enter: the blue one."""
        if self.chosen is not None:
            self.taken.emit(self.chosen.offered)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802  named by the toolkit
        """A press beside the choices leaves the keyboard where it is."""
        event.accept()

    # --- where everything stands ---

    def height_at_100(self) -> int:
        """As high as its columns need at the width of the list."""
        parent = self.parentWidget()
        return math.ceil(self.arrange(parent.width() if parent is not None else 0) / look().scale)

    def _frame(self) -> QRect:
        now = look()
        left = columns(now, self._wide).icon + now.px(8)
        return QRect(left, now.px(7), min(now.px(FIELD), self._wide - left - now.px(14)), now.px(30))

    def arrange(self, width: int) -> int:
        """Place everything for a width; the height needed."""
        now = look()
        self._wide = width
        self.line.stand(self._frame())
        narrow = now.form(width + now.px(18)) == "narrow"
        side, top = now.px(36), now.px(HEAD)
        wide = width - 2 * side if narrow else now.px(LIKELY)
        self._captions = [(self._caption(), QRect(side + now.px(8), top, wide, now.px(CAPTION)))]
        below = top + now.px(CAPTION)
        for place, choice in enumerate(self.tall):
            choice.setGeometry(side, below + place * now.px(TALL), wide, now.px(TALL - 2))
        bottom = below + len(self.tall) * now.px(TALL)
        left = side if narrow else side + wide + now.px(24)
        self._rule = 0 if narrow else left - now.px(12)
        bottom = max(bottom, self._arrange_groups(left, bottom if narrow else top, width - now.px(14)))
        return bottom + now.px(FOOT)

    def _arrange_groups(self, left: int, top: int, right: int) -> int:
        """The columns of kinds, as many beside each other as there is room for; where they end."""
        now = look()
        x, bottom = left, top
        for (title, _), group in zip(self.asked.groups, self.short, strict=True):
            wide = max(
                [kind_choice.needs() for kind_choice in group] + [now.width(title, now.caption) + now.px(12)]
            )
            if x > left and x + wide > right:
                x, top = left, bottom + now.px(4)
            self._captions.append((title, QRect(x + now.px(8), top, wide, now.px(CAPTION))))
            for place, kind_choice in enumerate(group):
                kind_choice.setGeometry(x, top + now.px(CAPTION) + place * now.px(SHORT), wide, now.px(SHORT))
            bottom = max(bottom, top + now.px(CAPTION) + len(group) * now.px(SHORT))
            x += wide + now.px(ACROSS)
        return bottom

    # --- painting ---

    def _caption(self) -> str:
        if not self.typing:
            return translate("Insert", "likely next")
        return translate("Insert", "found, {count}").format(count=len(self._found))

    def _nothing(self) -> str:
        return translate("Insert", "Nothing is called so. Type a part of a name, a thread or a size.")

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, bar, number, field, words, captions."""
        now = look()
        at, head = columns(now, self.width()), now.px(HEAD)
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("field"))
            ink.fill(painter, QRect(0, 0, now.px(4), self.height()), now.colour("bluemark"))
            number = QRect(0, 0, at.number_right, head)
            ink.write(painter, now, number, str(self.asked.number), now.head, "ink", ink.RIGHT)
            frame = self._frame()
            self.line.paint_frame(painter, frame)
            self._paint_words(painter, frame.right() + now.px(14), head)
            self._paint_captions(painter)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self.height() - 1)

    def _paint_words(self, painter: QPainter, left: int, head: int) -> None:
        """Where it will stand, and at the right what the keys do, where there is room for both."""
        now = look()
        place = QRect(left, 0, self.width() - left - now.px(14), head)
        used = ink.write(painter, now, place, self.asked.place, now.caption, "pencil")
        keys = translate("Insert", "Enter takes the blue row · arrows move · Esc leaves")
        if now.width(keys, now.caption) < place.width() - used - now.px(20):
            ink.write(painter, now, place, keys, now.caption, "pencil", ink.RIGHT)

    def _paint_captions(self, painter: QPainter) -> None:
        now = look()
        likely = (self._caption(), self._captions[0][1])
        for title, place in [likely, *self._captions[1:]]:
            ink.write(painter, now, place, title, now.caption, "pencil")
        if self._rule:
            ink.upright(painter, now.colour("rule"), self._rule, now.px(HEAD), self.height() - now.px(FOOT))
        if not self._found:
            place = self.tall[0].geometry().united(self.tall[1].geometry())
            ink.paragraph(
                painter, now, place.adjusted(now.px(8), now.px(6), 0, 0), self._nothing(), now.body, "pencil"
            )
