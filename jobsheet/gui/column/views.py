"""What a closed row shows, put together once from the operation, its figures and its remarks."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import JobsheetError
from jobsheet.gui.ink.spoken import face_word, severity_word, verdict_word
from jobsheet.holdings.all_holdings import rests_of, words_of
from jobsheet.model.figure import Limit
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.quantity import Cutter
from jobsheet.model.remark import SEVERITIES, Remark
from jobsheet.model.row import Row
from jobsheet.operations import registry
from jobsheet.operations.kind import Aim, Kind
from jobsheet.reckoning.reckoner import Outcome

translate = QCoreApplication.translate


class RowView(Struct, frozen=True, kw_only=True):
    """One closed row, ready to be painted and to be read out; `titles` and `cutters` are
    the same words, the longest first.
    """

    key: str
    number: int
    icon: str
    titles: tuple[str, ...]
    severity: str = ""
    remark: str = ""
    cutters: tuple[str, ...] = ()
    spindle: str = ""
    pace: str = ""
    depth: str = ""
    verdict: str = ""
    share: str = ""
    #: A limit of which nothing was tried on this machine, where another one
    #: governs: its name and where to begin.
    untried: str = ""
    problem: str = ""
    stale: bool = False
    #: How it went the last time, `last: clean 28 Nov`, and its outcome.
    last: str = ""
    last_outcome: str = ""

    @property
    def title(self) -> str:
        """All that it says of what is done."""
        return self.titles[0]

    @property
    def cutter(self) -> str:
        """What cuts, by name and place."""
        return self.cutters[0] if self.cutters else ""

    def spoken(self) -> str:
        """The row as a screen reader says it."""
        parts = [f"{self.number} {self.title}"]
        if self.remark:
            parts.append(f"{severity_word(self.severity)}: {self.remark}")
        parts += [part for part in (self.cutter, self.spindle, self.pace, self.depth) if part]
        if self.verdict:
            parts.append(f"{verdict_word(self.verdict)}, {self.share}")
        if self.untried:
            parts.append(translate("Rows", "not tried, {limit}").format(limit=self.untried))
        if self.problem:
            parts.append(self.problem)
        if self.last:
            parts.append(self.last)
        if self.stale:
            parts.append(translate("Rows", "a field cannot be read: these are the last good figures"))
        return "; ".join(parts)


class RowAsked(Struct, frozen=True):
    """A row that is put together when it comes into sight: what nobody looks at
    is neither reckoned nor worded.
    """

    key: str
    made: Callable[[], RowView]


class HeadingView(Struct, frozen=True, kw_only=True):
    """The heading of a set-up."""

    key: str
    number: int
    title: str
    holding: str
    zero: str
    device: str = ""
    packing: str = ""

    def spoken(self) -> str:
        """The heading as a screen reader says it."""
        return ", ".join(part for part in (self.title, self.holding, self.zero) if part)


def _joined(number: str, unit: str) -> str:
    """A number with its unit behind a blank."""
    return f"{number} {unit}".strip()


def _told(rows: tuple[Row, ...]) -> Row | None:
    """The action of a step that the spindle does, or its first one."""
    return next((row for row in rows if row.spindle), rows[0] if rows else None)


def worst(remarks: tuple[Remark, ...]) -> Remark | None:
    """The remark that comes first."""
    return min(remarks, key=lambda remark: SEVERITIES.index(remark.severity), default=None)


def _titles(kind: Kind[Any], operation: Operation, outcome: Outcome | None, aim: Aim) -> tuple[str, ...]:
    """What is done, the longest words first; where they cannot be said, the title of the kind."""
    try:
        return kind.row_words(operation.fields, aim)
    except (JobsheetError, ArithmeticError):
        return (outcome.title if outcome and outcome.title else kind.title,)


def _cutters(operation: Operation, otherwise: str) -> tuple[str, ...]:
    """The cutter by name and place, then by its place alone; what holds no cutter as the sheet has it."""
    cutter = getattr(operation.fields, "cutter", None)
    if not isinstance(cutter, Cutter):
        return (otherwise,) if otherwise else ()
    from jobsheet.catalog.tools.cutters import short_name

    name = short_name(cutter)
    return (f"{name} · {cutter.place}", cutter.place) if cutter.place else (name,)


def row_view(
    operation: Operation, outcome: Outcome | None, remarks: tuple[Remark, ...], aim: Aim, *, stale: bool
) -> RowView:
    """A closed row from what is known about its operation."""
    kind = registry.kind(operation.kind)
    first = worst(remarks)
    view = RowView(
        key=operation.key,
        number=operation.number,
        icon=f"op-{kind.icon}",
        titles=_titles(kind, operation, outcome, aim),
        severity=first.severity if first else "",
        remark=first.message if first else "",
        stale=stale,
    )
    if outcome is None:
        return view
    row = _told(outcome.rows)
    limit = outcome.governing
    changes: dict[str, object] = {"problem": outcome.problem}
    if row is not None:
        spindle = translate("Rows", "power off") if row.power_off else row.spindle
        changes |= {
            "cutters": _cutters(operation, row.cutter),
            "spindle": spindle,
            "pace": _joined(row.pace, row.pace_unit),
            "depth": _joined(row.depth, row.depth_unit),
        }
    if limit is not None:
        changes["verdict"] = limit.verdict
        changes["share"] = _untried(limit) or translate("Rows", "{share} %, {limit}").format(
            share=max(1, round(limit.share * 100)), limit=limit.title[:1].lower() + limit.title[1:]
        )
        others = (other for other in outcome.limits if other is not limit)
        changes["untried"] = next((said for limit in others if (said := _untried(limit))), "")
    from msgspec.structs import replace

    return replace(view, **changes)


def _untried(limit: Limit) -> str:
    """Where to begin with what was not tried, and what that is about; nothing for any other verdict."""
    if limit.verdict != "not tried":
        return ""
    return translate("Rows", "begin at {size}, {limit}").format(size=limit.begin, limit=limit.title.lower())


def heading_view(set_up: SetUp, job: Job) -> HeadingView:
    """The heading of a set-up: number, face up, holding; its zero and minutes."""
    del job
    title = translate("Rows", "Set-up {number} · {face}").format(
        number=set_up.number, face=set_up.title or face_word(set_up.up)
    )
    holding = ", ".join(part for part in (words_of(set_up.holding), rests_of(set_up.holding)) if part)
    zero = set_up.zero.named
    if zero:
        zero = translate("Rows", "zero at {place}").format(place=zero)
    minutes = set_up.minutes.text if set_up.minutes else ""
    if minutes and minutes.replace(".", "").replace(",", "").isdigit():
        minutes = translate("Rows", "{minutes} min").format(minutes=minutes)
    return HeadingView(
        key=set_up.key,
        number=set_up.number,
        title=title,
        holding=holding,
        device=words_of(set_up.holding),
        packing=rests_of(set_up.holding),
        zero=" · ".join(part for part in (zero, minutes) if part),
    )
