"""Every step kept, undo is the state before: what the history of a job and that of a card have in common.

A state is any frozen value with a label; it shares with the next what did not change.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, Protocol, TypeVar

#: So many steps can be undone; a step shares almost all of its document with the next.
STEPS = 1000


class Labelled(Protocol):
    """One moment, with what Undo calls the step that led to it."""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        ...


Moment = TypeVar("Moment", bound=Labelled)
Told = TypeVar("Told")


class Steps(Generic[Moment, Told]):
    """Holds the states and goes back and forth; tells its listeners once what a step changed.

    Parameters
    ----------
    first : Moment
        The state to begin with
    difference : callable
        What to tell of a step: from the state before, the one after, the label, and who asked
    """

    def __init__(self, first: Moment, difference: Callable[[Moment, Moment, str, object], Told]) -> None:
        self._states = [first]
        self._at = 0
        self._merge = ""
        self._listeners: list[Callable[[Told], None]] = []
        self._difference = difference

    @property
    def state(self) -> Moment:
        """The moment as it is."""
        return self._states[self._at]

    def subscribe(self, listener: Callable[[Told], None]) -> None:
        """Be told of every step."""
        self._listeners.append(listener)

    def break_merge(self) -> None:
        """What is typed next is a step of its own (the field was left)."""
        self._merge = ""

    def _push(self, state: Moment, merge_key: str, asker: object) -> None:
        before = self.state
        merged = (
            bool(merge_key)
            and merge_key == self._merge
            and self._at > 0
            and self._at == len(self._states) - 1
        )
        del self._states[self._at + 1 :]
        if merged:
            self._states[self._at] = state
        else:
            self._states.append(state)
            self._at += 1
            if len(self._states) > STEPS:
                del self._states[0]
                self._at -= 1
        self._merge = merge_key
        self._tell(before, state, state.label, asker)

    @property
    def can_undo(self) -> bool:
        """Whether there is a state before this one."""
        return self._at > 0

    @property
    def can_redo(self) -> bool:
        """Whether there is a state that was undone."""
        return self._at < len(self._states) - 1

    @property
    def undo_label(self) -> str:
        """What undo would take back."""
        return self.state.label if self.can_undo else ""

    @property
    def redo_label(self) -> str:
        """What redo would do again."""
        return self._states[self._at + 1].label if self.can_redo else ""

    def undo(self, asker: object = None) -> None:
        """Go back to the state before."""
        if self.can_undo:
            before, label = self.state, self.undo_label
            self._at -= 1
            self._merge = ""
            self._tell(before, self.state, label, asker)

    def redo(self, asker: object = None) -> None:
        """Go forward to the state that was undone."""
        if self.can_redo:
            before, label = self.state, self.redo_label
            self._at += 1
            self._merge = ""
            self._tell(before, self.state, label, asker)

    def _tell(self, before: Moment, after: Moment, label: str, asker: object) -> None:
        told = self._difference(before, after, label, asker)
        for listener in list(self._listeners):
            listener(told)
