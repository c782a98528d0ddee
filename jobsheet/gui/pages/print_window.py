"""The sheets as they will print: pages at the left, at the right which pages, and what
has to be read and initialled first.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QSize, QTimer
from PySide6.QtGui import QPageSize, QPainter
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.job_pdf import sheets_to_make, stop_notes
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.gui.pages.page_choice import PageChoice
from jobsheet.gui.pages.pages_maker import Answer
from jobsheet.gui.pages.pages_view import PagesView
from jobsheet.gui.pages.pages_work import PagesWork
from jobsheet.model.remark import Note
from jobsheet.report.plan import Initials
from jobsheet.storage.kept.workshop_kept import keep_prints
from jobsheet.storage.shop_file import workshop

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

translate = QCoreApplication.translate
#: Paper as the sheets know it -> as a person says it, and as the printer knows it.
PAPERS = {"a4": "A4", "letter": "Letter"}
_SIZES = {"a4": QPageSize.PageSizeId.A4, "letter": QPageSize.PageSizeId.Letter}
DOTS_PER_INCH = 300
#: How long the hand rests before the pages are made anew [ms].
QUIET = 300


class PrintWindow(QDialog):
    """Preview, initials, paper; *Print…* and *Export PDF…*."""

    def __init__(self, desk: Desk, write: Callable[[bytes], bool], parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Print", "Print sheets"))
        self._desk = desk
        self._write = write
        self.pdf = b""
        self.view = PagesView(self)
        self.view.setAccessibleName(translate("Print", "The pages as they will print"))
        self.finished.connect(self.view.let_go)
        self._work = PagesWork(self, self._show)
        self.finished.connect(self._work.halt)
        #: By the cause: one box however many steps it stands at, as on paper.
        self.initials: dict[str, QLineEdit] = {}
        self._causes: dict[str, list[Note]] = {}
        self.paper = QComboBox(self)
        self.paper.setAccessibleName(translate("Print", "Paper"))
        for name, words in PAPERS.items():
            self.paper.addItem(words, name)
        usual = workshop()
        self.paper.setCurrentIndex(self.paper.findData(usual.paper))
        self.choice = PageChoice(usual.prints, self)
        self.working = QCheckBox(translate("Print", "With the working of every figure"), self)
        self.working.setAccessibleName(self.working.text())
        self.count = Label("", self)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(QUIET)
        self._timer.timeout.connect(self.make)
        self._lay_out()
        self.paper.currentIndexChanged.connect(self.make)
        self.working.toggled.connect(self.make)
        self.choice.changed.connect(self.make)
        self.choice.typed.connect(self._timer.start)
        self.make()

    def _lay_out(self) -> None:
        """Pages left, what is asked right."""
        now = look()
        side = QVBoxLayout()
        side.setSpacing(now.px(8))
        side.addWidget(self.paper)
        side.addWidget(self.choice)
        side.addWidget(self.working)
        self.always = Button(translate("Print", "Always print these"), self, Manner.LINK)
        self.always.clicked.connect(self.keep)
        side.addWidget(self.always)
        side.addWidget(self.count)
        notes = stop_notes(self._desk)
        if notes:
            side.addWidget(self._stops(notes), 1)
        else:
            side.addStretch(1)
        self.out = (
            Button(translate("Print", "Print…"), self, Manner.FILLED),
            Button(translate("Print", "Export PDF…"), self),
        )
        for button, slot in zip(self.out, (self.print, self.export), strict=True):
            button.clicked.connect(slot)
        close = Button(translate("Print", "Close"), self)
        close.clicked.connect(self.reject)
        row = QHBoxLayout()
        for button in (*self.out, close):
            row.addWidget(button)
        row.addStretch(1)
        side.addLayout(row)
        whole = QHBoxLayout(self)
        whole.addWidget(self.view, 3)
        whole.addLayout(side, 2)
        self.resize(now.px(1100), now.px(760))

    def _stops(self, notes: tuple[Note, ...]) -> QWidget:
        """Each cause of stop notes with a box for the initials of whoever has
        read it, and the steps it stands at.
        """
        now = look()
        inside = QWidget(self)
        column = QVBoxLayout(inside)
        head = Label(
            translate("Print", "Read before cutting. Without initials the sheets print NOT ACKNOWLEDGED."),
            inside,
        )
        head.setFont(now.bold)
        column.addWidget(head)
        for note in notes:
            self._causes.setdefault(note.id, []).append(note)
        for some in self._causes.values():
            note = some[0]
            text = Label(
                " ".join(word for word in (note.text.replace("*", ""), self._where(some)) if word), inside
            )
            box = QLineEdit(inside)
            box.setMaxLength(12)
            box.setPlaceholderText(translate("Print", "initials"))
            box.setAccessibleName(translate("Print", "Initials for: {note}").format(note=note.text))
            box.textEdited.connect(lambda _text: self._timer.start())
            self.initials[note.id] = box
            column.addWidget(text)
            column.addWidget(box)
        column.addStretch(1)
        area = QScrollArea(self)
        area.setWidgetResizable(True)
        area.setWidget(inside)
        return area

    def _where(self, some: list[Note]) -> str:
        """The steps at which a cause stands; nothing where it is about a set-up or the whole job."""
        keys = {note.operation for note in some if note.operation}
        numbers = [
            str(operation.number) for _, operation in self._desk.job.operations() if operation.key in keys
        ]
        if not numbers:
            return ""
        words = (
            translate("Print", "(step {steps})")
            if len(numbers) == 1
            else translate("Print", "(steps {steps})")
        )
        return words.format(steps=", ".join(numbers))

    def make(self) -> None:
        """Have the pages made as things stand, and shown when they are there:
        the window does not wait for them.
        """
        given = tuple(
            Initials(note=note.id, by=box.text().strip(), operation=note.operation, set_up=note.set_up)
            for cause, box in self.initials.items()
            for note in self._causes[cause]
            if box.text().strip()
        )
        try:
            to_make = sheets_to_make(
                self._desk,
                paper=str(self.paper.currentData()),
                working=self.working.isChecked(),
                initials=given,
                wanted=self.choice.wanted(),
            )
        except JobsheetError as error:
            self._work.halt()
            self._nothing(str(error))
            return
        # The pages before stay in sight until the new ones are there, but are no longer printed.
        self.pdf = b""
        busy = translate("Print", "The pages are being made.")
        for button in self.out:
            button.why_not(busy)
        self.count.say(busy)
        self._work.ask(to_make)

    @property
    def waiting(self) -> bool:
        """Whether pages are being made."""
        return self._work.waiting

    def _show(self, made: Answer) -> None:
        """The pages that were asked for last, or why there are none."""
        if isinstance(made, str):
            self._nothing(made)
            return
        self.pdf = made.pdf
        for button in (*self.out, self.always):
            button.why_not("")
        self.view.show_pdf(self.pdf)
        pages = self.view.count
        words = (
            translate("Print", "1 page")
            if pages == 1
            else translate("Print", "{count} pages").format(count=pages)
        )
        if self._desk.history.drafts:
            words = translate(
                "Print", "{pages}; fields that cannot be read print their last good values."
            ).format(pages=words)
        self.count.say("\n".join((words, *made.left_out)))

    def _nothing(self, why: str) -> None:
        """There are no pages: none that were made before are shown or printed in their place."""
        self.pdf = b""
        self.view.show_none()
        self.count.say(why)
        for button in (*self.out, self.always):
            button.why_not(why)

    def keep(self) -> None:
        """Keep these pages and this paper for every job of this workshop."""
        try:
            keep_prints(self.choice.wanted(), str(self.paper.currentData()))
        except JobsheetError as error:
            ask.tell(self, str(error))
            return
        self.count.say(translate("Print", "Kept: this workshop always prints these pages, on this paper."))

    def export(self) -> None:
        """Ask where, and write these very bytes."""
        if self._write(self.pdf):
            self.accept()

    def print(self) -> None:
        """Ask which printer, and paint the pages on it."""
        # Late: asking the system for its printers takes longer than to open this window.
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setResolution(DOTS_PER_INCH)
        printer.setFullPage(True)
        printer.setPageSize(QPageSize(_SIZES[str(self.paper.currentData())]))
        dialog = QPrintDialog(printer, self)
        dialog.setMinMax(1, self.view.count)
        if dialog.exec() == QDialog.DialogCode.Accepted:
            try:
                self.paint_pages(printer, dialog.fromPage(), dialog.toPage())
            except JobsheetError as error:
                ask.tell(self, str(error))
                return
            from jobsheet.gui.desk.closing import close_printed

            if unclosed := close_printed(self._desk):
                ask.tell(self, unclosed)
            self.accept()

    def paint_pages(self, printer: QPrinter, first: int = 0, last: int = 0) -> None:
        """Every page from the first to the last (all, where they are nought), each on a sheet of paper."""
        pages = self.view.pages
        if pages is None:
            return
        painter = QPainter()
        if not painter.begin(printer):
            from jobsheet.errors import CannotWrite

            raise CannotWrite(translate("Print", "The printer does not answer; export a PDF instead."))
        scale = printer.resolution() / 72
        start = max(1, first)
        try:
            for page in range(start, (last or len(pages)) + 1):
                if page > start:
                    printer.newPage()
                size = pages.sizes[page - 1]
                dots = QSize(round(size.width() * scale), round(size.height() * scale))
                painter.drawImage(0, 0, pages.picture(page - 1, dots))
        finally:
            painter.end()
