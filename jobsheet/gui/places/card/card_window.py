"""A machine card in the editor, and the way in for a machine of which nothing is
known: a class, then step by step.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.edit.paper_commands import Replace, SetText
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.papers.paper_column import PaperColumn
from jobsheet.gui.papers.paper_window import PaperWindow
from jobsheet.gui.papers.subject import Subject
from jobsheet.gui.places.card.short_form import ShortForm
from jobsheet.report.card import card_facts
from jobsheet.storage.card_files import card_names
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.card_steps import STEPS, Step, assumed_with, assumed_without, begin, classes, is_assumed
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.own_paper import Lying, drafts_of_new, new_place, open_own
from jobsheet.storage.paper_layout import Ask, places
from jobsheet.storage.typed_paper import Paper, Path, at, text_at

translate = QCoreApplication.translate
FOLDER = "machines"


def _subject() -> Subject:
    """What the editor needs to know of machine cards."""
    return Subject(
        layout=LAYOUT,
        read=lambda text, name: machine_from_text(text, name, name.removesuffix(".yaml")),
        facts=lambda machine, paper: card_facts(machine, paper, LAYOUT),  # type: ignore[arg-type]
        title=lambda paper: text_at(paper, ("title",)),
        place=lambda paper: new_place(FOLDER, text_at(paper, ("title",)), card_names()),
    )


class CardWindow(PaperWindow):
    """One machine card, as a whole or step by step."""

    def __init__(self, paper: Paper, lying: Lying | None, parent: QWidget | None, *, guided: bool) -> None:
        self._guided = False
        self.short: ShortForm | None = None
        self._last_class: Button | None = None
        super().__init__(_subject(), paper, lying, parent)
        if self.is_new:
            self.short = ShortForm(self.column)
            self.short.wanted.connect(self.do)
            self.short.height_changed.connect(lambda: self.column.arrange(self.column.width()))
        self._switch = Button(translate("CardWindow", "Measure it step by step"), self.head)
        self._switch.clicked.connect(lambda: self.guide(guided=not self._guided))
        self.head.buttons.insert(0, self._switch)
        self.guide(guided=guided)

    def guide(self, *, guided: bool) -> None:
        """Show the steps of measuring, or the whole card."""
        self._guided = guided
        self.column.build = self._steps if guided else None
        self._switch.setText(
            translate("CardWindow", "Whole card")
            if guided
            else translate("CardWindow", "Measure it step by step")
        )
        self._switch.setAccessibleName(self._switch.text())
        self.show_paper()
        self.place()

    def _steps(self, sheet: PaperColumn, paper: Paper) -> None:
        """Nothing is known of the machine: what it is like, then what to measure, the most useful first."""
        if self.is_new:
            sheet.heading(
                translate("CardWindow", "What is it like?"),
                translate(
                    "CardWindow",
                    "Choose the nearest. Its card can be used at once; all of it counts as guessed until you measure it.",
                ),
            )
            for name in classes():
                card = begin(name)
                button = Button(text_at(card, ("kind",)), sheet, Manner.PLAIN)
                button.clicked.connect(lambda _=False, name=name: self.choose(name))
                sheet.button(button)
                self._last_class = button
            if self.short is not None:
                sheet.heading(
                    translate("CardWindow", "What do you know of it?"),
                    translate(
                        "CardWindow",
                        "Its name, its plate and its dials are enough to plan with. Ctrl + S keeps the card.",
                    ),
                )
                self.short.put(paper)
                sheet.kept_form(self.short)
                self.short.follow(self._last_class)
        steps = STEPS[1:] if self.short is not None else STEPS  # its name stands above
        for number, step in enumerate(steps, 1):
            sheet.heading(f"{number}  {step.title}", step.how)
            if step.mind:
                sheet.say(step.mind, "mind")
            self._fields(sheet, paper, step)
            if step.word:
                self._measured(sheet, paper, step)

    def show_paper(self, *, anew: bool = True) -> None:
        """The short form too follows every step and what is taken back."""
        super().show_paper(anew=anew)
        if self.short is not None:
            self.short.put(self.history.paper)

    def choose(self, name: str) -> None:
        """Begin with the card of a class, as one step that can be undone."""
        label = translate("CardWindow", "begin with another class")
        self.history.do(Replace(begin(name), label))
        self.column.put(self.history.paper, self.problems)

    @staticmethod
    def _fields(sheet: PaperColumn, paper: Paper, step: Step) -> None:
        """The fields of a step, those of the entries of lists with the name of their entry."""
        entries: dict[Path, list[tuple[Path, Ask]]] = {}
        titles: dict[Path, str] = {}
        for path, one in places(LAYOUT.parts, paper.root):
            plain = tuple(part for part in path if isinstance(part, str))
            if plain not in step.fields:
                continue
            stepped = at(paper, (*path[:-1], "steps", 0)) is not None
            if plain[-1] in ("lowest", "highest") and stepped:
                continue
            title, owner = one.entry.title, _owner(paper, path)
            titles[path] = f"{owner}: {title[:1].lower()}{title[1:]}" if owner else title
            entries.setdefault(_entry(path), []).append((path, one))
        for asks in entries.values():
            sheet.form(asks, titles=titles)

    def _measured(self, sheet: PaperColumn, paper: Paper, step: Step) -> None:
        """Whether the figures of a step are still assumed; the person says."""
        words = (translate("CardWindow", "still assumed"), translate("CardWindow", "measured"))
        boxes = Joined(words, step.title, sheet)
        boxes.put(words[0] if is_assumed(paper, step.word) else words[1])

        def say(text: str) -> None:
            now = self.history.paper
            made = assumed_with(now, step.word) if text == words[0] else assumed_without(now, step.word)
            self.do(SetText(("assumed",), made, step.title))

        boxes.typed.connect(say)
        sheet.choice(boxes)


def _entry(path: Path) -> Path:
    """The entry of a list in which a field stands; nothing for one that is in none."""
    ends = [end for end, step in enumerate(path, 1) if isinstance(step, int)]
    return path[: ends[-1]] if ends else ()


def _owner(paper: Paper, path: Path) -> str:
    """What tells the entry of a list from the others."""
    entry = _entry(path)
    if not entry:
        return ""
    number = str(int(entry[-1]) + 1)
    return text_at(paper, (*entry, "position")) or text_at(paper, (*entry, "name")) or number


def open_card(visit: Visit, name: str) -> CardWindow | None:
    """The card of that name in a window of its own."""
    try:
        paper, lying = open_own(FOLDER, name)
    except JobsheetError as error:
        ask.tell(visit.parent, str(error))
        return None
    return _show(CardWindow(paper, lying, visit.parent, guided=False), visit)


def new_card(visit: Visit) -> CardWindow:
    """A new card, which begins with the first class and is measured step by
    step; what was begun before is offered.
    """
    left = drafts_of_new(FOLDER, card_names())
    return _show(CardWindow(begin(classes()[0]), left[0] if left else None, visit.parent, guided=True), visit)


def _show(made: CardWindow, visit: Visit) -> CardWindow:
    made.saved.connect(lambda _name: visit.machines_changed())
    made.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
    made.show()
    if made.short is not None:
        made.short.focus_first()
    else:
        made.column.focus_first()
    return made
