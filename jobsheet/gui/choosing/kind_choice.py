"""One kind of step to take: its icon and title; among the likely ones and the
found ones, why, or what it would hold.
"""

from __future__ import annotations

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.taken_words import write_hit
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look

TALL, SHORT = 40, 25
ICON = 22


class Offered(Struct, frozen=True, kw_only=True):
    """What can be taken: a kind with what stands in its form; `hit` is the
    part of the title that was typed.
    """

    kind: str
    icon: str
    title: str
    reason: str = ""
    texts: tuple[tuple[str, str], ...] = ()
    hit: tuple[int, int] = (0, 0)
    #: It cannot be cut as things stand: the reason says why.
    away: bool = False

    def spoken(self) -> str:
        """As a screen reader says it."""
        return f"{self.title}: {self.reason}" if self.reason else self.title


class KindChoice(Pressable):
    """One of the list; it never takes the keyboard from the line that is typed into."""

    def __init__(self, parent: QWidget, *, tall: bool) -> None:
        super().__init__(parent)
        self.offered: Offered | None = None
        self.tall = tall
        self.quiet = False
        self.setCheckable(True)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)

    def put(self, offered: Offered, *, quiet: bool = False) -> None:
        """Show this one; quiet where it is not what was typed."""
        if (offered, quiet) == (self.offered, self.quiet):
            return
        self.offered, self.quiet = offered, quiet
        self.setText(offered.title.replace("&", "&&"))
        self.setAccessibleName(offered.spoken())
        hover(self, offered.spoken() if self.tall else "")
        self.update()

    def mark(self, *, chosen: bool) -> None:
        """The one that Enter takes."""
        if self.isChecked() != chosen:
            self.setChecked(chosen)
            self.update()

    def nextCheckState(self) -> None:  # noqa: N802  named by the toolkit
        """A press takes it; which one is blue is for the list to say."""

    def needs(self) -> int:
        """The width at which nothing is shortened [px]."""
        now = look()
        title = self.offered.title if self.offered is not None else ""
        return now.px(8 + ICON + 8) + now.width(title, now.body) + now.px(6)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, bar, icon, words."""
        now, offered = look(), self.offered
        if offered is None:
            return
        with QPainter(self) as painter:
            if self.isChecked():
                ink.fill(painter, self.rect(), now.colour("chosen"))
                ink.fill(painter, QRect(0, 0, now.px(4), self.height()), now.colour("bluemark"))
            elif self.underMouse():
                ink.fill(painter, self.rect(), now.colour("paper"))
            soft = self.quiet or (offered.away and not self.isChecked())
            tone = "pencil" if soft else "ink"
            left = now.px(8)
            signs.draw(
                painter, offered.icon, getattr(now.tokens, tone), left, self.height() / 2, now.px(ICON)
            )
            left += now.px(ICON + 8)
            wide = self.width() - left - now.px(4)
            if not self.tall:
                place = QRect(left, 0, wide, self.height())
                ink.write(painter, now, place, offered.title, now.body, tone)
                return
            title = QRect(left, now.px(3), wide, now.px(18))
            write_hit(painter, title, offered.title, offered.hit, tone)
            reason = QRect(left, now.px(20), wide, now.px(16))
            ink.write(painter, now, reason, offered.reason, now.caption, "pencil")
