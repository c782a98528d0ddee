"""The parts of the window that do something, made after the first figures, and who of them hears whom.

The actions of the menus name these parts.
"""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication, QPoint, QTimer
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMainWindow, QMenu

from jobsheet.gui.desk.answering import Answering
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.files import Files
from jobsheet.gui.desk.left_behind import left_behind
from jobsheet.gui.desk.place import Visit, Way
from jobsheet.gui.desk.problems_log import or_absent
from jobsheet.gui.desk.reading_through import ReadingThrough
from jobsheet.gui.desk.stage_work import Solids
from jobsheet.gui.edits.all_edits import Edits
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.panels import Panels
from jobsheet.gui.edits.photograph_edits import ENDINGS
from jobsheet.gui.pages.exporting import Exporting
from jobsheet.gui.strip.strip import Strip
from jobsheet.gui.window.bench import Bench
from jobsheet.gui.window.choosers import fill_machines, fill_recent, fill_samples
from jobsheet.gui.window.found_places import every_way, ways
from jobsheet.gui.window.job_file_watched import WatchedFile
from jobsheet.gui.window.later import Later
from jobsheet.gui.window.looks import Looks
from jobsheet.gui.window.stages_shown import StagesShown
from jobsheet.gui.window.told import Told
from jobsheet.gui.window.warming import Warming
from jobsheet.storage.disk_answers import AT_ONCE

if TYPE_CHECKING:
    from jobsheet.review.pages.one_page import Page

translate = QCoreApplication.translate
#: A disk that did not answer is asked for last time's outcomes again after so long [ms].
AGAIN = 2000


class Parts:
    """Everything that acts on the desk; `show` shows the whole job anew, `show_title` the title alone."""

    def __init__(
        self,
        desk: Desk,
        window: QMainWindow,
        bench: Callable[[], Bench],
        looks: Looks,
        later: Later,
        *,
        show: Callable[[], None],
        show_title: Callable[[], None],
    ) -> None:
        self.desk = desk
        self.looks = looks
        self.close = window.close
        self._bench = bench
        self._later = later
        self._show, self._show_title = show, show_title
        self.hand = Hand(desk, window, lambda: bench().column, self._say)
        self.edits = Edits(
            self.hand, later.soon, lambda remark: self.reading.now(remark, self._facts()), self._facts
        )
        self.files = Files(desk, window)
        self.exporting = Exporting(desk, window, self._say)
        self.reading = ReadingThrough(desk)
        self.solids = Solids(desk, self._facts_arrived)
        self.stages = StagesShown(self.hand, self.strip, self.solids)
        self.edits.rows.place_chosen = self._place_chosen
        self.edits.runs.recorded = self._proof_changed
        self.answering = Answering(desk, lambda: self.edits.rows.row, self._arrange)
        self._warming = Warming(later, window, self._warm_pages)
        self.ways = ways()
        self.told = Told(tuple(way for way in every_way() if way.menu != "help"), self.open_help)
        self.visit = Visit(
            desk=desk,
            parent=window,
            say=self._say,
            proof_changed=self._proof_changed,
            machines_changed=self._machines_changed,
            tools_changed=self._tools_changed,
            save=self.files.save,
            on=lambda: self.hand.set_up.key,
            at=lambda: self.hand.key,
            open_job=self.files.open_recent,
            show=self.hand.show,
            begin_exercise=self.files.begin_exercise,
            pages=self._own_pages,
        )
        self.hand.go = lambda id_: self.go(next(way for way in self.ways if way.id == id_))
        self.hand.open_card = self._open_card
        self.panels = Panels(
            self.hand, bench, lambda name: bench().title.cells[name], self.edits.rows.open_job
        )
        self.files.laid.connect(self._laid)
        self.files.begun.connect(self.edits.steps.insert_below)
        self.files.written.connect(self._written)
        self.watched = WatchedFile(self.hand, window, lambda path: self.files.open_recent(str(path)))
        self.panels.begin = self.files.begin
        self.panels.begin_from = self.files.begin_from
        self.files.made.connect(lambda: self.go(next(way for way in every_way() if way.id == "made")))
        self.files.said.connect(self._say)

    def _say(self, message: str) -> None:
        """Tell in the status line, and to a screen reader."""
        self._bench().status.say(message)

    def _place_chosen(self, place: int) -> None:
        """The cursor is in the row of a place: it is shown on the drawing."""
        if self._bench().strip is not None:
            self.strip().mark(place)

    def _arrange(self) -> None:
        """The open row has another height."""
        self.hand.ruled.arrange()

    def strip(self) -> Strip:
        """The strip of stages, made when it is first asked for."""
        bench = self._bench()
        if bench.strip is None:
            bench.make_strip().pressed.connect(self.edits.rows.open)
        return bench.make_strip()

    def _written(self) -> None:
        """The job was saved."""
        self._show_title()
        self.watched.settled()

    # --- after the figures ---

    def after_figures(self) -> None:
        """What may come once the figures are painted: what the machine has shown, the strip, the answers."""
        if not self.desk.reckoner.learns:
            self.desk.learn()
            self._show()
        if self.desk.settle():
            self._show()
            if self.desk.reckoner.behind:
                self._later.soon()
        or_absent(self.stages.refresh, None)
        self.answering.ask()
        self._later.rest()

    def when_rested(self) -> None:
        """Ask the rules, and show what they say where it is new; then the solids, so that
        the two do not wait for each other.
        """
        self._facts_arrived()
        self._look_at_runs()
        if self.desk.time_is_old:
            self.desk.reckon_all()
            self._show_title()
        self.stages.ask()
        self._warming.begin()

    def _warm_pages(self) -> None:
        """The pages of the job on the desk are made once beside the window; where they cannot be, nobody waits for them."""
        from jobsheet.errors import CommandError
        from jobsheet.gui.desk.job_pdf import sheets_to_make
        from jobsheet.gui.pages.pages_maker import MAKER

        with suppress(CommandError):
            MAKER.warm(sheets_to_make(self.desk))

    def _look_at_runs(self) -> None:
        """How the steps went the last time; where the disk is silent it is
        looked for later, and nobody waits.
        """
        path = self.desk.path
        if path is not None and not self.files.disk.within(path, AT_ONCE):
            QTimer.singleShot(AGAIN, self.desk, self._look_at_runs)
        elif self.desk.look_at_runs():
            self._show()

    def review(self) -> bool:
        """Ask the rules about the job as it is; whether what they say is new."""
        return self.reading.read(self._facts())

    def _facts(self) -> tuple[Any, ...] | None:
        """What the solids say of the job as it is, where they are there."""
        reckoned = self.desk.reckoned
        return self.solids.facts_about(reckoned) if reckoned is not None else None

    def _facts_arrived(self) -> None:
        """The rules are asked, also those that need the solids once these are there."""
        if self.review():
            self._show()

    # --- what was changed beside the job ---

    def _laid(self) -> None:
        """Another job lies on the desk: what was said of the last one is over."""
        ruled = self.hand.ruled
        self._say("")
        ruled.open(None)
        self._show()
        ruled.choose(next(iter(ruled.by_key), ""))
        self.watched.settled()
        self.edits.photographs.say_what_is_gone()
        self._forget()

    def _forget(self) -> None:
        """Nothing that was read or visited counts any more."""
        self.reading.forget()
        self.edits.walking.forget()
        self._later.soon()

    def _tools_changed(self) -> None:
        """The cabinet was saved: remarks about tools that lack are asked anew."""
        self._forget()

    def _machines_changed(self) -> None:
        """A card was saved: everything is reckoned anew, and a job planned with another card says so."""
        self.desk.reckon()
        self._show()
        self._forget()

    def _proof_changed(self) -> None:
        """A trial was recorded or struck out: verdicts follow at once."""
        self.desk.learn()
        self.desk.look_at_runs()
        self._machines_changed()

    # --- menus ---

    def go(self, way: Way) -> object:
        """Go to a place."""
        return way.open(self.visit)

    def _open_card(self, name: str) -> None:
        """The card of a machine, which need not be the job's."""
        from jobsheet.gui.places.card.card_window import open_card

        open_card(self.visit, name)

    def open_help(self, topic: str) -> None:
        """A page of the help; without one, that of what has the focus."""
        way = next(way for way in every_way() if way.menu == "help")
        way.open(replace(self.visit, about=topic))

    def _own_pages(self) -> tuple[Page, ...]:
        """Pages that only the window can make."""
        from jobsheet.gui.window.own_pages import own_pages

        return own_pages(self.told.keys())

    def fill_menu(self, name: str, menu: QMenu, actions: dict[str, QAction]) -> None:
        """Kinds, machines or samples."""
        menu.clear()
        if name == "[kinds]":
            self.edits.steps.fill_kinds(menu)
        elif name == "[machines]":
            fill_machines(menu, self.edits, actions, self.ways)
        elif name == "[recent]":
            fill_recent(menu, self.files.open_recent)
        elif name == "[samples]":
            fill_samples(menu, self.files.open_sample)

    # --- what a crash left behind ---

    def watch_for_files(self, window: QMainWindow) -> None:
        """What is let fall on the window is opened, once the job on the desk may go."""
        from jobsheet.gui.window.dropped import DroppedFiles

        DroppedFiles(window, self._dropped)

    def _dropped(self, path: Path, at: QPoint) -> None:
        """A picture goes to the set-up that it fell on, anything else is opened."""
        if path.suffix.lower() in ENDINGS:
            self.edits.photographs.take(path, self.hand.set_up_at(at))
        elif self.files.may_put_away():
            self.files.open_path(path)

    def offer_recovered(self) -> None:
        """Offer what a crash or a power cut left behind, above the first line."""
        left = left_behind()
        if left is None:
            return
        ruled = self.hand.ruled

        def done() -> None:
            self.hand.ruled.notice("", "", ())

        def recover() -> None:
            if not self.files.may_put_away():
                return
            entry = left.entry
            path = Path(entry.path) if entry.path else None
            self.files.lay(left.history(), path, entry.name, entry.digest or None)
            self.desk.recovered = True
            done()
            left.forget()
            self.files.keeping.write()
            self._show_title()

        def forget() -> None:
            left.forget()
            done()

        offers = ((translate("Files", "Open it"), recover), (translate("Files", "Throw it away"), forget))
        ruled.notice(next(iter(ruled.by_key), ""), left.words, offers)
