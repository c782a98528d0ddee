"""The left side of the proving place: the form that starts a ladder, or the ladder with what to dial."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.margin.dialled import DialsView
from jobsheet.gui.places.proving.ladder_asked import entries
from jobsheet.gui.places.proving.ladder_view import LadderView
from jobsheet.gui.places.proving.needs_view import NeedsView
from jobsheet.gui.places.proving.proved_view import HEAD, PAD
from jobsheet.gui.places.proving.proving_desk import ProvingDesk
from jobsheet.gui.places.proving.stop_notes import StopNotes
from jobsheet.operations.kind import Dial
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.ladder.ladder_expected import words_of

translate = QCoreApplication.translate


class LadderSide(QWidget):
    """The form that starts a ladder, or the ladder."""

    start_wanted = Signal()
    happened = Signal(int)
    #: Another machine was chosen: what it has shown is another too.
    machine_changed = Signal()
    height_changed = Signal()
    #: A ladder that settles steps of the job is to be begun.
    need_wanted = Signal(object)
    #: The stop notes were read, by these.
    notes_read = Signal(object)

    def __init__(self, desk: ProvingDesk, parent: QWidget) -> None:
        super().__init__(parent)
        units = desk.units
        self.form = Form(entries(), units, translate("Proving", "A new ladder"), self, joined=False)
        # A test piece is cut with whatever lies at hand: no list of the cabinet here.
        self.form.fields["cutter"].listed = False
        self.form.typed.connect(self._typed)
        self.form.height_changed.connect(self.height_changed)
        self.button = Button(translate("Proving", "Plan the ladder"), self, Manner.FILLED)
        self.button.clicked.connect(self.start_wanted)
        self.ladder = LadderView(units, self)
        self.ladder.happened.connect(self.happened)
        self.ladder.height_changed.connect(self.height_changed)
        self.dials = DialsView(self)
        self.needs = NeedsView(self)
        self.needs.chosen.connect(self.need_wanted)
        self.notes = StopNotes(self, units)
        self.notes.given.connect(self.notes_read)
        self.notes.height_changed.connect(self.height_changed)
        #: What the ladder of the form would cost and teach, once the hand has rested.
        self.foreseen = ""
        self._desk = desk
        self._said = ""
        #: Whether what is said is why something was not done.
        self._wrong = False
        self._words_top = 0

    #: Something was typed into the form: what its ladder would teach is another thing.
    asked_anew = Signal()

    def _typed(self, name: str, text: str) -> None:
        self._desk.set(name, text)
        self.foreseen = ""
        self.asked_anew.emit()
        self._show_form()
        if name == "machine":
            self.machine_changed.emit()

    def _show_form(self) -> None:
        shown = {}
        for entry in entries():
            text = getattr(self._desk.asked, entry.name)
            problem = None
            if entry.asks not in ("choice", "text") and text.strip():
                try:
                    entry.read(text, self._desk.units)
                except QuantityError as error:
                    problem = error
            shown[entry.name] = Shown(text, entry.hint, problem)
        self.form.put(shown)

    def put(self, desk: ProvingDesk, said: str, *, wrong: bool) -> None:
        """Show the form or the ladder, and what is to be said; `wrong` where
        that is why something was not done.
        """
        self._desk, self._said, self._wrong = desk, said, wrong
        fresh = self._fresh()
        self.form.setVisible(fresh)
        self.button.setVisible(fresh)
        self.needs.setVisible(fresh and bool(self.needs.rows))
        self.ladder.setVisible(not fresh and bool(desk.ladder and desk.ladder.rungs))
        self.notes.put(desk)
        # No rung opens before the notes were read.
        current = None if desk.unread else desk.current
        if fresh:
            self._show_form()
        else:
            self.ladder.put(desk.ladder, desk.done, current)
        self.dials.put(dials_of(desk), stale=False, why_not="")
        self.dials.setVisible(current is not None)
        self.setAccessibleDescription(" ".join(self._words()))
        self.update()

    def _fresh(self) -> bool:
        """Whether there is a form instead of a ladder: also where none was made,
        so that another can be asked for.
        """
        return self._desk.ladder is None or not self._desk.ladder.rungs

    def _words(self) -> list[str]:
        """What stands under form or ladder: what was just said, then when to stop."""
        ladder = self._desk.ladder
        words = [self._said] if self._said else []
        if ladder is None:
            words += [self.foreseen] if self.foreseen else []
        elif not self._fresh() and not self._desk.unread:  # else it stands among the notes
            words.append(f"{ladder.stop[0]} {' · '.join(ladder.stop[1:])}.")
            words += circumstances(self._desk)
        return words

    def _expected(self) -> str:
        """What stands over the first rung: what the ladder will cost and
        teach, as long as nothing was cut.
        """
        ladder = self._desk.ladder
        if ladder is None or ladder.expected is None or self._desk.entered:
            return ""
        return words_of(ladder.expected)

    def arrange(self, width: int) -> int:
        """Place form or ladder; the height needed."""
        now = look()
        pad, top = now.px(PAD), now.px(HEAD) + now.px(6)
        inside = width - 2 * pad
        if self._fresh():
            if not self.needs.isHidden():
                high = self.needs.arrange(width - 2)
                self.needs.setGeometry(1, now.px(HEAD) + 1, width - 2, high)
                top += high
            high = self.form.arrange(inside, 2)
            self.form.setGeometry(pad, top, inside, high)
            hint = self.button.sizeHint()
            self.button.setGeometry(pad - now.px(4), top + high + now.px(6), hint.width(), hint.height())
            top += high + hint.height() + now.px(12)
        else:
            if expected := self._expected():
                top += ink.paragraph_height(now, expected, now.body, inside) + now.px(8)
            if not self.notes.isHidden():
                high = self.notes.arrange(width - 2)
                self.notes.setGeometry(1, top, width - 2, high)
                top += high
            if not self.dials.isHidden():
                high = self.dials.arrange(width)
                self.dials.setGeometry(0, top, width, high)
                top += high
            high = self.ladder.arrange(width)
            self.ladder.setGeometry(0, top, width, high)
            top += high + now.px(6)
        self._words_top = top
        for words in self._words():
            top += ink.paragraph_height(now, words, now.body, inside) + now.px(8)
        return top + now.px(10)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, the heading, the words."""
        now = look()
        pad = now.px(PAD)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            ladder = self._desk.ladder
            head = QRect(pad, 0, self.width(), now.px(HEAD))
            title = translate("Proving", "A new ladder") if self._fresh() else translate("Proving", "Ladder")
            wide = ink.write(painter, now, head, title, now.head)
            hint = translate("Proving", "from the bottom; ends at the first sign of trouble")
            ink.write(painter, now, head.translated(wide + now.px(10), 0), hint, now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD))
            if ladder is not None and ladder.rungs and (expected := self._expected()):
                over = QRect(pad, now.px(HEAD) + now.px(6), self.width() - 2 * pad, self.height())
                ink.paragraph(painter, now, over, expected, now.body)
            top = self._words_top
            for index, words in enumerate(self._words()):
                box = QRect(pad, top, self.width() - 2 * pad, self.height())
                tone = "verm" if self._wrong and self._said and not index else "ink"
                top += ink.paragraph(painter, now, box, words, now.body, tone) + now.px(8)


def circumstances(desk: ProvingDesk) -> list[str]:
    """What goes with the ladder: how far the motor was asked at the last cut, fluid, who cuts."""
    ladder, done = desk.ladder, desk.done
    if ladder is None:
        return []
    lines = []
    torque = ladder.rungs[max(done) - 1].figures.limit("spindle-torque") if done else None
    if torque is not None:
        words = translate("Proving", "Motor at the last cut: {share} % of its torque").format(
            share=max(1, round(torque.share * 100))
        )
        frame = desk.about == "chatter" and any(
            trial.outcome in ("noisy", "chatter") for trial in done.values()
        )
        lines.append(words + (translate("Proving", "; the frame gave up first.") if frame else "."))
    lines.append(translate("Proving", "Fluid: {fluid}.").format(fluid=ladder.setting.fluid))
    if desk.asked.role:
        lines.append(translate("Proving", "Cut by: {role}.").format(role=desk.asked.role))
    return lines


def dials_of(desk: ProvingDesk) -> tuple[Dial, ...]:
    """The three things to set for the current rung."""
    ladder, rung = desk.ladder, desk.current
    if ladder is None or rung is None or rung.figures.figures is None:
        return ()
    return tuple(kind_of(ladder.kind).dials(rung.fields, rung.figures.figures, ladder.setting))
