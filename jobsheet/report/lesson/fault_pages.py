"""A plan with mistakes on purpose: its steps with tool and speed to read through,
lines for what was found, and the key.
"""

from __future__ import annotations

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.lessons.fault_exercise import Fault, FaultExercise
from jobsheet.lessons.slips import step_words
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import stock_box
from jobsheet.model.quantity import Cutter
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.report.blocks import (
    Blanks,
    Cell,
    Column,
    Columns,
    Gap,
    Heading,
    Picture,
    Rule,
    Table,
    Words,
    Writing,
)
from jobsheet.report.isometric import stock_picture
from jobsheet.report.lesson.held_line import held_line

#: Height of the picture of the stock and the width of it [points].
WIDE, HIGH = 245.0, 96.0
#: A row that is read with a pencil in the hand [points].
ROW = 21.0
NUMBERS = ("no", "one", "two", "three", "four", "five")


def fault_name(exercise: FaultExercise) -> str:
    """What the sheet is called."""
    part = exercise.job.part
    return f"{part.number or part.name or 'The part'}, {'what is missing' if exercise.missing else 'what is wrong'}"


def fault_groups(exercise: FaultExercise) -> list[tuple[object, ...]]:
    """The blocks of the worksheet in groups that stay together on a page."""
    reckoned = Reckoner().reckon(exercise.job)
    groups: list[tuple[object, ...]] = [(Words(_asked(exercise), "body"), Rule(), *wanted(exercise.job))]
    words = step_words(reckoned)
    groups += [
        plan_rows(reckoned, words, set_up) for set_up in exercise.job.set_ups if set_up.key in exercise.shown
    ]
    groups += [_lines(exercise, number) for number in range(1, len(exercise.faults) + 1)]
    return groups


def _asked(exercise: FaultExercise) -> str:
    if exercise.missing:
        return "One step is missing from this plan. Before which row does it belong, what does it do, and what happens without it?"
    count = len(exercise.faults)
    many = f"{NUMBERS[count].capitalize()} mistake{' is' if count == 1 else 's are'}"
    return f"{many} in this plan. In which row, why is it a mistake, and how is it mended? All else is as it should be."


def wanted(job: Job) -> tuple[object, ...]:
    """What it is made from, and what the drawing asks."""
    sizes = (job.stock.length.text, job.stock.width.text, job.stock.height.text)
    picture = Picture("Stock", stock_picture(stock_box(job), sizes, WIDE, HIGH))
    lines = [line for line in (job.finished.sizes, *job.finished.features) if line]
    asked = [Words(line, "label") for line in lines or ("no sizes are said",)]
    return (
        Columns(parts=((picture,), (Heading("The drawing asks"), *asked)), shares=(0.5, 0.5), ruled=(1,)),
        Rule(),
    )


def plan_rows(reckoned: Reckoned, words: dict[str, str], set_up: SetUp) -> tuple[object, ...]:
    """The steps of a set-up with tool and speed, under how it is held."""
    job = reckoned.job
    columns = (
        Column(caption="row", style="number", align="right"),
        Column(caption="do", style="body", wide=True),
        Column(caption="tool", style="label"),
        Column(caption="rpm", style="label", align="right"),
    )
    rows = tuple(_row(reckoned, words, operation) for operation in set_up.operations)
    return (
        Heading(set_up.title or f"{set_up.up} up"),
        Words(held_line(job, set_up), "caption"),
        Table(columns=columns, rows=rows, high=ROW),
        Gap(4),
    )


def _row(reckoned: Reckoned, words: dict[str, str], operation: Operation) -> tuple[Cell, ...]:
    outcome = reckoned.operations[operation.key]
    cutter = getattr(operation.fields, "cutter", None)
    spindle = next((row.spindle for row in outcome.rows if row.spindle), "")
    tool = short_name(cutter) if isinstance(cutter, Cutter) else ""
    return (
        Cell(str(operation.number)), Cell(words[operation.key]), Cell(tool), Cell(spindle.removesuffix(" rpm")),
    )  # fmt: skip


def _lines(exercise: FaultExercise, number: int) -> tuple[object, ...]:
    first = (Rule(), Heading("What you found")) if number == 1 else ()
    place = "before row" if exercise.missing else "row"
    does = "what it does" if exercise.missing else "how it is mended"
    return (*first, Blanks((place, "because")), Blanks(("",)), Blanks((does,)), Gap(4))


# --- the key ---


def fault_key_groups(exercise: FaultExercise) -> list[tuple[object, ...]]:
    """Each mistake with its rows, what was done, what the review says of it and why."""
    groups: list[tuple[object, ...]] = [(Words(_how(exercise), "label"), Rule())]
    groups += [_said(exercise, fault) for fault in exercise.faults]
    groups.append((Rule(), Heading("Notes"), Writing(3)))
    return groups


def _how(exercise: FaultExercise) -> str:
    if exercise.missing:
        return "Right is any of the rows named here: nothing that must come first stands behind it. Ask for the reason, not for the word."
    return (
        "A mistake counts as found by any of its rows. A row named though nothing is wrong there is said, not subtracted: ask why. Mended and"
        " left in are two things: a mistake that costs hazard or scrap and was not found means that the part would not be good."
    )


def _said(exercise: FaultExercise, fault: Fault) -> tuple[object, ...]:
    rows = " or ".join(map(str, fault.rows))
    where = f"before row {rows}" if exercise.missing else f"row {rows}"
    home = next(
        (
            set_up.title
            for set_up in exercise.job.set_ups
            if any(step.number in fault.rows for step in set_up.operations)
        ),
        "",
    )
    return (
        Heading(f"{where[:1].upper()}{where[1:]}", home),
        Words(f"{fault.done[:1].upper()}{fault.done[1:]}.", "body"),
        Words(f"{fault.remark.message}.", "label bold"),
        Words(f"{fault.remark.why} ({fault.title}; {fault.remark.severity})", "label"),
        Gap(6),
    )
