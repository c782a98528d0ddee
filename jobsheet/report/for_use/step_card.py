"""A card for one step on half a page: hold, zero, its points, its row with all
readings, and a line for what happened.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.report.blocks import (
    Columns,
    Gap,
    Outcomes,
    Page,
    Picture,
    Rule,
    Step,
    Steps,
    TitleCell,
    Words,
)
from jobsheet.report.cover import face_up
from jobsheet.report.dial_words import approach
from jobsheet.report.heed.stops import band_of_step
from jobsheet.report.held_in_words import changes, gone_by
from jobsheet.report.holding_view import holding_picture, signs
from jobsheet.report.pictured.cutter_begins import first_cut
from jobsheet.report.pictured.zero_there import zero_there
from jobsheet.report.plan import Course, Plan, letters_of
from jobsheet.report.points import Point, numbers_of
from jobsheet.report.rows.step_rows import TIGHT, steps_of
from jobsheet.report.set_up_head import SMALL, held_facts, positions_table, said, zero_from_above
from jobsheet.report.set_up_sheet import KEY, VERDICTS
from jobsheet.report.titles import short_title
from jobsheet.report.wording import CALCULATED, FOOT, TRAINEE


def step_cards(plan: Plan, numbers: tuple[int, ...] = ()) -> list[Page]:
    """A card for each step of these numbers, for every step where none is named."""
    return [
        _card(plan, course, operation)
        for course in plan.courses
        for operation in course.set_up.operations
        if not numbers or operation.number in numbers
    ]


def _card(plan: Plan, course: Course, operation: Operation) -> Page:
    """On half a page; where that has no room for all of it, on a whole one."""
    for blocks in _ways(plan, course, operation):
        page = _page(plan, course, operation, blocks, half=True)
        if plan.fits(page):
            return page
    whole = _page(plan, course, operation, next(_ways(plan, course, operation)), half=False)
    if plan.fits(whole):
        return whole
    return _page(plan, course, operation, list(_ways(plan, course, operation, TIGHT))[-1], half=False)


def _ways(
    plan: Plan, course: Course, operation: Operation, lengths: tuple[int, int] | None = None
) -> Iterator[tuple[object, ...]]:
    """What stands on the card, from all of it to what it cannot be without."""
    numbers = set(numbers_of(operation, course.points))
    points = tuple(point for point in course.points if point.number in numbers)
    table: tuple[object, ...] = ()
    if points:
        table = (Rule(), positions_table(plan, course, points), Words(approach(course.set_up), "note"))
    held = _held(plan, course, operation)
    cuts = plan.reckoned.operations[operation.key].governing is not None
    end = (Rule(), Outcomes((str(operation.number),) if cuts else (), ("would change", "min", "made by")))
    for short in (False, True):
        steps = (
            steps_of(plan, course, operation, short=short)
            if lengths is None
            else steps_of(plan, course, operation, short=short, lengths=lengths)
        )
        rows: tuple[object, ...] = (Steps(tuple(_here(step) for step in steps)), *end)
        yield (_pictures(plan, course, operation, points), *table, Rule(), *rows)
        yield (*held, *table, Rule(), *rows)


def _here(step: Step) -> Step:
    """The points stand on this very card, on no other."""
    return replace(step, note=step.note.replace(", card", "", 1)) if step.note.startswith("point") else step


def _pictures(plan: Plan, course: Course, operation: Operation, points: tuple[Point, ...]) -> Columns:
    """How the work is held at this step, which steps before may have changed, and the zero from above."""
    set_up = course.set_up
    before = _before(course, operation)
    gone = gone_by(set_up, before) if before else frozenset[str]()
    hold = holding_picture(set_up, course.lie, letters_of(plan), 135, SMALL, plan.card, gone, plan.job.units)
    zero = zero_from_above(
        plan, course, points, 166, SMALL, gone, "", first=not before, after=operation.number - 1
    )
    return Columns(
        parts=((Picture("", hold),), (zero,), (Gap(1), *_held(plan, course, operation))),
        shares=(0.265, 0.345, 0.39),
        ruled=(2,),
    )


def _before(course: Course, operation: Operation) -> int:
    """The number of the step before in the set-up; nought at its first."""
    steps = course.set_up.operations
    at = [step.key for step in steps].index(operation.key)
    return steps[at - 1].number if at else 0


def _held(plan: Plan, course: Course, operation: Operation) -> tuple[object, ...]:
    """The holding in words, and what steps before have changed of it."""
    before = _before(course, operation)
    since = changes(course.set_up, before) if before else ""
    return said((*held_facts(plan, course), *((("since then", since),) if since else ())))


def _page(
    plan: Plan, course: Course, operation: Operation, blocks: tuple[object, ...], *, half: bool
) -> Page:
    set_up = course.set_up
    name = plan.short(face_up(set_up), 40, f"set-up {set_up.number}, title")
    first, second = short_title(
        plan, "Step", f"{operation.number} · set-up {set_up.number} of {len(plan.job.set_ups)}, {name}"
    )
    number = TitleCell(caption="Card", share=first[-1].share, strong=True, page=True)
    drawn = any(isinstance(block, Columns) for block in blocks)
    points = bool(numbers_of(operation, course.points))
    steps = [row for block in blocks if isinstance(block, Steps) for row in block.rows]
    given = {step.verdict for step in steps} | {"not tried" for step in steps if step.untried}
    signed = (TRAINEE,) if plan.job.trainee else ()
    legend = (
        *dict.fromkeys(
            [*([*signs(set_up, course.lie), *(["zero"] if zero_there(plan, course) else [])] if drawn else []), *(["first cut"] if drawn and not _before(course, operation) and first_cut(plan, course) is not None else []), *(["datum"] if drawn and {course.lie.side(face) for _, face in plan.job.datums} else []), *(["cut now"] if drawn and points else []), *(["hazard"] if any(step.notes for step in steps) else [])]
        ),
        *(verdict for verdict in VERDICTS if verdict in given),
    )  # fmt: skip
    return Page(
        kind="step card", about=set_up.key, title=((*first[:-1], number), second), blocks=blocks, legend=legend,
        foot=(*signed, *((KEY,) if plan.reckoned.operations[operation.key].governing is not None else ()), f"{CALCULATED} {FOOT}"), band=band_of_step(plan, set_up.key, operation.key), code=plan.mark, half=half,
    )  # fmt: skip
