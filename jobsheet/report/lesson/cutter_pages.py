"""Choose the cutter: what each tool is for, the tools of the cabinet to choose from,
a line for the reason; and the key.
"""

from __future__ import annotations

from jobsheet.lessons.cutter_exercise import Choice, CutterExercise, CutterQuestion
from jobsheet.report.blocks import Blanks, Cell, Column, Columns, Gap, Heading, Rule, Table, Words, Writing
from jobsheet.report.lesson.fault_pages import wanted

#: A row that is ticked with a pencil [points].
ROW = 21.0


def cutter_name(exercise: CutterExercise) -> str:
    """What the sheet is called."""
    part = exercise.job.part
    return f"{part.number or part.name or 'The part'}, which tool"


def cutter_groups(exercise: CutterExercise) -> list[tuple[object, ...]]:
    """The blocks of the worksheet in groups that stay together on a page."""
    said = f"In {exercise.job.material}. Of each list one tool is right; every other one is wrong for a reason. Tick one, and say what is wrong with another."
    groups: list[tuple[object, ...]] = [(Words(said, "body"), Rule(), *wanted(exercise.job))]
    groups += [
        _asked(number, cutter_question) for number, cutter_question in enumerate(exercise.questions, 1)
    ]
    return groups


def _asked(number: int, question: CutterQuestion) -> tuple[object, ...]:
    columns = (Column(tick=True), Column(style="number"), Column(style="body", wide=True))
    rows = tuple((Cell(), Cell(choice.letter), Cell(choice.line)) for choice in question.choices)
    left = (Table(columns=columns, rows=rows, high=ROW),)
    right = (Blanks(("wrong is", "because")), Blanks(("",)), Blanks(("",)))
    return (
        Gap(4),
        Heading(f"{number}   {question.ask}"),
        Columns(parts=(left, right), shares=(0.5, 0.5)),
        Gap(4),
    )


def cutter_key_groups(exercise: CutterExercise) -> list[tuple[object, ...]]:
    """Which one is right, and of every other one why it is not."""
    groups: list[tuple[object, ...]] = []
    for number, question in enumerate(exercise.questions, 1):
        columns = (
            Column(style="number"), Column(style="label bold"), Column(style="label", wide=True), Column(style="caption"),
        )  # fmt: skip
        rows = tuple(
            (
                Cell(choice.letter),
                Cell(choice.line),
                Cell(_why(choice)),
                Cell(choice.refused.title if choice.refused is not None else ""),
            )
            for choice in question.choices
        )
        groups.append((Heading(f"{number}   {question.ask}"), Table(columns=columns, rows=rows), Gap(6)))
    groups.append((Rule(), Heading("Notes"), Writing(3)))
    return groups


def _why(choice: Choice) -> str:
    if choice.refused is None:
        return "right"
    return " ".join(one for one in (f"{choice.refused.words.rstrip('.')}.", choice.refused.because) if one)
