"""One sheet of a lesson as two documents: the worksheet, and the key for whoever marks."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from msgspec.structs import replace

from jobsheet.lessons.cutter_exercise import cutter_exercise
from jobsheet.lessons.fault_exercise import fault_exercise
from jobsheet.lessons.figure_exercise import figure_exercise, order_questions
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.lessons.seeds import plan_mark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Document, Page
from jobsheet.report.lesson.cutter_pages import cutter_groups, cutter_key_groups, cutter_name
from jobsheet.report.lesson.exercise_page import Head, document, pages
from jobsheet.report.lesson.fault_pages import fault_groups, fault_key_groups, fault_name
from jobsheet.report.lesson.order_key import key_groups, worked_groups
from jobsheet.report.lesson.order_worksheet import exercise_name, question_groups, worksheet_groups
from jobsheet.report.lesson.own_plan_pages import own_plan_groups, own_plan_key, own_plan_name

Fits = Callable[[Page], bool]


def lesson_documents(
    asked: str,
    reckoned: Reckoned,
    level: int,
    seed: int,
    sheet: int,
    fits: Fits,
    machine: str = "",
    set_ups: tuple[int, ...] = (),
) -> tuple[Document, Document]:
    """Worksheet and key of one sheet of that kind, an order of these set-ups alone where they are
    named; raises as its exercise does.
    """
    maker = partial(_order, set_ups=set_ups) if set_ups else _MAKERS[asked]
    name, work, answers, planted = maker(reckoned, level, seed, sheet)
    head = Head(job=reckoned.job, exercise=name, sheet=sheet, machine=machine, planted=planted)
    key = replace(head, key=f"{seed}, level {level}, plan {plan_mark(reckoned.job)}")
    return (
        document(f"worksheet {sheet}", head, pages(head, work, fits)),
        document(f"key {sheet}", key, pages(key, answers, fits)),
    )


def _order(reckoned: Reckoned, level: int, seed: int, sheet: int, set_ups: tuple[int, ...] = ()) -> Made:
    exercise = order_exercise(reckoned, level, seed, sheet, set_ups)
    questions = order_questions(reckoned, exercise)
    return (
        exercise_name(exercise),
        worksheet_groups(exercise, reckoned, questions),
        key_groups(exercise, questions),
        False,
    )


def _figures(reckoned: Reckoned, level: int, seed: int, sheet: int) -> Made:
    exercise = figure_exercise(reckoned, level, seed, sheet)
    part = reckoned.job.part
    name = f"{part.number or part.name or 'The part'}, figures"
    return name, question_groups(exercise.questions, 5), worked_groups(exercise.questions), False


def _faults(reckoned: Reckoned, level: int, seed: int, sheet: int, *, missing: bool) -> Made:
    exercise = fault_exercise(reckoned, level, seed, sheet, missing=missing)
    return fault_name(exercise), fault_groups(exercise), fault_key_groups(exercise), True


def _cutter(reckoned: Reckoned, level: int, seed: int, sheet: int) -> Made:
    exercise = cutter_exercise(reckoned, level, seed, sheet)
    return cutter_name(exercise), cutter_groups(exercise), cutter_key_groups(exercise), False


def _plan(reckoned: Reckoned, level: int, seed: int, sheet: int) -> Made:
    del level, seed, sheet  # a drawing is planned from as it is
    return own_plan_name(reckoned.job), own_plan_groups(reckoned), own_plan_key(reckoned), False


#: What a sheet is called, the blocks of its worksheet and of its key, and whether it has mistakes on purpose.
Made = tuple[str, list[tuple[object, ...]], list[tuple[object, ...]], bool]
_MAKERS: dict[str, Callable[[Reckoned, int, int, int], Made]] = {
    "order": _order,
    "figures": _figures,
    "cutter": _cutter,
    "wrong": partial(_faults, missing=False),
    "missing": partial(_faults, missing=True),
    "plan": _plan,
}
