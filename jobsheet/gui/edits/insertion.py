"""Putting in a step: a row at the place where it will stand asks which kind; what
is taken is added there and opened.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.edit.numbering import numbers_for
from jobsheet.edit.step_commands import AddOperation
from jobsheet.errors import JobsheetError
from jobsheet.gui.choosing.insert_row import Asked, InsertRow
from jobsheet.gui.choosing.kind_choice import Offered
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.model.job import SetUp
from jobsheet.model.own_tools import Cabinet
from jobsheet.operations import registry
from jobsheet.operations.choosing.found import kinds_found
from jobsheet.operations.choosing.likely import at_the_same_holes, likely_next, same_holes
from jobsheet.operations.choosing.order_of_work import all_groups, group_of
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.storage.cabinet_file import cabinet_for

translate = QCoreApplication.translate
#: How long until it is asked again whether the mouse was let go [ms].
RELEASED = 30


class Insertion:
    """One new step, from the question to the open row; made anew each time."""

    def __init__(self, hand: Hand, rows: OpenRows, set_up: SetUp, index: int) -> None:
        self._hand = hand
        self._rows = rows
        self._set_up = set_up
        self._index = index
        self._cabinet = _cabinet(hand)
        reckoned = hand.desk.reckoned
        self._height = reckoned.shop.thread_height if reckoned is not None else ""
        self._here = Here(
            set_up=set_up, index=index, units=hand.desk.job.units, cabinet=self._cabinet, thread_height=self._height
        )  # fmt: skip
        self._back: QWidget | None = QApplication.focusWidget()
        self.row = InsertRow(self._asked(), hand.ruled)
        self.row.taken.connect(self._take)
        self.row.left.connect(self._leave)
        self.row.reached.connect(hand.column.reveal_widget)
        self._open = True

    def open(self) -> None:
        """Ask, at the place of the new step."""
        hand = self._hand
        steps = [operation.key for operation in self._set_up.operations]
        lines = [line.key for line in hand.ruled.lines if line.is_painted]
        above = steps[self._index - 1] if self._index else self._set_up.key
        below = lines[lines.index(above) + 1 :] if above in lines else []
        empty = [line.key for line in hand.ruled.lines if line.key == f"empty:{above}"]
        hand.ruled.receive(self.row, next(iter([*empty, *below]), ""))
        self.row.line.setFocus()
        hand.column.reveal(self.row.key)
        hand.desk.changed.connect(self._changed)

    def _leave(self, back: bool) -> None:
        """Left by Esc, or by a press elsewhere: then nothing moves from under the hand before it lets go."""
        if not back and QGuiApplication.mouseButtons() != QtCore.Qt.MouseButton.NoButton:
            QTimer.singleShot(RELEASED, self.row, lambda: self._leave(back=False))
        else:
            self.close(back=back)

    def close(self, *, back: bool = False) -> None:
        """Leave nothing behind; `back` gives the keyboard to whoever had it."""
        if not self._open:
            return
        self._open = False
        hand = self._hand
        hand.desk.changed.disconnect(self._changed)
        if hand.ruled.guest is self.row:
            hand.ruled.receive(None)
        if back:
            self._give_back()

    def _give_back(self) -> None:
        from shiboken6 import isValid

        before, ruled = self._back, self._hand.ruled
        if before is not None and isValid(before) and before.isVisible() and before is not ruled:
            before.setFocus()
        else:
            ruled.focus_line(ruled.chosen_key)

    def _changed(self, _change: object) -> None:
        """The job is another now: the place may be gone."""
        self.close()

    def _take(self, offered: Offered) -> None:
        """Add what was taken, and open it."""
        hand, set_up, index = self._hand, self._set_up, self._index
        self.close()
        after = set_up.operations[index - 1].key if index else None
        before = {operation.key for _, operation in hand.desk.job.operations()}
        command = AddOperation(set_up.key, offered.kind, after, texts=offered.texts, at_front=index == 0)
        if not hand.do(command):
            return
        new = next(operation for _, operation in hand.desk.job.operations() if operation.key not in before)
        hand.say(translate("RowEdits", "{number} added.").format(number=new.number))
        self._rows.open(new.key)

    # --- what is asked ---

    def _asked(self) -> Asked:
        desk, set_up, index = self._hand.desk, self._set_up, self._index
        here = self._here
        likely = tuple(
            Offered(
                kind=likely.kind,
                icon=_icon(likely.kind),
                title=likely.title,
                reason=likely.why_not or likely.reason,
                texts=likely.texts,
                away=bool(likely.why_not),
            )
            for likely in likely_next(here)
        )
        groups = tuple(
            (title, tuple(Offered(kind=kind.name, icon=_icon(kind.name), title=kind.title) for kind in kinds))
            for title, kinds in all_groups()
        )
        return Asked(
            number=numbers_for(desk.job, set_up, index)[0],
            place=_place(set_up, index),
            likely=likely,
            groups=groups,
            find=self._find,
        )

    def _find(self, typed: str) -> tuple[Offered, ...]:
        return tuple(
            Offered(
                kind=other.kind,
                icon=_icon(other.kind),
                title=other.title,
                reason=", ".join(text for _, text in other.texts)
                or same_holes(other.kind, self._here)
                or group_of(other.kind),
                texts=at_the_same_holes(other.kind, other.texts, self._here),
                hit=other.hit,
            )
            for other in kinds_found(typed, self._hand.desk.job.units, self._cabinet, self._height)
        )


def _icon(kind: str) -> str:
    return f"op-{registry.kind(kind).icon}"


def _cabinet(hand: Hand) -> Cabinet | None:
    """What there is to cut with; a cabinet that cannot be read is said where cutters are chosen."""
    try:
        return cabinet_for(hand.desk.job.workshop)
    except JobsheetError:
        return None


def _place(set_up: SetUp, index: int) -> str:
    """Where the new step will stand, in words."""
    steps = set_up.operations
    before = steps[index - 1].number if index else None
    after = steps[index].number if index < len(steps) else None
    if before is not None and after is not None:
        words = translate("Insert", "new step between {before} and {after}")
    elif before is not None:
        words = translate("Insert", "new step after {before}")
    elif after is not None:
        words = translate("Insert", "new step before {after}")
    else:
        words = translate("Insert", "first step of set-up {set_up}")
    return words.format(before=before, after=after, set_up=set_up.number)
