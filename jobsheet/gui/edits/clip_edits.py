"""Cut, copy and paste of steps and set-ups, within a job, between jobs, and as text; in a
box of text they are the box's own.
"""

from __future__ import annotations

from PySide6.QtCore import QByteArray, QCoreApplication
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from jobsheet.edit.numbering import in_words, numbers_of
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.gui.edits.set_up_edits import SetUpEdits
from jobsheet.gui.edits.step_edits import StepEdits
from jobsheet.model.job import Operation, SetUp

translate = QCoreApplication.translate

#: Our own form on the clipboard, beside the plain words.
OWN = "application/x-jobsheet-steps"


class ClipEdits:
    """The clipboard, as far as steps are concerned."""

    def __init__(self, hand: Hand, rows: OpenRows, steps: StepEdits, set_ups: SetUpEdits) -> None:
        self._hand = hand
        self._rows = rows
        self._steps = steps
        self._set_ups = set_ups

    # --- what is chosen ---

    def choose_all(self) -> None:
        """Every step of the job; in a box of text all of its text."""
        box = _text_box()
        if box is not None:
            box.selectAll()
            return
        self._rows.close()
        self._hand.show_all(operation.key for _, operation in self._hand.desk.job.operations())

    def _chosen(self) -> tuple[SetUp | None, tuple[Operation, ...]]:
        """The set-up whose heading is chosen, or the steps that are."""
        hand = self._hand
        keys = hand.keys
        if keys:
            return None, tuple(
                operation for _, operation in hand.desk.job.operations() if operation.key in keys
            )
        return hand.desk.set_up(hand.chosen), ()

    # --- copying and cutting ---

    def copy(self) -> None:
        """What is chosen goes to the clipboard; in a box of text, its chosen text."""
        box = _text_box()
        if box is not None:
            box.copy()
        elif words := self._copied():
            self._hand.say(translate("RowEdits", "Copied: {what}.").format(what=words))

    def cut(self) -> None:
        """The same, and what is chosen is taken out."""
        box = _text_box()
        if box is not None:
            box.cut()
            return
        if not self._copied():
            return
        set_up, steps = self._chosen()
        if steps:
            keys = tuple(operation.key for operation in steps)
            self._steps.take_out(keys, translate("RowEdits", "{steps} cut: Ctrl + V pastes."), "cut steps")
        elif set_up is not None:
            self._set_ups.delete()

    def _copied(self) -> str:
        """Put what is chosen on the clipboard in both forms; what it is, or
        nothing where nothing is chosen.
        """
        from jobsheet.gui.edits.clip_words import lines_of
        from jobsheet.storage.steps_text import Copied, write_copied

        desk = self._hand.desk
        set_up, steps = self._chosen()
        if set_up is None and not steps:
            self._hand.say(translate("RowEdits", "Nothing is chosen: choose a step or a set-up first."))
            return ""
        set_ups = (set_up,) if set_up is not None else ()
        text = write_copied(Copied(units=desk.job.units, set_ups=set_ups, steps=steps))
        # The toolkit makes what it holds: one made here would be taken apart after Python
        # has ended, and the program with it.
        clipboard = QGuiApplication.clipboard()
        clipboard.setText("\n".join(lines_of(desk, set_ups, steps)))
        clipboard.mimeData().setData(OWN, QByteArray(text.encode()))
        if set_up is None:
            return in_words(numbers_of(steps))
        return translate("RowEdits", "set-up {number} with {count} steps").format(
            number=set_up.number, count=len(set_up.operations)
        )

    # --- pasting ---

    def paste(self) -> None:
        """What lies on the clipboard comes behind what is chosen; in a box of text, its text."""
        box = _text_box()
        if box is not None:
            box.paste()
            return
        hand = self._hand
        try:
            text = _own_text()
        except JobsheetError as error:
            hand.say(str(error))
            return
        steps = {operation.key for _, operation in hand.desk.job.operations()}
        set_ups = {set_up.key for set_up in hand.desk.job.set_ups}
        if self._put_in(text):
            job = hand.desk.job
            new = [operation for _, operation in job.operations() if operation.key not in steps]
            whole = [set_up for set_up in job.set_ups if set_up.key not in set_ups]
            self._rows.close()
            if whole:
                hand.show(whole[0].key)
            else:
                hand.show_all(operation.key for operation in new)
            what = in_words(numbers_of(new)) if new else translate("RowEdits", "a set-up without steps")
            hand.say(translate("RowEdits", "Pasted: {what}.").format(what=what))

    def _put_in(self, text: str) -> bool:
        """Read it and put it in behind what is chosen; or say why not."""
        from jobsheet.edit.pasting import paste_command
        from jobsheet.storage.steps_text import read_copied

        hand, set_up = self._hand, self._hand.set_up
        keys = hand.keys
        here = [operation.key for operation in set_up.operations if operation.key in keys]
        on_heading = hand.chosen == set_up.key
        after = here[-1] if here else None
        if after is None and not on_heading and set_up.operations:
            after = set_up.operations[-1].key
        try:
            command = paste_command(read_copied(text), hand.desk.job, set_up.key, after)
        except JobsheetError as error:
            hand.say(str(error))
            return False
        return hand.do(command)


def _text_box() -> QLineEdit | QPlainTextEdit | None:
    """The box of text that has the cursor."""
    box = QApplication.focusWidget()
    return box if isinstance(box, QLineEdit | QPlainTextEdit) else None


def _own_text() -> str:
    """The steps on the clipboard as their text, also where they came as plain text.

    Raises
    ------
    CommandError
        With the sentence that says why there is nothing to paste.
    """
    from jobsheet.storage.steps_text import looks_copied

    held = QGuiApplication.clipboard().mimeData()
    if held is not None and held.hasFormat(OWN):
        try:
            return bytes(held.data(OWN).data()).decode()
        except UnicodeDecodeError:
            raise CommandError("Nothing was pasted: what was copied is not text in UTF-8.") from None
    text = held.text() if held is not None and held.hasText() else ""
    if looks_copied(text):
        return text
    if text.strip():
        raise CommandError(
            "Nothing was pasted: the clipboard holds a text and no steps; copy steps in this window or another job's."
        )
    raise CommandError("Nothing was pasted: the clipboard holds no steps; choose some and copy them first.")
