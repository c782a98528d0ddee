"""The steps of a set-up as rows: everything a step needs stands in its row."""

from __future__ import annotations

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.model.figure import Limit
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Cutter
from jobsheet.model.row import Row
from jobsheet.operations.shared import common
from jobsheet.reckoning.reckoner import Outcome
from jobsheet.report.blocks import NoteLine, Step
from jobsheet.report.dial_words import in_words
from jobsheet.report.heed.revisions import set_aside_at
from jobsheet.report.heed.safety import line
from jobsheet.report.heed.stops import at_step
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import ON_THE_SHEET, numbers_of
from jobsheet.report.rows.dial_rows import dial_rows
from jobsheet.report.rows.goes_in import entries
from jobsheet.report.rows.measured import measures_at
from jobsheet.report.rows.rings import rings

#: What a step and its note may be long on the sheet, and where a page has no room for even one such step.
USUAL, TIGHT = (240, 900), (90, 90)
#: So many lines stand beside a step in all, cautions first.
LINES = 3


def steps_of(
    plan: Plan,
    course: Course,
    operation: Operation,
    *,
    short: bool,
    lengths: tuple[int, int] = USUAL,
    said: frozenset[str] = frozenset(),
) -> tuple[Step, ...]:
    """The rows of one operation; the number is repeated, its notes stand beside the first.

    Parameters
    ----------
    short : bool
        Whether its cautions stand with their first sentences only
    lengths : tuple of int
        What its words and its note may be long
    said : frozenset of str
        Ids of cautions that stand further up on the same page
    """
    outcome = plan.reckoned.operations[operation.key]
    notes = _notes(plan, course, operation, said, short=short)
    where = f"step {operation.number}"
    if outcome.problem or not outcome.rows:
        problem = (
            NoteLine(f"Cannot be calculated: {outcome.problem}", "hazard", True) if outcome.problem else None
        )
        own = getattr(operation.fields, "note", "") or ""
        return (
            Step(
                number=str(operation.number), do=plan.short(outcome.title, lengths[0], where),
                note=plan.short(own, lengths[1], f"{where}, note"), stops=at_step(plan, operation.key), notes=(*((problem,) if problem else ()), *notes),
            ),
        )  # fmt: skip
    return tuple(
        _step(plan, course, operation, outcome, row, notes if not index else (), lengths, first=not index)
        for index, row in enumerate(outcome.rows)
    )


def _notes(
    plan: Plan, course: Course, operation: Operation, said: frozenset[str], *, short: bool
) -> tuple[NoteLine, ...]:
    """Its stop notes by number, then each hazard where it first applies in the
    set-up, then what it is reminded of.

    A hazard that stood in full in a set-up before is said in its first sentence.
    """
    told = _told(plan, course)
    here = [note for note in plan.notes.steps.get(operation.key, ()) if note.level != "stop"]
    notes = set_aside_at(plan, operation.key)
    notes += tuple(
        line(note, short=short or told[note.id][1], bold=True)
        for note in here
        if told[note.id][0] == operation.key and note.id not in said
    )
    # What has no room is left out here: a reminder asks for no answer, and three lines are still read.
    rest = max(0, LINES - len(notes))
    reminded = () if short else plan.reminders.steps.get(operation.key, ())[:rest]
    words = " · ".join((*(row.text for row in reminded), *filter(None, (_rings(plan, operation),))))
    return (*notes, NoteLine(f"{words}.", "")) if words else notes


def _told(plan: Plan, course: Course) -> dict[str, tuple[str, bool]]:
    """Each caution of a set-up's steps: at which step it is first said, and
    whether a set-up before has said it.
    """
    key = f"told {course.set_up.key}"
    if key not in plan.drawn:
        before: set[str] = set()
        for set_up in plan.job.set_ups:
            first: dict[str, tuple[str, bool]] = {}
            for operation in set_up.operations:
                for note in plan.notes.steps.get(operation.key, ()):
                    first.setdefault(note.id, (operation.key, note.id in before))
            plan.drawn[f"told {set_up.key}"] = first
            before |= set(first)
    found: dict[str, tuple[str, bool]] = plan.drawn[key]
    return found


def _step(
    plan: Plan,
    course: Course,
    operation: Operation,
    outcome: Outcome,
    row: Row,
    notes: tuple[NoteLine, ...],
    lengths: tuple[int, int],
    *,
    first: bool,
) -> Step:
    where = f"step {operation.number}"
    numbers = numbers_of(operation, course.points)
    card = len(course.points) > ON_THE_SHEET
    at = f"{in_words(numbers)}{', card' if card else ''}" if numbers else ""
    asked = getattr(operation.fields, "tolerances", None)
    dials = dial_rows(plan, course, operation) if first else ()
    into = next(
        (entry.point.number for entry in entries(plan, course) if entry.step == operation.number), None
    )
    goes_in = f"goes in at point {into}{', card' if card else ''}" if into is not None else ""
    parts = (at, goes_in, _beside_readings(row) if dials else row.note, asked.text if asked else "")
    limit = outcome.governing
    return Step(
        number=str(operation.number),
        do=plan.short(row.do, lengths[0], where),
        note=plan.short("; ".join(part for part in parts if part), lengths[1], f"{where}, note"),
        cutter=plan.short(_cutter_line(plan, operation, row), 240, f"{where}, cutter"),
        spindle="stopped" if row.power_off else row.spindle,
        spindle_note="" if row.power_off else _position(plan, operation, outcome),
        pace=row.pace or ("by hand" if row.pace_unit == "by hand" else ""),
        pace_note=row.pace_unit if row.pace else "",
        depth=plan.short(row.depth or row.depth_unit, 30, f"{where}, depth"),
        depth_note=row.depth_unit if row.depth else "",
        stops=at_step(plan, operation.key) if first else "",
        verdict=limit.verdict if limit else "",
        share=_share(limit) if limit else "",
        governs=limit.title.lower() if limit else "",
        odds=limit.odds if limit else "",
        untried=_untried(outcome),
        dials=dials,
        measures=measures_at(plan, course, operation) if first else (),
        notes=notes,
    )


def _beside_readings(row: Row) -> str:
    """A step's words without the parts that say readings: those stand in rows of
    their own, on lines of the dial.
    """
    note = row.note
    for reading in row.readings:
        note = note.replace(reading, "", 1)
    return "; ".join(piece for piece in (part.strip() for part in note.split("; ")) if piece)


def _cutter_line(plan: Plan, operation: Operation, row: Row) -> str:
    """Cutter, place, holder and how far out, and the fluid where it cuts."""
    cutter = getattr(operation.fields, "cutter", None)
    if not isinstance(cutter, Cutter):
        return row.cutter
    kept = [part.strip() for part in cutter.text.split(",")]
    gone = {cutter.place.casefold(), *(part.casefold() for part in cutter.place.split(","))}
    said = [part for part in kept if part.casefold() not in gone and "marked" not in part]
    name = short_name(cutter) if _same_before(plan, operation) else ", ".join(said) or cutter.kind
    words = [name, cutter.place]
    setting = plan.reckoned.settings.get(operation.key)
    if setting is not None and row.spindle and not row.power_off and row.pace:
        words.append(setting.fluid)
    return " · ".join(word for word in words if word)


def _rings(plan: Plan, operation: Operation) -> str:
    """The way back where it rings; not again where the step before with the same cutter has said the same."""
    set_up, _ = plan.job.find(operation.key)
    at = [other.key for other in set_up.operations].index(operation.key)
    said = rings(plan, operation)
    same = at and _same_before(plan, operation) and rings(plan, set_up.operations[at - 1]) == said
    return "" if same else said


def _same_before(plan: Plan, operation: Operation) -> bool:
    """Whether the step before in the same set-up has the same cutter: its name and place are enough then."""
    set_up, _ = plan.job.find(operation.key)
    at = [other.key for other in set_up.operations].index(operation.key)
    before = getattr(set_up.operations[at - 1].fields, "cutter", None) if at else None
    own = getattr(operation.fields, "cutter", None)
    return before is not None and own is not None and before.text == own.text


def _share(limit: Limit) -> str:
    """The share beside the sign; of what no class says anything either there is none."""
    return f"{limit.share * 100:.0f} %" if limit.capacity > 0 else "–"


def _untried(outcome: Outcome) -> str:
    """What was not tried where something else governs, with where to begin."""
    others = (
        limit for limit in outcome.limits if limit is not outcome.governing and limit.verdict == "not tried"
    )
    return "; ".join(f"{limit.title.lower()} not tried: begin at {limit.begin}" for limit in others)


def _position(plan: Plan, operation: Operation, outcome: Outcome) -> str:
    speed = outcome.figures.value("spindle_speed") if outcome.figures else None
    return common.position_text(plan.reckoned.settings[operation.key], speed) if speed else ""
