"""Work out the figures: a sheet of questions from a job's own steps, and typed figures checked."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.lessons.figure_questions import figure_questions
from jobsheet.lessons.order_exercise import NoExercise, OrderExercise
from jobsheet.lessons.questions import Checked, Question, checked
from jobsheet.lessons.seeds import draws_for
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.reckoning.reckoner import Reckoned

#: So many questions on a sheet, by level.
MOST = {1: 4, 2: 5, 3: 7, 4: 7}
#: So many beside slips.
BESIDE = 4


class FigureExercise(Struct, frozen=True, kw_only=True):
    """One sheet of figures."""

    level: int
    seed: int
    sheet: int
    questions: tuple[Question, ...]


def figure_exercise(reckoned: Reckoned, level: int, seed: int, sheet: int) -> FigureExercise:
    """The questions of that class seed and sheet; raises NoExercise where no
    step of the job has a figure to ask.
    """
    draws = draws_for(reckoned.job, "figures", level, seed, sheet)
    questions = figure_questions(reckoned, draws, MOST[level])
    if not questions:
        name = reckoned.job.part.number or "This job"
        raise NoExercise(f"{name} has no step with a figure to work out; try --kind order, or another job")
    return FigureExercise(level=level, seed=seed, sheet=sheet, questions=questions)


def order_questions(reckoned: Reckoned, exercise: OrderExercise) -> tuple[Question, ...]:
    """The figures on a sheet of slips, about the steps that it asks."""
    draws = draws_for(reckoned.job, "figures of slips", exercise.level, exercise.seed, exercise.sheet)
    keys = frozenset(slip.key for block in exercise.blocks for slip in block.slips)
    return figure_questions(reckoned, draws, BESIDE, keys)


def figures_checked(questions: tuple[Question, ...], text: str) -> tuple[Checked, ...]:
    """Figures as they were typed, each with the number of its question: `1=398 2=320 5=2+191`.

    Raises
    ------
    WrongAnswer
        If one of them has no number of a question, or is no figure.
    """
    found = []
    for word in text.split():
        number, equals, typed = word.partition("=")
        if not equals or not number.isdigit() or not 1 <= int(number) <= len(questions):
            raise WrongAnswer(
                f"“{word}” says no question of this sheet: write its number and the figure, 1 to {len(questions)}, such as 1=398"
            )
        found.append(checked(questions[int(number) - 1], typed))
    return tuple(found)
