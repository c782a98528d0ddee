"""What one knows of a machine, on a few lines: how its speeds are changed, and then only what that needs."""

from __future__ import annotations

from itertools import pairwise

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QWidget
from shiboken6 import isValid

from jobsheet.edit.paper_commands import Replace
from jobsheet.errors import QuantityError
from jobsheet.gui.forms.form import Form
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.forms.shown import Shown
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.papers.paper_column import ArrangedForm
from jobsheet.operations.entry import Entry
from jobsheet.storage.short_card import (
    DRIVES,
    NAMES,
    answer,
    answered,
    change_of,
    changed,
    questions,
    unit_of,
)
from jobsheet.storage.typed_paper import Paper, entries_at

translate = QCoreApplication.translate
CAPTION, BOXES = 18, 30


class ShortForm(ArrangedForm):
    """Stands through every edit: the card around it is made anew, what is typed here is not."""

    wanted = Signal(object)
    height_changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._paper: Paper | None = None
        self._before: QWidget | None = None
        self._drafts: dict[str, str] = {}
        self._asked: tuple[Entry, ...] = ()
        self.by = Joined(tuple(DRIVES), translate("ShortCard", "Speeds are changed by"), self)
        self.by.typed.connect(lambda _text: self._changed())
        self.count = Joined(tuple(str(name) for name in NAMES), translate("ShortCard", "Ranges"), self)
        self.count.typed.connect(lambda _text: self._changed())
        self._captions: list[tuple[QRect, str]] = []
        self.name = self._form(
            (Entry(name="title", title=translate("ShortCard", "Name of the machine"), asks="text"),)
        )
        #: Charts of speeds, a line each; and the rest, side by side.
        self.charts: Form | None = None
        self.form: Form | None = None

    def _form(self, entries: tuple[Entry, ...]) -> Form:
        form = Form(entries, "mm", translate("ShortCard", "What you know of it"), self)
        form.typed.connect(self._typed)
        form.height_changed.connect(self.height_changed)
        return form

    def put(self, paper: Paper) -> None:
        """Show what the card says; the boxes are others only where other things are asked."""
        self._paper = paper
        self.by.put(change_of(paper))
        self.count.put(str(len(entries_at(paper, ("spindle", "ranges")))))
        asked = questions(paper)
        if self.form is None or [entry.name for entry in asked] != [entry.name for entry in self._asked]:
            self._make(asked)
        self._asked = asked
        for field in self.form.fields.values() if self.form is not None else ():
            field.take_units(unit_of(paper))
        self.name.put({"title": self._shown(self.name.fields["title"].entry)})
        if self.form is not None:
            self.form.put({entry.name: self._shown(entry) for entry in asked})
        if self.charts is not None:
            self.charts.put({entry.name: self._shown(entry) for entry in asked})

    def _make(self, asked: tuple[Entry, ...]) -> None:
        """Boxes for what is asked now; what was asked of another drive is gone with its texts."""
        for old in (self.charts, self.form):
            if old is not None:
                old.hide()
                old.deleteLater()
        self._drafts = {}
        charts = tuple(entry for entry in asked if entry.asks == "text")
        self.charts = self._form(charts) if charts else None
        self.form = self._form(tuple(entry for entry in asked if entry.asks != "text"))
        for form in (self.charts, self.form):
            if form is not None:
                form.show()
        self.follow(self._before)
        self.height_changed.emit()

    def follow(self, before: QWidget | None) -> None:
        """Tab goes from there through all boxes in the order they stand."""
        self._before = before if before is not None and isValid(before) else None
        boxes: list[QWidget] = [self.name.fields["title"].box, *self.by.halves, *self.count.halves]
        for field in [
            field for form in (self.charts, self.form) if form is not None for field in form.fields.values()
        ]:
            boxes += field.box.halves if isinstance(field.box, Joined) else [field.box]
        if self._before is not None:
            boxes.insert(0, self._before)
        for widget, next_one in pairwise(boxes):
            QWidget.setTabOrder(widget, next_one)

    def _shown(self, entry: Entry) -> Shown:
        """A text with what was understood of it, or why it cannot be read."""
        paper = self._paper
        if paper is None:
            return Shown("")
        draft = self._drafts.get(entry.name)
        if draft is not None:
            try:
                answered(paper, entry.name, draft)
            except QuantityError as problem:
                return Shown(draft, "", problem.kept())
        text = answer(paper, entry.name)
        if entry.asks == "text" or not text:
            return Shown(text)
        unit = unit_of(paper)
        try:
            return Shown(text, entry.understood(entry.read(text, unit), unit))
        except QuantityError as problem:
            return Shown(text, "", problem.kept())

    # --- doing ---

    def _typed(self, name: str, text: str) -> None:
        """A text came: into the card where it can be read, else it stands here until it can."""
        if self._paper is None:
            return
        entry = next((entry for entry in self._asked if entry.name == name), self.name.fields["title"].entry)
        try:
            paper = answered(self._paper, name, text)
        except QuantityError:
            self._drafts[name] = text
            self.put(self._paper)
            return
        self._drafts.pop(name, None)
        self.wanted.emit(Replace(paper, entry.title, f"short {name}"))

    def _changed(self) -> None:
        """Another drive, or another number of ranges."""
        by, count = self.by.text(), self.count.text()
        if self._paper is None or by not in DRIVES or not count.isdigit():
            return
        label = translate("ShortCard", "change the drive")
        self.wanted.emit(Replace(changed(self._paper, by, int(count)), label))

    # --- placing ---

    def focus_first(self) -> None:
        """Put the cursor into the name; what is typed takes its place, also
        where the window is not in front yet.
        """
        self.name.focus_first()
        box = self.name.fields["title"].box
        if isinstance(box, QLineEdit):
            box.selectAll()

    def arrange(self, width: int, columns: int) -> int:
        """Place everything for a width; the height that it needs."""
        now = look()
        high = self.name.arrange(width, columns)
        self.name.setGeometry(0, 0, width, high)
        self._captions = []
        left, top = 0, high
        words = (translate("ShortCard", "Speeds are changed by"), translate("ShortCard", "Ranges"))
        for boxes, caption in zip((self.by, self.count), words, strict=True):
            wide = min(boxes.needs(), width)
            if left and left + wide > width:
                left, top = 0, top + now.px(CAPTION + BOXES + 6)
            self._captions.append((QRect(left, top, max(wide, now.px(200)), now.px(CAPTION)), caption))
            boxes.setGeometry(left, top + now.px(CAPTION), wide, now.px(BOXES))
            left += wide + now.px(24)
        top += now.px(CAPTION + BOXES + 10)
        for form, across in ((self.charts, 1), (self.form, columns)):
            if form is not None:
                rest = form.arrange(width, across)
                form.setGeometry(0, top, width, rest)
                top += rest
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The captions of the joined boxes; fields write their own."""
        now = look()
        with QPainter(self) as painter:
            for rect, text in self._captions:
                ink.write(painter, now, rect, text, now.label, "pencil")
