"""The sheets on their way out: as a PDF where a person says, or into the window
in which they are looked at first.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.forms import ask

translate = QCoreApplication.translate


class Exporting:
    """Sheets of the job on the desk."""

    def __init__(self, desk: Desk, parent: QWidget, say: Callable[[str], None]) -> None:
        self._desk = desk
        self._parent = parent
        self._say = say

    def export_pdf(self) -> bool:
        """The sheets as a PDF that carries the job: the pages that this workshop always wants."""
        from jobsheet.gui.desk.job_pdf import make_sheets
        from jobsheet.storage.shop_file import workshop

        try:
            usual = workshop()
            pdf = make_sheets(self._desk, paper=usual.paper, wanted=usual.prints).pdf
        except JobsheetError as error:
            ask.tell(self._parent, str(error))
            return False
        return self.write(pdf)

    def write(self, pdf: bytes) -> bool:
        """Ask where, and put the sheets there."""
        desk = self._desk
        from jobsheet.storage.exporting_files import export_file, file_name
        from jobsheet.storage.kept.closed_plans import job_of

        name = file_name(desk.job.part.number, ".pdf")
        folder = (job_of(desk.path) or desk.path).parent if desk.path else Path.home()
        path = ask.export_path(self._parent, folder / name)
        if path is None:
            return False
        try:
            export_file(path, pdf)
        except JobsheetError as error:
            ask.tell(self._parent, str(error))
            return False
        from jobsheet.gui.desk.closing import close_printed

        said = translate("Files", "Sheets written to {name}.").format(name=path.name)
        self._say(" ".join(part for part in (said, close_printed(desk)) if part))
        return True

    def print_sheets(self) -> None:
        """Show the sheets as they will print."""
        if self._desk.reckoned is None:
            ask.tell(self._parent, self._desk.problem)
            return
        from jobsheet.gui.pages.print_window import PrintWindow

        try:
            window = PrintWindow(self._desk, self.write, self._parent)
        except JobsheetError as error:  # the workshop's own file says what is always printed
            ask.tell(self._parent, str(error))
            return
        window.open()
