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
    result = maker(reckoned, level, seed, sheet, answer, figures)
    mark = plan_mark(reckoned.job)
    said = f"Marked by the plan as it is now, {mark}: it is this sheet where its key has the same."
    return Result(right=result.right, lines=(*result.lines, said), data={**result.data, "plan": mark})


def marked_plan(job: Job, answer: Job) -> Result:
    """A learner's own plan, marked by the review against what the exercise asks."""
    own_plan = own_plan_marked(job, answer)
    data = {
        "right": own_plan.right, "steps": own_plan.steps, "would the part be good": own_plan.good, "not checked": list(own_plan.not_checked),
        "remarks": [{"rule": remark.rule, "severity": remark.severity, "message": remark.message} for remark in own_plan.remarks],
    }  # fmt: skip
    return Result(right=own_plan.right, lines=tuple(own_plan_lines(answer, own_plan)), data=data)


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
    marked = order_marked(exercise, answer)
    result = Result(
        right=not marked.total,
        lines=tuple(result_lines(exercise, marked)),
        data=_order_data(exercise, marked),
    )
    return _with_figures(result, checks)


def _order_data(exercise: OrderExercise, marked: Marked) -> dict[str, Any]:
    def listed(pairs: tuple[Pair, ...]) -> list[dict[str, Any]]:
        return [
            {"pair": named_pair(exercise, pair), "rule": pair.rule, "title": pair.title, "severity": pair.severity, "because": pair.because}
            for pair in pairs
        ]  # fmt: skip

    letters = {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}
    return {
        "sheet": exercise.sheet, "right": not marked.total, "moves": marked.moves,
        "missing": [letters[key] for tally in marked.tallies.values() for key in tally.missing],
        "mark": round(marked.mark, 3), "worst": marked.worst, "kept": marked.kept, "of": marked.of,
        "would the part be good": marked.good, "broken": listed(marked.broken), "habits": listed(marked.habits),
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
    sought = faults_marked(exercise, answer)
    count = len(exercise.faults)
    lines = ["Right." if sought.right else f"{len(sought.found)} of {count} found."]
    lines += [
        f"{_place(fault, missing=missing)}: {fault.remark.message}. {fault.remark.why} ({fault.title}; {fault.remark.severity})"
        for fault in sought.found
    ]
    lines += [f"row {row}: nothing is wrong there" for row in sought.besides if not missing]
    lines += [f"not found yet: think of “{one.title}”" for one in sought.left]
    lines.append(f"Would the part be good: {'yes, with what was found mended' if sought.good else 'no'}.")
    data = {
        "sheet": sheet, "right": sought.right, "found": [fault.remark.rule for fault in sought.found], "left": [fault.remark.rule for fault in sought.left],
        "nothing wrong in": list(sought.besides), "would the part be good": sought.good,
    }  # fmt: skip
    return Result(right=sought.right, lines=tuple(lines), data=data)


def _cutter(reckoned: Reckoned, level: int, seed: int, sheet: int, answer: str, figures: str) -> Result:
    del figures
    exercise = cutter_exercise(reckoned, level, seed, sheet)
    found = choices_marked(exercise, answer)
    good = sum(chosen.right for chosen in found)
    lines = ["Right." if good == len(exercise.questions) else f"{good} of {len(exercise.questions)} right."]
    for chosen in found:
        if chosen.choice.refused is not None:
            why = chosen.choice.refused
            because = f" {why.because}" if why.because else ""
            lines.append(
                f"{chosen.question.ask}, {chosen.choice.line}: {why.words.rstrip('.')}.{because} ({why.title})"
            )
    data = [
        {"question": chosen.question.ask, "chosen": chosen.choice.line, "right": chosen.right}
        for chosen in found
    ]
    right = good == len(exercise.questions)
    return Result(right=right, lines=tuple(lines), data={"sheet": sheet, "right": right, "choices": data})


def _place(fault: Fault, *, missing: bool) -> str:
    return f"{'before row' if missing else 'row'} {' or '.join(map(str, fault.rows))}"


def _with_figures(result: Result, checks: tuple[Checked, ...]) -> Result:
    if not checks:
        return result
    good = sum(checked.right for checked in checks)
    lines = [f"Figures: {good} of {len(checks)} right."]
    for checked in checks:
        if not checked.right:
            why = f": {checked.slip}" if checked.slip else ""
            lines.append(
                f"{checked.typed} for {_short(checked.question)} is not right{why}; {', '.join(checked.question.working)}."
            )
    data = [
        {"question": checked.question.kind, "typed": checked.typed, "right": checked.right, "slip": checked.slip, "answer": checked.question.answer}
        for checked in checks
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
