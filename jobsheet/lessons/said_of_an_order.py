"""What is said to a learner of an answer: first the moves, then each broken rule with its reason, apart from
both whether the part would be good.
"""

from __future__ import annotations

from jobsheet.lessons.marking import Marked
from jobsheet.lessons.order_exercise import OrderExercise
from jobsheet.lessons.pairs import Pair

#: So many moves at most are called near.
NEAR = 2


def named_pair(exercise: OrderExercise, pair: Pair) -> str:
    """A pair by the letters of its slips, or where they stand in two set-ups by the letters of those."""
    letters = {slip.key: slip.letter for block in exercise.blocks for slip in block.slips}
    home = {
        step.key: set_up.key for set_up in exercise.asked.needed.job.set_ups for step in set_up.operations
    }
    if home[pair.first] == home[pair.then]:
        return f"{letters[pair.first]} before {letters[pair.then]}"
    heads = {block.set_up.key: block.letter for block in exercise.blocks}
    ends = [heads.get(home[one], "") for one in (pair.first, pair.then)]
    return " before ".join(end for end in ends if end)


def result_lines(exercise: OrderExercise, marked: Marked) -> list[str]:
    """The result, line by line."""
    lines = [_head(exercise, marked)]
    lines.append(f"{marked.kept} of the {marked.of} orders that matter among what was placed are kept.")
    slips = {slip.key: slip for block in exercise.blocks for slip in block.slips}
    for tally in marked.tallies.values():
        lines += [f"missing: {slips[key].letter}, {slips[key].words}" for key in tally.missing]
    lines += [
        f"{named_pair(exercise, pair)}: {pair.because} ({pair.title}; {pair.severity})"
        for pair in marked.broken
    ]
    lines += [
        f"better habit, no mistake: {named_pair(exercise, pair)}: {pair.because}" for pair in marked.habits
    ]
    lines.append(f"Marks: {marked.mark * 100:.0f} of 100, {marked.worst} moves being the worst order.")
    lines.append(f"Would the part be good: {_good(marked)}.")
    if marked.total:
        lines.append(_next(exercise, marked))
    return lines


def _head(exercise: OrderExercise, marked: Marked) -> str:
    if not marked.total:
        count = exercise.asked.count()
        others = (
            "more orders are right than can be counted" if count is None else f"{count:,} orders are right"
        )
        return (
            "Right, and no other order is."
            if count == 1
            else f"Right. {others[:1].upper()}{others[1:]}, yours is one."
        )
    parts = (
        [f"{marked.moves} move{'' if marked.moves == 1 else 's'} away from a right order"]
        if marked.moves
        else []
    )
    missing = sum(len(tally.missing) for tally in marked.tallies.values())
    parts += [f"{missing} slip{'' if missing == 1 else 's'} missing"] if missing else []
    near = "Nearly there: " if marked.total <= NEAR else ""
    words = " and ".join(parts)
    return f"{near}{words}." if near else f"{words[:1].upper()}{words[1:]}."


def _good(marked: Marked) -> str:
    if marked.good:
        return "yes, with more work than it needs" if marked.broken else "yes"
    worst = next((pair for pair in marked.broken if pair.severity in ("hazard", "scrap")), None)
    if worst is None:
        return "no, something is not done"
    return "no, and somebody may be hurt" if worst.severity == "hazard" else "no, it would be scrap"


def _next(exercise: OrderExercise, marked: Marked) -> str:
    """What to try next: the rule, not the place."""
    if marked.broken:
        return f"Try again: think of “{marked.broken[0].title}” first."
    return "Try again: place every slip." if exercise.blocks else ""
