"""Asks the rules about the job on the desk, once for each job and what the solids say of it."""

from __future__ import annotations

from typing import Any

from jobsheet.gui.desk.desk import Desk
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.remark import Note, Remark
from jobsheet.reckoning.reckoner import Reckoned

Said = tuple[tuple[Remark, ...], tuple[Note, ...], tuple[NotChecked, ...]]


class ReadingThrough:
    """Remembers what was read last, so that nothing is read twice."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._read: tuple[object, object, object] | None = None
        #: Whether something new was read while a remark was looked at, and nobody was told yet.
        self._untold = False

    def forget(self) -> None:
        """What the rules look at beside the job is another now: read it again."""
        self._read = None

    def read(self, facts: tuple[Any, ...] | None) -> bool:
        """Ask the rules about the job as it is; whether what they say is new."""
        desk = self._desk
        if desk.reckoned is None:
            return False
        new, self._untold = self._ask(desk.reckoned, facts) or self._untold, False
        return new

    def _ask(self, reckoned: Reckoned, facts: tuple[Any, ...] | None) -> bool:
        """The same, where nobody is told of it yet; what was reckoned anew when the hand rested counts as another plan."""
        desk = self._desk
        about = (desk.job, reckoned, facts)
        if self._read is not None and all(a is b for a, b in zip(self._read, about, strict=True)):
            return False
        self._read = about
        from jobsheet.gui.desk.reviewing import remarks_and_notes

        found = remarks_and_notes(desk.job, reckoned, facts)
        new = not desk.is_read or _differ(found, (desk.remarks, desk.notes, desk.not_checked))
        desk.is_read = True
        # Also where the words are the same: a fix knows the plan for which it was made, and no other.
        desk.remarks, desk.notes, desk.not_checked = found
        return new

    def now(self, remark: Remark, facts: tuple[Any, ...] | None) -> Remark | None:
        """That remark as it is of the job on the desk this very moment; None where it is true no longer."""
        if self._desk.reckoned is not None and self._ask(self._desk.reckoned, facts):
            self._untold = (
                True  # whoever reads next shows it: otherwise an old remark would stand there for good
            )
        about = (remark.rule, remark.operations, remark.set_up, remark.line)
        found = [
            one for one in self._desk.remarks if (one.rule, one.operations, one.set_up, one.line) == about
        ]
        return next((one for one in found if one.message == remark.message), found[0] if found else None)


def _differ(one: Said, other: Said) -> bool:
    """Whether two readings say other things; a fix is a function and made anew each time."""
    return one[1:] != other[1:] or [_words(remark) for remark in one[0]] != [
        _words(remark) for remark in other[0]
    ]


def _words(remark: Remark) -> tuple[object, ...]:
    """What a person sees of a remark."""
    label = remark.fix.label if remark.fix else ""
    return (
        remark.rule,
        remark.severity,
        remark.message,
        remark.why,
        remark.operations,
        remark.set_up,
        remark.line,
        label,
    )
