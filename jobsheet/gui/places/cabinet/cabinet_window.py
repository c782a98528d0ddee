"""The person's own cabinet in the editor of typed text; the lists of the
steps follow as soon as it is saved.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.edit.paper_commands import Replace
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.papers.paper_window import PaperWindow
from jobsheet.gui.papers.subject import Subject
from jobsheet.model.own_tools import Cabinet
from jobsheet.report.cabinet_list import cabinet_facts
from jobsheet.storage.cabinet_file import cabinet_from_text, own_path
from jobsheet.storage.cabinet_layout import LAYOUT, beginning, blank
from jobsheet.storage.disk import digest
from jobsheet.storage.own_paper import NONE_YET, Lying
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.typed_paper import Paper, text_at

translate = QCoreApplication.translate


def _subject() -> Subject:
    """What the editor needs to know of a cabinet."""
    return Subject(
        layout=LAYOUT,
        read=lambda text, name: cabinet_from_text(text, name, own=True),
        facts=lambda value, _paper: cabinet_facts(value if isinstance(value, Cabinet) else None),
        title=lambda paper: text_at(paper, ("name",)) or translate("CabinetWindow", "Your cabinet"),
        place=lambda _paper: Lying(own_path(), NONE_YET),
    )


def own_cabinet() -> tuple[Paper, Lying | None]:
    """The person's cabinet as it is typed, or a blank one that lies nowhere yet.

    Raises
    ------
    DocumentError
        If what stands there is no such file at all.
    """
    path = own_path()
    if not path.is_file():
        return blank(), None
    return paper_from_text(read_file(path), path.name), Lying(path, digest(path.read_bytes()))


class CabinetWindow(PaperWindow):
    """The cabinet; where there is none yet, a usual set to begin with."""

    _beginning: Button | None = None
    _blank: Paper | None = None

    def offer_a_beginning(self, size: str) -> None:
        """One press fills in a usual set; undo takes it out again."""
        words = (
            translate("CabinetWindow", "Begin with a usual set for a knee mill")
            if size == "knee"
            else translate("CabinetWindow", "Begin with a usual set for a bench mill")
        )
        self._beginning = Button(words, self.head)
        self._blank = self.history.paper
        self._beginning.clicked.connect(lambda: self._begin(size))
        self.head.buttons.insert(0, self._beginning)
        self._beginning.show()
        self.place()

    def show_paper(self, *, anew: bool = True) -> None:
        """A usual set is offered only where nothing stands that it would take the place of."""
        super().show_paper(anew=anew)
        if self._beginning is not None and (there := self.history.paper == self._blank) != (
            self._beginning in self.head.buttons
        ):
            self._beginning.setVisible(there)
            if there:
                self.head.buttons.insert(0, self._beginning)
            else:
                self.head.buttons.remove(self._beginning)
            self.place()

    def _begin(self, size: str) -> None:
        self.history.do(Replace(beginning(size), translate("CabinetWindow", "begin with a usual set")))
        self.say(
            translate(
                "CabinetWindow",
                "A beginning: look through it, strike out what you do not have, then save it.",
            )
        )
        self.column.focus_first()


def _size_of_the_machine(visit: Visit) -> str:
    """The class of the job's machine; the light one where that is not known."""
    reckoned = visit.desk.reckoned
    settings = list(reckoned.settings.values()) if reckoned is not None else []
    return settings[0].machine.stiffness_class if settings else ""


def open_cabinet(visit: Visit) -> PaperWindow | None:
    """The cabinet in a window of its own; None where its file cannot even be shown."""
    try:
        paper, lying = own_cabinet()
    except JobsheetError as error:
        ask.tell(visit.parent, str(error))
        return None
    made = CabinetWindow(_subject(), paper, lying, visit.parent)
    if lying is None:
        made.offer_a_beginning(_size_of_the_machine(visit))
    made.saved.connect(lambda _name: visit.tools_changed())
    made.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
    made.show()
    made.column.focus_first()
    return made
