"""A card for one step on half a page: hold, zero, its points, its row with all readings, and a line for what happened."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.report.blocks import Blanks, Columns, Gap, Page, Picture, Rule, Step, Steps, TitleCell, Words
from jobsheet.report.cover import face_up
from jobsheet.report.dial_words import approach
from jobsheet.report.heed.stops import band_of_step
from jobsheet.report.holding_view import holding_picture, signs
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import Point, numbers_of
from jobsheet.report.rows.step_rows import TIGHT, steps_of
from jobsheet.report.set_up_head import SMALL, held_facts, positions_table, said
from jobsheet.report.set_up_sheet import VERDICTS
from jobsheet.report.stage_view import from_above, shown
from jobsheet.report.titles import short_title
from jobsheet.report.wording import CALCULATED, FOOT, TRAINEE
from jobsheet.report.zero_view import beside_the_work, zero_picture


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
    held = said(held_facts(plan, course))
    end = (Rule(), Blanks(("what happened", "found", "min", "made by")))
    for short in (False, True):
        steps = (
            steps_of(plan, course, operation, short=short)
            if lengths is None
            else steps_of(plan, course, operation, short=short, lengths=lengths)
        )
        rows: tuple[object, ...] = (Steps(tuple(_here(one) for one in steps)), *end)
        yield (_pictures(plan, course, points), *table, Rule(), *rows)
        yield (*held, *table, Rule(), *rows)


def _here(step: Step) -> Step:
    """The points stand on this very card, on no other."""
    return replace(step, note=step.note.replace(", card", "", 1)) if step.note.startswith("point") else step


def _pictures(plan: Plan, course: Course, points: tuple[Point, ...]) -> Columns:
    set_up = course.set_up
    datums = tuple((plan.short(letter, 4, "datum letter"), face) for letter, face in plan.job.datums)
    hold = holding_picture(set_up, course.lie, datums, 140, SMALL, plan.card)
    zero = shown(
        "",
        lambda: zero_picture(
            set_up, course.lie, points, datums, 150, SMALL, from_above(plan.stages, set_up.key), plan.card
        ),
        beside_the_work(set_up, course.lie, points),
    )
    beside = (Gap(1), *said(held_facts(plan, course)))
    return Columns(
        parts=((Picture("", hold),), (zero,), beside),
        shares=(0.28, 0.29, 0.43),
        ruled=(2,),
    )


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
            [*([*signs(set_up, course.lie), "zero"] if drawn else []), *(["cut now"] if drawn and points else []), *(["hazard"] if any(step.notes for step in steps) else [])]
        ),
        *(one for one in VERDICTS if one in given),
    )  # fmt: skip
    return Page(
        kind="step card", about=set_up.key, title=((*first[:-1], number), second), blocks=blocks, legend=legend,
        foot=(*signed, f"{CALCULATED} {FOOT}"), band=band_of_step(plan, set_up.key, operation.key), code=plan.mark, half=half,
    )  # fmt: skip
