"""Steps as plain lines for any other program: as the sheet words them, one line an action."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.column.views import heading_view
from jobsheet.gui.desk.desk import Desk
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.row import Row

translate = QCoreApplication.translate


def lines_of(desk: Desk, set_ups: tuple[SetUp, ...], steps: tuple[Operation, ...]) -> list[str]:
    """The lines of set-ups with their steps, and of steps alone."""
    lines: list[str] = []
    for set_up in set_ups:
        view = heading_view(set_up, desk.job)
        lines.append(_one_line(part for part in (view.title, view.holding, view.zero) if part))
        lines += [line for operation in set_up.operations for line in _step(desk, operation)]
    return lines + [line for operation in steps for line in _step(desk, operation)]


def _step(desk: Desk, operation: Operation) -> list[str]:
    outcome = desk.outcome(operation.key)
    if outcome is None or not outcome.rows:
        return [_one_line((f"{operation.number} {desk.view(operation.key).title}",))]
    return [_one_line((f"{operation.number} {row.do}", *_asked(row))) for row in outcome.rows]


def _asked(row: Row) -> list[str]:
    """What stands beside the action on the sheet."""
    spindle = translate("Rows", "{speed} rpm").format(speed=row.spindle) if row.spindle else ""
    said = (
        row.note,
        row.cutter,
        translate("Rows", "power off") if row.power_off else spindle,
        f"{row.pace} {row.pace_unit}",
        f"{row.depth} {row.depth_unit}",
    )
    return [part.strip() for part in said if part.strip()]


def _one_line(parts: object) -> str:
    return "; ".join(" ".join(str(part).split()) for part in parts)  # type: ignore[attr-defined]
