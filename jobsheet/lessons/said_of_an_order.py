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
    home = {step.key: one.key for one in exercise.asked.needed.job.set_ups for step in one.operations}
    if home[pair.first] == home[pair.then]:
        return f"{letters[pair.first]} before {letters[pair.then]}"
    heads = {block.set_up.key: block.letter for block in exercise.blocks}
    ends = [heads.get(home[one], "") for one in (pair.first, pair.then)]
    return " before ".join(one for one in ends if one)


def result_lines(exercise: OrderExercise, found: Marked) -> list[str]:
    """The result, line by line."""
    lines = [_head(exercise, found)]
    lines.append(f"{found.kept} of the {found.of} orders that matter among what was placed are kept.")
    slips = {slip.key: slip for block in exercise.blocks for slip in block.slips}
    for tally in found.tallies.values():
        lines += [f"missing: {slips[key].letter}, {slips[key].words}" for key in tally.missing]
    lines += [
        f"{named_pair(exercise, one)}: {one.because} ({one.title}; {one.severity})" for one in found.broken
    ]
    lines += [f"better habit, no mistake: {named_pair(exercise, one)}: {one.because}" for one in found.habits]
    lines.append(f"Marks: {found.mark * 100:.0f} of 100, {found.worst} moves being the worst order.")
    lines.append(f"Would the part be good: {_good(found)}.")
    if found.total:
        lines.append(_next(exercise, found))
    return lines


def _head(exercise: OrderExercise, found: Marked) -> str:
    if not found.total:
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
        [f"{found.moves} move{'' if found.moves == 1 else 's'} away from a right order"]
        if found.moves
        else []
    )
    missing = sum(len(one.missing) for one in found.tallies.values())
    parts += [f"{missing} slip{'' if missing == 1 else 's'} missing"] if missing else []
    near = "Nearly there: " if found.total <= NEAR else ""
    words = " and ".join(parts)
    return f"{near}{words}." if near else f"{words[:1].upper()}{words[1:]}."


def _good(found: Marked) -> str:
    if found.good:
        return "yes, with more work than it needs" if found.broken else "yes"
    worst = next((one for one in found.broken if one.severity in ("hazard", "scrap")), None)
    if worst is None:
        return "no, something is not done"
    return "no, and somebody may be hurt" if worst.severity == "hazard" else "no, it would be scrap"


def _next(exercise: OrderExercise, found: Marked) -> str:
    """What to try next: the rule, not the place."""
    if found.broken:
        return f"Try again: think of “{found.broken[0].title}” first."
    return "Try again: place every slip." if exercise.blocks else ""
