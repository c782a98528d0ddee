"""The ruled column of an editor of typed text: headings with a line, fields below
them, lists as rows that open in place.

It knows layouts and papers, no machine. Everything a person does is reported as a
command of `edit/paper_commands.py`.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.edit.paper_commands import AddEntry, MoveEntry, RemoveEntry, SetText
from jobsheet.errors import Problem, QuantityError
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.field import Field
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.papers.paper_rows import BETWEEN, HIGH, EntryRow
from jobsheet.operations.entry import Entry
from jobsheet.storage.paper_layout import MARKS, Ask, Inner, Layer, Layout, Rows, joined, parted
from jobsheet.storage.typed_paper import Paper, Path, entries_at, text_at, words

translate = QCoreApplication.translate
SIDE = 16
COLUMNS = {"wide": 3, "medium": 3, "narrow": 2}
#: What is added to the name of a field for the choice of where its number comes from.
MARK = " comes from"
#: How much deeper what belongs to an entry stands, each level.
DEEPER = 18


class ArrangedForm(QWidget):
    """What can be placed for a width and a number of columns, and says how high it stands then."""

    def arrange(self, width: int, columns: int) -> int:
        """Place everything inside; the height needed."""
        raise NotImplementedError


class Block(Struct):
    """One thing of the column: words with their manner, or a widget; and how deep it stands."""

    manner: str
    text: str = ""
    widget: QWidget | None = None
    deep: int = 0
    rect: QRect | None = None
    #: It stands through every making anew: somebody else owns it.
    kept: bool = False


class PaperColumn(QWidget):
    """The fields and lists of one paper."""

    wanted = Signal(object)
    resized = Signal()

    def __init__(self, layout: Layout, parent: QWidget) -> None:
        super().__init__(parent)
        self._layout = layout
        self._paper: Paper | None = None
        self._problems: tuple[Problem, ...] = ()
        self._blocks: list[Block] = []
        self._forms: list[Form] = []
        #: Where the number of a field came from, also while nothing stands there:
        #: who types it anew has not guessed it.
        self._marks: dict[str, str] = {}
        self._asked: dict[str, tuple[Path, Ask]] = {}
        self.rows: dict[str, tuple[EntryRow, Path, Rows]] = {}
        self._opened: set[str] = set()
        #: Makes other blocks in place of the whole layout; the guided way sets it.
        self.build: Callable[[PaperColumn, Paper], None] | None = None

    @property
    def fields(self) -> dict[str, Field]:
        """Every field that is shown, by its place in words."""
        return {name: field for form in self._forms for name, field in form.fields.items()}

    # --- showing ---

    def put(self, paper: Paper, problems: tuple[Problem, ...], *, anew: bool = True) -> None:
        """Show a paper and what is wrong with it."""
        self._paper, self._problems = paper, problems
        if anew:
            self._make(paper)
        self._say()

    def _make(self, paper: Paper) -> None:
        """Make all widgets anew; the field that had the focus gets it again."""
        focused = next((name for name, field in self.fields.items() if field.box.hasFocus()), "")
        for block in self._blocks:
            if block.widget is not None and not block.kept:
                block.widget.hide()
                block.widget.deleteLater()
        self._blocks, self._forms, self._asked, self.rows = [], [], {}, {}
        if self.build is not None:
            self.build(self, paper)
        else:
            for heading in self._layout.headings:
                self.heading(heading.title, heading.how)
                self.layers(heading.parts, ())
        for block in self._blocks:
            if block.widget is not None:
                block.widget.show()
        if focused in self.fields:
            self.fields[focused].box.setFocus()
        self.arrange(self.width())

    def heading(self, title: str, how: str = "") -> None:
        """A heading with its line."""
        self._blocks.append(Block("heading", title))
        if how:
            self._blocks.append(Block("how", how))

    def say(self, text: str, manner: str = "how", deep: int = 0) -> None:
        """A sentence of its own."""
        self._blocks.append(Block(manner, text, deep=deep))

    def widget(self, widget: QWidget, deep: int = 0) -> None:
        """A widget of its own."""
        self._blocks.append(Block("widget", widget=widget, deep=deep))

    def kept_form(self, widget: ArrangedForm) -> None:
        """A form that somebody else owns: it is placed here, and stays when the rest is made anew."""
        self._blocks.append(Block("form", widget=widget, kept=True))

    def button(self, button: Button) -> None:
        """A button of its own, as wide as its words."""
        self._blocks.append(Block("button", widget=button))

    def choice(self, boxes: Joined) -> None:
        """Joined boxes of their own, as wide as their words, with room below."""
        self._blocks.append(Block("choice", widget=boxes))

    def focus_first(self) -> None:
        """Put the cursor into the first field."""
        if self._forms:
            self._forms[0].focus_first()

    def let_go(self) -> None:
        """Something typed is taken back: every box is written anew."""
        for form in self._forms:
            form.let_go()

    def layers(self, parts: tuple[Layer, ...], above: Path, deep: int = 0) -> None:
        """The fields, groups and lists of one level."""
        asks: list[tuple[Path, Ask]] = []
        for part in parts:
            path = (*above, part.name)
            if isinstance(part, Ask):
                asks.append((path, part))
                continue
            self.form(asks, deep)
            asks = []
            self._blocks.append(Block("caption", part.title, deep=deep))
            if part.how:
                self._blocks.append(Block("how", part.how, deep=deep))
            if isinstance(part, Inner):
                self.layers(part.parts, path, deep)
            else:
                self._list(part, path, deep)
        self.form(asks, deep)

    def form(
        self, asks: list[tuple[Path, Ask]], deep: int = 0, titles: dict[Path, str] | None = None
    ) -> Form | None:
        """A form of these fields; a number that says where it comes from has that beside it."""
        if not asks:
            return None
        entries = []
        for path, ask in asks:
            name = words(path)
            title = (titles or {}).get(path, ask.entry.title)
            self._asked[name] = (path, ask)
            entries.append(replace(ask.entry, name=name, title=title))
            if ask.marked:
                self._asked[name + MARK] = (path, ask)
                entries.append(
                    Entry(
                        name=name + MARK,
                        title=translate("PaperColumn", "{field}: where from").format(field=title),
                        asks="choice",
                        choices=MARKS,
                        optional=True,
                        hint=ask.how,
                    )
                )
        form = Form(entries, "mm", translate("PaperColumn", "Fields"), self)
        form.typed.connect(self._typed)
        form.height_changed.connect(self._again)
        self._forms.append(form)
        self._blocks.append(Block("form", widget=form, deep=deep))
        return form

    def _list(self, rows: Rows, path: Path, deep: int) -> None:
        """The entries of a list, the open ones with their fields, and what adds one."""
        count = len(entries_at(self._paper, path)) if self._paper else 0
        for index in range(count):
            place = (*path, index)
            name = words(place)
            opened = name in self._opened
            row = EntryRow(self._summary(rows, place), self, opened=opened, problem="")
            row.toggled.connect(lambda name=name: self.toggle(name))
            row.removed.connect(lambda index=index: self.wanted.emit(self._removal(rows, path, index)))
            row.moved.connect(lambda by, index=index: self._move(rows, path, index, by))
            self.rows[name] = (row, place, rows)
            self._blocks.append(Block("row", widget=row, deep=deep))
            if opened:
                self.layers(rows.parts, place, deep + 1)
        add = Button(translate("PaperColumn", "Add a {one}").format(one=rows.one), self, Manner.LINK)
        add.clicked.connect(lambda: self._add(rows, path))
        self._blocks.append(Block("button", widget=add, deep=deep))

    def _summary(self, rows: Rows, place: Path) -> str:
        """What a closed row shows: the texts that tell its entry from the others."""
        if self._paper is None:
            return rows.one
        texts: list[str] = []
        for name in rows.shown:
            text = text_at(self._paper, (*place, name))
            ask = next((part for part in rows.parts if part.name == name), None)
            if text and isinstance(ask, Ask):
                title = ask.entry.title
                texts.append(text if not texts else f"{title[:1].lower()}{title[1:]} {text}")
        return BETWEEN.join(texts) or translate("PaperColumn", "new {one}").format(one=rows.one)

    def _say(self) -> None:
        """Texts, what was understood, and each problem at its field."""
        paper = self._paper
        if paper is None:
            return
        told: dict[str, str] = {}
        for problem in self._problems:
            told.setdefault(problem.path, problem.sentence)
        for form in self._forms:
            for name, field in form.fields.items():
                path, ask = self._asked[name]
                text = text_at(paper, path)
                number, mark = parted(text) if ask.marked else (text, "")
                if name.endswith(MARK):
                    field.put(mark, "", None)
                else:
                    field.put(number, *self._understood(ask, number, told.get(words(path), "")))
        for name, (row, place, rows) in self.rows.items():
            inside = [
                problem
                for problem in self._problems
                if problem.path == name or problem.path.startswith(name + ".")
            ]
            row.say(self._summary(rows, place), inside[0].sentence if inside else "")
        self.update()

    @staticmethod
    def _understood(ask: Ask, text: str, told: str) -> tuple[str, QuantityError | None]:
        """What the line under a field says, or why the reader refuses it."""
        entry = ask.entry
        try:
            value = entry.read(text, "mm")
        except QuantityError as error:
            return "", (error.kept() if told else None)
        if told:
            return "", QuantityError(f"{told[:1].upper()}{told[1:]}.".replace("..", "."), 0, len(text))
        return entry.understood(value, "mm"), None

    # --- doing ---

    def _typed(self, name: str, text: str) -> None:
        """A field was typed into."""
        path, ask = self._asked[name]
        if ask.marked and self._paper is not None:
            number, mark = parted(text_at(self._paper, path))
            if name.endswith(MARK):
                text = joined(number, text)
            else:
                mark = self._marks[name] = mark or self._marks.get(name, "")
                text = joined(text, mark)
        self.wanted.emit(SetText(path, text, ask.entry.title))

    def _add(self, rows: Rows, path: Path) -> None:
        count = len(entries_at(self._paper, path)) if self._paper else 0
        self._open(words((*path, count)))
        self.wanted.emit(AddEntry(path, label=translate("PaperColumn", "add a {one}").format(one=rows.one)))
        self.focus_in(words((*path, count)))

    @staticmethod
    def _removal(rows: Rows, path: Path, index: int) -> RemoveEntry:
        return RemoveEntry(path, index, translate("PaperColumn", "remove a {one}").format(one=rows.one))

    def _move(self, rows: Rows, path: Path, index: int, by: int) -> None:
        """Move an entry; what is open and what has the focus go with it."""
        count = len(entries_at(self._paper, path)) if self._paper else 0
        if not 0 <= index + by < count:
            return
        one, other = words((*path, index)), words((*path, index + by))
        was = (one in self._opened, other in self._opened)
        for name, opened in ((other, was[0]), (one, was[1])):
            self._opened.add(name) if opened else self._opened.discard(name)
        label = translate("PaperColumn", "move a {one}").format(one=rows.one)
        self.wanted.emit(MoveEntry(path, index, index + by, label))
        if other in self.rows:
            self.rows[other][0].setFocus()

    def toggle(self, name: str) -> None:
        """Open an entry and close its neighbours, or close it."""
        if name in self._opened:
            self._opened.discard(name)
        else:
            self._open(name)
        if self._paper is not None:
            self.put(self._paper, self._problems)
        if name in self._opened:
            self.focus_in(name)
        elif name in self.rows:
            self.rows[name][0].setFocus()

    def _open(self, name: str) -> None:
        """Mark an entry as open, and no other of its list."""
        beside = name.rpartition("[")[0]
        self._opened = {one for one in self._opened if one.rpartition("[")[0] != beside}
        self._opened.add(name)

    def focus_in(self, name: str) -> None:
        """Put the cursor into the first field of an entry."""
        field = next((field for key, field in self.fields.items() if key.startswith(name + ".")), None)
        if field is not None:
            field.box.setFocus()

    def go_to(self, path: str) -> QWidget | None:
        """Open what hides a field and put the cursor into it; the widget that has it then."""
        for end, letter in enumerate(path):
            if letter == "]" and path[: end + 1] in self.rows and path[: end + 1] not in self._opened:
                self.toggle(path[: end + 1])
        if path in self.fields:
            self.fields[path].box.setFocus()
            return self.fields[path]
        if path in self.rows:
            self.rows[path][0].setFocus()
            return self.rows[path][0]
        return None

    # --- placing ---

    def _again(self) -> None:
        self.arrange(self.width())

    def arrange(self, width: int) -> None:
        """Place everything for a width and take the height that it needs."""
        now = look()
        side, top = now.px(SIDE), now.px(4)
        columns = max(1, min(3, int((width / now.scale) // 230)))
        for block in self._blocks:
            left = side + now.px(DEEPER) * block.deep
            inside = width - left - side
            high = self._height(block, inside, columns)
            above = now.px(
                {"heading": 12, "caption": 6, "how": 5, "mind": 2, "assumed": 2}.get(block.manner, 0)
            )
            top += above
            block.rect = QRect(left, top, inside, high)
            if isinstance(block.widget, Joined):
                block.widget.setGeometry(left, top, min(inside, block.widget.needs()), high)
            elif block.widget is not None:
                wide = (
                    inside
                    if block.manner in ("form", "row", "widget")
                    else min(inside, block.widget.sizeHint().width())
                )
                block.widget.setGeometry(left, top, wide, high)
            top += high + now.px({"form": 4, "how": 6, "mind": 6, "choice": 6}.get(block.manner, 0))
        self.resize(width, top + now.px(24))
        self.resized.emit()
        self.update()

    def _height(self, block: Block, inside: int, columns: int) -> int:
        """How high a block stands."""
        now = look()
        if block.manner == "form":
            return cast("ArrangedForm", block.widget).arrange(inside, columns)
        if block.manner == "row":
            return now.px(HIGH)
        if isinstance(block.widget, Joined):
            return now.px(30)
        if block.widget is not None:
            return block.widget.sizeHint().height()
        if block.manner == "heading":
            return now.px(34)
        if block.manner == "caption":
            return now.px(24)
        font = now.bold if block.manner == "mind" else now.body
        return ink.paragraph_height(now, block.text, font, inside) + 2

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, headings with their line, captions, sentences."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            for block in self._blocks:
                if block.widget is not None or block.rect is None:
                    continue
                if block.manner == "heading":
                    ink.write(painter, now, block.rect, block.text, now.head)
                    ink.horizontal(
                        painter, now.colour("ink"), block.rect.left(), block.rect.right(), block.rect.bottom()
                    )
                elif block.manner == "caption":
                    ink.write(painter, now, block.rect, block.text, now.bold)
                else:
                    font = now.bold if block.manner == "mind" else now.body
                    tone = "ink" if block.manner == "mind" else "pencil"
                    ink.paragraph(painter, now, block.rect, block.text, font, tone)
