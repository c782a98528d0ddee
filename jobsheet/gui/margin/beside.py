"""Under the limits: the speeds beside the one that is set, how deep a pass goes
here, the headroom, and the stopwatch.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.gui.margin.watch import WatchView
from jobsheet.reckoning.answers.all_answers import Answers
from jobsheet.reckoning.answers.speeds import Neighbour

ROW = 28
#: The headroom picture [points of the drawing].
PICTURE = (330.0, 190.0)

translate = QCoreApplication.translate


def _deep_words(answers: Answers) -> str:
    """How deep a pass goes and what ends it."""
    deepest = answers.deepest
    if deepest is None:
        return ""
    if deepest.plan is None:
        return translate("Beside", "No depth works here: {why}").format(why=deepest.stops)
    stop = deepest.untried_limit if deepest.untried is not None and deepest.plan == deepest.untried else None
    if stop is not None:
        return translate("Beside", "{size}: deeper is not known on this machine. {words}.").format(
            size=deepest.plan_shown, words=deepest.words[:1].upper() + deepest.words[1:]
        )
    if deepest.plan >= answers.height > 0:
        return translate("Beside", "As deep as the work is high. {words}.").format(
            words=deepest.words[:1].upper() + deepest.words[1:]
        )
    why = deepest.stops
    return translate("Beside", "{size}, then {why}. {words}.").format(
        size=deepest.plan_shown, why=why.rstrip("."), words=deepest.words[:1].upper() + deepest.words[1:]
    )


class BesideView(QWidget):
    """It shows answers as they come; pressing a speed writes it in."""

    taken = Signal(object)
    height_changed = Signal()

    def __init__(self, units: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Beside", "What else this machine answers"))
        self._units = units
        self.answers = Answers()
        self.buttons: list[Button] = []
        self._rows: list[tuple[Neighbour, bool]] = []
        self._deep = ""
        self._tops: list[int] = []
        self._deep_top = self._picture_top = 0
        self.room = Button(translate("Beside", "Show the headroom"), self, Manner.LINK)
        self.room.setCheckable(True)
        self.room.toggled.connect(self._toggle)
        self.clock = Button(translate("Beside", "Stopwatch"), self, Manner.LINK)
        self.clock.setCheckable(True)
        self.clock.toggled.connect(self._toggle)
        self.watch = WatchView(units, self)
        self.watch.taken.connect(self.taken)
        self.watch.height_changed.connect(self.height_changed)
        self.watch.hide()
        self._picture: Drawing | None = None
        self.room.hide()

    def put(self, answers: Answers, *, timed: bool) -> bool:
        """Show these answers; `timed` says whether the step is fed, so that a watch can time it."""
        if (answers, timed) == (self.answers, not self.clock.isHidden()):
            return False
        before, self.answers = self.answers, answers
        self.clock.setVisible(timed)
        self.watch.setVisible(timed and self.clock.isChecked())
        if answers.neighbours != before.neighbours:
            self._put_rows()
        self._deep = _deep_words(answers)
        self.room.setVisible(answers.headroom is not None)
        self._picture = None
        self.update()
        return True

    def _put_rows(self) -> None:
        for old in self.buttons:
            old.hide()
            old.deleteLater()
        self.buttons, self._rows = [], []
        neighbours = self.answers.neighbours
        if neighbours is None:
            return
        around = [(neighbours.below, False), (neighbours.at, True), (neighbours.above, False)]
        around += [(neighbour, False) for neighbour in neighbours.other_ranges]
        for neighbour, here in around:
            if neighbour is None:
                continue
            self._rows.append((neighbour, here))
            words = translate("Beside", "{speed} rpm").format(speed=neighbour.marked)
            button = Button(words, self, Manner.LINK)
            if here:
                button.setEnabled(False)
            else:
                button.setAccessibleName(
                    translate("Beside", "Set {speed} rpm").format(speed=neighbour.marked)
                )
                text = f"{neighbour.marked} rpm"
                button.clicked.connect(lambda _=False, text=text: self.taken.emit((("spindle", text),)))
            button.show()
            self.buttons.append(button)

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        stops: list[QWidget] = [*self.buttons, self.room, self.clock]
        return stops + [field.box for field in self.watch.form.fields.values()] + [self.watch.button]

    def _toggle(self, _on: bool) -> None:
        self.room.setText(
            translate("Beside", "Hide the headroom")
            if self.room.isChecked()
            else translate("Beside", "Show the headroom")
        )
        self.watch.setVisible(self.clock.isChecked() and not self.clock.isHidden())
        self.height_changed.emit()
        self.update()

    def arrange(self, width: int) -> int:
        """Place everything; the height needed."""
        now = look()
        self.resize(width, self.height())
        top = now.px(26) if self._rows else 0
        self._tops = []
        for button in self.buttons:
            hint = button.sizeHint()
            button.setGeometry(
                -now.px(8), top + (now.px(ROW) - hint.height()) // 2, hint.width(), hint.height()
            )
            self._tops.append(top)
            top += now.px(ROW)
        self._deep_top = top
        if self._deep:
            top += now.px(24) + ink.paragraph_height(now, self._deep, now.body, width) + now.px(4)
        left = -now.px(8)
        for button in (self.room, self.clock):
            if not button.isHidden():
                hint = button.sizeHint()
                button.setGeometry(left, top, hint.width(), hint.height())
                left += hint.width() + now.px(6)
        if left > 0:
            top += now.px(32)
        self._picture_top = top
        if self.room.isChecked() and not self.room.isHidden():
            top += round((PICTURE[1] + 6) * SCALE * now.scale)
        if not self.watch.isHidden():
            high = self.watch.arrange(width)
            self.watch.setGeometry(0, top, width, high)
            top += high
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions, the rows of speeds, the deepest pass, the picture."""
        now = look()
        with QPainter(self) as painter:
            if self._rows:
                place = QRect(0, now.px(5), self.width(), now.px(18))
                caption = translate("Beside", "speeds beside it, and what each asks of the spindle")
                ink.write(painter, now, place, caption, now.caption, "pencil")
            for top, (neighbour, here) in zip(self._tops, self._rows, strict=False):
                self._paint_speed(painter, top, neighbour, here=here)
            if self._deep:
                ink.horizontal(painter, now.colour("rule"), 0, self.width(), self._deep_top)
                place = QRect(0, self._deep_top + now.px(5), self.width(), now.px(18))
                ink.write(
                    painter, now, place, translate("Beside", "deepest pass here"), now.caption, "pencil"
                )
                place = QRect(0, self._deep_top + now.px(22), self.width(), self.height())
                ink.paragraph(painter, now, place, self._deep, now.body)
            if self.room.isChecked() and not self.room.isHidden() and self.answers.headroom is not None:
                if self._picture is None:
                    from jobsheet.report.headroom_view import headroom_picture

                    self._picture = headroom_picture(self.answers.headroom, self._units, *PICTURE)
                paint(painter, now, self._picture, 0, self._picture_top)

    def _paint_speed(self, painter: QPainter, top: int, neighbour: Neighbour, *, here: bool) -> None:
        """Where belt or lever stands, the cutting speed, the share of the torque, and the verdict's mark."""
        now = look()
        high = now.px(ROW)
        icon, _, token = VERDICTS.get(neighbour.worst_verdict, ("", "pencil", "pencil"))
        font = now.bold if here else now.body
        narrow = self.width() < now.px(440)
        at = now.px(82)
        if not narrow:
            ink.write(
                painter, now, QRect(at, top, now.px(110), high), neighbour.position, now.caption, "pencil"
            )
            at = now.px(196)
        ink.write(painter, now, QRect(at, top, now.px(96), high), neighbour.cutting_shown, font)
        share = (
            translate("Beside", "{share} % torque").format(share=round(neighbour.share * 100))
            if neighbour.share
            else ""
        )
        right = self.width() - now.px(26)
        ink.write(
            painter, now, QRect(right - now.px(110), top, now.px(104), high), share, font, "ink", ink.RIGHT
        )
        if icon:
            signs.draw(
                painter, icon, getattr(now.tokens, token), right + now.px(2), top + high / 2, now.px(16)
            )
        ink.horizontal(painter, now.colour("rule"), 0, self.width(), top + high - 1)
