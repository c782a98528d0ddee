"""The key of an order: the right orders as lanes, why, what is free, how to mark
in words, the figures worked.
"""

from __future__ import annotations

from jobsheet.lessons.order_exercise import OrderExercise
from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.questions import Question, Slipped
from jobsheet.report.blocks import Cell, Column, Columns, Gap, Heading, Picture, Rule, Table, Words, Writing
from jobsheet.report.lesson.order_lanes import lanes


def key_groups(exercise: OrderExercise, questions: tuple[Question, ...]) -> list[tuple[object, ...]]:
    """The blocks in groups that stay together on a page."""
    groups: list[tuple[object, ...]] = []
    count = exercise.asked.count()
    many = f"{count:,} of them" if count is not None else "too many to be counted"
    for block in exercise.blocks:
        head = Heading("Orders that are right", f"{many}; an arrow means before") if not groups else None
        named = () if not exercise.several else (Words(f"{block.letter} · {block.words}", "label bold"),)
        order = exercise.asked.inside(block.set_up.key)
        groups.append((*((head,) if head else ()), *named, Picture("", lanes(order, block.slips))))
    if exercise.several:
        groups.append((Gap(2), Words(_set_ups(exercise), "label bold")))
    groups.append((Rule(), Heading("Why"), *_why(exercise)))
    groups.append(_free(exercise))
    groups.append((Rule(), Heading("Marking in words"), Words(_marking(exercise), "label")))
    groups += worked_groups(questions)
    groups.append((Rule(), Heading("Notes"), Writing(2)))
    return groups


def _letters(exercise: OrderExercise) -> dict[str, str]:
    return {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}


def _set_ups(exercise: OrderExercise) -> str:
    """One right order of the set-ups, and which of them may change places."""
    asked = exercise.asked
    heads = {block.set_up.key: block.letter for block in exercise.blocks}
    free = [f"{heads[one]} with {heads[other]}" for one, other in asked.set_ups.free()]
    order = " then ".join(heads[key] for key in asked.set_ups.items)
    return f"Set-ups: {order}{f'; either first: {chr(44).join(free)}' if free else ', no other way'}."


def pairs_asked(exercise: OrderExercise) -> tuple[tuple[str, Pair], ...]:
    """Every drawn pair among what is asked, by its letters, with its reason."""
    from jobsheet.lessons.marking import reason

    letters, asked = _letters(exercise), exercise.asked
    found: dict[tuple[str, str], Pair] = {}
    for block in exercise.blocks:
        for first, then in asked.inside(block.set_up.key).needed():
            found[first, then] = reason(asked.needed, first, then)
    inside = tuple(
        (f"{letters[first]} before {letters[then]}", pair) for (first, then), pair in found.items()
    )
    heads = {block.set_up.key: block.letter for block in exercise.blocks}
    from jobsheet.lessons.marking import set_up_reason

    across = tuple(
        (f"{heads[first]} before {heads[then]}", set_up_reason(asked.needed, first, then))
        for first, then in asked.set_ups.needed()
    )
    return (*across, *inside)


def _why(exercise: OrderExercise) -> tuple[object, ...]:
    """Each rule once, with its pairs, what goes wrong, what it costs."""
    by_rule: dict[str, tuple[list[str], Pair]] = {}
    for words, pair in pairs_asked(exercise):
        by_rule.setdefault(pair.rule, ([], pair))[0].append(words)
    columns = (
        Column(caption="first, then", style="label bold"),
        Column(caption="or else", style="label", wide=True),
        Column(caption="costs", style="label"),
        Column(caption="rule", style="caption"),
    )
    rows = tuple(
        (Cell("; ".join(words)), Cell(pair.because), Cell(pair.severity), Cell(pair.title))
        for words, pair in by_rule.values()
    )
    sources = dict.fromkeys(pair.source.split(";")[0] for _, pair in by_rule.values())
    return Table(columns=columns, rows=rows), Words(f"From: {'; '.join(sources)}.", "caption")


def _free(exercise: OrderExercise) -> tuple[object, ...]:
    letters, asked = _letters(exercise), exercise.asked
    said = []
    for block in exercise.blocks:
        beside: dict[str, list[str]] = {}
        for one, other in asked.inside(block.set_up.key).free():
            beside.setdefault(letters[one], []).append(letters[other])
        said += [f"{one} with {' '.join(others)}" for one, others in beside.items()]
    habits = [
        f"{letters[pair.first]} before {letters[pair.then]}: {pair.because}"
        for pair in asked.needed.habits
        if pair.first in letters and pair.then in letters
    ]
    lines: list[object] = [Gap(3), Words(f"Free, never a mistake: {'; '.join(said) or 'nothing'}.", "label")]
    lines += [Words(f"Better habit, never a mistake: {habit}", "label") for habit in habits]
    return tuple(lines)


def _marking(exercise: OrderExercise) -> str:
    asked = exercise.asked
    count = sum(len(asked.inside(key).pairs()) for key in asked.steps) + len(asked.set_ups.pairs())
    return (
        f"Among these slips {count} pairs have an order that matters; a right order turned round needs {asked.worst} moves. A move takes one"
        " slip out and puts it back anywhere. No move: right. One or two: nearly there. More: talk through the first broken pair and let"
        " it be tried again. A free swap costs nothing; a missing slip and one too many count one each. Say apart whether the part would be"
        " good: a broken pair that costs hazard or scrap means no, however many moves."
    )


def worked_groups(questions: tuple[Question, ...]) -> list[tuple[object, ...]]:
    """The figures worked, with what is right for a bench, and the slips that are often made."""
    groups: list[tuple[object, ...]] = []
    for at in range(0, len(questions), 2):
        parts = [_worked(at + place + 1, question) for place, question in enumerate(questions[at : at + 2])]
        whole = tuple(parts) if len(parts) == 2 else (*parts, ())
        head = (Rule(), Heading("Worked figures")) if not at else ()
        groups.append((*head, Columns(parts=whole, shares=(0.5, 0.5))))
    return groups


def _worked(number: int, question: Question) -> tuple[object, ...]:
    lines: list[object] = [Words(f"{number}   {question.ask}", "caption")]
    lines += [Words(line, "label") for line in question.working]
    lines += [
        Words(question.answer, "label bold"),
        Words(f"right: {question.tolerance} ({question.source})", "caption"),
    ]
    if question.slips:
        said = "; ".join(f"{_shown(question, slipped)}: {slipped.what}" for slipped in question.slips)
        lines.append(Words(f"often: {said}", "caption"))
    return (*lines, Gap(4))


def _shown(question: Question, slip: Slipped) -> str:
    """A wrong figure as it would be written."""
    if question.turns >= 0:
        return f"{slip.value // 1000:.0f}+{slip.value % 1000:.0f}"
    return f"{slip.value:.0f}" if slip.value >= 100 else f"{slip.value:.3g}"
