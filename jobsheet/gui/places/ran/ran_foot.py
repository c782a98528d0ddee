"""The conclusion: how much is said, what goes to the proof log of the machine, and the
two buttons that keep and take back.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.ran.big_button import GAP, HIGH, BigButton
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.storage.kept.own_pace import own_pace

translate = QCoreApplication.translate
SIDE, LINE = 20, 30


class RanFoot(QWidget):
    """One conclusion and one filled button."""

    keep_wanted = Signal()
    back_wanted = Signal()
    save_wanted = Signal()
    proof_wanted = Signal()
    pace_wanted = Signal()

    def __init__(self, desk: RanDesk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self._said = ("", "ink")
        self.proof = BigButton(translate("Ran", "to the proof log"), self, tick=True)
        self.proof.clicked.connect(self.proof_wanted)
        self.pace = BigButton(translate("Ran", "times as they ran"), self, tick=True)
        self.pace.clicked.connect(self.pace_wanted)
        self.save = BigButton(translate("Ran", "Save the job"), self)
        self.save.clicked.connect(self.save_wanted)
        self.back = BigButton(translate("Ran", "Take back"), self)
        self.back.clicked.connect(self.back_wanted)
        self.keep = BigButton("", self, filled=True)
        self.keep.clicked.connect(self.keep_wanted)
        self._words: list[tuple[QRect, str, str, QFont]] = []

    def put(self, said: str, *, trouble: bool) -> None:
        """Show how far it is; `said` is what was just done or refused."""
        desk = self._desk
        self._said = (said, "verm" if trouble else "ink")
        offered = desk.offered_words()
        self.proof.setVisible(bool(offered))
        self.proof.choose(desk.to_proof)
        self.proof.setAccessibleDescription(offered)
        own = own_pace()
        self.pace.setVisible(desk.plan is not None and (bool(desk.paces) or own is not None))
        self.pace.choose(own is not None)
        self.pace.setAccessibleDescription(
            translate("Ran", "Shows the time of a job by these factors; what is planned stays as it is")
        )
        plan = desk.plan
        self.save.setVisible(plan is None or plan.changed)
        revision = plan.revision if plan is not None else 0
        self.keep.say(
            translate("Ran", "Keep with revision {number}").format(number=revision)
            if revision
            else translate("Ran", "Keep with the plan")
        )
        self.keep.setVisible(plan is not None)
        self.keep.why_not("" if desk.unkept else translate("Ran", "There is nothing new to keep."))
        self.back.setVisible(plan is not None)
        self.back.why_not("" if desk.kept else translate("Ran", "Nothing is kept of this day yet."))
        self.setAccessibleName(" ".join(words for words, _ in self._lines()))
        self.update()

    def _lines(self) -> list[tuple[str, str]]:
        """What stands left of the buttons, with its tone: what was just said, how
        far it is, what it is recorded with.
        """
        desk = self._desk
        said, tone = self._said
        lines = [(said, tone)] if said else []
        if desk.plan is None or desk.asked is None:
            words = translate(
                "Ran", "The job has no file yet: what happened is kept beside it, so save it first."
            )
            return [*lines, (desk.problem or words, "ink")]
        if desk.problem:
            lines.append((desk.problem, "verm"))
        lines.append((_count(desk), "ink"))
        if desk.plan.changed:
            words = translate(
                "Ran",
                "The job was changed since it was saved: this is kept with the saved plan, check {code}.",
            )
            lines.append((words.format(code=desk.plan.code), "purple"))
        if desk.paces:
            words = translate("Ran", "Against what was planned: {factors}.")
            lines.append((words.format(factors="; ".join(pace.words() for pace in desk.paces)), "pencil"))
        offered = desk.offered_words()
        if offered:
            lines.append(
                (
                    f"{offered}."
                    if desk.to_proof
                    else translate("Ran", "Kept with the job only: the proof log gets nothing."),
                    "pencil",
                )
            )
        return lines

    def arrange(self, width: int) -> int:
        """Words at the left, buttons at the right, under the words where
        there is no room; the height needed.
        """
        now = look()
        side, gap, high = now.px(SIDE), now.px(GAP), now.px(HIGH)
        shown = [
            big_button
            for big_button in (self.pace, self.proof, self.save, self.back, self.keep)
            if not big_button.isHidden()
        ]
        wide = sum(big_button.sizeHint().width() + gap for big_button in shown) - gap
        beside = width - wide - 3 * side >= now.px(420)
        room = width - 2 * side - (wide + side if beside else 0)
        top = now.px(12)
        self._words = []
        for at, (words, tone) in enumerate(self._lines()):
            font = self._font(at, words, room)
            tall = ink.paragraph_height(now, words, font, room)
            self._words.append((QRect(side, top, room, tall), words, tone, font))
            top += tall + now.px(3)
        whole = max(top + now.px(9), high + 2 * now.px(14))
        buttons = (whole - high) // 2
        if not beside:
            buttons, whole = top + now.px(4), top + high + now.px(14)
        left = width - side - wide
        for button in shown:
            hint = button.sizeHint().width()
            button.setGeometry(max(left, 0), buttons, hint, high)
            left += hint + gap
        return whole

    @staticmethod
    def _font(at: int, words: str, room: int) -> QFont:
        """The conclusion in the largest type in which it is one line."""
        now = look()
        if at:
            return now.plain_head
        return now.title if now.width(words, now.title) <= room else now.head

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """A rule of 2 px above the conclusion."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, now.px(2))
            for place, words, tone, font in self._words:
                ink.paragraph(painter, now, place, words, font, tone)


def _count(desk: RanDesk) -> str:
    """`3 of 4 steps entered, 1 of 3 sizes.`"""
    asked, said = desk.asked, desk.said
    assert asked is not None
    parts = []
    if asked.steps:
        parts.append(
            translate("Ran", "{n} of {all} steps entered").format(n=len(said.steps), all=len(asked.steps))
        )
    if asked.sizes:
        parts.append(translate("Ran", "{n} of {all} sizes").format(n=len(said.sizes), all=len(asked.sizes)))
    words = ", ".join(parts) or translate("Ran", "Minutes, and what would be changed")
    if not desk.unkept and desk.kept:
        return translate("Ran", "{words}; all of it is kept.").format(words=words)
    return translate("Ran", "{words}.").format(words=words)
