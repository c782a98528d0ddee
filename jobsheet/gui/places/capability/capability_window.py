"""The capability card of a machine, or of two side by side, as it prints: what each will
carry, and this job's minutes on it.
"""

from __future__ import annotations

from pathlib import Path

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from jobsheet.errors import JobsheetError, as_sentence
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Choices, Label, named
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink.look import look
from jobsheet.gui.pages.pages_view import PagesView
from jobsheet.storage.card_files import card_names, find_card

translate = QCoreApplication.translate


class CapabilityWindow(QDialog):
    """Machines and metals at the top, the page below; *Export PDF…*."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Capability", "What a machine will carry"))
        answer_f1(self)
        self._desk = desk
        self.pdf = b""
        self.view = PagesView(self)
        self.view.setAccessibleName(translate("Capability", "The card as it prints"))
        self.finished.connect(self.view.let_go)
        self.first, self.second = Choices(self), Choices(self)
        named(self.first, translate("Capability", "Machine"))
        named(self.second, translate("Capability", "Beside it"))
        self.second.offer(translate("Capability", "no other beside it"), "")
        for name in card_names():
            try:
                title = find_card(name).title
            except JobsheetError:
                continue  # a card that cannot be read is told where it is chosen
            self.first.offer(title, name)
            self.second.offer(title, name)
        self.first.setCurrentIndex(max(0, self.first.findData(desk.job.machine)))
        self.metals = QLineEdit(desk.job.material or "S235", self)
        self.metals.setAccessibleName(translate("Capability", "Metals, separated by commas"))
        hover(self.metals, translate("Capability", "such as S235, 6082-T6"))
        self.said = Label("", self)
        self._lay_out()
        for box in (self.first, self.second):
            box.currentIndexChanged.connect(self.make)
        self.metals.editingFinished.connect(self.make)
        self.make()

    def _lay_out(self) -> None:
        now = look()
        export = Button(translate("Capability", "Export PDF…"), self, Manner.FILLED)
        export.clicked.connect(self.export)
        close = Button(translate("Capability", "Close"), self)
        close.clicked.connect(self.reject)
        row = QHBoxLayout()
        for widget in (self.first, self.second, self.metals):
            row.addWidget(widget)
        row.addWidget(export)
        row.addWidget(close)
        whole = QVBoxLayout(self)
        whole.addLayout(row)
        whole.addWidget(self.said)
        whole.addWidget(self.view, 1)
        self.resize(now.px(1000), now.px(820))

    def make(self) -> None:
        """Reckon and draw the card of what is chosen."""
        from jobsheet.clock import today
        from jobsheet.reckoning.answers.capability_answer import capability
        from jobsheet.report.capability_card import capability_card
        from jobsheet.sheet.pdf import make_pdf

        names = [name for name in (self.first.currentData(), self.second.currentData()) if name]
        job = self._desk.job
        metals = tuple(part.strip() for part in self.metals.text().split(",") if part.strip())
        if len(names) == 2 and names[0] == names[1]:
            self.said.say(translate("Capability", "A machine beside itself says nothing: choose another."))
            return
        try:
            cards = [find_card(name) for name in names]
            found = capability(cards, metals or (job.material,), units=job.units, job=job)
            self.pdf = make_pdf((capability_card(found, date=today(), name="capability"),))
        except JobsheetError as error:
            self.said.say(as_sentence(error))
            return
        self.said.say("")
        self.view.show_pdf(self.pdf)

    def export(self) -> None:
        """Ask where, and write these very bytes."""
        from jobsheet.storage.exporting_files import export_file, file_name

        path = ask.export_path(
            self, Path.home() / file_name(f"capability-{self.first.currentData()}", ".pdf")
        )
        if path is None:
            return
        try:
            export_file(path, self.pdf)
            self.said.say(translate("Capability", "Saved as {name}.").format(name=path.name))
        except JobsheetError as error:
            ask.tell(self, str(error))
