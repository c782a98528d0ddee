"""Two plans of the shelf are compared by key: the first is marked, on the second
one what is different in it is said.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QObject, Signal

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.aside.asked_aside import Aside
from jobsheet.gui.forms.facts_shown import Facts

translate = QCoreApplication.translate


class Comparing(QObject):
    """`said` tells what was marked, `told` what is different."""

    said = Signal(str)
    told = Signal(object)

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._marked: Path | None = None
        self._asked: Aside | None = None

    @property
    def marked(self) -> bool:
        """Whether a plan waits for the other one."""
        return self._marked is not None

    def press(self, path: Path) -> None:
        """The first press marks a plan, the second on another one compares; on
        the same one it takes the mark away.
        """
        first, self._marked = self._marked, None
        if first is None:
            self._marked = path
            words = translate(
                "Shelf", "{name} is marked: go to another one and press Alt + C again to compare the two."
            )
            self.said.emit(words.format(name=path.name))
            return
        if first == path:
            self.said.emit(translate("Shelf", "{name} is no longer marked.").format(name=path.name))
            return
        asked = self._asked = Aside(self, lambda: compared_facts(first, path))
        asked.done.connect(lambda: self._tell(asked))
        self.said.emit("")

    def _tell(self, asked: Aside) -> None:
        if self._asked is asked and isinstance(asked.answer, Facts):
            self.told.emit(asked.answer)


def compared_facts(first: Path, second: Path) -> Facts:
    """Everything that is different in the second of two plans, in words."""
    from jobsheet.edit.difference import changes
    from jobsheet.storage.job_file import read_job

    title = translate("Shelf", "{first} → {second}").format(first=first.name, second=second.name)
    try:
        lines = changes(read_job(first), read_job(second), most=None)
    except JobsheetError as error:
        return Facts(title=title, problem=str(error))
    count = translate("Shelf", "What is different: {count}").format(count=len(lines))
    rows = tuple(("", line) for line in lines) or (("", translate("Shelf", "The two plans say the same.")),)
    return Facts(title=title, blocks=((count, rows),))
