"""The history of typed text (a machine card, the cabinet) and its edits, as
frozen values; nobody writes an undo.
"""

from __future__ import annotations

from typing import Protocol

from msgspec import Struct

from jobsheet.edit.kept_steps import Steps
from jobsheet.storage import typed_paper as paper
from jobsheet.storage.paper_layout import Ask, Layout, Rows
from jobsheet.storage.typed_paper import Paper, Path


class PaperCommand(Protocol):
    """Anything that makes the next paper of a paper."""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        ...

    @property
    def merge_key(self) -> str:
        """Commands of one key in a row are one step of undo; empty never merges."""
        ...

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """The next paper; raises CommandError where it makes no sense, and then changes nothing."""
        ...


class SetText(Struct, frozen=True):
    """Write a text into a field."""

    path: Path
    text: str
    title: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return self.title or str(self.path[-1])

    @property
    def merge_key(self) -> str:
        """Typing in one field is one step."""
        return f"text {paper.words(self.path)}"

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """The paper with that text; whatever it says is taken as it is."""
        if paper.text_at(before, self.path) == self.text:
            return before
        return paper.with_value(before, self.path, self.text, layout.orders(self.path))


class AddEntry(Struct, frozen=True):
    """Add an entry to a list, behind the one of that place or at the end."""

    path: Path
    behind: int | None = None
    label: str = "add"
    merge_key: str = ""

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """The paper with a new entry, which holds what the layout says."""
        rows = layout.find(self.path)
        if not isinstance(rows, Rows):
            return before
        count = len(paper.entries_at(before, self.path))
        index = count if self.behind is None else min(self.behind + 1, count)
        return paper.with_entry(before, self.path, index, rows.new(), layout.orders(self.path))


class RemoveEntry(Struct, frozen=True):
    """Take an entry out of a list."""

    path: Path
    index: int
    label: str = "remove"
    merge_key: str = ""

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """The paper without it."""
        del layout
        return paper.without_entry(before, self.path, self.index)


class MoveEntry(Struct, frozen=True):
    """Move an entry of a list to another place in it."""

    path: Path
    index: int
    to: int
    label: str = "move"
    merge_key: str = ""

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """The paper with it there."""
        del layout
        return paper.with_entry_moved(before, self.path, self.index, self.to)


class Replace(Struct, frozen=True):
    """Another paper in its place: one that was begun anew, or a draft that was found."""

    paper: Paper
    label: str
    merge_key: str = ""

    def apply(self, before: Paper, layout: Layout) -> Paper:
        """That paper."""
        del layout
        return before if before == self.paper else self.paper


class PaperState(Struct, frozen=True):
    """One moment: the paper, and what Undo calls the step to it."""

    paper: Paper
    label: str = ""


class PaperChange(Struct, frozen=True, kw_only=True):
    """What a step changed: whether entries of lists came, went or moved (else only texts); and who asked."""

    label: str
    asker: object
    shape: bool
    before: PaperState
    after: PaperState


class PaperHistory(Steps[PaperState, PaperChange]):
    """The only owner of the paper that is edited."""

    def __init__(self, first: Paper, layout: Layout) -> None:
        super().__init__(PaperState(first), _difference)
        self.layout = layout
        self._saved: Paper | None = first

    @property
    def paper(self) -> Paper:
        """The paper as it is."""
        return self.state.paper

    def do(self, command: PaperCommand, asker: object = None) -> None:
        """Make the next state; a command that changes nothing is no step."""
        after = command.apply(self.paper, self.layout)
        if after is not self.paper:
            self._push(PaperState(after, command.label), command.merge_key, asker)

    @property
    def changed(self) -> bool:
        """Whether the file no longer holds what is typed."""
        return self.paper is not self._saved and self.paper != self._saved

    def mark_saved(self) -> None:
        """What is typed now stands in the file."""
        self._saved = self.paper
        self.break_merge()

    def mark_unsaved(self) -> None:
        """No file holds this: a new one, or a draft that was found."""
        self._saved = None


def title_of(layout: Layout, path: Path) -> str:
    """What a person calls a field, for Undo."""
    found = layout.find(path)
    return found.entry.title if isinstance(found, Ask) else found.title if found else str(path[-1])


def _difference(before: PaperState, after: PaperState, label: str, asker: object) -> PaperChange:
    shape = _shape(before.paper.root) != _shape(after.paper.root)
    return PaperChange(label=label, asker=asker, shape=shape, before=before, after=after)


def _shape(value: paper.Value) -> object:
    """How long each list is; the order of entries shows only in their texts."""
    if isinstance(value, str):
        return None
    inner = tuple((part.name, _shape(part.value)) for part in value.parts)
    return tuple(pair for pair in inner if pair[1] is not None) if isinstance(value, paper.Group) else inner
