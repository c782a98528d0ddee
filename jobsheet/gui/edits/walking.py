"""Walking through the plan: to the next remark, or to the next field that cannot be read."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.edit.finished_lines import OWNER, name_of_line
from jobsheet.gui.column.at_the_lines import told_at_line
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.model.remark import Remark

translate = QCoreApplication.translate


class Walking:
    """Remembers what was visited last."""

    def __init__(self, hand: Hand, rows: OpenRows) -> None:
        self._hand = hand
        self._rows = rows
        self.visited: tuple[str, str] = ("", "")

    def forget(self) -> None:
        """Another job lies on the desk: nothing of the last one was visited."""
        self.visited = ("", "")

    def previous_remark(self) -> None:
        """The remark or field before the last one visited."""
        self.next_remark(by=-1)

    def next_remark(self, by: int = 1) -> None:
        """The next field that cannot be read, or the next remark, after the last one visited."""
        every = self._every()
        if not every:
            self._hand.say(
                translate("RowEdits", "Nothing to mend: no remark and no field that cannot be read.")
            )
            return
        last = next((i for i, item in enumerate(every) if item[1:] == self.visited), -1)
        what, owner, name = every[(last + by) % len(every) if last >= 0 or by > 0 else -1]
        self.visited = (owner, name)
        if what == "field":
            self._go_to_field(owner, name)
        elif what == "line":
            self._go_to_line(name)
        else:
            self._rows.open_at(owner, name)

    def _every(self) -> list[tuple[str, str, str]]:
        """All that can be visited: what it is, whose, and its name."""
        desk = self._hand.desk
        problems = [("field", owner, name) for owner, name in desk.problems()]
        return [*problems, *(_about(remark) for remark in desk.remarks)]

    def _go_to_line(self, name: str) -> None:
        """Open the job's form at the line of the finished part that a remark is about, and say what it is; nothing
        where going there wrote down what ended it.
        """
        rule, _, number = name.partition(" ")
        self._go_to_field(OWNER, name_of_line(int(number)))
        said = (one for one in self._hand.desk.remarks if one.rule == rule and one.line == int(number))
        if (remark := next(said, None)) is not None:
            self._hand.say(remark.message)

    def _go_to_field(self, owner: str, name: str) -> None:
        """Open the form of an owner and put the cursor into a field."""
        section, _, key = owner.partition(":")
        if section == "job":
            self._rows.open_job()
        else:
            self._rows.open(key or owner)
        opened = self._hand.ruled.opened
        forms = getattr(opened, "forms", None) or {owner: getattr(opened, "form", None)}
        form = forms.get(owner)
        if form is not None and name in form.fields:
            field = form.fields[name]
            field.go_in()
            self._hand.say(str(field.problem or ""))


def _about(remark: Remark) -> tuple[str, str, str]:
    """Where a remark is gone to: its step, its set-up, the line of the finished part
    that it is about alone, or the job.
    """
    if told_at_line(remark):
        return "line", OWNER, f"{remark.rule} {remark.line}"
    return "remark", (remark.operations or (remark.set_up or "job",))[0], remark.rule
