"""What a closed row shows, put together once from the operation, its figures and its remarks."""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.gui.ink.spoken import face_word, severity_word, verdict_word
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.remark import SEVERITIES, Remark
from jobsheet.model.row import Row
from jobsheet.operations import registry
from jobsheet.reckoning.reckoner import Outcome

translate = QCoreApplication.translate


class RowView(Struct, frozen=True, kw_only=True):
    """One closed row, ready to be painted and to be read out."""

    key: str
    number: int
    icon: str
    title: str
    severity: str = ""
    remark: str = ""
    cutter: str = ""
    spindle: str = ""
    pace: str = ""
    depth: str = ""
    verdict: str = ""
    share: str = ""
    problem: str = ""
    stale: bool = False

    def spoken(self) -> str:
        """The row as a screen reader says it."""
        parts = [f"{self.number} {self.title}"]
        if self.remark:
            parts.append(f"{severity_word(self.severity)}: {self.remark}")
        parts += [part for part in (self.cutter, self.spindle, self.pace, self.depth) if part]
        if self.verdict:
            parts.append(f"{verdict_word(self.verdict)}, {self.share}")
        if self.problem:
            parts.append(self.problem)
        if self.stale:
            parts.append(translate("Rows", "a field cannot be read: these are the last good figures"))
        return "; ".join(parts)


class HeadingView(Struct, frozen=True, kw_only=True):
    """The heading of a set-up."""

    key: str
    number: int
    title: str
    holding: str
    zero: str

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


def row_view(
    operation: Operation, outcome: Outcome | None, remarks: tuple[Remark, ...], *, stale: bool
) -> RowView:
    """A closed row from what is known about its operation."""
    kind = registry.kind(operation.kind)
    first = worst(remarks)
    view = RowView(
        key=operation.key,
        number=operation.number,
        icon=f"op-{kind.icon}",
        title=outcome.title if outcome and outcome.title else kind.title_of(operation.fields),
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
            "cutter": row.cutter,
            "spindle": spindle,
            "pace": _joined(row.pace, row.pace_unit),
            "depth": _joined(row.depth, row.depth_unit),
        }
    if limit is not None:
        changes["verdict"] = limit.verdict
        changes["share"] = translate("Rows", "{share} %, {limit}").format(
            share=max(1, round(limit.share * 100)), limit=limit.title[:1].lower() + limit.title[1:]
        )
    from msgspec.structs import replace

    return replace(view, **changes)


def heading_view(set_up: SetUp, job: Job) -> HeadingView:
    """The heading of a set-up: number, face up, holding; its zero and minutes."""
    del job
    title = translate("Rows", "Set-up {number} · {face}").format(
        number=set_up.number, face=set_up.title or face_word(set_up.up)
    )
    holding = ", ".join(part for part in (set_up.holding.device, set_up.holding.packing) if part)
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
        zero=" · ".join(part for part in (zero, minutes) if part),
    )
