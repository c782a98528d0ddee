"""How the chosen step went today, by one key and a digit; kept at once beside the
job, with a line that takes it back.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QTimer
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.model.trials import OUTCOMES, SLIPPED
from jobsheet.model.what_ran import NOT_CUT, Entry

if TYPE_CHECKING:
    from jobsheet.gui.desk.saved_plan import SavedPlan
    from jobsheet.reckoning.runs_kept import Kept

translate = QCoreApplication.translate
#: So long a digit is waited for [ms]: as long as the question stands in the status line.
WAITS = 8000
#: Keys that come with others say nothing by themselves.
_WITH_OTHERS = (
    QtCore.Qt.Key.Key_Shift, QtCore.Qt.Key.Key_Control, QtCore.Qt.Key.Key_Alt, QtCore.Qt.Key.Key_AltGr, QtCore.Qt.Key.Key_Meta,
    QtCore.Qt.Key.Key_NumLock, QtCore.Qt.Key.Key_CapsLock,
)  # fmt: skip


class RunEdits(QObject):
    """One question and one digit; any other key, and the mouse, end the question and say nothing."""

    def __init__(self, hand: Hand) -> None:
        super().__init__(hand.parent)
        self._hand = hand
        #: Whom to tell that something was recorded, and what comes of it for the proof log.
        self.recorded: Callable[[], None] = lambda: None
        self._plan: SavedPlan | None = None
        self._entry: Entry | None = None
        self._before: Entry | None = None
        self._waits = QTimer(self)
        self._waits.setSingleShot(True)
        self._waits.setInterval(WAITS)
        self._waits.timeout.connect(self._end)

    # --- the question ---

    def ask(self) -> None:
        """How did the chosen step go today? Its digit follows."""
        self._end()
        hand = self._hand
        if len(hand.keys) != 1 or not hand.key:
            hand.say(translate("RowEdits", "Choose one step first: then F5 and a digit say how it went."))
        elif hand.ruled.focusWidget() is not hand.ruled:
            hand.say(
                translate("RowEdits", "Close the row first (Esc): then F5 and a digit say how the step went.")
            )
        else:
            try:
                self._begin(hand.key)
            except (JobsheetError, OSError) as error:
                hand.say(str(error))

    def _begin(self, key: str) -> None:
        """Look whether this step can be entered, and ask."""
        from jobsheet.gui.desk.saved_plan import saved_plan
        from jobsheet.reckoning.runs_kept import entry_of, step_words, steps_that_cut
        from jobsheet.storage.records.run_log import read_runs

        plan, words = saved_plan(self._hand.desk), ""
        choice = (
            next((pair for pair in plan.job.operations() if pair[1].key == key), None)
            if plan is not None
            else None
        )
        if plan is None:
            words = translate("RowEdits", "Save the job first: what happened is kept beside its file.")
        elif choice is None:
            words = translate("RowEdits", "This step is not in the saved plan yet: save the job first.")
        elif choice[1] not in steps_that_cut(choice[0], plan.reckoned):
            words = translate("RowEdits", "Step {number} does not cut: nothing is asked of it.")
            words = words.format(number=choice[1].number)
        if words or plan is None or choice is None:
            self._hand.say(words)
            return
        step = choice[1]
        base = entry_of(plan.path, plan.job, "", _role())
        self._plan = plan
        self._entry = replace(base, about="step", key=key, number=step.number, step=step_words(step))
        day = [
            entry
            for entry in read_runs(plan.path)[0].of_step(key)
            if (entry.date, entry.machine) == (base.date, base.machine)
        ]
        self._before = day[-1] if day else None
        app = QApplication.instance()
        if app is not None:
            app.installEventFilter(self)
        self._waits.start()
        self._hand.say(self._question())

    def _question(self) -> str:
        """What the digits mean; what stands for today already."""
        assert self._entry is not None
        digits = " · ".join([*(f"{at} {word}" for at, word in enumerate(OUTCOMES, 1)), f"0 {NOT_CUT}"])
        if self._before is None:
            words = translate("RowEdits", "How did step {number} go today? {digits}")
            return words.format(number=self._entry.number, digits=digits)
        words = translate(
            "RowEdits", "Step {number} today: {before} (Backspace takes it back). Rather: {digits}"
        )
        return words.format(number=self._entry.number, before=self._before.outcome, digits=digits)

    def _end(self) -> None:
        """No digit is waited for any more."""
        if self._entry is None:
            return
        self._entry = None
        self._waits.stop()
        app = QApplication.instance()
        if app is not None:
            app.removeEventFilter(self)

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """The next key answers; what is no answer goes its usual way."""
        kind = event.type()
        if kind in (QEvent.Type.MouseButtonPress, QEvent.Type.WindowDeactivate):
            self._end()
            self._hand.say("")
        elif isinstance(event, QKeyEvent) and kind == QEvent.Type.ShortcutOverride:
            return False
        elif isinstance(event, QKeyEvent) and kind == QEvent.Type.KeyPress:
            return self._key(event)
        return False

    def _key(self, event: QKeyEvent) -> bool:
        keys, key = QtCore.Qt.Key, event.key()
        if key in _WITH_OTHERS:
            return False
        plain = not event.modifiers() & ~QtCore.Qt.KeyboardModifier.KeypadModifier
        digit = int(key) - int(keys.Key_0)
        if plain and 0 <= digit <= 9:
            self._digit(digit)
            return True
        if key == keys.Key_Backspace and self._before is not None:
            before = self._before
            self._keep((), before)
            return True
        self._end()
        self._hand.say("")
        return bool(key == keys.Key_Escape)

    def _digit(self, digit: int) -> None:
        """An outcome, or what slipped; a digit that means nothing is waited over."""
        entry = self._entry
        assert entry is not None
        if entry.outcome == "slipped":
            if 1 <= digit <= len(SLIPPED):
                self._keep((replace(entry, slipped=SLIPPED[digit - 1]),), self._before)
        elif digit <= len(OUTCOMES):
            said = replace(entry, outcome=OUTCOMES[digit - 1] if digit else NOT_CUT)
            if said.outcome == "slipped":
                self._entry = said
                self._waits.start()
                words = " · ".join(f"{at} {word}" for at, word in enumerate(SLIPPED, 1))
                self._hand.say(translate("RowEdits", "What slipped? {words}").format(words=words))
            else:
                self._keep((said,), self._before)

    # --- keeping ---

    def _keep(self, entries: tuple[Entry, ...], before: Entry | None) -> None:
        """Write it down at once; what stood for today is taken back with it."""
        from jobsheet.reckoning.runs_kept import keep

        plan = self._plan
        self._end()
        if plan is None:
            return
        back = (before,) if before is not None else ()
        try:
            done = keep(plan.path, entries, lambda: plan.reckoned, back=back, role=_role())
        except (JobsheetError, OSError) as error:
            self._hand.say(str(error))
            return
        self.recorded()
        self._tell(plan, done)

    def _tell(self, plan: SavedPlan, done: Kept) -> None:
        """One line under the row: what was kept and where, with what takes it back."""
        from jobsheet.storage.records.run_log import path_beside

        for entry in done.written:
            said = f"{entry.slipped} slipped" if entry.slipped else entry.outcome
            words = translate("RowEdits", "Step {number}, {outcome}, today: kept in {name}")
            text = words.format(number=entry.number, outcome=said, name=path_beside(plan.path).name)
            if done.trials:
                text += translate("RowEdits", " and in the proof log")
            if plan.changed:
                text += translate("RowEdits", ", with the plan as it was saved")
            if done.refused:
                text += translate("RowEdits", ", but not in the proof log: {why}").format(
                    why=done.refused.rstrip(".")
                )
            text = " ".join(part for part in (f"{text}.", done.unclosed) if part)
            self._offer(plan, entry, text)
            self._hand.say(text)
        if not done.written:
            self._hand.ruled.notice("", "", ())
            number = done.back[0].number
            self._hand.say(
                translate("RowEdits", "Step {number}: taken back. The file keeps both.").format(number=number)
            )

    def _offer(self, plan: SavedPlan, entry: Entry, text: str) -> None:
        """The line under the row, with the button that takes it back."""

        def undo() -> None:
            self._plan = plan
            self._keep((), entry)
            self._hand.show(entry.key)

        self._hand.ruled.notice(self._below(entry.key), text, ((translate("RowEdits", "Take back"), undo),))

    def _below(self, key: str) -> str:
        """The line under a row."""
        lines = [line.key for line in self._hand.ruled.lines if line.is_painted]
        return next(iter(lines[lines.index(key) + 1 :]), "") if key in lines else ""


def _role() -> str:
    """Who typed in what happened last time."""
    from jobsheet.gui.desk.last_role import last_role

    return last_role()
