"""The panel of materials: typed by trade name, standard name or hardness; what is blue
is taken by Enter, any by a press.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.find_line import FindLine
from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.panel import FOOT, HEAD, Panel
from jobsheet.gui.choosing.row_list import RowList
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
WIDE, MOST = 600, 7


class MaterialPanel(Panel):
    """A line to type into over the list, and under it the ways out."""

    taken = Signal(str)
    #: A material of one's own is asked for: its name, and the one that cuts like it.
    own_wanted = Signal(str, str)
    stock_wanted = Signal()

    def __init__(
        self,
        ground: QWidget,
        hang: Callable[[], tuple[int, int]],
        find: Callable[[str], tuple[Listed, ...]],
        planned: str,
    ) -> None:
        super().__init__(ground, hang, translate("Choosing", "Material"))
        self._find = find
        self._planned = planned
        self._naming = False
        self._all = len(find(""))
        self.line = FindLine(self)
        self.line.setAccessibleName(translate("Choosing", "Material: type to find"))
        self.line.setPlaceholderText(translate("Choosing", "mild steel, 1.4301, AISI 304, 200 HB…"))
        self.list = RowList(self, translate("Choosing", "Materials"), split=0.44)
        self.own = Button(translate("Choosing", "Own material…"), self, Manner.LINK)
        self.stock = Button(translate("Choosing", "Stock sizes"), self, Manner.LINK)
        self.line.textEdited.connect(self._follow)
        self.line.moved.connect(lambda _across, down: self.list.step(down))
        self.line.taken.connect(self.list.take)
        self.line.left.connect(lambda back: self.leave(back=True) if back else None)
        self.list.taken.connect(lambda one: self._take(one.key))
        self.list.looked.connect(self._say)
        self.own.clicked.connect(self._own)
        self.stock.clicked.connect(self._stock)
        self.list.put(find(""), -1)
        self.list.choose(planned)

    def help_topic(self) -> str:
        """The page of the field that is filled."""
        return "field:job/material"

    def _follow(self, text: str) -> None:
        """The list follows every key; the best hit is blue. A name of one's own finds nothing."""
        if self._naming:
            return
        self.list.put(self._find(text))
        self.update()

    def _say(self, listed: Listed | None) -> None:
        words = listed.spoken() if listed is not None else self._nothing()
        self.line.setAccessibleDescription(words)

    def _take(self, key: str) -> None:
        name = self.line.text().strip()
        if self._naming and not name:
            self.line.setFocus()
            return
        self.leave(back=True)
        if self._naming:
            self.own_wanted.emit(name, key)
        else:
            self.taken.emit(key)

    def _own(self) -> None:
        """From now on the line takes a name, and the list the material that cuts like it."""
        if not self._naming:
            self._naming = True
            self.title = translate("Choosing", "Own material")
            self.line.setAccessibleName(translate("Choosing", "Name of your own material"))
            self.line.setPlaceholderText(translate("Choosing", "its name, then Enter on what cuts like it"))
            self.list.put(self._find(""), -1)
            self.list.choose(self._planned)
            self.own.setText(translate("Choosing", "Make it"))
            self.own.setAccessibleName(self.own.text())
            self.arrange()
            self.update()
            self.line.setFocus()
            return
        self.list.take()

    def _stock(self) -> None:
        self.leave(back=False)
        self.stock_wanted.emit()

    @staticmethod
    def _nothing() -> str:
        return translate("Choosing", "No material is called so. Own material… begins one.")

    def size_wanted(self) -> tuple[int, int]:
        """As high as the whole list asks for, so that it does not jump while it is typed into."""
        now = look()
        rows = min(self._all, MOST) * now.px(47)
        return now.px(WIDE), now.px(HEAD + FOOT) + rows

    def _frame(self) -> QRect:
        now = look()
        left = now.px(14) + now.width(self.title, now.head) + now.px(14)
        return QRect(left, now.px(10), self.width() - left - now.px(80), now.px(30))

    def arrange(self) -> None:
        """Line above, list, buttons below."""
        now = look()
        self.line.stand(self._frame())
        head, foot = now.px(HEAD + 2), now.px(FOOT)
        self.list.setGeometry(2, head, self.width() - 4, self.height() - head - foot)
        hint = self.own.sizeHint()
        top = self.height() - foot + (foot - hint.height()) // 2
        self.own.setGeometry(self.width() - hint.width() - now.px(10), top, hint.width(), hint.height())
        left = self.own.x() - self.stock.sizeHint().width() - now.px(8)
        self.stock.setGeometry(left, top, self.stock.sizeHint().width(), hint.height())

    def paint(self, painter: QPainter) -> None:
        """Title, frame of the line, how many were found, and what may be typed."""
        now = look()
        frame = self._frame()
        ink.write(painter, now, QRect(now.px(14), now.px(6), frame.left(), now.px(38)), self.title, now.head)
        self.line.paint_frame(painter, frame)
        count = translate("Choosing", "{found} of {all}").format(found=len(self.list.things), all=self._all)
        place = QRect(frame.right(), frame.top(), self.width() - frame.right() - now.px(14), frame.height())
        ink.write(painter, now, place, count, now.caption, "pencil", ink.RIGHT)
        foot = self.height() - now.px(FOOT)
        ink.horizontal(painter, now.colour("ink"), 0, self.width(), foot)
        words = translate("Choosing", "by trade name, EN or AISI name, or hardness")
        if self._naming:
            words = translate("Choosing", "it begins with the figures of the blue one")
        place = QRect(now.px(14), foot, self.stock.x() - now.px(22), now.px(FOOT))
        ink.write(painter, now, place, words, now.caption, "pencil")
        if not self.list.things:
            place = self.list.geometry().adjusted(now.px(14), now.px(14), -now.px(14), 0)
            ink.paragraph(painter, now, place, self._nothing(), now.body, "pencil")
