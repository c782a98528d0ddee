"""The steps of a set-up as rows, and what is measured in it."""

from __future__ import annotations

from jobsheet.machine.handles import dial_text, reading
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.row import Row
from jobsheet.operations.registry import roles
from jobsheet.operations.shared import common
from jobsheet.reckoning.reckoner import Outcome
from jobsheet.report.blocks import NoteLine, Step
from jobsheet.report.dial_words import in_words
from jobsheet.report.measured import _limits
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET, numbers_of
from jobsheet.report.safety import line

#: What a step and its note may be long on the sheet, and where a page has no room for even one such step.
USUAL, TIGHT = (200, 320), (90, 90)
#: So many lines stand beside a step in all, cautions first.
LINES = 3


def steps_of(
    plan: Plan, course: Course, operation: Operation, *, short: bool, lengths: tuple[int, int] = USUAL
) -> tuple[Step, ...]:
    """The rows of one operation; the number is repeated, its notes stand beside the first."""
    outcome = plan.reckoned.operations[operation.key]
    notes = tuple(
        line(plan, note, short=short, bold=True) for note in plan.notes.steps.get(operation.key, ())
    )
    if not short:
        # What has no room is left out here: a reminder asks for no answer, and three lines are still read.
        rest = max(0, LINES - len(notes))
        reminded = plan.reminders.steps.get(operation.key, ())[:rest]
        notes += tuple(NoteLine(f"{row.text}.", "") for row in reminded)
    where = f"step {operation.number}"
    if outcome.problem or not outcome.rows:
        problem = (
            NoteLine(f"Cannot be calculated: {outcome.problem}", "hazard", True) if outcome.problem else None
        )
        own = getattr(operation.fields, "note", "") or ""
        return (
            Step(
                number=str(operation.number), do=plan.short(outcome.title, lengths[0], where),
                note=plan.short(own, lengths[1], f"{where}, note"), notes=(*((problem,) if problem else ()), *notes),
            ),
        )  # fmt: skip
    return tuple(
        _step(plan, course, operation, outcome, row, notes if not index else (), lengths)
        for index, row in enumerate(outcome.rows)
    )


def _step(
    plan: Plan,
    course: Course,
    operation: Operation,
    outcome: Outcome,
    row: Row,
    notes: tuple[NoteLine, ...],
    lengths: tuple[int, int],
) -> Step:
    where = f"step {operation.number}"
    numbers = numbers_of(operation, course.points)
    card = len(course.points) > ON_THE_SHEET
    at = f"{in_words(numbers)}{', card' if card else ''}" if numbers else ""
    measure = _limits(operation, plan.job.units)
    asked = getattr(operation.fields, "tolerances", None)
    parts = (at, row.note, f"measure {measure}" if measure else "", asked.text if asked else "")
    limit = outcome.governing
    return Step(
        number=str(operation.number),
        do=plan.short(row.do, lengths[0], where),
        note=plan.short("; ".join(part for part in parts if part), lengths[1], f"{where}, note"),
        cutter=plan.short(row.cutter, 60, f"{where}, cutter"),
        spindle="stopped" if row.power_off else row.spindle,
        spindle_note="" if row.power_off else _position(plan, operation, outcome),
        pace=row.pace or ("by hand" if row.pace_unit == "by hand" else ""),
        pace_note=row.pace_unit if row.pace else "",
        depth=plan.short(row.depth or row.depth_unit, 30, f"{where}, depth"),
        depth_note=_depth_note(plan, operation, outcome, row) if row.depth else "",
        verdict=limit.verdict if limit else "",
        share=f"{limit.share * 100:.0f} %" if limit else "",
        governs=limit.title.lower() if limit else "",
        notes=notes,
    )


def _position(plan: Plan, operation: Operation, outcome: Outcome) -> str:
    speed = outcome.figures.value("spindle_speed") if outcome.figures else None
    return common.position_text(plan.reckoned.settings[operation.key], speed) if speed else ""


def _depth_note(plan: Plan, operation: Operation, outcome: Outcome, row: Row) -> str:
    """The unit, and for a milling cut the turns and dial of the handle that sets its depth."""
    depth = getattr(operation.fields, "depth", None)
    handle = common.depth_handle(plan.card)
    if handle is None or not isinstance(depth, Quantity) or not roles(operation).mills:
        return row.depth_unit
    layers = (outcome.figures.value("layers") if outcome.figures else None) or 1.0
    return f"{row.depth_unit}\n{handle.name} {dial_text(handle, reading(handle, depth.value / layers))}"
