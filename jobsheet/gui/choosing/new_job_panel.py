"""The panel of a new job: part, metal, stock and machine, a line each, with the same
lists as everywhere; then it begins.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.panel import FOOT, HEAD, Panel
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.operations.entry import Entry

translate = QCoreApplication.translate
WIDE = 520


class NewJobPanel(Panel):
    """Nothing of the job on the desk is touched before *Begin*."""

    typed = Signal(str, str)
    picks_wanted = Signal(str)
    begun = Signal()

    def __init__(
        self,
        ground: QWidget,
        hang: Callable[[], tuple[int, int]],
        entries: tuple[Entry, ...],
        units: str,
        *,
        copies: bool = False,
    ) -> None:
        title = translate("NewJob", "New part from this one") if copies else translate("NewJob", "New job")
        super().__init__(ground, hang, title)
        self._copies = copies
        self.form = Form(entries, units, self.title, self, joined=False)
        self.form.typed.connect(self.typed)
        self.form.picks_wanted.connect(self.picks_wanted)
        self.form.height_changed.connect(self.hang)
        self.begin = Button(translate("NewJob", "Begin"), self, Manner.FILLED)
        self.begin.clicked.connect(self.begun)

    def put(self, values: Mapping[str, Shown]) -> None:
        """Show these texts with what was understood of them."""
        self.form.put(values)

    def _inside(self) -> int:
        now = look()
        return min(now.px(WIDE), self._ground.width() - 2 * now.px(8)) - 2 * now.px(18)

    def size_wanted(self) -> tuple[int, int]:
        """As high as its four lines."""
        now = look()
        return now.px(WIDE), now.px(HEAD + FOOT + 10) + self.form.arrange(self._inside(), 1)

    def arrange(self) -> None:
        """The lines one under the other, the button below."""
        now = look()
        side = now.px(18)
        high = self.form.arrange(self.width() - 2 * side, 1)
        self.form.setGeometry(side, now.px(HEAD), self.width() - 2 * side, high)
        hint = self.begin.sizeHint()
        top = self.height() - now.px(FOOT) + (now.px(FOOT) - hint.height()) // 2
        self.begin.setGeometry(self.width() - hint.width() - now.px(14), top, hint.width(), hint.height())

    def paint(self, painter: QPainter) -> None:
        """Title, and what comes next."""
        now = look()
        place = QRect(now.px(18), now.px(6), self.width(), now.px(38))
        ink.write(painter, now, place, self.title, now.head)
        words = (
            translate("NewJob", "its steps come along; what hangs on a change is listed · Esc leaves it")
            if self._copies
            else translate("NewJob", "then the first step · Esc leaves the job on the desk")
        )
        foot = QRect(now.px(18), self.height() - now.px(FOOT), self.begin.x() - now.px(26), now.px(FOOT))
        ink.write(painter, now, foot, words, now.caption, "pencil")
