"""The window: places the panels, and connects what they report to the desk.

Panels do not know each other. Everything that changes the job goes to the desk; the desk tells once what
changed, and the window shows it.
"""

from __future__ import annotations

import gc
from functools import cached_property
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QMainWindow

from jobsheet.edit.commands import SetField
from jobsheet.edit.history import Change
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.ink import look, waking
from jobsheet.gui.ink.look import Look
from jobsheet.gui.window import actions, settings
from jobsheet.gui.window.bench import Bench
from jobsheet.gui.window.title_cells import cells
from jobsheet.operations import registry, written

if TYPE_CHECKING:
    from PySide6.QtGui import QAction, QCloseEvent, QResizeEvent
    from PySide6.QtWidgets import QMenu, QWidget

    from jobsheet.gui.column.open_row import OpenRow
    from jobsheet.gui.desk.answering import Answering
    from jobsheet.gui.desk.files import Files
    from jobsheet.gui.desk.stage_work import Solids
    from jobsheet.gui.edits.row_edits import RowEdits
    from jobsheet.gui.forms.shown import Section
    from jobsheet.gui.strip.strip import Strip

translate = QCoreApplication.translate

#: The key of the form that belongs to no line: the job's own.
JOB = "job"


class Window(QMainWindow):
    """One job on one desk."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        desk.setParent(self)
        self.settings = settings.read()
        self._painted = False
        self._form = ""
        self.actions_by_id: dict[str, QAction] = {}
        actions.bar(self)
        self.bench = Bench(self)
        self.setCentralWidget(self.bench)
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(0)
        self._later.timeout.connect(self._after_paint)
        self._reading = QTimer(self)
        self._reading.setSingleShot(True)
        self._reading.setInterval(60)
        self._reading.timeout.connect(self._read_through)
        self._connect()
        desk.changed.connect(self._changed)
        self.show_job()
        self.resize(*self._first_size())

    @cached_property
    def edits(self) -> RowEdits:
        """What a person does to rows."""
        from jobsheet.gui.edits.row_edits import RowEdits

        return RowEdits(self)

    @cached_property
    def answering(self) -> Answering:
        """Asks for the answers to the open row."""
        from jobsheet.gui.desk.answering import Answering

        return Answering(self)

    @cached_property
    def solids(self) -> Solids:
        """The pictures of the stages from solids, made beside this thread."""
        from jobsheet.gui.desk.stage_work import Solids

        return Solids(self)

    @cached_property
    def files(self) -> Files:
        """Everything between the desk and the disk."""
        from jobsheet.gui.desk.files import Files

        return Files(self)

    def _first_size(self) -> tuple[int, int]:
        """As in the drawings, and never larger than the screen."""
        now = look.look()
        screen = QGuiApplication.primaryScreen()
        room = screen.availableSize() if screen else None
        width, high = now.px(1440), now.px(900)
        return (min(width, room.width()), min(high, room.height())) if room else (width, high)

    def _connect(self) -> None:
        """Hear what the panels report."""
        bench, ruled = self.bench, self.bench.column.ruled
        bench.title.pressed.connect(self._cell_pressed)
        ruled.open_wanted.connect(self.open_key)
        ruled.close_wanted.connect(self.close_row)
        ruled.stepped.connect(self._stepped)
        ruled.dropped.connect(self._dropped)
        ruled.chosen.connect(lambda _key: self.show_later())
        ruled.empty_pressed.connect(lambda key: self.edits.add(written.FACE, key))

    def _stepped(self, by: int) -> None:
        """Page Up or Page Down on the ruled."""
        self.edits.step(by)

    def _dropped(self, key: str, set_up: str, index: int) -> None:
        """A row was let go."""
        self.edits.drop(key, set_up, index)

    # --- showing ---

    @property
    def now(self) -> Look:
        """The look of the moment."""
        return look.look()

    @property
    def opened_key(self) -> str:
        """The key of what is open, or nothing."""
        opened = self.bench.column.ruled.opened
        return opened.key if opened is not None else ""

    @property
    def open_row(self) -> OpenRow | None:
        """The operation that is open."""
        opened = self.bench.column.ruled.opened
        if opened is None:
            return None
        from jobsheet.gui.column.open_row import OpenRow

        return opened if isinstance(opened, OpenRow) else None

    def show_job(self) -> None:
        """Show everything of the job on the desk."""
        self.bench.column.ruled.put(self.desk.views())
        self._refresh_open()
        self.refresh_title()

    def refresh_title(self) -> None:
        """The title block and the title of the window."""
        self.bench.title.put(cells(self.desk))
        part = self.desk.job.part
        name = part.number or part.name or translate("Window", "New job")
        self.setWindowTitle(translate("Window", "{name}[*] – job sheet").format(name=name))
        self.setWindowModified(self.desk.history.changed)
        if not self.actions_by_id:
            return
        history = self.desk.history
        for id_, can, label, words in (
            ("undo", history.can_undo, history.undo_label, translate("Window", "&Undo: {step}")),
            ("redo", history.can_redo, history.redo_label, translate("Window", "&Redo: {step}")),
        ):
            action = self.actions_by_id[id_]
            action.setEnabled(can)
            plain = translate("Window", "&Undo") if id_ == "undo" else translate("Window", "&Redo")
            action.setText(words.format(step=label) if can else plain)

    def _changed(self, change: Change) -> None:
        """An edit was made: show what it changed."""
        ruled = self.bench.column.ruled
        ruled.notice("", "", ())
        ruled.put(self.desk.views())
        opened = ruled.opened
        if opened is not None and opened.key != JOB and opened.key not in ruled.by_key:
            ruled.open(None)
        if change.before.job.units != change.after.job.units and opened is not None:
            # The unit a bare number takes stands in every box: make the form anew.
            key = opened.key
            ruled.open(None)
            self.open_key(key)
        self._refresh_open()
        self.refresh_title()
        self.files.journal_later()
        self.show_later()

    def _refresh_open(self) -> None:
        """Show the open form and its figures as they stand."""
        opened = self.bench.column.ruled.opened
        if opened is None:
            return
        row, desk = self.open_row, self.desk
        if row is not None:
            key = row.key
            row.put(desk.view(key), desk.operation_fields(key), desk.outcome(key), why_not=desk.why_not(key))
            row.say(desk.remarks_of(key), desk.reminders_of(key), desk.prints(key))
            row.suggest(desk.suggestions(key))
        else:
            self._refresh_header()
        self.bench.column.ruled.arrange()

    def _refresh_header(self) -> None:
        """Show the open form of the job or of a set-up as it stands."""
        from jobsheet.gui.column.header_form import HeaderForm

        opened = self.bench.column.ruled.opened
        if isinstance(opened, HeaderForm):
            opened.put(self._header_title(opened.key), self.desk.header_fields(self._sections(opened.key)))
            opened.say(self.desk.remarks_about(opened.key))

    def strip(self) -> Strip:
        """The strip of stages."""
        if self.bench.strip is None:
            self.bench.make_strip().pressed.connect(self.open_key)
        return self.bench.make_strip()

    def show_later(self) -> None:
        """Show what may come after the figures: never before the first of them are painted."""
        if self._painted:
            self._later.start()

    def _after_paint(self) -> None:
        """What may come after the figures are painted: strip, remarks."""
        if not self.actions_by_id:
            self._begin()
        if not self.desk.reckoner.learns:
            self.desk.learn()
            self.show_job()
        self.edits.refresh_strip()
        self.answering.ask()
        # Reading the whole plan through may take as long as two edits: it waits until the hand rests.
        self._reading.start()

    def _read_through(self) -> None:
        """Ask the rules, and show what they say where it is new; then the solids, so that the two do not wait for each other."""
        if self.edits.review():
            self.show_job()
        self.solids.ask(self.strip())

    def facts_arrived(self) -> None:
        """The solids are there: the rules that need them are asked too."""
        if self.edits.review():
            self.show_job()

    def _begin(self) -> None:
        """Once, right after the first painting: keys and menus, and what a crash left behind."""
        gc.enable()
        gc.freeze()
        waking.wake()
        self.actions_by_id = actions.make(self)
        actions.fill(self, self.actions_by_id, self)
        self.menuBar().setStyleSheet(look.menu_style(look.look()))
        self._check_look()
        self.bench.update()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)
            app.styleHints().colorSchemeChanged.connect(self._system_changed)
        self.refresh_title()
        self.files.offer_recovered()
        if self.focusWidget() is None or not self.opened_key:
            self.bench.column.ruled.focus_line(self.bench.column.ruled.chosen_key)

    def _focus_moved(self, _old: QWidget | None, new: QWidget | None) -> None:
        """Whatever has the focus is in view."""
        self.desk.history.break_merge()
        if new is not None:
            self.bench.column.reveal_widget(new)

    def _system_changed(self, scheme: QtCore.Qt.ColorScheme) -> None:
        """Follow the system into the dark or out of it, where that is the choice."""
        look.system_changed(dark=scheme == QtCore.Qt.ColorScheme.Dark)
        if self.settings.scheme == "system":
            look.apply("system", bench=self.settings.bench)
            self.rebuild()

    def _check_look(self) -> None:
        """Mark the choices of View."""
        for id_ in ("system", "light", "dark"):
            self.actions_by_id[id_].setChecked(self.settings.scheme == id_)
        self.actions_by_id["bench"].setChecked(self.settings.bench)

    # --- opening and closing ---

    def open_key(self, key: str) -> None:
        """Open a row or a heading in place, and close what was open."""
        ruled = self.bench.column.ruled
        if key == self.opened_key:
            return
        ruled.open(None)
        if key == JOB or self.desk.set_up(key) is not None:
            self._open_header(key)
        elif key in ruled.by_key:
            self._open_operation(key)
        self.desk.history.focus(self.opened_key)
        self.bench.column.reveal(key)
        self.show_later()

    def _open_operation(self, key: str) -> None:
        """The form of an operation."""
        from jobsheet.gui.column.open_row import OpenRow

        _, operation = self.desk.job.find(key)
        kind = registry.kind(operation.kind)
        width = self.bench.column.ruled.width()
        self._form = self.now.form(width + self.now.px(18))
        row = OpenRow(self.desk.view(key), kind, self.desk.job.units, self._form, self.bench.column.ruled)
        row.typed.connect(lambda name, text: self.desk.type(SetField(key, name, text)))
        row.mended.connect(self.edits.mend)
        row.dismissed.connect(self.edits.dismiss)
        row.previewed.connect(self.edits.preview)
        row.offered.connect(lambda edits: self.edits.take(key, edits))
        row.closed.connect(lambda _key: self.close_row())
        desk = self.desk
        row.put(desk.view(key), desk.operation_fields(key), desk.outcome(key), why_not=desk.why_not(key))
        row.say(desk.remarks_of(key), desk.reminders_of(key), desk.prints(key))
        row.suggest(desk.suggestions(key))
        self.bench.column.ruled.open(row)
        row.form.focus_first()

    def _sections(self, key: str) -> tuple[Section, ...]:
        """The sections of the job's form or of a set-up's."""
        return self.desk.job_sections() if key == JOB else self.desk.set_up_sections(key)

    def _header_title(self, key: str) -> str:
        """The title over the job's form or a set-up's."""
        if key == JOB:
            return translate("Window", "Part, stock and machine")
        set_up = self.desk.set_up(key)
        number = set_up.number if set_up else 0
        return translate("Window", "Set-up {number}").format(number=number)

    def _open_header(self, key: str) -> None:
        """The form of the job or of a set-up."""
        from jobsheet.gui.column.header_form import HeaderForm

        sections = self._sections(key)
        form = HeaderForm(
            key,
            self._header_title(key),
            sections,
            self.desk.job.units,
            translate("Window", "Close"),
            self.bench.column.ruled,
        )
        form.put(self._header_title(key), self.desk.header_fields(sections))
        form.say(self.desk.remarks_about(key))
        form.mended.connect(self.edits.mend)
        form.dismissed.connect(self.edits.dismiss)
        form.previewed.connect(self.edits.preview)
        form.typed.connect(self._header_typed)
        form.closed.connect(lambda _key: self.close_row())
        self.bench.column.ruled.open(form)
        form.focus_first()

    def _header_typed(self, owner: str, name: str, text: str) -> None:
        """Something was typed into the job's form or a set-up's."""
        self.desk.type(SetField(owner, name, text))

    def close_row(self) -> None:
        """Close what is open; the keyboard goes to its line."""
        ruled = self.bench.column.ruled
        key = self.opened_key
        ruled.open(None)
        self.desk.history.focus("")
        ruled.focus_line(key if key in ruled.by_key else ruled.chosen_key)
        self.show_later()

    def toggle_row(self) -> None:
        """Open the chosen row, or close what is open."""
        if self.opened_key:
            self.close_row()
        else:
            self.open_key(self.bench.column.ruled.chosen_key)

    def _cell_pressed(self, name: str) -> None:
        """A cell of the title block leads to what it is about."""
        if name in ("part", "machine", "material", "time"):
            self.edit_job()
        elif name == "review":
            self.edits.next_remark()
        elif name == "file":
            self.files.save()
        elif name == "print":
            self.files.print_sheets()

    def edit_job(self) -> None:
        """Open the form of the title block."""
        self.open_key(JOB)

    def show_fits(self) -> None:
        """The job on another machine, in a window of its own."""
        from jobsheet.gui.places.fits.fits_window import FitsWindow

        FitsWindow(self).open()

    def next_moment(self) -> None:
        """The large drawing shows the work after its step, before it, or the stock, in turn."""
        strip = self.strip()
        order = ("after", "before", "stock")
        strip.moment = order[(order.index(strip.moment) + 1) % len(order)]
        words = {
            "after": translate("Window", "The work after this step."),
            "before": translate("Window", "The work before this step."),
            "stock": translate("Window", "The stock, as it lies in this set-up."),
        }
        self.say(words[strip.moment])
        self.edits.refresh_strip()
        self.solids.ask(strip)

    def show_capability(self) -> None:
        """What the machine will carry, as a card."""
        from jobsheet.gui.places.capability.capability_window import CapabilityWindow

        CapabilityWindow(self).open()

    def prove(self) -> None:
        """The proving place."""
        from jobsheet.gui.places.proving.proving_window import ProvingWindow

        ProvingWindow(self).show()

    def proof_changed(self) -> None:
        """A trial was recorded or struck out: verdicts follow at once."""
        self.desk.learn()
        self.machines_changed()

    def edit_card(self) -> None:
        """The card of the job's machine, in a window of its own."""
        from jobsheet.gui.places.papers.card_window import open_card

        open_card(self, self.desk.job.machine)

    def new_card(self) -> None:
        """A card for a machine of which nothing is known yet."""
        from jobsheet.gui.places.papers.card_window import new_card

        new_card(self)

    def edit_cabinet(self) -> None:
        """The person's own cabinet, in a window of its own."""
        from jobsheet.gui.places.papers.cabinet_window import open_cabinet

        open_cabinet(self)

    def machines_changed(self) -> None:
        """A card was saved: everything is reckoned anew, and a job planned with another card says so."""
        self.desk.reckon()
        self.edits.forget()
        self.show_job()
        self.show_later()

    def say(self, message: str) -> None:
        """Tell in the status line, and to a screen reader."""
        self.bench.status.say(message)

    def fill_menu(self, name: str, menu: QMenu) -> None:
        """Fill a menu that depends on what there is."""
        self.edits.fill_menu(name, menu)

    # --- look ---

    def look_system(self) -> None:
        """Light or dark as the system asks."""
        self._set_look(settings.Settings("system", self.settings.bench))

    def look_light(self) -> None:
        """Light."""
        self._set_look(settings.Settings("light", self.settings.bench))

    def look_dark(self) -> None:
        """Dark."""
        self._set_look(settings.Settings("dark", self.settings.bench))

    def bench_size(self) -> None:
        """Everything half as large again, or back."""
        self._set_look(settings.Settings(self.settings.scheme, not self.settings.bench))

    def _set_look(self, chosen: settings.Settings) -> None:
        """Keep a choice and show it."""
        self.settings = chosen
        self._check_look()
        settings.write(chosen)
        look.apply(chosen.scheme, bench=chosen.bench)
        self.rebuild()

    def rebuild(self) -> None:
        """Make all panels anew in the look of the moment; job, history and the open row stay."""
        opened = self.opened_key
        chosen = self.bench.column.ruled.chosen_key
        self.menuBar().setStyleSheet(look.menu_style(look.look()))
        self.bench = Bench(self)
        self.setCentralWidget(self.bench)
        self._connect()
        self.show_job()
        self.bench.column.ruled.choose(chosen)
        if opened:
            self.open_key(opened)
        self.show_later()

    # --- events ---

    def event(self, event: QEvent) -> bool:
        """The first painting starts what may come after it."""
        done = super().event(event)
        if event.type() == QEvent.Type.Paint and not self._painted:
            self._painted = True
            self._later.start()
        return done

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """A form made for another layout is made anew."""
        super().resizeEvent(event)
        key = self.opened_key
        if self.open_row is not None:
            form = self.now.form(self.bench.column.ruled.width() + self.now.px(18))
            if form != self._form:
                self.bench.column.ruled.open(None)
                self._open_operation(key)

    def _editors_closed(self) -> bool:
        """Whether every card or cabinet that is being edited could be put away; each asks for itself."""
        open_ones = [one for one in self.findChildren(QMainWindow) if one.isVisible()]
        return all(one.close() for one in open_ones)

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Nothing unsaved is put away without being asked for."""
        if self._editors_closed() and self.files.may_put_away():
            self.files.journal.clear()
            if "solids" in self.__dict__:
                self.solids.halt()
            event.accept()
        else:
            event.ignore()
