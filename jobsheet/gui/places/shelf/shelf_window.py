"""The shelf: a line to find by, what was found, and the chosen job beside it. The files are the truth; this list is made from them."""

from __future__ import annotations

import time
from pathlib import Path

from msgspec.structs import replace
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject, QTimer
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLineEdit, QScrollArea, QSizePolicy, QVBoxLayout

from jobsheet.clock import today
from jobsheet.errors import JobsheetError, as_sentence
from jobsheet.gui.desk.aside.asked_aside import SILENT, Aside
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.facts_shown import Facts, FactsShown
from jobsheet.gui.forms.plain_widgets import Choices, Label, named
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.shelf.chosen_facts import facts_of, silent_facts
from jobsheet.gui.places.shelf.comparing import Comparing
from jobsheet.gui.places.shelf.fetching import Fetching
from jobsheet.gui.places.shelf.found_list import FoundHeads, FoundList, keys_move
from jobsheet.gui.places.shelf.old_sheet_put import put_old_sheets
from jobsheet.gui.places.shelf.shelf_reading import APART, Reading
from jobsheet.gui.places.shelf.shelf_working import Working
from jobsheet.shelf.shelf_index import Index, folder_there
from jobsheet.shelf.shelf_questions import MOST, Found, Hit, find
from jobsheet.shelf.worked_kept import Worked
from jobsheet.storage.card_files import find_card
from jobsheet.storage.kept.shelf_kept import keep_shelf, shelf_folder, shelves

translate = QCoreApplication.translate
#: The chosen job is read when the choice has rested so long [ms]: walking down the list reads none.
REST = 120
#: While the folder is read the list is made anew no oftener than this [s], once a screen is full.
AGAIN = 1.0


class ShelfWindow(QDialog):
    """Typing finds, arrows choose, Enter opens, Esc empties the line and then closes."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Shelf", "The shelf"))
        answer_f1(self)
        self._visit = visit
        self._titles: dict[str, str] = {}
        self.index: Index | None = None
        self.found: Found | None = None
        self._reading: Reading | None = None
        self._working: Working | None = None
        #: What is said in front of anything else while the folder does not answer.
        self._away = ""
        self._looked = 0.0
        self._told_of: Aside | None = None
        #: The job beside which a comparison stands until another is chosen.
        self._compared_at = ""
        self._lay_out()
        self._fetching = Fetching(visit, self)
        self._fetching.opened.connect(self.accept)
        self._fetching.said.connect(self.said.say)
        self._fetching.silent.connect(self._silent)
        self._comparing = Comparing(self)
        self._comparing.said.connect(self.said.say)
        self._comparing.told.connect(self.facts.put)
        self._silence = QTimer(self)
        self._silence.setSingleShot(True)
        self._silence.setInterval(SILENT)
        self._silence.timeout.connect(self._silent)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST)
        self._rest.timeout.connect(self._show_chosen)
        self.line.textEdited.connect(lambda _: self.look_for())
        self.list.chosen.connect(self.choose)
        self.list.opened.connect(self._open_at)
        self.finished.connect(lambda _: self._let_go())
        folder = shelf_folder()
        if folder is not None:
            self.take(folder)
        else:
            self.said.say(translate("Shelf", "A shelf is a folder of job files: choose yours."))
        self.line.setFocus()

    def _lay_out(self) -> None:
        now = look()
        self._in_sight = QTimer(self)
        self._in_sight.setSingleShot(True)
        self._in_sight.setInterval(REST)
        self._in_sight.timeout.connect(self._tell_sight)
        self.line = QLineEdit(self)
        self.line.setFont(now.head)
        self.line.setMinimumHeight(now.px(36))
        self.line.setAccessibleName(translate("Shelf", "Find"))
        self.line.installEventFilter(self)
        hover(
            self.line,
            translate(
                "Shelf",
                "words, drill 6.8, M8 brass, slot 10, HM-103, October 2026, tight, no record, trouble first, by number",
            ),
        )
        self.count = Label("", self)
        self.count.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        self.count.setFixedWidth(now.width("10000 found", now.body) + now.px(8))
        self.said = Label("", self)
        self.list = FoundList(self, self._title_of, self.worked_of)
        self._scroll = QScrollArea(self)
        self._scroll.setWidgetResizable(True)
        self._scroll.setWidget(self.list)
        self._scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self._scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self._scroll.verticalScrollBar().valueChanged.connect(lambda _: self._in_sight.start())
        self.facts = FactsShown(self)
        self.open_it = Button(translate("Shelf", "Open it"), self, Manner.FILLED)
        self.open_it.clicked.connect(self._open_chosen)
        self.folder = Button(translate("Shelf", "Choose a folder…"), self)
        self.folder.clicked.connect(self._choose_folder)
        self.shelves = Choices(self)
        named(self.shelves, translate("Shelf", "Which shelf"))
        hover(self.shelves, translate("Shelf", "Ctrl + Page Up, Ctrl + Page Down: another shelf"))
        self.shelves.activated.connect(self._another)
        for keys, does in (
            ("Ctrl+PgUp", lambda: self._another(self.shelves.currentIndex() - 1)),
            ("Ctrl+PgDown", lambda: self._another(self.shelves.currentIndex() + 1)),
            ("Alt+C", self._compare),
        ):
            action = QAction(self)
            action.setShortcut(QKeySequence(keys))
            action.triggered.connect(lambda _=False, does=does: does())
            self.addAction(action)
        self.old = Button(translate("Shelf", "Put old sheets on it…"), self)
        hover(self.old, translate("Shelf", "scans and photographs of a part that has no plan yet"))
        self.old.clicked.connect(self._put_old_sheets)
        close = Button(translate("Shelf", "Close"), self)
        close.clicked.connect(self.reject)
        top, middle, foot = QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        top.addWidget(self.line, 1)
        top.addWidget(self.count)
        left = QVBoxLayout()
        left.setSpacing(0)
        left.addWidget(FoundHeads(self))
        left.addWidget(self._scroll, 1)
        middle.addLayout(left, 58)
        middle.addWidget(self.facts, 42)
        for button in (self.open_it, self.folder, self.shelves, self.old, close):
            foot.addWidget(button)
        foot.addWidget(
            Label(translate("Shelf", "Enter: open   Alt + C: compare two   Esc: empty the line"), self), 1
        )
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        whole.addLayout(top)
        whole.addWidget(self.said)
        whole.addLayout(middle, 1)
        whole.addLayout(foot)
        size = self._visit.parent.size()
        self.resize(max(size.width() - now.px(60), now.px(900)), max(size.height() - now.px(80), now.px(560)))

    def _title_of(self, machine: str) -> str:
        """A machine by its title where there is a card of it here."""
        if machine not in self._titles:
            try:
                self._titles[machine] = find_card(machine).title
            except JobsheetError:
                self._titles[machine] = machine
        return self._titles[machine]

    # --- the folder ---

    def _choose_folder(self) -> None:
        folder = ask.folder(
            self, shelf_folder() or Path.home(), translate("Shelf", "Which folder is the shelf?")
        )
        if folder is not None:
            self.take(folder)

    def _put_old_sheets(self) -> None:
        """Scans of a part that has no plan yet."""
        if self.index is None:
            return
        if said := put_old_sheets(self, self.index.shelf, today()):
            self.take(self.index.shelf)
            self.said.say(said)

    def _list_shelves(self, folder: Path) -> None:
        """The shelves that were chosen so far, this one among them; with one alone there is nothing to choose."""
        there = shelves()
        twice = {path.name for path in there if sum(other.name == path.name for other in there) > 1}
        self.shelves.clear()
        for path in there:
            self.shelves.offer(str(path) if path.name in twice else path.name or str(path), str(path))
        self.shelves.setCurrentIndex(max(0, self.shelves.findData(str(folder))))
        self.shelves.setVisible(len(there) > 1)

    def _another(self, at: int) -> None:
        """Another shelf of the list."""
        if 0 <= at < self.shelves.count():
            self.take(Path(self.shelves.itemData(at)))

    def take(self, folder: Path) -> None:
        """That folder is the shelf; what was read of it before is found at once, the rest as it is read."""
        self._let_go()
        asked = Aside(self, lambda: folder_there(folder))
        if not asked.at_once():  # slow, or away: what was read of it before is found meanwhile
            self._begin(folder)
            return
        if isinstance(asked.answer, Path):
            self._begin(asked.answer)
            return
        self._silence.stop()
        self._show(None)
        self.said.say(as_sentence(str(asked.answer)))

    def _begin(self, folder: Path) -> None:
        """Open what was read before, and read the folder beside it."""
        self.index = Index(folder, look=False)
        if folder != shelf_folder():
            keep_shelf(folder)
        self._list_shelves(folder)
        self.setWindowTitle(
            translate("Shelf", "The shelf: {folder}").format(folder=folder.name or str(folder))
        )
        self.look_for()
        self._reading = Reading(folder, self)
        self._reading.went.connect(self._went)
        self._reading.alive.connect(self._answers)
        self._reading.done.connect(self._read)
        self._reading.start()
        self._working = Working(self.index, self)
        self._working.done.connect(self._more_worked)
        self._silence.start()

    def _answers(self) -> None:
        """The disk answers."""
        if self.sender() is not self._reading:
            return
        self._silence.start()
        if self._away:
            self._away = ""
            self.look_for(keep=True)

    def _silent(self) -> None:
        """It has been silent for so long that it counts as away."""
        name = self.index.shelf.name if self.index is not None else ""
        self._away = translate(
            "Shelf",
            "{folder} does not answer: what was read of it before is found here, but cannot be opened.",
        ).format(folder=name)
        self.look_for(keep=True)

    def _went(self, looked: int, of: int) -> None:
        if self.sender() is not self._reading:
            return
        self._answers()
        # A screenful is shown at once; after that the list need not be made anew each time.
        if self.found is None or self.found.count < MOST or time.monotonic() - self._looked > AGAIN:
            self.look_for(keep=True)
        self.said.say(translate("Shelf", "Reading the shelf, {looked} of {of}").format(looked=looked, of=of))

    def _read(self, problem: str) -> None:
        if self.sender() is not self._reading:
            return
        self._silence.stop()
        self._away = problem
        self.look_for(keep=True)
        if self._working is not None and not problem and APART:
            self._working.when_idle()

    def _let_go(self) -> None:
        self._silence.stop()
        self._away = ""
        if self._reading is not None:
            self._reading.stop()
            self._reading = None
        if self._working is not None:
            self._working.stop()
            self._working = None
        if self.index is not None:
            self.index.close()
            self.index = None

    # --- what is worked in idle time ---

    def worked_of(self, content: str) -> Worked | None:
        """Verdict and picture of a file with that content; None where they are still to come."""
        return self._working.of(content) if self._working is not None else None

    def _tell_sight(self) -> None:
        if self._working is not None:
            self._working.sight(hit.content for hit in self.list.in_sight())

    def _more_worked(self) -> None:
        """Something is there that was not: rows in sight are painted anew, and what is asked by it is found."""
        if self.sender() is not self._working or self.found is None:
            return
        if self.found.asked.how:
            self.look_for(keep=True)
        else:
            self.list.put(self.list.hits, self.list.at)
        if self.facts.facts.title and self.facts.facts.picture is None:
            self._with_picture()

    def _with_picture(self) -> None:
        """The finished part of the chosen job beside its facts, once it is drawn."""
        worked = self.worked_of(self.chosen.content) if self.chosen is not None else None
        if worked is not None and worked.large is not None and self.facts.facts.facts:
            self.facts.put(replace(self.facts.facts, picture=worked.large))

    # --- finding ---

    def look_for(self, *, keep: bool = False) -> None:
        """Ask what is typed; `keep` stays on the chosen job where it is still found."""
        if self.index is None:
            return
        self._looked = time.monotonic()
        if keep:
            self.index.forget_order()  # the folder was read on meanwhile; while somebody types the order stands
        was = self.chosen.path if keep and self.chosen is not None else ""
        try:
            found = find(self.index, self.line.text())
        except JobsheetError as error:
            self._show(None)
            self.said.say(str(error))
            return
        at = next((place for place, hit in enumerate(found.hits) if hit.path == was), 0)
        self._show(found, at)

    @property
    def chosen(self) -> Hit | None:
        """The hit that is chosen; None where nothing is found."""
        hits = self.found.hits if self.found is not None else ()
        return hits[self.list.at] if 0 <= self.list.at < len(hits) else None

    def _show(self, answer: Found | None, at: int = 0) -> None:
        self.found = answer
        hits = answer.hits if answer is not None else ()
        self.list.put(hits, at if hits else -1)
        self.open_it.setEnabled(bool(hits))
        if answer is None:
            self.count.say("")
            self.facts.put(Facts())
            return
        self.count.say(translate("Shelf", "{count} found").format(count=answer.count))
        said = answer.asked.said
        if not hits:
            words = translate("Shelf", "Nothing on this shelf has {what} in it.").format(what=said) if said else (
                self._away or translate("Shelf", "There is no job in this folder yet."))  # fmt: skip
            self.said.say(f"{self._away} {words}" if self._away and said else words)
        else:
            more = answer.count - len(hits)
            words = translate("Shelf", "understood: {what}").format(what=said) if said else ""
            if self._away:
                words = f"{self._away} {words}".strip()
            if more:
                listed = translate("Shelf", "the first {count} are listed").format(count=len(hits))
                words = f"{words}; {listed}" if words else listed
            self.said.say(words)
        self._rest.start()
        self._in_sight.start()

    def choose(self, at: int) -> None:
        """Another row."""
        if self.found is None or not self.found.hits:
            return
        self.list.put(self.found.hits, max(0, min(at, len(self.found.hits) - 1)))
        box = self.list.row_box(self.list.at)
        self._scroll.ensureVisible(0, box.center().y(), 0, box.height())
        self._rest.start()

    def _show_chosen(self) -> None:
        """Read the chosen job beside the window: one at a time, the newest last."""
        hit = self.chosen
        if hit is None or self.index is None:
            self.facts.put(Facts())
            return
        if hit.path == self._compared_at:
            return
        self._compared_at = ""
        if self._told_of is not None and not self._told_of.over:
            return  # when that one is answered the newest is asked
        path = self.index.shelf / hit.path
        others = tuple(self.index.shelf / other for other in self.index.other_plans(hit.path))
        asked = self._told_of = Aside(self, lambda: facts_of(path, self._title_of, others))
        if asked.at_once():
            self._facts_told(asked, path)
            return
        asked.done.connect(lambda: self._facts_told(asked, path))
        QTimer.singleShot(SILENT, asked, lambda: None if asked.over else self.facts.put(silent_facts(path)))

    def _facts_told(self, asked: Aside, path: Path) -> None:
        hit = self.chosen
        if hit is None or self.index is None or self._told_of is not asked:
            return
        if self.index.shelf / hit.path != path:
            self._show_chosen()
            return
        told = asked.answer
        if not isinstance(told, Facts):
            told = Facts(title=path.name, problem=as_sentence(str(told)))
        if hit.twins:
            words = translate(
                "Shelf",
                "The same plan is in {other} too, as a service leaves it that copies files between computers: compare the two, keep one.",
            ).format(other=", ".join(hit.twins))
            told = replace(told, problem="\n".join(part for part in (told.problem, words) if part))
        self.facts.put(told)
        self._with_picture()

    # --- opening ---

    def _open_at(self, at: int) -> None:
        self.choose(at)
        self._open_chosen()

    def _open_chosen(self) -> None:
        hit = self.chosen
        if hit is not None and self.index is not None:
            self._fetching.fetch(self.index.shelf / hit.path)

    def _compare(self) -> None:
        if self.chosen is not None and self.index is not None:
            self._compared_at = self.chosen.path if self._comparing.marked else ""
            self._told_of = None  # what is read of the chosen one would be put over it
            self._comparing.press(self.index.shelf / self.chosen.path)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Arrows and Enter of the find line go to the list; Esc empties the line first."""
        if watched is self.line and event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            to = keys_move(event.key(), self.list.at, len(self.list.hits))
            if to is not None:
                self.choose(to)
                return True
            if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
                self._open_chosen()
                return True
            if event.key() == QtCore.Qt.Key.Key_Escape and self.line.text():
                self.line.clear()
                self.look_for()
                return True
        return super().eventFilter(watched, event)
