"""The window: places the panels, and connects what they report to the desk.

Panels do not know each other. Everything that changes the job goes to the desk; the desk tells once what
changed, and the window shows it. What is done by hand stands in `edits`; the window only makes the parts and
says who hears what. None of them is made before the first figures are painted.
"""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QTimer
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QMainWindow

from jobsheet.edit.history import Change
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.forms.plain_words import window_title
from jobsheet.gui.ink import look
from jobsheet.gui.window import actions
from jobsheet.gui.window.bench import Bench
from jobsheet.gui.window.later import Later
from jobsheet.gui.window.looks import Looks
from jobsheet.gui.window.title_cells import cells
from jobsheet.operations import written

if TYPE_CHECKING:
    from PySide6.QtCore import QPoint
    from PySide6.QtGui import QAction, QCloseEvent, QResizeEvent
    from PySide6.QtWidgets import QMenu, QWidget

    from jobsheet.gui.column.open_row import OpenRow
    from jobsheet.gui.strip.strip import Strip
    from jobsheet.gui.window.parts import Parts

translate = QCoreApplication.translate


class Window(QMainWindow):
    """One job on one desk."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.desk = desk
        desk.setParent(self)
        self.looks = Looks(self.rebuild)
        self.later = Later(self)
        self.later.painted.connect(self._after_paint)
        self.later.rested.connect(self._read_through)
        self.later.meant.connect(self._meant)
        self.actions_by_id: dict[str, QAction] = {}
        self._cursor_in: QWidget | None = None
        actions.bar(self)
        self.bench = Bench(self)
        self.setCentralWidget(self.bench)
        self._connect()
        desk.changed.connect(self._changed)
        self.show_job()
        self.resize(*self._first_size())

    @cached_property
    def parts(self) -> Parts:
        """What acts on the desk; nothing of it is needed for the first figures."""
        from jobsheet.gui.window.parts import Parts

        return Parts(
            self.desk,
            self,
            lambda: self.bench,
            self.looks,
            self.later,
            show=self.show_job,
            show_title=self.show_title,
        )

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
        ruled.menu_wanted.connect(self._row_menu)
        ruled.chosen.connect(lambda _key: self.later.soon())
        ruled.recent_pressed.connect(self._recent_pressed)
        ruled.empty_pressed.connect(lambda key: self.parts.edits.steps.add(written.FACE, key))

    def _recent_pressed(self, path: str) -> None:
        """One of the last jobs."""
        self.parts.files.open_recent(path)

    def _stepped(self, by: int) -> None:
        """Page Up or Page Down on the list."""
        self.parts.edits.stepping.step(by)

    def _dropped(self, keys: tuple[str, ...], set_up: str, index: int) -> None:
        """Rows were let go."""
        self.parts.edits.steps.drop(keys, set_up, index)

    def _row_menu(self, at: QPoint) -> None:
        """What can be done to what is chosen."""
        from jobsheet.gui.window.row_menu import row_menu

        row_menu(self, self.parts.hand, self.actions_by_id).popup(at)

    def _cell_pressed(self, name: str) -> None:
        """A cell of the title block leads to what it is about."""
        if name == "machine":
            self.parts.panels.machine()
        elif name == "material":
            self.parts.panels.material()
        elif name in ("part", "time"):
            self.parts.edits.rows.open_job()
        elif name == "review":
            self.parts.edits.walking.next_remark()
        elif name == "file":
            self.parts.files.save()
        elif name == "print":
            self.parts.exporting.print_sheets()

    # --- help ---

    def open_help(self, topic: str) -> None:
        """A page of the help."""
        self.parts.open_help(topic)

    def help_topic(self) -> str:
        """The kind of the step that is chosen, where nothing nearer has a page."""
        key = self.parts.hand.key
        return f"kind:{self.desk.job.find(key)[1].kind}" if key else "keys"

    # --- what is open ---

    @property
    def opened_key(self) -> str:
        """The key of what is open, or nothing."""
        opened = self.bench.column.ruled.opened
        return opened.key if opened is not None else ""

    @property
    def open_row(self) -> OpenRow | None:
        """The operation that is open."""
        return self.parts.edits.rows.row if self.opened_key else None

    def open_key(self, key: str) -> None:
        """Open a row or a heading in place, and close what was open."""
        self.parts.edits.rows.open(key)

    def close_row(self) -> None:
        """Close what is open; the keyboard goes to its line."""
        self.parts.edits.rows.close()

    # --- showing ---

    def show_job(self) -> None:
        """Show everything of the job on the desk."""
        self.bench.column.ruled.put(self.desk.views())
        if self.opened_key:
            self.parts.edits.rows.refresh()
        self.show_title()

    def show_title(self) -> None:
        """The title block, the title of the window, and what can be taken back."""
        self.bench.title.put(cells(self.desk))
        part = self.desk.job.part
        name = part.number or part.name or translate("Window", "New job")
        self.setWindowTitle(translate("Window", "{name}[*] – job sheet").format(name=window_title(name)))
        self.setWindowModified(self.desk.history.changed)
        if self.actions_by_id:
            actions.name_history(self.actions_by_id, self.desk.history)

    def _changed(self, change: Change) -> None:
        """An edit was made: show what it changed. What was said of the job before may no longer be true."""
        ruled = self.bench.column.ruled
        if self.bench.status.message:
            self.bench.status.say("")
        ruled.notice("", "", ())
        ruled.put(self.desk.views())
        self.parts.edits.rows.changed(change)
        self.show_title()
        self.parts.files.keeping.later()
        if self.desk.typing:
            self.later.typing()
            self.parts.answering.wait()
        else:
            self.later.soon()

    def _meant(self) -> None:
        """What was typed is meant."""
        self.desk.history.confirm()

    def strip(self) -> Strip:
        """The strip of stages."""
        return self.parts.strip()

    def _after_paint(self) -> None:
        """What may come after the figures are painted."""
        if not self.actions_by_id:
            self._begin()
        self.parts.after_figures()

    def _read_through(self) -> None:
        """The hand rests."""
        self.parts.when_rested()

    def _begin(self) -> None:
        """Once, right after the first painting: keys and menus, and what a crash left behind."""
        from jobsheet.gui.window.found_places import every_way

        parts = self.parts
        self.actions_by_id = actions.make(self, parts, every_way(), parts.go)
        actions.fill(self, self.actions_by_id, self.fill_menu)
        actions.dress(self)
        self.looks.follow(self.actions_by_id)
        self.bench.update()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_moved)
        self.show_title()
        parts.watch_for_files(self)
        parts.offer_recovered()
        QTimer.singleShot(0, self, parts.files.ask_for_drawing)  # where the program itself opened a job
        parts.edits.photographs.say_what_is_gone()
        parts.watched.settled()
        if self.focusWidget() is None or not self.opened_key:
            self.bench.column.ruled.focus_line(self.bench.column.ruled.chosen_key)

    def fill_menu(self, name: str, menu: QMenu) -> None:
        """Fill a menu that depends on what there is."""
        self.parts.fill_menu(name, menu, self.actions_by_id)

    def _focus_moved(self, _old: QWidget | None, new: QWidget | None) -> None:
        """Whatever has the focus is in view; what is being pressed is, and would slip from under the hand."""
        if new is None or new is self._cursor_in:
            return  # another window, or a list of words, has the keyboard: whoever types here comes back
        self._cursor_in = new
        self.later.commit()
        self.desk.history.break_merge()
        if self.desk.hold(self.parts.edits.rows.field_in_hand()):
            self.show_job()
        if new is not None and QGuiApplication.mouseButtons() == QtCore.Qt.MouseButton.NoButton:
            self.bench.column.reveal_widget(new)

    def rebuild(self) -> None:
        """Make all panels anew in the look of the moment; job, history, the open row,
        what is chosen and the keyboard stay.
        """
        from jobsheet.gui.window import kept_focus

        ruled = self.bench.column.ruled
        opened, chosen, marked = self.opened_key, ruled.chosen_key, ruled.marked
        place = kept_focus.place_of(self.focusWidget())
        actions.dress(self)
        self.bench = Bench(self)
        self.setCentralWidget(self.bench)
        self._connect()
        self.show_job()
        self.bench.column.ruled.choose(chosen)
        if len(marked) > 1:
            self.bench.column.ruled.choose_these(marked)
        if opened:
            self.open_key(opened)
        kept_focus.give_back(self.bench, place)
        self.later.soon()

    # --- events ---

    def event(self, event: QEvent) -> bool:
        """The first painting starts what may come after it."""
        done = super().event(event)
        if event.type() == QEvent.Type.Paint:
            self.later.begin()
        return done

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """A form made for another layout is made anew."""
        super().resizeEvent(event)
        if self.opened_key:
            self.parts.edits.rows.resized()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Nothing unsaved is put away without being asked for: every editor that is
        open asks for itself, then the job.
        """
        editors = [main_window for main_window in self.findChildren(QMainWindow) if main_window.isVisible()]
        if all(main_window.close() for main_window in editors) and self.parts.files.may_put_away():
            self.parts.files.keeping.forget()
            self.parts.watched.claim.let_go()
            self.parts.solids.halt()
            event.accept()
        else:
            event.ignore()
