"""The panels under the title block: which one is open, and what is done with what is taken there."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QPoint
from PySide6.QtWidgets import QWidget

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job

if TYPE_CHECKING:
    from jobsheet.gui.choosing.new_job_panel import NewJobPanel
    from jobsheet.gui.choosing.panel import Panel
    from jobsheet.gui.edits.new_job import FourLines

translate = QCoreApplication.translate


class Panels:
    """At most one is open; `cell` is the cell of the title block that one hangs
    under, `ground` what both lie on.
    """

    def __init__(
        self,
        hand: Hand,
        ground: Callable[[], QWidget],
        cell: Callable[[str], QWidget],
        job_form: Callable[[], None],
    ) -> None:
        self._hand = hand
        self._ground = ground
        self._cell = cell
        self._job_form = job_form
        self.open: Panel | None = None
        #: Puts a new job on the desk, and says whether it lies there.
        self.begin: Callable[[Job], bool] = lambda _job: False
        self.begin_from: Callable[[Job, Job], bool] = lambda _job, _other: False
        hand.desk.changed.connect(lambda _change: self.leave())

    def leave(self) -> None:
        """The job is another now: what hangs there speaks of one that is gone."""
        panel, self.open = self.shown, None
        if panel is not None:
            panel.leave(back=False)

    def _hang(self, name: str) -> Callable[[], tuple[int, int]]:
        def place() -> tuple[int, int]:
            cell, ground = self._cell(name), self._ground()
            title = cell.parentWidget() or cell
            below = title.mapTo(ground, QPoint(0, title.height())).y()
            return cell.mapTo(ground, QPoint(0, 0)).x() if cell.isVisible() else 0, below

        return place

    @property
    def shown(self) -> Panel | None:
        """The one that hangs there now."""
        from shiboken6 import isValid

        panel = self.open
        return panel if panel is not None and isValid(panel) and panel.isVisible() else None

    def _is_open(self, name: str) -> bool:
        """Whether that panel is open already: asking for it again leaves it."""
        panel = self.shown
        if panel is None:
            return False
        panel.leave(back=True)
        return panel.objectName() == name

    # --- material ---

    def material(self) -> None:
        """The panel of materials."""
        if self._is_open("material"):
            return
        from jobsheet.gui.choosing.material_panel import MaterialPanel
        from jobsheet.gui.edits.material_choice import materials_listed

        planned = self._hand.desk.job.material
        try:
            found = materials_listed("", planned)
        except JobsheetError as error:
            ask.tell(self._hand.parent, str(error))
            return
        key = next((listed.key for listed in found if listed.beside == translate("Choosing", "planned")), "")
        panel = MaterialPanel(
            self._ground(),
            self._hang("material"),
            lambda typed: materials_listed(typed, planned),
            key,
        )
        panel.taken.connect(self._take_material)
        panel.own_wanted.connect(self._own_material)
        panel.stock_wanted.connect(self._job_form)
        self._show(panel, "material", panel.line)

    def _take_material(self, name: str) -> None:
        hand = self._hand
        if hand.do(SetField("job", "material", name)):
            hand.say(translate("Choosing", "Material: {name}.").format(name=name))

    def _own_material(self, name: str, like: str) -> None:
        """Begin a file for it, and plan with it."""
        from jobsheet.storage.kept.begun_material import begin_material

        hand = self._hand
        try:
            path = begin_material(name, like)
        except JobsheetError as error:
            ask.tell(hand.parent, str(error))
            return
        if hand.do(SetField("job", "material", " ".join(name.split()))):
            words = translate("Choosing", "{name} begins with the figures of {like}; refine them in {path}.")
            hand.say(words.format(name=name, like=like, path=path))

    # --- machine ---

    def machine(self) -> None:
        """The panel of machines."""
        if self._is_open("machine"):
            return
        from jobsheet.gui.choosing.machine_panel import MachinePanel
        from jobsheet.gui.edits.machine_choice import MachineLook, machines

        desk = self._hand.desk
        looks = MachineLook(desk)
        panel = MachinePanel(self._ground(), self._hang("machine"), machines(), desk.job.machine, looks)
        panel.taken.connect(lambda name: self._plan_for(looks.fits.get(name), name))
        panel.new_wanted.connect(lambda: self._hand.go("new-card"))
        panel.card_wanted.connect(self._open_card)
        self._show(panel, "machine", panel)

    def _plan_for(self, fit: object, name: str) -> None:
        """Plan the job for it: one edit, for the job as it is now."""
        from jobsheet.edit.plan_for import PlanFor
        from jobsheet.reckoning.answers.fits_answer import Fit, fits

        hand = self._hand
        try:
            known = fit if isinstance(fit, Fit) and fit.job is hand.desk.job else fits(hand.desk.job, name)
        except JobsheetError as error:
            ask.tell(hand.parent, str(error))
            return
        if hand.do(PlanFor(known.other, known.machine.title)):
            hand.say(translate("Fits", "Planned for {machine}.").format(machine=known.machine.title))

    def _open_card(self, name: str) -> None:
        """The card that is looked at, which need not be the job's."""
        self._hand.open_card(name)

    # --- a new job ---

    def new_job(self) -> None:
        """Four lines; nothing of the job on the desk is touched before it begins."""
        self._four_lines(copies=False)

    def make_from(self) -> None:
        """The same four lines for a new part that is made from the job on the desk."""
        self._four_lines(copies=True)

    def _four_lines(self, *, copies: bool) -> None:
        if self._is_open("part"):
            return
        from jobsheet.gui.choosing.new_job_panel import NewJobPanel
        from jobsheet.gui.edits.new_job import ENTRIES, FourLines
        from jobsheet.gui.edits.picking import Picking

        lines = FourLines(self._hand.desk.job, copies=copies)
        panel = NewJobPanel(self._ground(), self._hang("part"), ENTRIES, lines.units, copies=copies)

        def write(_owner: str, name: str, text: str) -> None:
            lines.type(name, text)
            panel.put(lines.shown())

        picking = Picking(self._hand, write)

        def typed(name: str, text: str) -> None:
            write("", name, text)
            if panel.form.fields[name].listed:
                picking.typed("", panel.form.fields[name])

        panel.typed.connect(typed)
        panel.picks_wanted.connect(lambda name: picking.ask("", panel.form.fields[name]))
        panel.closed.connect(picking.leave)
        panel.begun.connect(lambda: self._begin(panel, lines))
        panel.put(lines.shown())
        self._show(panel, "part", panel.form.fields["part"].box)

    def _begin(self, panel: NewJobPanel, lines: FourLines) -> None:
        """Begin, or go to the line that is wrong."""
        if lines.problem:
            panel.put(lines.shown(asked=True))
            panel.form.fields[lines.problem].box.setFocus()
            return
        try:
            job = lines.job()
        except JobsheetError as error:
            ask.tell(self._hand.parent, str(error))
            return
        begun = self.begin(job) if lines.like is None else self.begin_from(job, lines.like)
        if begun:
            panel.leave(back=False)

    # --- both ---

    def _show(self, panel: Panel, name: str, hand_on: QWidget) -> None:
        panel.setObjectName(name)
        self.open = panel
        panel.hang()
        hand_on.setFocus()
