"""One sheet marked from what was typed of it: sentences for the learner, and the same as data."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from msgspec import Struct

from jobsheet.lessons.cutter_exercise import choices_marked, cutter_exercise
from jobsheet.lessons.fault_exercise import Fault, fault_exercise, faults_marked
from jobsheet.lessons.figure_exercise import figure_exercise, figures_checked, order_questions
from jobsheet.lessons.marking import Marked
from jobsheet.lessons.order_exercise import OrderExercise, order_exercise, order_marked
from jobsheet.lessons.own_plan import own_plan_marked
from jobsheet.lessons.own_plan_words import own_plan_lines
from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.questions import Checked, Question
from jobsheet.lessons.said_of_an_order import named_pair, result_lines
from jobsheet.lessons.seeds import plan_mark
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoned


class Result(Struct, frozen=True, kw_only=True):
    """What is said of a sheet."""

    right: bool
    lines: tuple[str, ...]
    data: dict[str, Any]


def marked_sheet(
    reckoned: Reckoned,
    asked: str,
    level: int,
    seed: int,
    sheet: int,
    answer: str,
    figures: str,
    set_ups: tuple[int, ...] = (),
) -> Result:
    """Mark what was typed of a sheet; raises WrongAnswer where nothing was, or it cannot
    be read, and as the exercise does.
    """
    if not answer.strip() and not figures.strip():
        raise WrongAnswer("Nothing to mark: write the answer as --answer, or the figures as --figures 1=398")
    maker = partial(_order, set_ups=set_ups) if set_ups else _MAKERS[asked]
    found = maker(reckoned, level, seed, sheet, answer, figures)
    mark = plan_mark(reckoned.job)
    said = f"Marked by the plan as it is now, {mark}: it is this sheet where its key has the same."
    return Result(right=found.right, lines=(*found.lines, said), data={**found.data, "plan": mark})


def marked_plan(job: Job, answer: Job) -> Result:
    """A learner's own plan, marked by the review against what the exercise asks."""
    found = own_plan_marked(job, answer)
    data = {
        "right": found.right, "steps": found.steps, "would the part be good": found.good, "not checked": list(found.not_checked),
        "remarks": [{"rule": one.rule, "severity": one.severity, "message": one.message} for one in found.remarks],
    }  # fmt: skip
    return Result(right=found.right, lines=tuple(own_plan_lines(answer, found)), data=data)


def _order(
    reckoned: Reckoned,
    level: int,
    seed: int,
    sheet: int,
    answer: str,
    figures: str,
    *,
    set_ups: tuple[int, ...] = (),
) -> Result:
    exercise = order_exercise(reckoned, level, seed, sheet, set_ups)
    checks = figures_checked(order_questions(reckoned, exercise), figures)
    if not answer.strip():
        return _with_figures(Result(right=True, lines=(), data={"sheet": sheet}), checks)
    found = order_marked(exercise, answer)
    result = Result(
        right=not found.total, lines=tuple(result_lines(exercise, found)), data=_order_data(exercise, found)
    )
    return _with_figures(result, checks)


def _order_data(exercise: OrderExercise, found: Marked) -> dict[str, Any]:
    def listed(pairs: tuple[Pair, ...]) -> list[dict[str, Any]]:
        return [
            {"pair": named_pair(exercise, one), "rule": one.rule, "title": one.title, "severity": one.severity, "because": one.because}
            for one in pairs
        ]  # fmt: skip

    letters = {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}
    return {
        "sheet": exercise.sheet, "right": not found.total, "moves": found.moves,
        "missing": [letters[key] for one in found.tallies.values() for key in one.missing],
        "mark": round(found.mark, 3), "worst": found.worst, "kept": found.kept, "of": found.of,
        "would the part be good": found.good, "broken": listed(found.broken), "habits": listed(found.habits),
    }  # fmt: skip


def _figures(reckoned: Reckoned, level: int, seed: int, sheet: int, answer: str, figures: str) -> Result:
    exercise = figure_exercise(reckoned, level, seed, sheet)
    checks = figures_checked(exercise.questions, figures or answer)
    return _with_figures(Result(right=True, lines=(), data={"sheet": sheet}), checks)


def _faults(
    reckoned: Reckoned, level: int, seed: int, sheet: int, answer: str, figures: str, *, missing: bool
) -> Result:
    del figures
    exercise = fault_exercise(reckoned, level, seed, sheet, missing=missing)
    found = faults_marked(exercise, answer)
    count = len(exercise.faults)
    lines = ["Right." if found.right else f"{len(found.found)} of {count} found."]
    lines += [
        f"{_place(one, missing=missing)}: {one.remark.message}. {one.remark.why} ({one.title}; {one.remark.severity})"
        for one in found.found
    ]
    lines += [f"row {row}: nothing is wrong there" for row in found.besides if not missing]
    lines += [f"not found yet: think of “{one.title}”" for one in found.left]
    lines.append(f"Would the part be good: {'yes, with what was found mended' if found.good else 'no'}.")
    data = {
        "sheet": sheet, "right": found.right, "found": [one.remark.rule for one in found.found], "left": [one.remark.rule for one in found.left],
        "nothing wrong in": list(found.besides), "would the part be good": found.good,
    }  # fmt: skip
    return Result(right=found.right, lines=tuple(lines), data=data)


def _cutter(reckoned: Reckoned, level: int, seed: int, sheet: int, answer: str, figures: str) -> Result:
    del figures
    exercise = cutter_exercise(reckoned, level, seed, sheet)
    found = choices_marked(exercise, answer)
    good = sum(one.right for one in found)
    lines = ["Right." if good == len(exercise.questions) else f"{good} of {len(exercise.questions)} right."]
    for one in found:
        if one.choice.refused is not None:
            why = one.choice.refused
            because = f" {why.because}" if why.because else ""
            lines.append(
                f"{one.question.ask}, {one.choice.line}: {why.words.rstrip('.')}.{because} ({why.title})"
            )
    data = [{"question": one.question.ask, "chosen": one.choice.line, "right": one.right} for one in found]
    right = good == len(exercise.questions)
    return Result(right=right, lines=tuple(lines), data={"sheet": sheet, "right": right, "choices": data})


def _place(fault: Fault, *, missing: bool) -> str:
    return f"{'before row' if missing else 'row'} {' or '.join(map(str, fault.rows))}"


def _with_figures(result: Result, checks: tuple[Checked, ...]) -> Result:
    if not checks:
        return result
    good = sum(one.right for one in checks)
    lines = [f"Figures: {good} of {len(checks)} right."]
    for one in checks:
        if not one.right:
            why = f": {one.slip}" if one.slip else ""
            lines.append(
                f"{one.typed} for {_short(one.question)} is not right{why}; {', '.join(one.question.working)}."
            )
    data = [
        {"question": one.question.kind, "typed": one.typed, "right": one.right, "slip": one.slip, "answer": one.question.answer}
        for one in checks
    ]  # fmt: skip
    return Result(
        right=result.right and good == len(checks),
        lines=(*result.lines, *lines),
        data={**result.data, "figures": data},
    )


def _short(question: Question) -> str:
    return f"the {question.kind}, in {question.unit},"


_MAKERS: dict[str, Callable[[Reckoned, int, int, int, str, str], Result]] = {
    "order": _order,
    "figures": _figures,
    "cutter": _cutter,
    "wrong": partial(_faults, missing=False),
    "missing": partial(_faults, missing=True),
}
