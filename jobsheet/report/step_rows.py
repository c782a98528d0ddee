"""The steps of a set-up as rows, and what is measured in it."""

from __future__ import annotations

from jobsheet.machine.dial_readings import Stop
from jobsheet.model.figure import Limit
from jobsheet.model.job import Operation
from jobsheet.model.row import Row
from jobsheet.operations.shared import common
from jobsheet.reckoning.answers.readings import depths_of
from jobsheet.reckoning.reckoner import Outcome
from jobsheet.report.blocks import NoteLine, Step
from jobsheet.report.dial_words import in_words
from jobsheet.report.measured import words as measured_words
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET, numbers_of
from jobsheet.report.safety import line

#: What a step and its note may be long on the sheet, and where a page has no room for even one such step.
USUAL, TIGHT = (200, 320), (90, 90)
#: So many lines stand beside a step in all, cautions first.
LINES = 3
#: From so many layers on their readings are printed beside a step, and so many of them at most.
MANY, LAYERS = 3, 12


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
    measure = measured_words(operation, plan.job.units)
    asked = getattr(operation.fields, "tolerances", None)
    layers = _layer_words(plan, operation, outcome) if row.depth else ""
    parts = (at, row.note, layers, f"measure {measure}" if measure else "", asked.text if asked else "")
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
        share=_share(limit) if limit else "",
        governs=limit.title.lower() if limit else "",
        odds=limit.odds if limit else "",
        untried=_untried(outcome),
        notes=notes,
    )


def _share(limit: Limit) -> str:
    """The share beside the sign; of what no class says anything either there is none."""
    return f"{limit.share * 100:.0f} %" if limit.capacity > 0 else "–"


def _untried(outcome: Outcome) -> str:
    """What was not tried where something else governs, with where to begin."""
    others = (one for one in outcome.limits if one is not outcome.governing and one.verdict == "not tried")
    return "; ".join(f"{one.title.lower()} not tried: begin at {one.begin}" for one in others)


def _position(plan: Plan, operation: Operation, outcome: Outcome) -> str:
    speed = outcome.figures.value("spindle_speed") if outcome.figures else None
    return common.position_text(plan.reckoned.settings[operation.key], speed) if speed else ""


def _depth_stops(plan: Plan, operation: Operation, outcome: Outcome) -> tuple[tuple[Stop, ...], str]:
    """Where the depth dial stands after each layer of a milling cut, from where its cutter was touched; and its handle."""
    wound = plan.reckoned.settings[operation.key].wound
    stops, handle = depths_of(operation, outcome, plan.card, wound)
    return stops, handle.name if handle is not None else ""


def _depth_note(plan: Plan, operation: Operation, outcome: Outcome, row: Row) -> str:
    """The unit, and for a milling cut the turns and dial of the handle that sets its depth, after the first layer and the last."""
    stops, handle = _depth_stops(plan, operation, outcome)
    if not stops:
        return row.depth_unit
    last = f"\nto {stops[-1].dial}" if len(stops) > 1 else ""
    return f"{row.depth_unit}\n{handle} {stops[0].dial}{last}"


def _layer_words(plan: Plan, operation: Operation, outcome: Outcome) -> str:
    """From where the depth dial counts, and its reading after each layer; of very many how many there are between."""
    stops, handle = _depth_stops(plan, operation, outcome)
    if not stops:
        return ""
    wound = plan.reckoned.settings[operation.key].wound
    zero = "goes on from this cutter's zero" if wound > 0 else "0 where this cutter touches the top"
    if len(stops) < MANY:
        return f"{handle} {zero}"
    said = [one.dial for one in stops]
    if (left := len(said) - LAYERS) > 0:
        said = [*said[: LAYERS - 1], f"{left} more as evenly", said[-1]]
    return f"{handle} {zero}: {', '.join(said)}"
