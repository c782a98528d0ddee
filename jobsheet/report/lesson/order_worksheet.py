"""The worksheet of an order: how the work comes and must leave, the slips, boxes for their
letters, reasons to write, figures.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import arrow, box
from jobsheet.lessons.order_exercise import Block, OrderExercise
from jobsheet.lessons.questions import Question
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.report.blocks import Blanks, Cell, Column, Columns, Gap, Heading, Rule, Table, Words
from jobsheet.report.lesson.held_line import held_line
from jobsheet.report.lesson.lesson_pictures import before_and_after

#: Width of what is drawn on a page, a box for a letter and the way to the next
#: one [points]; 11.4 mm as the picture of it has.
WIDE, BOX, STEP = 505.0, 32.3, 53.0
#: A slip is cut out: so high is its row [points].
SLIP = 23.0
NONE = "Nothing else is right: more than one order may be."


def exercise_name(exercise: OrderExercise) -> str:
    """What the sheet is about: one set-up, or the part."""
    part = exercise.asked.needed.job.part
    number = part.number or part.name or "The part"
    if exercise.several:
        return f"{number}, order of work"
    return f"{number}, set-up {exercise.blocks[0].set_up.number}"


def worksheet_groups(
    exercise: OrderExercise, reckoned: Reckoned, questions: tuple[Question, ...]
) -> list[tuple[object, ...]]:
    """The blocks in groups that stay together on a page."""
    groups: list[tuple[object, ...]] = [(before_and_after(exercise, reckoned), Rule())]
    if exercise.several:
        groups += _several(exercise)
    else:
        groups.append(_one(exercise))
    groups.append((Gap(3), Rule(), *_boxes(exercise)))
    groups += question_groups(questions)
    return groups


def _one(exercise: OrderExercise) -> tuple[object, ...]:
    block = exercise.blocks[0]
    left = (Heading("Slips", "shuffled; cut them out or use the letters"), _slips(block))
    return (Columns(parts=(left, (*_held(exercise, block), Rule(), *_why())), shares=(0.52, 0.48)),)


def _several(exercise: OrderExercise) -> list[tuple[object, ...]]:
    """Set-ups two beside each other, then the reasons."""
    groups: list[tuple[object, ...]] = [
        (Heading("Set-ups and slips", "shuffled; put the set-ups in order, and the steps inside each"),)
    ]
    blocks = [(*_headed(exercise, block), _slips(block), Gap(5)) for block in exercise.blocks]
    for at in range(0, len(blocks), 2):
        pair = tuple(blocks[at : at + 2])
        parts = pair if len(pair) == 2 else (*pair, ())
        groups.append((Columns(parts=parts, shares=(0.5, 0.5), ruled=(1,)),))
    groups.append((Gap(2), Rule(), *_why()))
    return groups


def _headed(exercise: OrderExercise, block: Block) -> tuple[object, ...]:
    return Heading(f"{block.letter} · {block.words}"), Words(_hold_words(exercise, block), "caption")


def _slips(block: Block) -> Table:
    columns = (Column(style="number"), Column(style="body", wide=True))
    return Table(
        columns=columns, rows=tuple((Cell(slip.letter), Cell(slip.words)) for slip in block.slips), high=SLIP
    )


def _held(exercise: OrderExercise, block: Block) -> tuple[object, ...]:
    return Heading("Held"), Words(f"{block.words}. {_hold_words(exercise, block)}", "body")


def _hold_words(exercise: OrderExercise, block: Block) -> str:
    return held_line(exercise.asked.needed.job, block.set_up)


def _why() -> tuple[object, ...]:
    lines: list[object] = [
        Heading("Why?"),
        Words(
            "Take two letters of which one must come first. Say what goes wrong the other way round.", "label"
        ),
    ]
    for _ in range(2):
        lines += [Gap(4), Words("______ before ______, because", "body"), Blanks(("",)), Blanks(("",))]
    return (*lines, Gap(4), Words("______ and ______ may stand in either order.", "body"))


# --- boxes for the letters ---


def _boxes(exercise: OrderExercise) -> tuple[object, ...]:
    from jobsheet.report.blocks import Picture

    said = "a letter in each box; more than one order is right"
    if not exercise.several:
        block = exercise.blocks[0]
        letters = {slip.key: slip.letter for slip in block.slips}
        first, last = (letters.get(one, "") for one in exercise.given)
        count = len(block.slips)
        given = {0: first, count - 1: last}
        return Heading("Your order", said), Picture("", _row(count, given, ""))
    most = max(len(block.slips) for block in exercise.blocks)
    rows = [Picture("", _row(most, {}, "set-up")) for _ in exercise.blocks]
    return (
        Heading(
            "Your order", f"the set-up that comes first in the first row; {said}; a row may have boxes left"
        ),
        *rows,
    )


def _row(count: int, given: dict[int, str], head: str) -> Drawing:
    """So many boxes with arrows between, as many in a line as have room; before them a
    heavy one for the set-up's own letter.
    """
    items: list[Item] = []
    start = STEP + 10 if head else 0.0
    across = int((WIDE - start + STEP - BOX) // STEP)
    step = (WIDE - start - BOX) / (across - 1) if count >= across > 1 else STEP
    if head:
        items += [Line(box(1, 4, BOX, BOX), "frame", closed=True), Text(4, 12, head, "caption")]
    for place in range(count):
        x, y = start + (place % across) * step, 4.0 + (place // across) * (BOX + 8)
        items.append(Line(box(x, y, BOX, BOX), "outline", closed=True))
        items.append(Text(x + 3.5, y + 9.5, str(place + 1), "mark"))
        if given.get(place):
            items.append(Text(x + BOX / 2 + 3, y + BOX / 2 + 7, given[place], "title", "middle"))
        if place % across and place:
            items += arrow((x - step + BOX + 5, y + BOX / 2), (x - 5, y + BOX / 2))
    lines = -(-count // across)
    return Drawing(WIDE, lines * (BOX + 8) + 2, tuple(items))


# --- figures ---


def question_groups(questions: tuple[Question, ...], lines: int = 3) -> list[tuple[object, ...]]:
    """Questions two beside each other, each with room for its working."""
    if not questions:
        return []
    groups: list[tuple[object, ...]] = []
    for at in range(0, len(questions), 2):
        pair = [
            (Words(f"{at + place + 1}   {question.ask}", "body"), Gap(4), *_room(lines), Gap(4))
            for place, question in enumerate(questions[at : at + 2])
        ]
        parts = tuple(pair) if len(pair) == 2 else (*pair, ())
        head = (
            (Gap(3), Rule(), Heading("Work it out", "write the way you went, then the figure"))
            if not at
            else ()
        )
        groups.append((*head, Columns(parts=parts, shares=(0.5, 0.5))))
    return groups


def _room(lines: int) -> tuple[object, ...]:
    return tuple(Blanks(("",)) for _ in range(lines))
